package core

import (
	"testing"

	"example.com/tintline/core/measure"
)

// BenchmarkFoldChangeovers folds days on which each lawn brings a changeover with a push-back, the bypass running.
func BenchmarkFoldChangeovers(b *testing.B) {
	es := changeovers(b, 20)
	b.ReportAllocs()
	for b.Loop() {
		book := NewBook(1)
		for _, e := range es {
			if err := book.Apply(e); err != nil {
				b.Fatal(err)
			}
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(es)), "ns/entry")
}

func changeovers(t testing.TB, days int) []Entry {
	b := NewBook(1)
	var out []Entry
	at := Moment{Unix: 1_767_260_000}
	log := func(f Fact) {
		at.Unix += 60
		es, err := b.Prepare("a", at, f)
		if err == nil {
			err = b.Apply(es[0])
		}
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, es[0])
	}
	for i, e := range seasonJournal(t, 1, 24) {
		if _, opens := e.What.(*DayOpened); opens {
			break
		}
		f := e.What
		if rig, ok := f.(*Rig); ok && i == 0 {
			r := *rig
			r.PumpFlow = Known(measure.GPM(8))
			r.Applicators = []Applicator{{Name: "gun", Type: Gun, Hose: "reel", Delivery: measure.GalPer1000(1.6), Flow: Known(measure.GPM(2.4))}}
			f = &r
		}
		log(f)
	}
	for d := range days {
		log(&DayOpened{Date: At(at.Time().AddDate(0, 0, d)).Date(), Operator: "R. Example"})
		for _, into := range []string{"a", "b"} {
			log(&Loaded{Into: into, Volume: measure.Gallons(300), Mix: "M", For: "gun"})
		}
		for i := range 24 {
			letter := byte('a' + i%2)
			log(&LinedUp{Supply: []byte{letter}, Return: letter})
			log(&PushedBack{Hose: "reel", Volume: measure.Gallons(2.5), Into: letter})
			log(&Sprayed{Lawn: out[4+i].What.(*Lawn).LawnName, Applicator: "gun", Volume: Known(measure.Gallons(12))})
		}
		for _, from := range []string{"compartment/a", "compartment/b"} {
			log(&Dumped{From: from, To: "waste/pad"})
		}
		log(&DayClosed{Overnight: "left in"})
	}
	return out
}
