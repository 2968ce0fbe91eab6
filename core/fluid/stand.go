package fluid

import "example.com/tintline/core/measure"

// Drawing is what the pump draws from a compartment while the gun is shut; Levelling is what runs by gravity from one
// compartment to another through the suction plumbing.
type (
	Drawing struct {
		From   byte
		Volume measure.Volume
	}
	Levelling struct {
		From, To byte
		Volume   measure.Volume
	}
)

// standSlices is how finely a time in which several things move at once is cut.
const standSlices = 200

// Stand moves what moves while the valves stand so and the gun is shut: what the pump draws goes through cell and return
// line to the compartment of the return, what levels out goes from compartment to compartment. What finds no room goes
// to spill. Where several things move they go on side by side, slice by slice.
func (p *Plumbing) Stand(drawn []Drawing, levelled []Levelling, spill Place) {
	r := &round{p: p, to: p.Compartment(p.LineUp.Return), spill: spill}
	var weights []measure.Volume
	for _, d := range drawn {
		if c := p.Compartment(d.From); c != nil && d.Volume > 0 && r.to != nil {
			r.from, weights = append(r.from, c), append(weights, d.Volume)
		}
	}
	slices := int64(1)
	if len(weights)+len(levelled) > 1 {
		slices, r.finest = standSlices, roundSlices/standSlices
	}
	part := func(v measure.Volume, k int64) measure.Volume {
		return measure.Volume(measure.MulDiv(int64(v), k+1, slices) - measure.MulDiv(int64(v), k, slices))
	}
	for k := range slices {
		for _, l := range levelled {
			p.level(l.From, l.To, part(l.Volume, k), spill)
		}
		now := make([]measure.Volume, len(weights))
		r.bypass = 0
		for i, v := range weights {
			now[i] = part(v, k)
			r.bypass += now[i]
		}
		if r.bypass > 0 {
			r.draw = r.fromEach(now)
			r.run()
		}
	}
	p.Return.sum()
}

// level lets v run by gravity from one compartment to another, as far as the suction can draw it.
func (p *Plumbing) level(from, to byte, v measure.Volume, spill Place) {
	a, b := p.Compartment(from), p.Compartment(to)
	if a == nil || b == nil || a == b {
		return
	}
	l := a.take(min(v, a.Drawable()))
	a.Flows.Other -= l.Volume
	a.Moved += l.Volume
	in, over := l.Split(b.Room())
	b.put(in)
	b.Flows.Other += in.Volume
	b.Moved += in.Volume
	p.Outside.Give(spill, over)
}

// fromEach draws from each compartment what it is to give in all, step by step, and counts it as another flow than what
// is sprayed. A supply that the return leads to gives no more at once than it has; what another cannot give is taken from
// the unexplained.
func (r *round) fromEach(volumes []measure.Volume) func(gun, bypass measure.Volume) (Liquid, measure.Volume) {
	total, gone := r.bypass, measure.Volume(0)
	before := make([]measure.Volume, len(volumes))
	return func(_, bypass measure.Volume) (Liquid, measure.Volume) {
		var in Liquid
		gone += bypass
		for i, c := range r.from {
			upTo := measure.Volume(measure.MulDiv(int64(volumes[i]), int64(gone), int64(total)))
			v := upTo - before[i]
			before[i] = upTo
			if c == r.to {
				v = min(v, c.Drawable())
			} else {
				if short := v - c.Drawable(); short > drop {
					r.p.correct(&c.Tank, short)
				} else if short > 0 {
					v -= short
				}
			}
			l := c.take(v)
			c.Flows.Other -= l.Volume
			if c != r.to {
				c.Moved += l.Volume
				r.to.Moved += l.Volume
			}
			in = in.Plus(l)
		}
		in = r.p.Cell.fill(in)
		return in, in.Volume
	}
}
