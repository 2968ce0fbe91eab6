package fluid

import (
	"slices"

	"example.com/tintline/core/measure"
)

// ReturnLine carries the bypass back to a compartment, as a plug: what went in first leaves first. Swept tells whether
// a bypass that was not reckoned has filled it anew since the valves were last turned.
type ReturnLine struct {
	Size   measure.Volume
	Liquid Liquid // all that is in it
	// Charge is the same in the order in which it leaves; nil where it is of one composition.
	Charge []Liquid
	Swept  bool
}

// void is how much air the return line holds; the bypass fills it before anything leaves.
func (r *ReturnLine) void() measure.Volume { return max(r.Size-r.Liquid.Volume, 0) }

// returnParcels bounds how many parcels a return line holds: what is shorter than that part of it is mixed with the
// next.
const returnParcels = 64

// push moves the plug on by l and returns what left at the far end. Of what is in the line it keeps the volume alone;
// sum tells the rest when all runs of a move are over.
func (r *ReturnLine) push(l Liquid) Liquid {
	if l.Volume <= 0 {
		return Liquid{}
	}
	out := l.Volume - r.void()
	if r.Charge == nil && r.Liquid.Volume > 0 {
		r.Charge = []Liquid{r.Liquid}
	}
	if n := len(r.Charge); n > 0 && (r.Charge[n-1].Volume < r.Size/returnParcels || alike(r.Charge[n-1], l, steady)) {
		r.Charge[n-1] = r.Charge[n-1].Plus(l)
	} else {
		r.Charge = append(r.Charge, l)
	}
	var gone Liquid
	for out > 0 && len(r.Charge) > 0 {
		taken, rest := r.Charge[0].Split(out)
		gone, out = gone.Plus(taken), out-taken.Volume
		if rest.Volume > 0 {
			r.Charge[0] = rest
		} else {
			r.Charge = r.Charge[1:]
		}
	}
	r.Liquid.Volume += l.Volume - gone.Volume
	if len(r.Charge) == 1 {
		r.hold(r.Charge[0])
	}
	return gone
}

// sum adds up what is in the line.
func (r *ReturnLine) sum() {
	if len(r.Charge) == 0 {
		return
	}
	r.Liquid = Liquid{}
	for _, l := range r.Charge {
		r.Liquid = r.Liquid.Plus(l)
	}
}

// hold sets what is in the line, of one composition.
func (r *ReturnLine) hold(l Liquid) { r.Liquid, r.Charge = l, nil }

// round is a run of the pump of which a part leaves through a hose and the rest goes through the bypass back to a
// compartment. What the cell gives is parted as gun and bypass flow are.
type round struct {
	p           *Plumbing
	h           *Hose // nil: the gun is shut
	from        []*Compartment
	to          *Compartment
	gun, bypass measure.Volume
	draw        func(gun, bypass measure.Volume) (Liquid, measure.Volume)
	finest      int   // in how many steps it is cut at most; 0: roundSlices
	spill       Place // where what finds no room in the compartment goes; empty: it is booked there all the same
	out         []Liquid
}

// goesRound tells whether a bypass moves anything: the return leads to a compartment, and one is open to the pump.
func (p *Plumbing) goesRound(bypass measure.Volume) bool {
	return bypass > 0 && p.Compartment(p.LineUp.Return) != nil && len(p.open()) > 0
}

// roundSlices bounds how finely a run is cut.
const roundSlices = 1000

// step is how much is sucked at once, and fine for how long it is: a washing-out is cut as without a bypass, until the
// cell has been washed out and the return line once filled anew. Where the bypass goes back to one of several supplies,
// what is sucked changes all the time, and all is cut.
func (r *round) step() (step, fine measure.Volume) {
	total := r.gun + r.bypass
	fine = washed * r.p.Cell.Size
	if r.bypass > 0 {
		fine += measure.Volume(measure.MulDiv(int64(r.p.Return.Size), int64(total), int64(r.bypass)))
	}
	if r.loops() {
		fine = total
	}
	fine = min(fine, total)
	most := r.finest
	if most == 0 {
		most = roundSlices
	}
	step = max(r.p.Cell.Size/cellSteps, fine/measure.Volume(most), 1)
	if r.p.Cell.Size == 0 {
		step = max(r.p.Return.Size/cellSteps, step)
	}
	if r.h != nil && r.gun > 0 {
		step = max(step, measure.Volume(measure.MulDiv(int64(r.h.Size/hoseSteps), int64(total), int64(r.gun))))
	}
	return step, fine
}

