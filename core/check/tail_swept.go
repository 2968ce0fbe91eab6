package check

import (
	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// sweptWay is to let the bypass wash the cell first, with the gun shut and the return still on the old compartment, then to
// turn the return and to push. It needs the pump's output, and valves that stand on the old compartment yet.
func (s *situation) sweptWay(c *Changeover, h *fluid.Hose) (Way, bool) {
	if c.Order == nil {
		return Way{}, false
	}
	w := Way{Name: WaySwept, RunS: c.Order.HeldS}
	clean := s.cleanSwept(c, h)
	all := upToHundredth(s.advised(clean, h))
	plug := upToHundredth(liquidIn(h))
	w.Legs = []Leg{{Into: c.Into, Volume: min(plug, all)}}
	if all > plug {
		w.Legs = append(w.Legs, Leg{Into: c.To, Volume: all - plug})
	}
	return w, true
}

// cleanSwept is Clean where the cell was washed out before: so many cells less of it, but not before the plug and its smear
// are through.
func (s *situation) cleanSwept(c *Changeover, h *fluid.Hose) measure.Volume {
	m := s.model(h)
	plug := (m.Hose + 3*m.Sigma).Volume() - h.Air()
	return max(c.Clean-(sweptCells*m.Cell).Volume(), plug)
}

// takeSwept makes the figures of the changeover those of the swept way: what the cell holds then is small from the start.
func (s *situation) takeSwept(c *Changeover, h *fluid.Hose) {
	c.Clean = s.cleanSwept(c, h)
	c.Advised = s.advised(c.Clean, h)
	c.PushBack = 0
	for _, l := range c.Legs {
		c.PushBack += l.Volume
	}
	c.Half = max(c.Arrives, liquidIn(h))
	left := hydraulics.Washout(1, sweptCells)
	for _, p := range []*profile{&c.old, &c.rest} {
		if n := len(p.falls) - 1; n > 0 {
			p.falls[n-1] += float64(p.falls[n] * (1 - left))
			p.falls[n] *= left
		}
	}
	s.leftAt(c, h)
}

// sweep lets the bypass run on a sketch: from one compartment, back to another.
func sweep(b *core.Book, p *fluid.Plumbing, from, back byte, seconds float64) {
	p.Turn(fluid.LineUp{Supply: []byte{from}, Return: back})
	p.Stand([]fluid.Drawing{{From: from, Volume: b.Rig().PumpFlow.V.Over(seconds)}}, nil, core.Overflow)
}

// turnFacts are the entries of turning the valves: in one, or with the return held while the bypass runs.
func (s *situation) turnFacts(c *Changeover) []core.Fact {
	turned := &core.LinedUp{Supply: s.up.Supply, Return: s.up.Return}
	if c.SweepS() == 0 {
		return []core.Fact{turned}
	}
	return []core.Fact{
		&core.LinedUp{Supply: s.up.Supply, Return: c.Into},
		&core.Ran{Seconds: core.Known(c.SweepS()), Pump: core.PumpOn},
		turned,
	}
}
