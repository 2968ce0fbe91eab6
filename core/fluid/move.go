package fluid

import "example.com/tintline/core/measure"

// Load puts liquid from outside into a tank: water from the water supply, each product from its package.
// A liquid product's volume comes out of its package, the rest of l's volume is water.
func (p *Plumbing) Load(t *Tank, l Liquid, packages map[int32]Place, liquid func(product int32) bool) {
	water := l.Volume
	for _, q := range l.Holds {
		from := Liquid{Holds: Parts{q}}
		if liquid(q.Key) {
			from.Volume = measure.Volume(q.N)
			water -= from.Volume
		}
		p.Outside.Take(packages[q.Key], from)
	}
	p.Outside.Take(WaterSupply, Liquid{Volume: water})
	t.put(l)
	t.Flows.Loaded += l.Volume
}

// pushSlices bounds how finely a push-back into the compartment that feeds the pump is cut.
const pushSlices = 1000

// PushBack draws v through a hose into a compartment. If that compartment feeds the pump, what comes back is
// drawn again: it is booked slice by slice, as finely as the cell is washed out, so that the doses do not depend
// on how many entries the push-back is written in. The bypass is that of Draw.
func (p *Plumbing) PushBack(hose string, v, bypass measure.Volume, into *Compartment) []Liquid {
	h := p.Hose(hose)
	if h == nil || v <= 0 {
		return nil
	}
	slice := v
	for _, c := range p.open() {
		if c == into {
			slice = max(p.Cell.Size/cellSteps, h.Size/hoseSteps, v/pushSlices, 1)
		}
	}
	var out []Liquid
	around := p.goesRound(bypass)
	if around {
		defer p.Return.sum()
	}
	through := v + h.AirBefore(v)   // air in the hose counts in what the pump gives
	var pumped, gone measure.Volume // of that, and of the bypass
	for left := v; left > 0; {
		now := min(slice, left)
		if left-now < drop {
			now = left
		}
		var parcels []Liquid
		if around {
			gun := now + h.AirBefore(now)
			pumped = min(pumped+gun, through)
			with := measure.Volume(measure.MulDiv(int64(bypass), int64(pumped), int64(through))) - gone
			gone += with
			parcels = p.drawRound(h, gun, with)
		} else {
			parcels = p.Draw(hose, now, 0)
		}
		for _, l := range parcels {
			into.put(l)
			into.Flows.PushedIn += l.Volume
			out = append(out, l)
		}
		left -= now
	}
	return out
}

// PushOut draws v through a hose to a place outside: a pail.
func (p *Plumbing) PushOut(hose string, v, bypass measure.Volume, to Place) []Liquid {
	out := p.Draw(hose, v, bypass)
	for _, l := range out {
		p.Outside.Give(to, l)
	}
	return out
}

// Fill draws v through a hose into an applicator's tank. The bypass is that of Draw.
func (p *Plumbing) Fill(hose string, v, bypass measure.Volume, into *ApplicatorTank) []Liquid {
	out := p.Draw(hose, v, bypass)
	for _, l := range out {
		into.put(l)
		into.Flows.PushedIn += l.Volume
	}
	return out
}

// Spray draws v from an applicator's own tank; what it cannot give is taken from the unexplained.
func (p *Plumbing) Spray(t *ApplicatorTank, v measure.Volume) []Liquid {
	if v <= 0 {
		return nil
	}
	if short := v - t.Liquid.Volume; short > 0 {
		p.correct(&t.Tank, short)
	}
	l := t.take(v)
	t.Flows.Drawn += l.Volume
	t.Moved += l.Volume
	return []Liquid{l}
}

// Gauge sets what is left in a tank to a reading; the difference goes against the unexplained at the
// tank's strength.
func (p *Plumbing) Gauge(t *Tank, reading measure.Volume) {
	p.correct(t, reading-t.Liquid.Volume)
	t.Moved, t.ReadBand = 0, 0
}

