package fluid

import "example.com/tintline/core/measure"

// Remeasure says that a hose holds something else than was thought. What is in it is stretched in proportion, each
// parcel at its own strength; the difference is taken from the unexplained, or given to it.
func (p *Plumbing) Remeasure(hose string, size measure.Volume) {
	h := p.Hose(hose)
	if h == nil || size <= 0 || size == h.Size {
		return
	}
	weights := make([]int64, 0, 2*len(h.Charge))
	for _, c := range h.Charge {
		weights = append(weights, int64(c.Volume), int64(c.Air))
	}
	now := measure.Apportion(weights, int64(size))
	charge := make([]Parcel, 0, len(h.Charge))
	for i, c := range h.Charge {
		c.Liquid, c.Air = p.stretched(c.Liquid, measure.Volume(now[2*i])), measure.Volume(now[2*i+1])
		if c.length() > 0 {
			charge = append(charge, c)
		}
	}
	h.Size, h.Charge = size, charge
}

// RemeasureCell says the same of the mixing cell.
func (p *Plumbing) RemeasureCell(size measure.Volume) {
	if c := &p.Cell; size >= 0 && size != c.Size {
		if c.Size > 0 {
			c.Liquid = p.stretched(c.Liquid, measure.Volume(measure.MulDivRound(int64(c.Liquid.Volume), int64(size), int64(c.Size))))
		}
		c.Size = size
	}
}

// stretched makes v of a liquid, at its strength.
func (p *Plumbing) stretched(l Liquid, v measure.Volume) Liquid {
	switch {
	case l.Volume == 0 || v == l.Volume:
		return l
	case v > l.Volume:
		return l.Plus(p.fromUnexplained(l.As(v - l.Volume)))
	}
	keep, over := l.Split(v)
	p.Outside.Give(Unexplained, over)
	return keep
}
