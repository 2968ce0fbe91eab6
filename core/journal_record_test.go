package core

func (g *anyFact) recorded() Fact {
	return &Recorded{
		Field: g.pick("field", "target", "wind_mph", "completed", "soil_test", "grass", "mood"),
		Value: g.pick("value", "12", "dandelion", "09:40", "2025-10-02", "none"),
		Lawn:  g.pick("of lawn", "", "L1", "L9"), Zone: g.pick("of zone", "", "", "front"), Product: g.pick("of product", "", "weed", "pebbles"),
	}
}
