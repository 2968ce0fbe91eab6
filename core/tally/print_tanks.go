package tally

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// tanks are the applicators' own tanks that held or moved something; each row adds up.
func (t *Tally) tanks(p page) Section {
	rows := Section{Of: Tanks, Head: []string{"own tank", "start", "loaded", "filled", "drawn", "other", "unexplained", "left", "to lawns"}}
	for _, a := range t.Tanks {
		if a.Flows == (fluid.Flows{}) && a.ToLawns == 0 {
			continue
		}
		cells := []string{a.Name}
		for _, f := range p.row(a.Flows) {
			cells = append(cells, p.gallons(f))
		}
		rows.add(append(cells, p.gallons(measure.LargestRemainder([]float64{a.ToLawns.Gallons()}, a.ToLawns.Gallons(), p.gal)[0]))...)
	}
	return rows
}

// hoppers are what dry product went through, in pounds. What went to lawns is more than what was spread from the
// hopper where the bag was poured on the way.
func (t *Tally) hoppers(p page) Section {
	rows := Section{Of: Hoppers, Head: []string{"pounds", "start", "loaded", "spread", "other", "left", "to lawns"}}
	var to []float64
	var some []Hopper
	for _, h := range t.Hoppers {
		if h.Flows != (fluid.HopperFlows{}) || h.ToLawns != 0 {
			some, to = append(some, h), append(to, h.ToLawns.Pounds())
		}
	}
	to = measure.LargestRemainder(to, t.Mass.Pounds(), p.lb)
	for i, h := range some {
		f := h.Flows
		parts := measure.LargestRemainder([]float64{f.Start.Pounds(), f.Loaded.Pounds(), -f.Spread.Pounds(), f.Other.Pounds()}, f.Left().Pounds(), p.lb)
		left := measure.LargestRemainder([]float64{f.Left().Pounds()}, f.Left().Pounds(), p.lb)[0]
		rows.add(h.Name, p.pounds(parts[0]), p.pounds(parts[1]), p.pounds(-parts[2]), p.pounds(-parts[3]), p.pounds(left), p.pounds(to[i]))
	}
	return rows
}
