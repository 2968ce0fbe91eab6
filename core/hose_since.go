package core

import (
	"slices"

	"example.com/tintline/core/measure"
)

// inflow is a volume that came into a hose at its pump end, and when. Like moved it is shown, and no account rests on it.
type inflow struct {
	volume measure.Volume
	at     Moment
}

// cameIn is a list of its own with one inflow more, and without those that have left a hose of that size again. What came in at
// one time is one.
func cameIn(came []inflow, now inflow, size measure.Volume) []inflow {
	var out []inflow
	room := size - now.volume
	for i := len(came) - 1; i >= 0 && room > 0; i-- {
		out = append(out, came[i])
		room -= came[i].volume
	}
	slices.Reverse(out)
	if n := len(out); n > 0 && out[n-1].at == now.at {
		out[n-1].volume += now.volume
		return out
	}
	return append(out, now)
}

// HoseSince is when what stands in a hose (empty: the first) at a distance from its pump end, as a volume, came into it;
// false where the book does not know, as of the water that a hose begins with.
func (s *state) HoseSince(hose string, fromPump measure.Volume) (Moment, bool) {
	h := s.plumbing.Hose(hose)
	if h == nil || fromPump < 0 {
		return Moment{}, false
	}
	for _, m := range s.moved.hoses {
		if m.name != h.Name {
			continue
		}
		for i := len(m.came) - 1; i >= 0; i-- {
			if fromPump < m.came[i].volume {
				return m.came[i].at, true
			}
			fromPump -= m.came[i].volume
		}
	}
	return Moment{}, false
}
