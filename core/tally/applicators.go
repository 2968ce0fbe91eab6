package tally

import (
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Tank is one row: the flows of an applicator's own tank, and what the applicator laid on lawns.
type Tank struct {
	Name    string
	Flows   fluid.Flows
	ToLawns measure.Volume
}

// Hopper is one row: the flows of a hopper, and what of dry product the applicator laid on lawns, what was poured
// from the bag on the way included. A spreader without a hopper has no flows.
type Hopper struct {
	Name    string
	Flows   fluid.HopperFlows
	ToLawns measure.Mass
}

// takeTanks takes the flows of the applicators' tanks and hoppers.
func (t *Tally) takeTanks(b *core.Book) {
	p := b.Plumbing()
	for i := range p.Tanks {
		t.Tanks = append(t.Tanks, Tank{Name: p.Tanks[i].Name, Flows: p.Tanks[i].Flows})
	}
	for i := range p.Hoppers {
		t.Hoppers = append(t.Hoppers, Hopper{Name: p.Hoppers[i].Name, Flows: p.Hoppers[i].Flows})
	}
}

// takeApplicator books what was laid to the applicator that did.
func (t *Tally) takeApplicator(l *core.Laid) {
	if l.Dry {
		t.hopper(l.Applicator).ToLawns += dryMass(l)
		return
	}
	for i := range t.Tanks {
		if t.Tanks[i].Name == l.Applicator {
			t.Tanks[i].ToLawns += l.Volume
		}
	}
}

// dryMass is what was spread; of liquid it is nothing, whatever that holds.
func dryMass(l *core.Laid) measure.Mass {
	if !l.Dry {
		return 0
	}
	return measure.Mass(l.Holds.Sum())
}

func (t *Tally) tank(name string) *Tank {
	for i := range t.Tanks {
		if t.Tanks[i].Name == name {
			return &t.Tanks[i]
		}
	}
	t.Tanks = append(t.Tanks, Tank{Name: name})
	return &t.Tanks[len(t.Tanks)-1]
}

func (t *Tally) hopper(name string) *Hopper {
	for i := range t.Hoppers {
		if t.Hoppers[i].Name == name {
			return &t.Hoppers[i]
		}
	}
	t.Hoppers = append(t.Hoppers, Hopper{Name: name})
	return &t.Hoppers[len(t.Hoppers)-1]
}

// addTanks adds a day's rows, as addCompartments does. A tank that is seen for the first time starts as it stood then.
func (t *Tally) addTanks(day []Tank) {
	for _, d := range day {
		n := len(t.Tanks)
		c := t.tank(d.Name)
		addFlows(&c.Flows, d.Flows, len(t.Tanks) > n)
		c.ToLawns += d.ToLawns
	}
	for i := range t.Tanks {
		c := &t.Tanks[i]
		if !slices.ContainsFunc(day, func(d Tank) bool { return d.Name == c.Name }) {
			c.Flows.Other -= c.Flows.Left()
		}
	}
}

func (t *Tally) addHoppers(day []Hopper) {
	for _, d := range day {
		n := len(t.Hoppers)
		c := t.hopper(d.Name)
		if len(t.Hoppers) > n {
			c.Flows.Start = d.Flows.Start
		}
		c.Flows.Other += d.Flows.Start - c.Flows.Left() + d.Flows.Other
		c.Flows.Loaded += d.Flows.Loaded
		c.Flows.Spread += d.Flows.Spread
		c.ToLawns += d.ToLawns
	}
	for i := range t.Hoppers {
		c := &t.Hoppers[i]
		if !slices.ContainsFunc(day, func(d Hopper) bool { return d.Name == c.Name }) {
			c.Flows.Other -= c.Flows.Left()
		}
	}
}

// addFlows adds a day's flows. A start that is not what was left the day before is booked as other, so that the row
// still adds up.
func addFlows(to *fluid.Flows, day fluid.Flows, first bool) {
	if first {
		to.Start = day.Start
	}
	to.Other += day.Start - to.Left() + day.Other
	to.Loaded += day.Loaded
	to.PushedIn += day.PushedIn
	to.Drawn += day.Drawn
	to.Unexplained += day.Unexplained
}
