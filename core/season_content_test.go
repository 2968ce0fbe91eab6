package core

import (
	"fmt"
	"reflect"
	"testing"

	"example.com/tintline/core/label"
)

// Of many products that share actives under several names, the line of each active is the one that is found by asking every
// label entry; and adding up looks each name up once, not once for all that went down.
func TestSeasonAsksOnlyTheLabelsThatLimit(t *testing.T) {
	names := []string{"2,4-D", "2,4-d amine", "dicamba", "Dicamba acid", "of my own", "Of My Own"}
	var products []*Product
	for i := range 12 {
		e := label.Entry{HasRateLow: true, RateLow: perAcre(20)}
		for j := range 3 {
			a := label.Active{Name: names[(i+2*j)%len(names)], PercentByWeight: float64(5 + i)}
			if (i+j)%4 == 0 {
				a.MostYear = Known(perAcre(float64(30 + 7*i)))
			}
			e.Actives = append(e.Actives, a)
		}
		products = append(products, &Product{ProductName: fmt.Sprint("P", i), Label: e})
	}
	b := newYear(t, "2020-01-01", products...)
	for i := range 40 {
		b.on(dateOf(dayNumber("2025-02-01")+i*8), fmt.Sprint("P", i*5%12), float64(20+i), 1)
	}
	x := b.Season("L", "front", "2025-12-20", nil)
	limited := 0
	for _, line := range x.Lines() {
		if line.Of != OfActive {
			continue
		}
		want := x.Active(line.Name, -1)
		for _, k := range x.keys() {
			if l := x.Active(line.Name, k); l.Limit.Known && (!want.Limit.Known || l.Left.V.V < want.Left.V.V) {
				want = l
			}
		}
		if !reflect.DeepEqual(line, want) {
			t.Errorf("%s\n got %+v\nwant %+v", line.Name, line, want)
		}
		if line.Limit.Known {
			limited++
		}
	}
	if limited < 2 {
		t.Errorf("%d actives have a limit", limited)
	}
	if got := len(x.contents); got != 12 {
		t.Errorf("%d label entries were looked through, of 12", got)
	}
}
