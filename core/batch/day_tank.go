package batch

import (
	"slices"

	"example.com/tintline/core/measure"
)

// standing is what stands in a compartment; own is what of it is its own liquid, at full strength.
type standing struct {
	holds          int
	heel, capacity int64
	volume         int64
	own            float64
}

func (s *standing) strength() float64 {
	if s.volume == 0 {
		return 1
	}
	return s.own / float64(s.volume)
}

// load brings the compartments to what the acts up to the next refill need.
func (r *replayed) load(acts []act, out DayLoad) {
	r.feeds = make([][]int, r.w.liquids)
	need := make([]int64, r.w.liquids)
	for i, a := range acts {
		if i > 0 && a.refill {
			break
		}
		for c, l := range a.takes {
			if l >= 0 {
				r.feeds[l] = append(r.feeds[l], c)
			}
		}
		if o := r.w.visits[a.visit].zones[a.zone].options[a.option]; o.liquid >= 0 {
			need[o.liquid] += o.volume
		}
	}
	for l, cs := range r.feeds {
		if len(cs) == 0 {
			continue
		}
		r.plan.Demand[l].Needed += measure.Volume(need[l] + r.w.room)
		need[l] += r.w.room
		if r.holds == l {
			need[l] -= r.line.net // the line holds it already
		}
		slices.SortStableFunc(cs, func(a, b int) int {
			if x, y := r.tank[a].holds == l && r.tank[a].volume > 0, r.tank[b].holds == l && r.tank[b].volume > 0; x != y {
				if x {
					return -1
				}
				return 1
			}
			return a - b
		})
		for _, c := range cs {
			need[l] -= r.fill(l, c, need[l], &out)
		}
	}
	r.products(&out)
	r.plan.Loads = append(r.plan.Loads, out)
}

// fill brings a compartment to what is needed of a liquid, as far as it holds that, and gives what can be drawn.
func (r *replayed) fill(l, c int, need int64, out *DayLoad) int64 {
	t, d := &r.tank[c], &r.plan.Demand[l]
	in := CompartmentLoad{Compartment: c, Letter: r.w.d.Rig.Compartments[c].Letter, Liquid: l}
	switch {
	case t.holds == l:
		in.Had = measure.Volume(t.volume)
	case t.holds != Nothing:
		in.ThrownOut, in.Rinsed = measure.Volume(t.volume), true
		if t.holds >= 0 {
			r.plan.Demand[t.holds].ThrownOut += in.ThrownOut
		}
		if len(r.plan.Loads) == 0 {
			r.spent.rinse += r.w.rinse
		}
		t.volume, t.own = 0, 0
	}
	t.holds = l
	if part := min(max(need, 0), t.capacity-t.heel); t.heel+part > t.volume {
		in.Add = measure.Volume(t.heel + part - t.volume)
		t.own += float64(in.Add)
		t.volume = t.heel + part
		d.Loaded += in.Add
	}
	in.Level = measure.Volume(t.volume)
	out.Compartments = append(out.Compartments, in)
	return max(t.volume-t.heel, 0)
}

// products are what goes into the compartments of a load with the water.
func (r *replayed) products(out *DayLoad) {
	for _, c := range out.Compartments {
		for _, p := range r.w.d.Liquids[c.Liquid].Products {
			out.Products = addDoses(out.Products, []Dose{{p.Product, p.Strength.In(c.Add, p.Label.Form), 0}})
		}
	}
}

// closeLoad writes down what is left of the present load.
func (r *replayed) closeLoad() {
	if len(r.plan.Loads) == 0 {
		return
	}
	load := r.plan.Loads[len(r.plan.Loads)-1]
	for i := range load.Compartments {
		c := &load.Compartments[i]
		c.Left, c.Strength = measure.Volume(r.tank[c.Compartment].volume), r.tank[c.Compartment].strength()
	}
}

// at is where a compartment stands in the present load.
func (r *replayed) at(c int) int {
	return slices.IndexFunc(r.plan.Loads[len(r.plan.Loads)-1].Compartments, func(l CompartmentLoad) bool { return l.Compartment == c })
}

// draw takes a volume of a liquid out of its compartments and gives how strong it was.
func (r *replayed) draw(l int, volume int64, laid bool) (strength float64) {
	own, all := 0.0, volume
	for _, c := range r.feeds[l] {
		t := &r.tank[c]
		v := min(volume, max(t.volume-t.heel, 0))
		if v == 0 {
			continue
		}
		s := t.strength()
		own += float64(s * float64(v))
		t.own -= float64(s * float64(v))
		t.volume -= v
		volume -= v
		if laid {
			r.plan.Loads[len(r.plan.Loads)-1].Compartments[r.at(c)].Laid += measure.Volume(v)
		}
	}
	r.short += volume
	if all == 0 {
		return r.own
	}
	return own / float64(all)
}

// giveBack puts a volume into the compartments of a liquid and gives what found no room.
func (r *replayed) giveBack(l int, volume int64, strength float64) int64 {
	for _, c := range r.feeds[l] {
		t := &r.tank[c]
		v := min(volume, t.capacity-t.volume)
		t.volume += v
		t.own += float64(strength * float64(v))
		volume -= v
	}
	return volume
}

// soil exchanges a volume in the compartment that is drawn from for one of another liquid.
func (r *replayed) soil(l int, volume int64) {
	for _, c := range r.feeds[l] {
		if t := &r.tank[c]; t.volume > t.heel {
			t.own -= float64(t.strength() * float64(min(volume, t.volume)))
			return
		}
	}
}

// changeTo brings a liquid to the nozzle: its compartments fill the line, and those of the old one take back what it held.
func (r *replayed) changeTo(l, visit, need int) {
	if r.holds == l {
		return
	}
	v := r.line
	old := r.holds
	change := DayChange{Visit: visit, Need: need, From: old, To: l}
	strength := r.draw(l, v.net, false)
	r.soil(l, v.oldIntoNew)
	r.plan.Demand[l].Mixed += measure.Volume(v.oldIntoNew - v.newIntoOld)
	if old >= 0 {
		r.plan.Demand[old].Mixed += measure.Volume(v.newIntoOld - v.oldIntoNew)
		back := 0.0
		if v.net > 0 {
			back = float64(r.own*float64(v.full-v.oldIntoNew)) / float64(v.net)
		}
		rest := r.giveBack(old, v.net, back)
		change.Home = rest == 0
		r.plan.Demand[old].Displaced += measure.Volume(rest)
	}
	r.holds, r.own = l, strength
	r.spent.change += r.w.change
	r.clock += r.w.change
	r.plan.Changeovers = append(r.plan.Changeovers, change)
}

// lay sprays a volume.
func (r *replayed) lay(l int, volume int64) {
	r.own = r.draw(l, volume, true)
	r.plan.Demand[l].Laid += measure.Volume(volume)
}
