package core

import (
	"testing"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

func dryRate(pounds float64) measure.Rate {
	return measure.Rate{V: pounds * float64(measure.Pound) / float64(measure.ThousandSquareFeet), Kind: measure.Dry}
}

func (g *anyFact) pounds(about float64) measure.Amount {
	kind := measure.Dry
	if rapid.IntRange(0, 30).Draw(g.t, "by volume") == 0 {
		kind = measure.Liquid
	}
	return measure.Amount{N: int64(measure.Pounds(rapid.Float64Range(0, about).Draw(g.t, "lb"))), Kind: kind}
}

func (g *anyFact) hopperLoad() *Loaded {
	f := &Loaded{Into: g.pick("into", "ride-on", "spreader", "spreader", "drop")}
	if rapid.IntRange(0, 3).Draw(g.t, "mixed") == 0 {
		f.Mix = g.pick("mix", "F", "W")
		f.Parts = []LoadPart{{"food", g.pounds(20)}, {"lime", g.pounds(10)}}
		return f
	}
	f.Mix = g.pick("mix", "", "F")
	f.Parts = []LoadPart{{g.pick("product", "food", "food", "lime", "weed"), g.pounds(30)}}
	return f
}

func (g *anyFact) spread() *Spread {
	f := &Spread{Lawn: g.lawn(), Zones: g.zones(), Applicator: g.pick("applicator", "ride-on", "spreader", "spreader", "drop", "gun")}
	f.Product = g.pick("product", "", "", "food", "lime", "weed")
	switch rapid.IntRange(0, 2).Draw(g.t, "by") {
	case 0:
		f.By, f.Amount = ByWeight, g.pounds(25)
	case 1:
		f.By = ByArea
	}
	if rapid.IntRange(0, 3).Draw(g.t, "area given") == 0 {
		f.Area = Known(measure.Area(rapid.Int64Range(0, 1e9).Draw(g.t, "area")))
	}
	return f
}

// balancedHoppers checks that a hopper holds what its flows say, and that a place has one account.
func balancedHoppers(t rapid.TB, b *Book) {
	t.Helper()
	for i := range b.plumbing.Hoppers {
		if h := &b.plumbing.Hoppers[i]; h.Flows.Left() != h.Mass() || h.Mass() < 0 || h.Mass() > h.Capacity {
			t.Fatalf("the hopper of %s holds %d of %d, by its flows %d", h.Name, h.Mass(), h.Capacity, h.Flows.Left())
		}
	}
	rows := map[fluid.Place]bool{}
	for _, a := range b.Plumbing().Accounts() {
		if rows[a.Place] {
			t.Fatalf("%s has two accounts", a.Place)
		}
		rows[a.Place] = true
	}
}

// TestDryFactsOfAnyKindApply: what admission would refuse, an older version may have written; applying it neither
// panics nor loses anything.
func TestDryFactsOfAnyKindApply(t *testing.T) {
	loaded := dryBook(t, `{"fact":"loaded","into":"spreader","parts":[{"product":"food","amount_lb":30}]}
{"fact":"loaded","into":"ride-on","mix":"FL","parts":[{"product":"food","amount_lb":20},{"product":"lime","amount_lb":10}]}`)
	from := func(t *rapid.T, what string, list ...string) string { return rapid.SampledFrom(list).Draw(t, what) }
	rapid.Check(t, func(t *rapid.T) {
		b := loaded.Clone()
		g := &filler{t: t}
		for i := range 8 {
			kind := rapid.SampledFrom([]Kind{kindSpread, kindSpread, kindLoaded, kindDumped, kindFitted, kindRig}).Draw(t, "kind")
			f := g.fact(newFact[kind](), false)
			with := from(t, "with", "spreader", "ride-on", "drop", "gun", "nobody")
			switch f := f.(type) {
			case *Spread:
				f.Lawn, f.Zones, f.Applicator = from(t, "lawn", "77 Fir", "418 Alder", "none"), []string{from(t, "zone", "all", "front", "none")}, with
				f.Product = from(t, "product", "", "food", "lime", "warm weed", "none")
			case *Loaded:
				f.Into, f.Volume = with, 0
				for j := range f.Parts {
					f.Parts[j].Product = from(t, "product", "food", "lime", "warm weed", "none")
				}
			case *Dumped:
				f.From, f.To, f.Amount.Known = "applicator/"+with, from(t, "to", "package/food", "waste/x", "compartment/a"), true
			case *Fitted:
				f.Applicator = with
			case *Rig:
				c := *b.Rig()
				c.Applicators = append([]Applicator(nil), c.Applicators...)
				c.Applicators[rapid.IntRange(0, len(c.Applicators)-1).Draw(t, "of")].Hopper = measure.Mass(g.integer("hopper"))
				*f = c
			}
			b.state.apply(Entry{Seq: uint64(1000 + i), What: f})
			if s := b.Plumbing().Sum(); s.Volume != 0 || len(s.Holds) != 0 {
				t.Fatalf("after %+v all places come to %v", f, s)
			}
		}
	})
}
