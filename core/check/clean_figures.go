package check

import (
	"math"
	"strconv"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// advise is what is to be pushed: from the upper side of hose and cell while they were never measured. Flow and smear
// do not count in that: the one is measured with a bucket, the other has its margin.
func (s *situation) advise(out *Changeover, h *fluid.Hose) {
	out.Band = measure.Volume(s.spreadClean(out.Clean, out.Share, h))
	known := s.b.Learned(h.Name)
	out.Learned = !known.FromRig && !known.CellFromRig
	out.Advised = s.advised(out.Clean, h)
	out.PushBack = upToHundredth(out.Advised)
}

// advised is clean from the upper side of what was never timed.
func (s *situation) advised(clean measure.Volume, h *fluid.Hose) measure.Volume {
	return clean + measure.Volume(math.Ceil(s.untimed(clean, h)))
}

// atNozzle fills in what rests on the smear and on the cell.
func (s *situation) atNozzle(out *Changeover, c *fluid.Compartment, h *fluid.Hose) {
	old := func(l fluid.Liquid) float64 { return 1 - s.newShare(l, c) }
	out.old, out.rest = s.profileOf(h, old, true), s.profileOf(h, old, false)
	m := out.old.run
	out.Cell, out.Bypass = m.Cell.Volume(), s.bypass() > 0
	s.leftAt(out, h)
	if set := s.b.RigHose(h.Name); set != nil && set.Bore.Known {
		out.MinFlow = core.Known(hydraulics.MinFlow(set.Bore.V, hydraulics.Temperature))
	}
	if !s.smears(h) {
		out.Margins = "without the smear in the hose: its bore, its length or the flow is not known"
		return
	}
	out.Re, out.Laminar = s.run(h).Reynolds(), m.Laminar
	out.FlowLow = out.Laminar
	if out.Laminar {
		out.Margins = "as a hose without mixing across it, because the flow is low"
		return
	}
	out.Smear, out.SmearFactor = m.Sigma.Volume(), s.margin(h)
	out.Margins = "with " + strconv.FormatFloat(out.SmearFactor, 'g', -1, 64) + " on the smear"
}

// leftAt is what is left of the old liquid at Clean, and what has gone of the new.
func (s *situation) leftAt(out *Changeover, h *fluid.Hose) {
	out.Left = out.LeftAt(out.Clean)
	if all := h.Size + out.Cell; all > 0 {
		out.LeftShare = float64(out.Left) / float64(all)
	}
	out.NewLost = max(out.Clean-(out.LeftAt(0)-out.Left), 0)
}
