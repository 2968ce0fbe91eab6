package setup

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

func TestFillPlanIsRoundAndCloserAtTheEnds(t *testing.T) {
	for capacity, want := range map[float64]string{
		300: "10 20 30 40 50 60 80 100 120 140 160 180 200 220 240 250 260 270 280 290 300",
		90:  "2 4 6 8 10 12 14 16 18 20 25 30 35 40 45 50 55 60 65 70 72 74 76 78 80 82 84 86 88 90",
		6:   "1 2 3 4 5 6",
		0.5: "0.5",
	} {
		var got []string
		for _, v := range FillPlan(measure.Gallons(capacity)) {
			got = append(got, fmt.Sprintf("%g", v.Gallons()))
		}
		if s := strings.Join(got, " "); s != want {
			t.Errorf("%g gal: %s, want %s", capacity, s, want)
		}
	}
}

func TestNextFillLeavesOutWhatTheChartHas(t *testing.T) {
	c := &core.RigCompartment{Capacity: measure.Gallons(300), Marks: []core.GaugeMark{{Mark: "1", Volume: measure.Gallons(10)}, {Mark: "2", Volume: measure.Gallons(20)}}}
	if v, ok := NextFill(c, 0); !ok || v != measure.Gallons(30) {
		t.Errorf("%v %v", v, ok)
	}
	if v, ok := NextFill(c, measure.Gallons(33)); !ok || v != measure.Gallons(40) {
		t.Errorf("%v %v", v, ok)
	}
	if _, ok := NextFill(c, measure.Gallons(300)); ok {
		t.Error("there is nothing above full")
	}
}
