package tally

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
)

// TestRecordsSumToTheZones: over random days the records hold, product by product and zone by zone, what the book's accounts say has
// come to the zone, to the last unit; strikes and true-ups included. A replay of the journal gives the same records.
func TestRecordsSumToTheZones(t *testing.T) {
	rows, struck, trued := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		k := newKeeper(t)
		for _, s := range []string{
			`{"fact":"loaded","into":"a","volume_gal":90,"mix":"W","for":"gun"}`, `{"fact":"loaded","into":"b","volume_gal":60,"mix":"C","for":"gun"}`,
			`{"fact":"lined_up","supply":["a"],"return":"a"}`, `{"fact":"day_opened","date":"2026-06-01","operator":"R. Example"}`,
			`{"fact":"gauge_read","compartment":"a","volume_gal":90}`,
		} {
			if err := k.enter(s); err != nil {
				t.Fatal(err)
			}
		}
		for range rapid.IntRange(4, 16).Draw(t, "entries") {
			_ = k.enter(drawLine(t)) // what could not have happened is refused; that is not tested here
			switch rapid.IntRange(0, 9).Draw(t, "besides") {
			case 0:
				if k.enter(fmt.Sprintf(`{"fact":"struck","of":%d}`, k.b.Seq()-uint64(rapid.IntRange(0, 2).Draw(t, "back")))) == nil {
					struck++
				}
			case 1:
				_ = k.enter(fmt.Sprintf(`{"fact":"gauge_read","compartment":"a","volume_gal":%d}`, rapid.IntRange(40, 88).Draw(t, "read")))
				if k.enter(`{"fact":"trued_up","tank":"a","include":["gallons","gauge"]}`) == nil {
					trued++
				}
			}
		}
		if k.b.Day().Seq == 0 {
			return // its opening was struck
		}
		list := RecordsOf(k.b)
		rows += len(list)
		holdsZones(t, k.b, list)
		again := core.NewBook(1)
		for _, e := range k.log {
			if err := again.Apply(e); err != nil {
				t.Fatal(err)
			}
		}
		if got, want := fmt.Sprintf("%+v", RecordsOf(again)), fmt.Sprintf("%+v", list); got != want {
			t.Fatalf("a replay gives\n%s\nnot\n%s", got, want)
		}
	})
	if rows < 60 || struck < 10 || trued < 2 {
		t.Errorf("only %d rows, %d strikes, %d true-ups; the generator is too poor", rows, struck, trued)
	}
}

// holdsZones adds the records up and takes the accounts of the zones off them.
func holdsZones(t *rapid.T, b *core.Book, list []Record) {
	type item struct{ lawn, zone, product string }
	left := map[item]int64{}
	for i := range list {
		r := &list[i]
		left[item{r.Lawn, r.Zone, r.Product}] += r.Amount.N
	}
	for _, l := range b.Lawns() {
		for _, z := range l.Zones {
			for _, h := range b.Plumbing().Outside[fluid.ZonePlace(l.LawnName, z.Name)].Holds {
				left[item{l.LawnName, z.Name, b.ProductVersions(h.Key).Now().ProductName}] -= h.N
			}
		}
	}
	for k, n := range left {
		if n != 0 {
			t.Fatalf("%+v: the records are %d off the account of the zone", k, n)
		}
	}
}
