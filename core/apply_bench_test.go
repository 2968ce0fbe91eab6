package core

import (
	"fmt"
	"testing"
	"time"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// gunTruck logs a truck of two tanks and a gun, with a mix of two products for any turf.
func gunTruck(log func(Fact)) {
	log(&Rig{
		RigName:      "truck",
		Compartments: []RigCompartment{{Letter: 'a', Name: "a", Capacity: measure.Gallons(600)}, {Letter: 'b', Name: "b", Capacity: measure.Gallons(600)}},
		Cell:         measure.Gallons(0.2), ReturnLine: measure.Gallons(0.1),
		Hoses:       []RigHose{{Name: "reel", Volume: measure.Gallons(1.7)}},
		Applicators: []Applicator{{Name: "gun", Type: "gun", Hose: "reel", Delivery: measure.GalPer1000(1.6)}},
	})
	for _, n := range []string{"p", "q"} {
		log(&Product{ProductName: n, Label: label.Entry{Grasses: []string{label.AllTurf}}})
	}
	log(&Mix{MixName: "M", Parts: []MixPart{{Product: "p", Rate: measure.Rate{V: 0.3}}, {Product: "q", Rate: measure.Rate{V: 0.1}}}})
}

// seasonJournal is days of two dozen lawns with two zones each, which are sprayed with a mix of two products.
func seasonJournal(t testing.TB, days, lawns int) []Entry {
	t.Helper()
	b := NewBook(1)
	var out []Entry
	at := Moment{Unix: 1_767_260_000}
	log := func(f Fact) {
		at.Unix += 60
		es, err := b.Prepare("a", at, f)
		if err != nil {
			t.Fatal(err)
		}
		if err := b.Apply(es[0]); err != nil {
			t.Fatal(err)
		}
		out = append(out, es[0])
	}
	gunTruck(log)
	for i := range lawns {
		log(&Lawn{LawnName: fmt.Sprint(i), Zones: []Zone{
			{Name: "front", Grass: "tall_fescue", Area: 4 * measure.ThousandSquareFeet}, {Name: "back", Grass: "tall_fescue", Area: 5 * measure.ThousandSquareFeet},
		}})
	}
	const aDay = 24
	load := measure.Gallons(400)
	for d := range days {
		log(&DayOpened{Date: time.Date(2026, 1, 1+d, 0, 0, 0, 0, time.UTC).Format(time.DateOnly), Operator: "R. Example"})
		if d == 0 {
			log(&LinedUp{Supply: []byte("a"), Return: 'a'})
		}
		log(&Loaded{Into: "a", Volume: load, Mix: "M", For: "gun"})
		load = measure.Gallons(1.6 * 9 * aDay)
		for i := range aDay {
			lawn := fmt.Sprint((d*aDay + i) % lawns)
			log(&VisitBegun{Lawn: lawn})
			log(&Sprayed{Lawn: lawn, Applicator: "gun"})
			log(&VisitDone{Lawn: lawn})
		}
		log(&DayClosed{Overnight: "left in"})
	}
	return out
}

// BenchmarkFold folds a season of a rig with a round of 240 lawns.
func BenchmarkFold(b *testing.B) {
	es := seasonJournal(b, 100, 240)
	b.ReportAllocs()
	for b.Loop() {
		book := NewBook(1)
		for _, e := range es {
			if err := book.Apply(e); err != nil {
				b.Fatal(err)
			}
		}
	}
}
