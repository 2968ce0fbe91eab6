package core

import (
	"fmt"

	"example.com/tintline/core/measure"
)

func (s *state) admitTint(f *TintSeen) error {
	seen := f.Volume.Known || f.Seconds.Known
	switch {
	case f.Missed != "" && f.Missed != yes:
		return refuse("Write yes, or leave it out.", "The tint says %q under missed.", f.Missed)
	case f.Missed == yes && !seen:
		return refuse("Give the gallons or the seconds.", "How far it went without a tint is not said.")
	case f.Missed == yes && (f.Half.Known || f.HalfSeconds.Known || f.Full.Known || f.FullSeconds.Known):
		return refuse("Leave missed out, or half and full.", "No tint came, and yet half or all of the colour is timed.")
	case !seen && !f.Half.Known && !f.HalfSeconds.Known && !f.Full.Known && !f.FullSeconds.Known:
		return refuse("Give the gallons or the seconds.", "When the tint came is not said.")
	}
	if f.Hose != "" && s.plumbing.Hose(f.Hose) == nil {
		return refuse(s.hosesHint(), "There is no hose %q.", f.Hose)
	}
	if err := admitTimes(f); err != nil {
		return err
	}
	return admitDoubts(f)
}

// admitTimes admits the moments of a changeover, each by itself and in their order.
func admitTimes(f *TintSeen) error {
	moments := []struct {
		words string
		v     Maybe[measure.Volume]
		s     Maybe[float64]
	}{{"the tint", f.Volume, f.Seconds}, {"half of the colour", f.Half, f.HalfSeconds}, {"the full colour", f.Full, f.FullSeconds}}
	var volume, seconds string
	var least measure.Volume
	var leastS float64
	for _, m := range moments {
		if m.v.Known {
			if err := positive("The volume until "+m.words, m.v.V); err != nil {
				return err
			}
			if m.v.V < least {
				return refuse("Correct one of the two; half comes after the first tint, and full after half.", "It is %s gal until %s and %s gal until %s.", least.Text(), volume, m.v.V.Text(), m.words)
			}
			volume, least = m.words, m.v.V
		}
		if m.s.Known {
			if !(m.s.V > 0) || m.s.V > 7200 {
				return refuse("Give more than 0 and up to 7,200 s.", "The time until %s is %g s.", m.words, m.s.V)
			}
			if m.s.V < leastS {
				return refuse("Correct one of the two; half comes after the first tint, and full after half.", "It is %g s until %s and %g s until %s.", leastS, seconds, m.s.V, m.words)
			}
			seconds, leastS = m.words, m.s.V
		}
	}
	return nil
}

// admitDoubts admits what an entry rests on; it is filled in from the book, and may be given.
func admitDoubts(f *TintSeen) error {
	switch {
	case f.Flow.Known && (!(f.Flow.V > 0) || f.Flow.V > measure.GPM(LargestFlowGPM)):
		return refuse("Give more than 0 and up to 500 gpm, or leave it out.", "The flow at the nozzle is %s.", f.Flow.V.Text())
	case f.GunShare.Known && (!(f.GunShare.V > 0) || f.GunShare.V > 1):
		return refuse("Give more than 0 and up to 1, or leave it out.", "The share of the pump's output that leaves the nozzle is %g.", f.GunShare.V)
	}
	switch f.Direction {
	case "", TowardsTint, TowardsClear, BetweenAlike:
	default:
		return refuse("Write tint, clear or alike, or leave it out.", "The colour changes towards %q, which is none of the ways.", f.Direction)
	}
	for _, v := range []struct {
		what string
		v    Maybe[measure.Volume]
	}{{"hose", f.HoseSD}, {"cell", f.CellSD}, {"first tint", f.FirstSD}} {
		if v.v.V < 0 || v.v.V > LargestVolume {
			return refuse("Give 0 to 10,000 gal, or leave it out.", "The give or take of the %s is %s gal.", v.what, v.v.V.Text())
		}
	}
	for _, n := range []struct {
		what string
		n    Maybe[float64]
		most float64
	}{{"clock, in seconds,", f.TimeSD, 7200}, {"flow, as a share,", f.FlowSD, 1}, {"odd ones, in standard deviations,", f.OddSDs, 1000}} {
		if !(n.n.V >= 0) || n.n.V > n.most {
			return refuse(fmt.Sprintf("Give 0 to %g, or leave it out.", n.most), "The give or take of the %s is %g.", n.what, n.n.V)
		}
	}
	return nil
}
