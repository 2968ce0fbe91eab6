package batch

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"
)

// drawTight draws a day in which the room decides: each zone can be laid fast with much or slowly with little, and refills are dear.
func drawTight(t *rapid.T) Day {
	d := plainDay()
	d.Visits, d.Reserve, d.Rig.Line = nil, DayReserve{}, DayLine{Holds: Other}
	d.Times.Changeover, d.Times.Refill = float64(rapid.IntRange(0, 3).Draw(t, "changeover")), float64(rapid.IntRange(5, 60).Draw(t, "refill"))
	for i := range d.Rig.Compartments {
		c := &d.Rig.Compartments[i]
		c.Heel, c.Capacity, c.Holds = 0, gallons(float64(rapid.IntRange(10, 25).Draw(t, "capacity"))), rapid.IntRange(Other, 1).Draw(t, "holds")
	}
	for v := range rapid.IntRange(4, 6).Draw(t, "visits") {
		in := Visit{Name: fmt.Sprint("lawn ", v), Zones: []Need{{}}}
		for o := range 3 {
			volume := rapid.IntRange(1, 10).Draw(t, "volume")
			in.Zones[0].Options = append(in.Zones[0].Options, Option{Liquid: rapid.IntRange(0, 1).Draw(t, "liquid"), Volume: gallons(float64(volume)), Minutes: float64(rapid.IntRange(0, 6).Draw(t, "less")+20-2*volume) + float64(o)/4})
		}
		d.Visits = append(d.Visits, in)
	}
	return d
}

// Nothing beats the exact plan where the room decides which option is taken.
func TestNothingBeatsATightDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawTight(t)
		w, err := d.work()
		if err != nil {
			t.Fatal(err)
		}
		got := w.best(w.ownOrder(), mostStates)
		if want := bruteForce(&d, w, w.ownOrder()); !got.plan.Exact || got.score() != want {
			t.Fatalf("%v min, brute force %v, exact %v", minutes(got.score().ms()), minutes(want.ms()), got.plan.Exact)
		}
		if low := minutes(w.anyOrder()); low > got.plan.Minutes.Total() {
			t.Fatalf("bound %v above %v", low, got.plan.Minutes.Total())
		}
	})
}
