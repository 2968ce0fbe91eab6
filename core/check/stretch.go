package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Stretch is a length of a hose that holds one liquid, or one that goes over from one to another.
type Stretch struct {
	Volume measure.Volume
	Air    measure.Volume
	Of     []StretchOf             // most of it first
	Since  core.Maybe[core.Moment] // when the first of it came into the hose
}

// StretchOf is what of a stretch was drawn from one compartment while one mix stood in it; Low and High are its share in the
// parcel that has least and in the one that has most of it.
type StretchOf struct {
	Letter    byte // 0: the rig's first water, or what was loaded straight into an applicator
	Mix       string
	Volume    measure.Volume
	Low, High float64
}

// Percent is the share in words: "97%", or "2 to 98%" where it goes over.
func (o StretchOf) Percent() string {
	low, high := fmt.Sprintf("%.0f", 100*o.Low), fmt.Sprintf("%.0f", 100*o.High)
	if low == high {
		return high + "%"
	}
	return low + " to " + high + "%"
}

// pureFrom is the share from which a stretch is shown as one liquid: below it both are named.
const pureFrom = 0.995

// StretchesOf is what a hose holds, the first to leave the nozzle first. Parcels that hold one liquid are one stretch, and so
// are those in which it goes over into the next; nothing for a hose that the rig has not.
func StretchesOf(b *core.Book, hose string) []Stretch {
	h := b.Plumbing().Hose(hose)
	if h == nil {
		return nil
	}
	var out []Stretch
	for _, p := range h.Charge {
		now := stretchOf(b, p.Liquid)
		now.Air = p.Air
		if n := len(out); n > 0 && out[n-1].runsInto(&now) {
			out[n-1].join(&now)
			continue
		}
		out = append(out, now)
	}
	at := measure.Volume(0) // from the pump end
	for i := len(out) - 1; i >= 0; i-- {
		out[i].sort()
		at += out[i].Volume + out[i].Air
		if when, known := b.HoseSince(hose, at-1); known && out[i].Volume > 0 { // just inside its far end
			out[i].Since = core.Known(when)
		}
	}
	return out
}

// StretchIn is a liquid that stands anywhere in the rig, as one stretch.
func StretchIn(b *core.Book, l fluid.Liquid) Stretch {
	s := stretchOf(b, l)
	s.sort()
	return s
}

func stretchOf(b *core.Book, l fluid.Liquid) Stretch {
	s := Stretch{Volume: l.Volume}
	for _, f := range l.From {
		o := b.Origin(f.Key)
		at := s.of(o.Letter, o.Mix)
		if at == nil {
			s.Of = append(s.Of, StretchOf{Letter: o.Letter, Mix: o.Mix})
			at = &s.Of[len(s.Of)-1]
		}
		at.Volume += measure.Volume(f.N)
	}
	for i := range s.Of {
		share := float64(s.Of[i].Volume) / float64(l.Volume)
		s.Of[i].Low, s.Of[i].High = share, share
	}
	return s
}

func (s *Stretch) of(letter byte, mix string) *StretchOf {
	for i := range s.Of {
		if s.Of[i].Letter == letter && s.Of[i].Mix == mix {
			return &s.Of[i]
		}
	}
	return nil
}

// pure is the only liquid of a stretch, or all but a trace of it; nil where it is mixed.
func (s *Stretch) pure() *StretchOf {
	for i := range s.Of {
		if s.Of[i].Low >= pureFrom {
			return &s.Of[i]
		}
	}
	return nil
}

// Mixed tells whether a stretch is more than one liquid.
func (s *Stretch) Mixed() bool { return s.Volume > 0 && s.pure() == nil }

// runsInto tells whether the next parcel is part of the same stretch.
func (s *Stretch) runsInto(next *Stretch) bool {
	switch {
	case s.Air > 0 || next.Air > 0:
		return s.Volume == 0 && next.Volume == 0
	case s.Mixed() || next.Mixed():
		return s.Mixed() && next.Mixed()
	}
	return next.of(s.pure().Letter, s.pure().Mix) == next.pure()
}

func (s *Stretch) join(next *Stretch) {
	for i := range s.Of {
		if next.of(s.Of[i].Letter, s.Of[i].Mix) == nil {
			s.Of[i].Low = 0
		}
	}
	for _, f := range next.Of {
		at := s.of(f.Letter, f.Mix)
		if at == nil {
			f.Low = 0
			s.Of = append(s.Of, f)
			continue
		}
		at.Volume += f.Volume
		at.Low, at.High = min(at.Low, f.Low), max(at.High, f.High)
	}
	s.Volume += next.Volume
	s.Air += next.Air
}

// sort puts most of it first; of two that are as much the one that was there first stays first.
func (s *Stretch) sort() {
	for i := 1; i < len(s.Of); i++ {
		for j := i; j > 0 && s.Of[j].Volume > s.Of[j-1].Volume; j-- {
			s.Of[j], s.Of[j-1] = s.Of[j-1], s.Of[j]
		}
	}
}
