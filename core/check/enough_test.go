package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// TestEnoughByWhatGaugesShowed: three readings show that the gun puts down a tenth more than is thought; a lawn for which
// what is booked would do by rate is then asked about, with both figures.
func TestEnoughByWhatGaugesShowed(t *testing.T) {
	b := core.NewBook(1)
	at := core.Moment{Unix: 1_780_000_000}
	enter := func(f core.Fact) {
		t.Helper()
		entries, err := b.Prepare("", at, f)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			if err := b.Apply(e); err != nil {
				t.Fatal(err)
			}
		}
	}
	enter(&core.Rig{
		RigName: "truck", Compartments: []core.RigCompartment{{Letter: 'a', Capacity: measure.Gallons(300)}, {Letter: 'b', Capacity: measure.Gallons(100)}},
		Hoses:       []core.RigHose{{Name: "reel", Volume: measure.Gallons(1)}},
		Applicators: []core.Applicator{{Name: "gun", Type: core.Gun, Hose: "reel", Delivery: measure.GalPer1000(1)}},
	})
	enter(&core.Lawn{LawnName: "field", Zones: []core.Zone{{Name: "all", Grass: "tall_fescue", Area: measure.SquareFeet(100000)}}})
	enter(&core.DayOpened{Date: "2026-05-28", Operator: "R. Example", Route: []string{"field"}})
	enter(&core.Loaded{Into: "a", Volume: measure.Gallons(300)})
	enter(&core.LinedUp{Supply: []byte{'a'}, Return: 'a'})
	enter(&core.VisitBegun{Lawn: "field"})
	for range 3 {
		enter(&core.Sprayed{Lawn: "field", Zones: []string{"all"}, Applicator: "gun", By: core.ByArea, Area: core.Known(measure.SquareFeet(40000))})
		c := b.Plumbing().Compartment('a')
		enter(&core.GaugeRead{Compartment: 'a', Volume: core.Known(c.Liquid.Volume - measure.Gallons(4))})
	}
	enter(&core.Dumped{From: "compartment/a", To: "waste/pit"})
	enter(&core.Loaded{Into: "a", Volume: measure.Gallons(104)})
	r, err := Before(b, Intent{Lawn: "field", Zones: []string{"all"}, With: "gun", At: at})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.Findings {
		if f.Rule == "enough" {
			if f.Weight < Ask || !strings.Contains(f.Says, "as gun puts down, 100.0 gal by its rate") {
				t.Errorf("%v %s", f.Weight, f.Says)
			}
			return
		}
	}
	t.Errorf("nothing is said of 104 gal for 100 by rate and about 109 as it goes down: %+v", r.Findings)
}
