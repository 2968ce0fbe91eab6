package tally

import (
	"fmt"

	"example.com/tintline/core/measure"
)

func (t *Tally) applicators(p page) Section {
	names := make([]string, len(t.With))
	work := make([]Worked, len(t.With))
	for i, w := range t.With {
		names[i], work[i] = w.Applicator, w.Worked
	}
	return t.worked(p, Section{Of: Applicators, Head: []string{"applicator"}}, names, work)
}

func (t *Tally) hours(p page) Section {
	names := make([]string, len(t.In))
	work := make([]Worked, len(t.In))
	for i, w := range t.In {
		names[i], work[i] = fmt.Sprintf("%02d:00 to %02d:00", w.Hour, (w.Hour+1)%24), w.Worked
	}
	return t.worked(p, Section{Of: Hours, Head: []string{"hour"}}, names, work)
}

// worked are rows that add up to what was laid in all, as printed.
func (t *Tally) worked(p page, s Section, names []string, work []Worked) Section {
	if len(work) == 0 {
		return Section{}
	}
	var gal, lb, area []float64
	for _, w := range work {
		gal, lb, area = append(gal, w.Volume.Gallons()), append(lb, w.Mass.Pounds()), append(area, w.Area.SquareFeet())
	}
	gal = measure.LargestRemainder(gal, t.Volume.Gallons(), p.gal)
	lb = measure.LargestRemainder(lb, t.Mass.Pounds(), p.lb)
	area = measure.LargestRemainder(area, t.Area.SquareFeet(), p.area)
	s.Head = append(s.Head, p.figureHeads()...)
	for i, name := range names {
		s.add(append([]string{name}, p.figures(gal[i], lb[i], area[i])...)...)
	}
	s.add(append([]string{"all"}, p.figures(p.all, p.allLb, p.allSqF)...)...)
	return s
}
