package tally

import (
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// figures are the columns of the lawns' table; the weight stands there only where something was spread.
func (p page) figures(gal, lb, sqft float64) []string {
	if p.allLb == 0 {
		return []string{p.gallons(gal), p.sqft(sqft)}
	}
	return []string{p.gallons(gal), p.pounds(lb), p.sqft(sqft)}
}

func (p page) figureHeads() []string {
	if p.allLb == 0 {
		return []string{"gal", "sq ft"}
	}
	return []string{"gal", "lb spread", "sq ft"}
}

func (t *Tally) lawns(p page) Section {
	if len(t.Lawns) == 0 {
		return Section{}
	}
	var gal, lb, area []float64
	for _, l := range t.Lawns {
		gal, lb, area = append(gal, l.Volume.Gallons()), append(lb, l.Mass.Pounds()), append(area, l.Area.SquareFeet())
	}
	gal = measure.LargestRemainder(gal, t.Volume.Gallons(), p.gal)
	lb = measure.LargestRemainder(lb, t.Mass.Pounds(), p.lb)
	area = measure.LargestRemainder(area, t.Area.SquareFeet(), p.area)
	rows := Section{Of: Lawns, Head: append([]string{"lawn"}, p.figureHeads()...)}
	for i, l := range t.Lawns {
		rows.add(append([]string{l.Lawn}, p.figures(gal[i], lb[i], area[i])...)...)
		var zg, zl, za []float64
		for _, z := range l.Zones {
			zg, zl, za = append(zg, z.Volume.Gallons()), append(zl, z.Mass.Pounds()), append(za, z.Area.SquareFeet())
		}
		zg = measure.LargestRemainder(zg, gal[i], p.gal)
		zl = measure.LargestRemainder(zl, lb[i], p.lb)
		za = measure.LargestRemainder(za, area[i], p.area)
		for j, z := range l.Zones {
			rows.add(append([]string{"  " + z.Zone + ", " + label.GrassWords(z.Grass)}, p.figures(zg[j], zl[j], za[j])...)...)
		}
	}
	rows.add(append([]string{"all"}, p.figures(p.all, p.allLb, p.allSqF)...)...)
	return rows
}
