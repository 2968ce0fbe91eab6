package check

import (
	"fmt"
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// tintOf fills in what the eye will see of a changeover, and when.
func (s *situation) tintOf(out *Changeover, c *fluid.Compartment, h *fluid.Hose) {
	out.Tint = s.tintWay(c, h)
	if out.Tint == core.BetweenAlike {
		return
	}
	out.TintFrom, out.TintBy = s.tintFrom(out.Arrives, h), s.tintBy(h)
	if out.Tint == core.TowardsClear {
		out.TintGone = max(s.front(c, h, 1-lastColour), s.lastInCell(c, h))
	}
}

// tintWay is which way the colour at the nozzle changes: from what was in the line when the valves were turned, or, where
// they are still to be turned, from what is in it now.
func (s *situation) tintWay(c *fluid.Compartment, h *fluid.Hose) string {
	if s.sameLineUp() {
		return s.b.TintSince(h.Name)
	}
	return s.b.TintTo(h.Name, c.Letter)
}

// lastColour is the share of a colour that counts as the last of it; common practice, no source.
const lastColour = 0.1

// lastInCell is when the last of the colour has left the cell; 0 where less than that is in it.
func (s *situation) lastInCell(c *fluid.Compartment, h *fluid.Hose) measure.Volume {
	cell := s.b.Plumbing().Cell
	old := 1 - s.newShare(cell.Liquid, c)
	if cell.Size == 0 || old <= lastColour {
		return 0
	}
	return liquidIn(h) + measure.Volume(float64(s.model(h).Cell.Volume())*math.Log(old/lastColour))
}

func (s *situation) tintSeconds(out *Changeover) {
	for _, m := range []struct {
		v  measure.Volume
		to *core.Maybe[float64]
	}{{out.TintFrom, &out.TintFromS}, {out.TintBy, &out.TintByS}, {out.TintGone, &out.TintGoneS}} {
		if m.v > 0 || m.to != &out.TintGoneS {
			*m.to = core.Known(s.with.Flow.V.Seconds(m.v + out.Air))
		}
	}
	if out.Tint == core.BetweenAlike {
		out.TintFromS, out.TintByS = core.Maybe[float64]{}, core.Maybe[float64]{}
	}
}

// tintStep is what to look for while it is pushed.
func (s *situation) tintStep(c *Changeover) Step {
	step := Step{Kind: StepTint, Volume: c.Arrives, Seconds: c.ArrivesS}
	switch c.Tint {
	case core.BetweenAlike:
		step.Text = fmt.Sprintf("No tint tells them apart: go by gallons. The new liquid comes at %s; nothing is to be seen of it.", s.gone(c.Arrives))
	case core.TowardsClear:
		step.Volume, step.Seconds = c.TintGone, c.TintGoneS
		step.Text = fmt.Sprintf("The colour begins to fade at %s, and the last of it goes at about %s; it is late. No change by %s: let go, and look at the valves.",
			s.gone(c.Arrives), s.gone(c.TintGone), s.gone(c.TintBy))
	default:
		step.Text = fmt.Sprintf("The tint comes at %s, not before %s and not after %s. It is not the end: go on. None by then: let go, and look at the valves.",
			s.gone(c.Arrives), s.gone(c.TintFrom), s.gone(c.TintBy))
	}
	return step
}
