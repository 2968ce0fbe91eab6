package batch

import (
	"cmp"
	"slices"

	"example.com/tintline/core/measure"
)

// Bounds on the work of looking for an order; they count, so that the answer is the same everywhere.
const (
	mostGuesses = 60_000 // orders that are looked at roughly
	mostTries   = 60     // orders that are planned narrowly
)

// ChooseDay makes the plan in the operator's own order, and looks for a better one, which keeps pins, and in which no more comes late.
//
// The other order is found by a search from several beginnings (as given, the nearest next, and grouped by what is laid), with visits moved
// and stretches turned around for as long as that helps: it need not be the best. Bound is below every order there is, so Off is how far from
// the best it can be at most.
func ChooseDay(d Day) (DayChoice, error) {
	w, err := d.work()
	if err != nil {
		return DayChoice{}, err
	}
	own := w.ownOrder()
	given := w.best(own, mostStates)
	out := DayChoice{Given: given.plan, Best: given.plan}
	if order := w.betterOrder(own); !slices.Equal(order, own) {
		if best := w.best(order, mostStates); best.before(given) {
			out.Best, out.Better = best.plan, true
		}
	}
	low := w.anyOrder()
	out.Bound = minutes(low)
	if total := out.Best.Minutes.Total(); low > 0 {
		out.Off = max(total/out.Bound-1, 0)
	} else if total > 0 {
		out.Off = 1
	}
	out.Saves = saved(&out.Given, &out.Best)
	out.Steps = d.saySaves(&out)
	return out, nil
}

// before tells whether a plan is better than another: less comes late, then what counts in one order.
func (r *replayed) before(o *replayed) bool {
	return cmp.Or(cmp.Compare(r.late(), o.late()), cmp.Compare(r.score(), o.score())) < 0
}

// late is by how much visits are begun after their windows, in all.
func (r *replayed) late() (ms int64) {
	for _, a := range r.plan.Arrivals {
		ms += millis(a.Late)
	}
	return ms
}

func saved(given, best *DayPlan) DaySaves {
	s := DaySaves{
		Changeovers: len(given.Changeovers) - len(best.Changeovers),
		Refills:     len(given.Loads) - len(best.Loads),
		Minutes:     given.Minutes.Total() - best.Minutes.Total(),
	}
	if given.Miles.Known && best.Miles.Known {
		s.Miles = measure.Known(given.Miles.V - best.Miles.V)
	}
	return s
}

// betterOrder is the best order that is found.
func (w *work) betterOrder(own []int) []int {
	if len(own) < 2 {
		return own
	}
	g := &guesser{w: w, pins: w.pins()}
	g.prepare()
	found := [][]int{own}
	for _, begin := range [][]int{own, g.nearest(nil), g.grouped()} {
		begin = g.pinned(begin)
		found = append(found, g.improve(begin))
	}
	best, least := own, w.narrowly(own)
	tries := 0
	for _, order := range found[1:] {
		if t := w.narrowly(order); t.before(least) {
			best, least = order, t
		}
	}
	for better := true; better && tries < mostTries; {
		better = false
		g.each(best, func(order []int) bool {
			if g.guess(order).off(g.guess(best)) > w.change+w.refill {
				return false
			}
			if tries++; tries > mostTries {
				return true
			}
			if t := w.narrowly(order); t.before(least) {
				best, least, better = slices.Clone(order), t, true
			}
			return better
		})
	}
	return best
}

// narrowly plans an order with few trails.
func (w *work) narrowly(order []int) *replayed {
	s := &search{w: w, order: order, ahead: w.ahead(order, false), width: 3, most: mostStates, best: never}
	acts, _, _ := s.run()
	return w.replay(order, acts)
}

// pins are the places of the order that are taken: by place, which visit; -1: none. Where visits are left out because nothing is laid there,
// those behind move up.
func (w *work) pins() []int {
	type pin struct{ at, visit int }
	var all []pin
	for i, v := range w.visits {
		if p := w.d.Visits[v.visit].Pinned; p.Known {
			all = append(all, pin{p.V, i})
		}
	}
	slices.SortFunc(all, func(a, b pin) int { return cmp.Compare(b.at, a.at) })
	out := slices.Repeat([]int{-1}, len(w.visits))
	next := len(w.visits)
	for _, p := range all {
		next = min(next-1, p.at)
		out[next] = p.visit
	}
	return out
}