// feeds tells whether the return leads to a compartment that is drawn from; loops, whether that is one of several: then
// what is sucked changes all the time.
func (r *round) feeds() bool { return slices.Contains(r.from, r.to) }

func (r *round) loops() bool { return len(r.from) > 1 && r.feeds() }

// run goes through gun and bypass in steps and returns what left the nozzle.
func (r *round) run() []Liquid {
	total := r.gun + r.bypass
	step, fine := r.step()
	feeds, loops := r.feeds(), r.loops()
	var gone, sprayed measure.Volume
	for gone < total {
		if feeds && !loops && (gone > fine || r.settled()) {
			// All are of one liquid, so what goes round changes nothing.
			r.once(r.gun-sprayed, 0)
			break
		}
		now := min(step, total-gone)
		if (!loops && gone > fine) || total-gone-now < drop {
			now = total - gone
		}
		gone += now
		gun := measure.Volume(measure.MulDiv(int64(gone), int64(r.gun), int64(total))) - sprayed
		sprayed += gun
		r.once(gun, now-gun)
	}
	return r.out
}

// once sucks so much, passes it through the cell, and parts it.
func (r *round) once(gun, bypass measure.Volume) {
	in, bypass := r.draw(gun, bypass)
	if in.Volume <= 0 {
		return
	}
	out := in
	if r.p.Cell.Size > 0 {
		out = r.p.Cell.exchange(in)
	}
	back, fore := out.Split(bypass)
	if r.h != nil {
		r.out = append(r.out, r.h.push(fore)...)
	}
	r.arrive(r.p.Return.push(back))
}

// arrive books what the return line gives.
func (r *round) arrive(l Liquid) {
	if r.spill != "" {
		in, over := l.Split(r.to.Room())
		r.p.Outside.Give(r.spill, over)
		l = in
	}
	if l.Volume <= 0 {
		return
	}
	r.to.put(l)
	r.to.Flows.Other += l.Volume
}

// settled tells whether supply, cell and return line are of one liquid, so that what goes round changes nothing.
func (r *round) settled() bool {
	p := r.p
	if p.Cell.void() > 0 || p.Return.void() > 0 {
		return false
	}
	in := r.to.Liquid
	if r.to.Origin != KeepOrigins {
		in.From = Parts{{r.to.Origin, int64(in.Volume)}}
	}
	if p.Cell.Size > 0 && !asGood(p.Cell.Liquid, in) {
		return false
	}
	if len(p.Return.Charge) == 0 {
		return p.Return.Size == 0 || asGood(p.Return.Liquid, in)
	}
	for _, l := range p.Return.Charge {
		if !asGood(l, in) {
			return false
		}
	}
	return true
}

// grains is how many units of a product may be rounding: each step of a washing-out rounds by half a unit.
const grains = 10

// asGood is alike but for what rounding to the unit makes of a trace.
func asGood(a, b Liquid) bool {
	if a.Volume == 0 || b.Volume == 0 {
		return a.Volume == b.Volume
	}
	return alikeWithin(a, b, steady, grains/float64(min(a.Volume, b.Volume)))
}

// drawRound runs the pump until so much has gone through the nozzle end of a hose, air counted, and so much through the
// bypass.
func (p *Plumbing) drawRound(h *Hose, gun, bypass measure.Volume) []Liquid {
	p.Cell.fill(p.suck(p.Cell.void()))
	r := &round{p: p, h: h, from: p.open(), to: p.Compartment(p.LineUp.Return), gun: gun, bypass: bypass}
	r.draw = r.fromOpen
	return r.run()
}

// fromOpen sucks gun and bypass from the compartments open to the pump. What is not there cannot go round: where the
// return leads to a supply, the bypass is no more than that can give beside the gun. What the gun takes counts as
// drawn, what goes round as another flow.
func (r *round) fromOpen(gun, bypass measure.Volume) (Liquid, measure.Volume) {
	feeds := r.feeds()
	if feeds {
		bypass = min(bypass, max(r.p.SupplyDrawable()-gun, 0))
	}
	before := make([]measure.Volume, 0, 8) // beside the round, not on the heap
	for _, c := range r.from {
		before = append(before, c.Flows.Drawn)
	}
	in := r.p.suckFrom(r.from, gun+bypass)
	for i, c := range r.from {
		d := c.Flows.Drawn - before[i]
		round := measure.Volume(measure.MulDiv(int64(d), int64(bypass), int64(gun+bypass)))
		c.Flows.Drawn -= round
		c.Flows.Other -= round
		if c == r.to {
			c.Moved -= round // it comes back
		}
	}
	if !feeds {
		r.to.Moved += bypass
	}
	return in, bypass
}
