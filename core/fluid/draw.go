package fluid

import "example.com/tintline/core/measure"

// cellSteps is how finely a washing-out of the cell is cut: steps of one sixteenth of the cell, or of
// 1/256 of the hose where that is more, so that a hose never holds more than some 300 parcels.
const (
	cellSteps = 16
	hoseSteps = 256
	// washed is how many cell volumes are cut finely; e^-16 of the old liquid is left after them.
	washed = 16
	// steady is the relative difference under which cell and supply count as the same liquid.
	steady = 1e-7
)

// Draw runs the pump until v of liquid has left the nozzle of a hose and returns it parcel by parcel, in
// the order in which it left. Air in a drained hose leaves first and is not counted. What the compartments
// cannot give is taken from the unexplained, at the strength of the compartment.
//
// Meanwhile the bypass goes through the cell and the return line to the compartment that the return leads to, and
// sweeps the cell too. A bypass of 0 was not reckoned: then what stood in the return line is swept out once.
func (p *Plumbing) Draw(hose string, v, bypass measure.Volume) []Liquid {
	h := p.Hose(hose)
	if h == nil || v <= 0 {
		return nil
	}
	if p.goesRound(bypass) {
		defer p.Return.sum()
		return p.drawRound(h, v+h.AirBefore(v), bypass)
	}
	p.sweepReturn()
	return p.passCell(h, p.Cell.fill(p.suck(p.toSuck(h, v))))
}

// toSuck is what must be drawn until v of liquid has left the nozzle: air in the hose and an empty cell take
// their volume first.
func (p *Plumbing) toSuck(h *Hose, v measure.Volume) measure.Volume {
	return v + h.AirBefore(v) + p.Cell.void()
}

// Needs is what the open compartments must give until v of liquid has left the nozzle of a hose, the
// filling of a drained hose, cell or return line included, and the bypass where it does not come back to them.
func (p *Plumbing) Needs(hose string, v, bypass measure.Volume) measure.Volume {
	h := p.Hose(hose)
	if h == nil || v <= 0 {
		return 0
	}
	if p.goesRound(bypass) {
		if r := (round{from: p.open(), to: p.Compartment(p.LineUp.Return)}); r.feeds() {
			// It comes back, but for what fills the return line, or stays below the suction.
			bypass = min(bypass, p.Return.void()+max(r.to.Heel-r.to.Liquid.Volume, 0))
		}
		return p.toSuck(h, v) + bypass
	}
	q := p.Sketch()
	before := q.SupplyDrawable()
	q.sweepReturn()
	return max(before-q.SupplyDrawable(), 0) + p.toSuck(h, v)
}

// passCell pushes in through the cell and the hose.
func (p *Plumbing) passCell(h *Hose, in Liquid) []Liquid {
	if p.Cell.Size == 0 {
		return h.push(in)
	}
	var out []Liquid
	if !alike(p.Cell.Liquid, in, steady) {
		step := max(p.Cell.Size/cellSteps, h.Size/hoseSteps, 1)
		for n := measure.Volume(0); in.Volume > step+drop && n < washed*p.Cell.Size; n += step {
			var part Liquid
			part, in = in.Split(step)
			out = append(out, h.push(p.Cell.exchange(part))...)
		}
	}
	return append(out, h.push(p.Cell.exchange(in))...)
}

// suck draws v from the compartments open to the pump, the same from each as long as each can give.
func (p *Plumbing) suck(v measure.Volume) Liquid { return p.suckFrom(p.open(), v) }

func (p *Plumbing) suckFrom(open []*Compartment, v measure.Volume) Liquid {
	if len(open) == 1 && open[0].Drawable() >= v {
		return p.drawn(open[0], v)
	}
	var in Liquid
	all := open
	for left := v; left > 0 && len(open) > 0; {
		var still []*Compartment
		each := left / measure.Volume(len(open))
		for i, c := range open {
			want := each
			if i == 0 {
				want = left - each*measure.Volume(len(open)-1)
			}
			got := min(want, c.Drawable())
			in = in.Plus(p.drawn(c, got))
			left -= got
			if got == want {
				still = append(still, c)
			}
		}
		if len(still) == len(open) {
			break
		}
		open = still
	}
	if short := v - in.Volume; short > 0 {
		if len(all) > 0 {
			p.correct(&all[0].Tank, short)
			in = in.Plus(p.drawn(all[0], short))
		} else {
			in = in.Plus(p.fromUnexplained(Water(short, NoTank)))
		}
	}
	return in
}

func (p *Plumbing) open() []*Compartment {
	var out []*Compartment
	for _, l := range p.LineUp.Supply {
		if c := p.Compartment(l); c != nil {
			out = append(out, c)
		}
	}
	return out
}

func (p *Plumbing) drawn(c *Compartment, v measure.Volume) Liquid {
	l := c.take(v)
	c.Flows.Drawn += l.Volume
	c.Moved += l.Volume
	return l
}

func (p *Plumbing) fromUnexplained(l Liquid) Liquid {
	p.Outside.Take(Unexplained, l)
	return l
}

// sweepReturn lets the bypass fill the return line anew, once after each turning of the valves: what stood
// in it goes into the compartment that the return leads to, and the supply takes its place.
func (p *Plumbing) sweepReturn() {
	open, to := p.open(), p.Compartment(p.LineUp.Return)
	if p.Return.Swept || p.Return.Size == 0 || to == nil || len(open) == 0 {
		return
	}
	p.Return.Swept = true
	from := open[0]
	v := min(p.Return.Size, from.Drawable())
	if from != to {
		v = min(v, to.Room())
	}
	fresh := from.take(v)
	from.Flows.Other -= fresh.Volume
	old, kept := p.Return.Liquid.Split(fresh.Volume - p.Return.void())
	p.Return.hold(kept.Plus(fresh))
	to.put(old)
	to.Flows.Other += old.Volume
}
