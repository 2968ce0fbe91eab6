package batch

import "example.com/tintline/core/measure"

// replayed is a day as it is walked through from its acts. It reckons times and volumes anew, apart from the search.
type replayed struct {
	w     *work
	plan  DayPlan
	line  lineVolumes
	tank  []standing // one a compartment
	holds int        // what the line holds
	own   float64    // share of it that is at full strength
	clock int64
	spent struct{ site, drive, change, refill, rinse, wait int64 }
	feeds [][]int // of the present load: the compartments of each liquid, in the order in which they are drawn from
	short int64   // that was to be drawn and was not there: a mistake of the search
}

// replay walks through the acts, which follow the order of the visits.
func (w *work) replay(order []int, acts []act) *replayed {
	l := w.d.Rig.Line
	r := &replayed{w: w, line: l.volumes(), holds: l.Holds, own: 1, clock: millis(w.d.Start)}
	r.plan.Demand = make([]DayDemand, w.liquids)
	r.plan.Unserved = w.unserved
	for _, c := range w.d.Rig.Compartments {
		r.tank = append(r.tank, standing{c.Holds, int64(c.Heel), int64(c.Capacity), int64(c.Left), float64(c.Left)})
		if c.Holds >= 0 {
			r.plan.Demand[c.Holds].Had += c.Left
		}
	}
	if l.Holds >= 0 {
		r.plan.Demand[l.Holds].Had += measure.Volume(r.line.full)
	}
	for _, v := range order {
		r.plan.Order = append(r.plan.Order, w.visits[v].visit)
	}
	if len(acts) > 0 {
		r.load(acts, DayLoad{Visit: -1, Need: -1})
	}
	at := w.base
	for i := range acts {
		r.step(at, acts[i:])
		at = acts[i].visit
	}
	r.closeLoad()
	if at != w.base {
		r.drive(w.leg[at][w.base])
	}
	r.plan.Return = minutes(r.clock)
	r.sums()
	return r
}

// step goes to the place of the first act, makes the load and the changeover before it, and lays it.
func (r *replayed) step(at int, acts []act) {
	a, w := acts[0], r.w
	v := w.visits[a.visit]
	z := v.zones[a.zone]
	option := z.options[a.option].option
	way := int64(0)
	if at != a.visit {
		way = w.leg[at][a.visit]
	}
	if a.refill {
		extra := w.detour(at, a.visit)
		way += extra
		r.closeLoad()
		r.load(acts, DayLoad{Visit: v.visit, Need: z.need, Detour: minutes(extra)})
		r.clock += w.refill
		r.spent.refill += w.refill
	}
	r.drive(way)
	if at != a.visit {
		r.arrive(v, w.miles[at][a.visit], way)
	}
	o := w.d.Visits[v.visit].Zones[z.need].Options[option]
	if o.Liquid >= 0 {
		r.changeTo(o.Liquid, v.visit, z.need)
		r.lay(o.Liquid, int64(o.Volume))
	}
	ms := millis(o.Minutes)
	r.clock += ms
	r.spent.site += ms
	r.plan.Cost += o.Cost
	r.plan.Laid = append(r.plan.Laid, DayLaid{v.visit, z.need, option, len(r.plan.Loads) - 1})
}

func (r *replayed) drive(ms int64) {
	r.spent.drive += ms
	r.clock += ms
}

// arrive waits for the window of a visit.
func (r *replayed) arrive(v workVisit, miles float64, way int64) {
	a := DayArrival{Visit: v.visit, Drive: minutes(way)}
	if miles >= 0 {
		a.Miles = measure.Known(miles)
	}
	if r.clock < v.from {
		a.Waited = minutes(v.from - r.clock)
		r.spent.wait += v.from - r.clock
		r.clock = v.from
	}
	a.At = minutes(r.clock)
	if v.to >= 0 && r.clock > v.to {
		a.Late = minutes(r.clock - v.to)
	}
	r.plan.Arrivals = append(r.plan.Arrivals, a)
}

// score is that of the whole day, as the search packs it.
func (r *replayed) score() score {
	s := r.spent
	return scored(s.site+s.drive+s.change+s.refill+s.rinse+s.wait, r.plan.Cost, int64(len(r.plan.Changeovers)))
}

// sums closes the accounts of the day.
func (r *replayed) sums() {
	s, p := r.spent, &r.plan
	p.Minutes = DayMinutes{minutes(s.site), minutes(s.drive), minutes(s.change), minutes(s.refill), minutes(s.rinse), minutes(s.wait)}
	for _, t := range r.tank {
		if t.holds >= 0 {
			p.Demand[t.holds].Left += measure.Volume(t.volume)
		}
	}
	if r.holds >= 0 {
		p.Demand[r.holds].Line = measure.Volume(r.line.full)
	}
	p.Miles = r.miles()
	p.Carry = r.carry()
}

// miles is the way in all, if each leg of it is known.
func (r *replayed) miles() measure.Maybe[float64] {
	p, sum, at := &r.plan, 0.0, r.w.d.Base
	for _, v := range p.Order {
		m := GreatCircle(at, r.w.d.Visits[v].Place)
		if !m.Known {
			return m
		}
		sum, at = sum+m.V, r.w.d.Visits[v].Place
	}
	back := GreatCircle(at, r.w.d.Base)
	back.V += sum
	return r.withRefills(back)
}

// withRefills adds the ways to the refills: they are made where the truck is loaded, unless the visit has what is needed.
func (r *replayed) withRefills(way measure.Maybe[float64]) measure.Maybe[float64] {
	for _, l := range r.plan.Loads {
		if l.Visit >= 0 && l.Detour > 0 {
			way.V += l.Detour / 60 * r.w.d.Times.MPH
		}
	}
	return way
}

// carry is the product that all loads take, and what is taken beside them.
func (r *replayed) carry() []Dose {
	var out []Dose
	for _, l := range r.plan.Loads {
		out = addDoses(out, l.Products)
	}
	for _, l := range r.plan.Laid {
		out = addDoses(out, r.w.d.Visits[l.Visit].Zones[l.Need].Options[l.Option].Products)
	}
	for i := range out {
		out[i].Strength = 0
	}
	return out
}

// addDoses adds up by product.
func addDoses(sum, more []Dose) []Dose {
next:
	for _, d := range more {
		for i := range sum {
			if sum[i].Product == d.Product && sum[i].Amount.Kind == d.Amount.Kind {
				sum[i].Amount.N += d.Amount.N
				continue next
			}
		}
		sum = append(sum, d)
	}
	return sum
}
