package check

import (
	"fmt"
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// twice is the coverage factor of the bounds within which a tint is looked for: of a hundred changeovers some 95 lie
// inside (JCGM 100:2008, coverage factor 2).
const twice = 2

// spread is the standard uncertainty of when so much has gone through: hose, cell and flow as root of the sum of
// squares.
func (s *situation) spread(v measure.Volume, h *fluid.Hose) float64 {
	rest := s.unmeasured(v, h)
	flow := hydraulics.FlowDoubt * float64(v)
	return math.Sqrt(float64(rest*rest) + float64(flow*flow))
}

// spreadClean is that of when a share of what leaves is new: the smear adds a fifth of its own way to that share.
func (s *situation) spreadClean(v measure.Volume, share float64, h *fluid.Hose) float64 {
	rest, smear := s.spread(v, h), 0.0
	if sigma := s.model(h).Sigma; sigma > 0 && share > 0.5 && share < 1 {
		alone := hydraulics.Outlet{Hose: reach * sigma, Sigma: sigma}
		smear = hydraulics.SmearDoubt * float64((alone.At(share) - alone.Hose).Volume())
	}
	return math.Sqrt(float64(rest*rest) + float64(smear*smear))
}

// unmeasured is what of that comes from hose and cell.
func (s *situation) unmeasured(v measure.Volume, h *fluid.Hose) float64 {
	hose := s.hoseUncertain(h) * float64(min(liquidIn(h), v))
	cell := s.cellUncertain(h) * float64(max(v-liquidIn(h), 0))
	return math.Sqrt(float64(hose*hose) + float64(cell*cell))
}

// untimed is what of that comes from a hose or a cell that no timed changeover has shown yet.
func (s *situation) untimed(v measure.Volume, h *fluid.Hose) float64 {
	l := s.b.Learned(h.Name)
	hose, cell := 0.0, 0.0
	if l.FromRig {
		hose = s.hoseUncertain(h) * float64(min(liquidIn(h), v))
	}
	if l.CellFromRig {
		cell = s.cellUncertain(h) * float64(max(v-liquidIn(h), 0))
	}
	return math.Sqrt(float64(hose*hose) + float64(cell*cell))
}

// hoseUncertain is the share by which the volume of a hose is uncertain: by its bore, or as far as changeovers have shown.
func (s *situation) hoseUncertain(h *fluid.Hose) float64 {
	l := s.b.Learned(h.Name)
	return float64(l.HoseSD) / float64(max(l.Hose, 1))
}

// cellUncertain is the share by which the mixing cell is uncertain.
func (s *situation) cellUncertain(h *fluid.Hose) float64 {
	l := s.b.Learned(h.Name)
	return float64(l.CellSD) / float64(max(l.Cell, 1))
}

// tintFrom is how early the eye can see the tint of new liquid that arrives after so much.
func (s *situation) tintFrom(arrives measure.Volume, h *fluid.Hose) measure.Volume {
	return max(arrives-measure.Volume(twice*s.spread(arrives, h)), 0)
}

// tintBy is when the tint must have come: half of the liquid is new, give or take. How little of a dye the eye can see
// has no source; half is taken for enough (common practice, no source). The hose is taken to have held none of the
// new liquid when the valves were turned: later than that nothing explains it but the valves.
func (s *situation) tintBy(h *fluid.Hose) measure.Volume {
	half := liquidIn(h) + measure.Volume(float64(s.model(h).Cell.Volume())*math.Ln2)
	return half + measure.Volume(twice*s.spread(half, h))
}

// tintMissed: no tint by the upper bound says that the valves are not where the book says. It stands until the valves
// are turned and logged again; a tint that is seen, early or late, never changes a verdict.
func (s *situation) tintMissed() []Finding {
	missed := s.b.TintMissed()
	h := s.b.Plumbing().Hose(s.with.Hose)
	if len(missed) == 0 || h == nil || len(s.up.Supply) != 1 || !s.sameLineUp() {
		return nil
	}
	if s.b.TintSince(h.Name) == core.BetweenAlike {
		return []Finding{{
			Weight: Note, Part: PartRig, Ground: GroundPractice, Source: "tint of the compartments, by the rig",
			Says: "No tint came, and none was to come: no tint tells them apart.", Do: "Go by gallons.",
		}}
	}
	f := Finding{
		Part: PartRig, Unit: "gal", Ground: GroundPractice,
		Source: "hose by its bore (ISO 1307:2006), half of the mixing cell and 3 per cent of the flow, twice (JCGM 100:2008)",
	}
	by := s.tintBy(h)
	gone, known := s.goneWithout(missed)
	f.Limit = core.Known(by.Gallons())
	if !known {
		f.Weight = Ask
		f.Says = fmt.Sprintf("No tint came, and how much has gone is not known: the flow of %s is not in the book.", s.with.Name)
		f.Do = fmt.Sprintf("Log by gallons how far it went; by %s it has to come.", gal(by))
		return []Finding{f}
	}
	f.Figured = core.Known(gone.Gallons())
	if gone < by {
		f.Weight = Note
		f.Says = fmt.Sprintf("No tint by %s yet.", gal(gone))
		f.Do = fmt.Sprintf("Go on; by %s it has to come.", gal(by))
		return []Finding{f}
	}
	f.Weight = Stop
	f.Says = fmt.Sprintf("No tint by %s: the valves are not where the book says. It had to come by %s.", gal(gone), gal(by))
	f.Do = "Look at the valves, set them, and log the line-up again."
	if s.pushedSince() {
		f.Do += " What was pushed since came from somewhere else: put those entries right."
	}
	return []Finding{f}
}

// goneWithout is the farthest that it went without a tint. Seconds are counted to the next half: they were read from
// a clock that shows whole ones.
func (s *situation) goneWithout(missed []core.TintSeen) (far measure.Volume, known bool) {
	for _, m := range missed {
		switch {
		case m.Volume.Known:
			far, known = max(far, m.Volume.V), true
		case s.with.Flow.Known:
			far, known = max(far, s.with.Flow.V.Over(m.Seconds.V+0.5)), true
		}
	}
	return far, known
}

// pushedSince tells whether a push-back was logged since the valves were turned.
func (s *situation) pushedSince() bool {
	since := s.b.Since()
	for i := len(since) - 1; i >= 0; i-- {
		switch since[i].What.(type) {
		case *core.PushedBack:
			return true
		case *core.LinedUp, *core.DayOpened:
			return false
		}
	}
	return false
}
