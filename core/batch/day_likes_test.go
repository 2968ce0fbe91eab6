package batch

import (
	"testing"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// TestCompartmentsGetWhatTheyUsuallyHold: three empty compartments, two mixes. What a compartment usually holds decides; without
// that the mix of which most is needed goes into the first letter.
func TestCompartmentsGetWhatTheyUsuallyHold(t *testing.T) {
	gal := measure.Gallons
	day := func() Day {
		d := Day{Liquids: []DayLiquid{
			{Name: "warm", Products: []Target{{"w", label.Entry{}, 0.01}}},
			{Name: "cool", Products: []Target{{"c", label.Entry{}, 0.01}}},
		}, Applicators: []DayApplicator{{"gun"}}, Times: DayTimes{Changeover: 3, Between: 10, MPH: 20}}
		for _, l := range []byte{'a', 'b', 'c'} {
			d.Rig.Compartments = append(d.Rig.Compartments, DayCompartment{Letter: l, Capacity: gal(100), Heel: gal(1), Holds: Nothing})
		}
		d.Rig.Line = DayLine{Hose: gal(1), Clean: 0.9, Holds: Other}
		for i, v := range []float64{10, 30} {
			d.Visits = append(d.Visits, Visit{Name: string(rune('A' + i)), Zones: []Need{{Zone: "all", Options: []Option{{Liquid: i, Volume: gal(v), Minutes: 5}}}}})
		}
		return d
	}
	got := func(d Day) string {
		t.Helper()
		p, err := PlanDay(d)
		if err != nil {
			t.Fatal(err)
		}
		out := []byte("---")
		for _, x := range p.Loads[0].Compartments {
			if x.Liquid >= 0 {
				out[x.Compartment] = "wc"[x.Liquid]
			}
		}
		return string(out)
	}
	if g := got(day()); g != "cw-" {
		t.Errorf("nothing is usual: %s", g)
	}
	d := day()
	d.Rig.Compartments[2].Likes, d.Rig.Compartments[1].Likes = measure.Known(0), measure.Known(1)
	if g := got(d); g != "-cw" {
		t.Errorf("c is usually warm, b cool: %s", g)
	}
	d.Rig.Compartments[0].Holds, d.Rig.Compartments[0].Left = 1, gal(40)
	if g := got(d); g != "c-w" {
		t.Errorf("a holds cool already: %s", g)
	}
}
