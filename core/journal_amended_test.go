package core

import (
	"pgregory.net/rapid"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// amended is mostly of something that went on a zone on a day before, by more or less than went there, at times of what never was.
func (g *anyFact) amended() Fact {
	f := &Amended{Date: g.pick("of", "2026-05-01", "2025-05-01", "May"), Lawn: g.lawn(), Zone: g.pick("of zone", "front", "back"), Product: g.pick("of product", "weed", "iron", "pebbles"), Nth: int64(rapid.IntRange(0, 2).Draw(g.t, "nth")), Who: g.pick("who", "R. Example", "R. Example", "R. Example", ""), Why: "measured again"}
	if past := g.b.History(f.Lawn, f.Zone); len(past) > 0 {
		w := past[rapid.IntRange(0, len(past)-1).Draw(g.t, "went")]
		p := g.b.ProductByKey(w.Product)
		f.Date, f.Product, f.Nth = w.Date, p.ProductName, 1
		more := int64(float64(w.Amount) * rapid.Float64Range(-1.5, 1.5).Draw(g.t, "more"))
		f.More = []AmendedMore{{p.ProductName, measure.Amount{N: more, Kind: p.Label.Form}}}
		have := g.b.Plumbing().Outside[fluid.ZonePlace(f.Lawn, f.Zone)].Volume
		f.Volume = measure.Volume(float64(have) * rapid.Float64Range(-1.2, 0.5).Draw(g.t, "mix"))
	}
	if rapid.Bool().Draw(g.t, "a field") {
		f.Changes = []RecordChange{{g.pick("field", "target", AmendArea, "wind_mph", "mood"), "", g.pick("is", "12", "0", "clover")}}
	}
	return f
}
