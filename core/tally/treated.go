package tally

import (
	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// Treated is the area that each laying of a day adds to what was treated: of liquid all of its area, of dry product
// what went beyond the liquid that the same zone got in the same visit. So a zone that got both is counted once,
// whichever came first.
func Treated(d *core.Day) []measure.Area {
	out := make([]measure.Area, len(d.Laid))
	type place struct {
		lawn, zone string
		visit      int
	}
	dry := false
	for i := range d.Laid {
		if l := &d.Laid[i]; l.Dry {
			dry = true
		} else {
			out[i] = l.Area
		}
	}
	if !dry {
		return out
	}
	visits := visitsOf(d)
	at := func(l *core.Laid) place { return place{l.Lawn, l.Zone, visits[l.Seq]} }
	beyond := map[place]measure.Area{} // what liquid covered and dry product has not yet been laid on
	for i := range d.Laid {
		if l := &d.Laid[i]; !l.Dry {
			beyond[at(l)] += l.Area
		}
	}
	for i := range d.Laid {
		if l := &d.Laid[i]; l.Dry {
			k := at(l)
			over := min(beyond[k], l.Area)
			beyond[k] -= over
			out[i] = l.Area - over
		}
	}
	return out
}

// visitsOf says in which visit of the day's list, counted from 1, an entry laid something; 0: in none.
func visitsOf(d *core.Day) map[uint64]int {
	out := map[uint64]int{}
	for i := range d.Visits {
		v := &d.Visits[i]
		if v.Begun.Zero() {
			continue
		}
		for _, l := range d.LaidAt(v) {
			if out[l.Seq] == 0 {
				out[l.Seq] = i + 1
			}
		}
	}
	return out
}