// correct adds d, or takes -d, against the unexplained.
func (p *Plumbing) correct(t *Tank, d measure.Volume) {
	t.Flows.Unexplained += d
	switch {
	case d > 0:
		more := t.Liquid.As(d)
		if t.Origin == KeepOrigins && len(more.From) == 0 {
			more = Water(d, NoTank)
		}
		t.Liquid = t.Liquid.Plus(p.fromUnexplained(more))
	case d < 0:
		taken, rest := t.Liquid.Split(-d)
		t.part(rest.Volume)
		t.Liquid = rest
		p.Outside.Give(Unexplained, taken)
	}
}

// Dump lets up to v run out of a place inside the rig to a place inside or outside. It returns what ran.
func (p *Plumbing) Dump(from Place, v measure.Volume, to Place) Liquid {
	var l Liquid
	kind, name := from.Split()
	switch kind {
	case "compartment":
		if t := p.tankAt(from); t != nil {
			l = t.take(v)
			t.Flows.Other -= l.Volume
		}
	case "applicator":
		if t := p.Tank(name); t != nil {
			l = t.take(v)
			t.Flows.Other -= l.Volume
		}
	case "hose":
		if h := p.Hose(name); h != nil {
			l = h.drain(v)
		}
	case string(CellPlace):
		l, p.Cell.Liquid = p.Cell.Liquid.Split(v)
	case string(ReturnPlace):
		var rest Liquid
		l, rest = p.Return.Liquid.Split(v)
		p.Return.hold(rest)
		p.Return.Swept = false // the bypass fills it again
	}
	p.arrive(l, to)
	return l
}

// Rinse puts water into a compartment, lets it mix, and runs all but the heel to a place. With no place
// the rinse water stays.
func (p *Plumbing) Rinse(c *Compartment, water measure.Volume, to Place) Liquid {
	p.Outside.Take(WaterSupply, Liquid{Volume: water})
	c.put(Liquid{Volume: water})
	c.Flows.Other += water
	if to == "" {
		return Liquid{}
	}
	l := c.take(c.Drawable())
	c.StrangeIn = c.Strange
	c.Flows.Other -= l.Volume
	p.arrive(l, to)
	return l
}

// arrive books l at a place, inside the rig where there is such a tank, else outside.
func (p *Plumbing) arrive(l Liquid, to Place) {
	if t := p.tankAt(to); t != nil {
		t.put(l)
		t.Flows.Other += l.Volume
		return
	}
	p.Outside.Give(to, l)
}

// tankAt finds the tank of a place, nil if the place is none.
func (p *Plumbing) tankAt(pl Place) *Tank {
	switch kind, name := pl.Split(); kind {
	case "compartment":
		if len(name) == 1 {
			if c := p.Compartment(name[0]); c != nil {
				return &c.Tank
			}
		}
	case "applicator":
		if t := p.Tank(name); t != nil {
			return &t.Tank
		}
	}
	return nil
}

// Turn sets the valves.
func (p *Plumbing) Turn(l LineUp) {
	p.LineUp = LineUp{append([]byte(nil), l.Supply...), l.Return}
	p.Return.Swept = false
}

// ResizeReturn changes the return line's volume without moving liquid; the bypass fills what was added.
func (p *Plumbing) ResizeReturn(size measure.Volume) {
	if size != p.Return.Size {
		p.Return.Size, p.Return.Swept = size, false
	}
}

// ResizeHose changes a hose's volume without moving liquid; false if that cannot be.
func (p *Plumbing) ResizeHose(name string, size measure.Volume) bool {
	h := p.Hose(name)
	return h != nil && h.resize(size)
}

// Laying draws what an applicator lays down: from its own tank if it has one, else through its hose, with the bypass of
// Draw.
func (p *Plumbing) Laying(hose, applicator string, v, bypass measure.Volume) []Liquid {
	if t := p.Tank(applicator); t != nil {
		return p.Spray(t, v)
	}
	return p.Draw(hose, v, bypass)
}
