package tally

import (
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Other is the row of liquid that came from no compartment.
const Other = "other"

// Compartment is one row: the flows of a compartment, its last reading, and what of it reached lawns.
type Compartment struct {
	Letter  string
	Flows   fluid.Flows
	Gauge   core.Maybe[measure.Volume]
	ToLawns measure.Volume
}

func (t *Tally) takeFlows(b *core.Book) {
	for i := range b.Plumbing().Compartments {
		c := &b.Plumbing().Compartments[i]
		t.Compartments = append(t.Compartments, Compartment{Letter: string(c.Letter), Flows: c.Flows})
	}
	for _, r := range b.Day().Readings {
		t.compartment(string(r.Letter)).Gauge = core.Known(r.Read)
	}
}

// compartment finds or makes a row; the row of liquid from elsewhere stays last.
func (t *Tally) compartment(letter string) *Compartment {
	at := len(t.Compartments)
	for i := range t.Compartments {
		switch t.Compartments[i].Letter {
		case letter:
			return &t.Compartments[i]
		case Other:
			at = i
		}
	}
	t.Compartments = append(t.Compartments, Compartment{})
	copy(t.Compartments[at+1:], t.Compartments[at:])
	t.Compartments[at] = Compartment{Letter: letter}
	return &t.Compartments[at]
}

// takeOrigins books what was laid to the compartments that it was drawn from.
func (t *Tally) takeOrigins(b *core.Book, l *core.Laid) {
	for _, p := range origins(l) {
		letter := Other
		if o := b.Origin(p.Key); o.Letter != 0 {
			letter = string(o.Letter)
		}
		t.compartment(letter).ToLawns += measure.Volume(p.N)
	}
}

// origins are those of what was laid. What a book without any supply had to take from the unexplained has
// none; it counts with the first water, so that the rows still add up.
func origins(l *core.Laid) fluid.Parts {
	const none = 0
	return l.From.Plus(fluid.Parts{{Key: none, N: int64(l.Volume) - l.From.Sum()}})
}

// addCompartments adds a day's rows. A start that is not what was left the day before (a compartment that a
// new rig took away) is booked as other, so that the row still adds up.
func (t *Tally) addCompartments(day []Compartment) {
	first := len(t.Compartments) == 0
	for _, d := range day {
		c := t.compartment(d.Letter)
		addFlows(&c.Flows, d.Flows, first)
		c.ToLawns += d.ToLawns
		if d.Gauge.Known {
			c.Gauge = d.Gauge
		}
	}
	for i := range t.Compartments {
		c := &t.Compartments[i]
		if !slices.ContainsFunc(day, func(d Compartment) bool { return d.Letter == c.Letter }) {
			c.Flows.Other -= c.Flows.Left()
		}
	}
}
