package core

import (
	"pgregory.net/rapid"

	"example.com/tintline/core/measure"
)

func (g *anyFact) paid() Fact {
	f := &Paid{
		What:   g.pick("what", PaidFuel, PaidRepair, PaidIn, "toys"),
		Amount: Known(measure.Money(rapid.Int64Range(-1, 50_000).Draw(g.t, "cents"))),
		Of:     g.pick("of", "", "", "", "", "rig", "yacht"), Date: g.pick("date", "", "", "", "2026-01-04", "spring"),
	}
	if f.What == PaidFuel && rapid.Bool().Draw(g.t, "gallons") {
		f.Fuel = Known(g.volume(30))
	}
	return f
}

func (g *anyFact) invested() Fact {
	f := &Invested{
		Thing: g.pick("thing", "rig", "ride-on", ""), Cost: Known(measure.Money(rapid.Int64Range(-1, 5_000_000).Draw(g.t, "cost"))),
		Date: g.pick("bought", "2025-11-02", "2026-01-04", ""), Earns: g.pick("earns", "", EarnsAll, EarnsApplicator, EarnsMinutes, "luck"),
		Applicator: g.pick("applicator", "", "ride-on", "gun", "none"), Retired: g.pick("retired", "", "", "2027-03-01", "2024-01-01"),
	}
	if rapid.Bool().Draw(g.t, "minutes") {
		f.Minutes = Known(4.0)
	}
	return f
}
