package check

import (
	"fmt"
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// sweptCells is how many cells the bypass passes before the return is turned: then a twentieth of the old liquid is left in
// the cell (e^-3).
const sweptCells = 3

// planTail lists the ways that the mixed tail could go, prices each on a sketch, and takes the cheapest. Where there is
// nothing to choose the list stays empty.
func (s *situation) planTail(out *Changeover, h *fluid.Hose) {
	half := upToHundredth(out.Half)
	if out.Into == 0 || out.Into == out.To || half == 0 || half >= out.PushBack {
		return
	}
	ways := []Way{
		{Name: WayNew, Legs: out.Legs},
		{Name: WayOld, Legs: []Leg{{Into: out.Into, Volume: out.PushBack}}},
		s.pailWay(out, h, half),
	}
	if w, ok := s.sweptWay(out, h); ok {
		ways = append(ways, w)
	}
	p := s.pricing(out.Into, out.To)
	plug := s.sketch()
	s.push1(plug, out, ways[0].Legs[0], false)
	best := 0
	for i := range ways {
		w := &ways[i]
		if w.Cannot = s.cannot(w, out.Into, out.To); w.Cannot == "" {
			p.price(w, s.roughly(out, w, plug, half))
		}
		if ways[best].Cannot != "" || s.cheaper(w, &ways[best]) {
			best = i
		}
		if i == 0 && w.Cannot == "" && s.counts(w) == 0 && !s.allWays && s.in.Way == "" {
			ways = ways[:1] // no other can be better, and nobody looks at them
			break
		}
	}
	for i := range ways {
		if ways[i].Name == s.in.Way && ways[i].Cannot == "" {
			best = i
		}
	}
	if ways[best].Cannot != "" {
		return
	}
	ways[best].Chosen = true
	out.Ways, out.Legs = ways, ways[best].Legs
	if ways[best].RunS > 0 {
		s.takeSwept(out, h)
	}
}

// pailWay is to push into a pail what comes while the cell is washed out three times; what comes behind is new but for a
// twentieth of the cell, and goes into the new compartment.
func (s *situation) pailWay(out *Changeover, h *fluid.Hose, half measure.Volume) Way {
	end := min(max(upToHundredth(liquidIn(h)+sweptCells*out.Cell), half), out.PushBack)
	w := Way{Name: WayPail, Legs: []Leg{{Into: out.Into, Volume: half}, {To: Pail, Volume: end - half}}, Wasted: end - half}
	if end < out.PushBack {
		w.Legs = append(w.Legs, Leg{Into: out.To, Volume: out.PushBack - end})
	}
	return w
}

// cheaper tells whether a way is better than another: the one that crosses no limit from which it is asked; then the one
// that wastes nothing, because what is in a pail has to go somewhere too; then the one that lays least of what is not meant,
// against its limit. What is not even noted counts as nothing.
func (s *situation) cheaper(a, b *Way) bool {
	x, y := max(a.Weight, Note), max(b.Weight, Note)
	switch {
	case a.Cannot != "":
		return false
	case x != y:
		return x < y
	case (a.Wasted > 0) != (b.Wasted > 0):
		return b.Wasted > 0
	}
	return s.counts(a)*slack < s.counts(b)
}

func (s *situation) counts(w *Way) float64 {
	if w.Weight < Ask && w.Load < s.b.Setting(core.TraceNoteShare) {
		return 0
	}
	return w.Load
}

// cannot says why the old compartment cannot take what a way puts into it, or the new one not give it.
func (s *situation) cannot(w *Way, old, to byte) string {
	var gets, gives measure.Volume
	for _, l := range w.Legs {
		if l.Into == old {
			gets += l.Volume
		}
		if l.Into != to {
			gives += l.Volume
		}
	}
	if w.RunS > 0 {
		swept := s.b.Rig().PumpFlow.V.Over(w.RunS)
		gets, gives = gets+swept, gives+swept
	}
	if there := s.b.Plumbing().Compartment(to).Drawable(); gives > there {
		return fmt.Sprintf("%c can give %s; it would take %s.", to, gal(there), gal(gives))
	}
	if room := s.b.Plumbing().Compartment(old).Room(); gets > room {
		return fmt.Sprintf("%c has room for %s; it would get %s.", old, gal(room), gal(gets))
	}
	return ""
}

// tried goes a way on a sketch.
func (s *situation) tried(c *Changeover, legs []Leg, runS float64) *fluid.Plumbing {
	p := s.sketch()
	if runS > 0 {
		sweep(s.b, p, c.To, c.Into, runS)
		p.Turn(s.up)
	}
	for _, l := range legs {
		s.push1(p, c, l, true)
	}
	return p
}

// roughly goes a way near enough to price it. The plug is the same in all but the swept one.
func (s *situation) roughly(c *Changeover, w *Way, plug *fluid.Plumbing, half measure.Volume) *fluid.Plumbing {
	if w.RunS > 0 {
		return s.tried(c, w.Legs, w.RunS)
	}
	p := plug.Sketch()
	first := w.Legs[0]
	if first.Volume -= half; first.Volume > 0 {
		s.push1(p, c, first, false)
	}
	for _, l := range w.Legs[1:] {
		s.push1(p, c, l, false)
	}
	return p
}

// sketch is the plumbing with the valves as meant, in which the compartments, too, keep where their liquid came from.
func (s *situation) sketch() *fluid.Plumbing {
	p := s.b.Plumbing().Sketch()
	for i := range p.Compartments {
		t := &p.Compartments[i]
		if t.Liquid.Volume > 0 {
			t.Liquid.From = fluid.Parts{{Key: t.Origin, N: int64(t.Liquid.Volume)}}
		}
		t.Origin = fluid.KeepOrigins
	}
	if !s.sameLineUp() {
		p.Turn(s.up)
	}
	return p
}

// plenty is how many times what is pushed a compartment has to hold so that it does not matter, for a price, that what goes
// back into it is drawn again.
const plenty = 4

// push1 pushes one leg. What goes back into the compartment that feeds the pump is booked slice by slice only where exact is
// asked for, or where little is in it.
func (s *situation) push1(p *fluid.Plumbing, c *Changeover, l Leg, exact bool) {
	into := p.Compartment(l.Into)
	if exact || into == nil || l.Into != c.To || into.Drawable() < plenty*l.Volume {
		pushLeg(s.b, p, c.Hose, l)
		return
	}
	for _, part := range p.Draw(c.Hose, l.Volume, s.b.BypassAtHose(p, c.Hose, l.Volume).Or(0)) {
		into.Liquid = into.Liquid.Plus(part)
	}
}

// returnOrder is what the bypass brings into the new compartment, and what holding the return costs. It needs the pump's
// output, and a return that still stands on the old compartment.
func (s *situation) returnOrder(old byte, h *fluid.Hose) *ReturnOrder {
	pump, now := s.b.Rig().PumpFlow, s.b.Plumbing().LineUp
	if !pump.Known || !(pump.V > 0) || s.bypass() <= 0 || now.Return != old || s.sameLineUp() {
		return nil
	}
	cell, line := float64(s.b.Plumbing().Cell.Size), float64(s.b.Plumbing().Return.Size)
	run := s.run(h)
	round := float64(cell - float64(hydraulics.EffectiveCell(run.Cell, run.Gun, run.Bypass).Volume()))
	o := &ReturnOrder{Together: measure.Volume(line + round), HeldS: pump.V.Seconds(measure.Volume(sweptCells*cell + line))}
	// What was in the line comes first, and as much of what the cell gives stays in it: the new compartment gets that back.
	o.Held = measure.Volume(sweptCells*cell + float64(cell*math.Expm1(-sweptCells)))
	return o
}
