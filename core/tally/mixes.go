package tally

import (
	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// The rows of liquid that is no mix of the book.
const (
	Water = "water"
	NoMix = "no mix named"
)

// Mix is what of one mix went down, and the area that is its share by volume.
type Mix struct {
	Mix    string
	Volume measure.Volume
	Area   measure.Area
}

// mixOf names the mix of an origin: only the rig's first water has neither compartment nor name.
func mixOf(o core.Origin) string {
	switch {
	case o.Mix != "":
		return o.Mix
	case o.Letter == 0:
		return Water
	}
	return NoMix
}

// takeMixes shares a zone's area by the mixes' shares of the volume that it got, in whole units.
func (t *Tally) takeMixes(b *core.Book, l *core.Laid) {
	parts := origins(l)
	weights := make([]int64, len(parts))
	for i, p := range parts {
		weights[i] = p.N
	}
	for i, area := range measure.Apportion(weights, int64(l.Area)) {
		m := t.mix(mixOf(b.Origin(parts[i].Key)))
		m.Volume += measure.Volume(parts[i].N)
		m.Area += measure.Area(area)
	}
}

func (t *Tally) mix(name string) *Mix {
	for i := range t.Mixes {
		if t.Mixes[i].Mix == name {
			return &t.Mixes[i]
		}
	}
	t.Mixes = append(t.Mixes, Mix{Mix: name})
	return &t.Mixes[len(t.Mixes)-1]
}
