package core

import "pgregory.net/rapid"

func (g *anyFact) recorded() Fact {
	return &Recorded{
		Field: g.pick("field", "target", "target", "incident", "wind_mph", "completed", "soil_test", "grass", "mood"),
		Value: g.pick("value", "12", "dandelion", "09:40", "2025-10-02", "none"),
		Lawn:  g.pick("of lawn", "", "L1", "L9"), Zone: g.pick("of zone", "", "", "front"), Product: g.pick("of product", "", "weed", "pebbles"),
	}
}

func (g *anyFact) metered() Fact {
	f := &Metered{Changed: g.pick("changed", "", "", "", "yes", "no")}
	for _, m := range []*Maybe[float64]{&f.EngineHours, &f.PumpHours, &f.Odometer} {
		if rapid.Bool().Draw(g.t, "read") {
			*m = Known(float64(rapid.IntRange(0, 4000).Draw(g.t, "meter")) / 10)
		}
	}
	return f
}
