package batch

// mostStates is how many states of an order are looked at before the search narrows; then the plan may be not the best, and says so.
const mostStates = 200_000

// PlanDay makes the plan of a day in the operator's own order.
//
// The best plan has the fewest minutes in all (on site, drive, changeovers, refills, rinses, waiting for a window), of those the lowest cost of
// what is laid, of those the fewest changeovers; what is then equal is decided by the order in which things are given. Times count in
// thousandths of a second, so that sums are compared exactly.
//
// Exact covers all choices of an option for each zone, of which compartments hold which liquid in each load, of where refills fall (before any
// zone), and of the order of the zones of a visit of up to six. It keeps to these rules: a liquid of a load takes room for what is laid of it,
// the reserve, and one line, whether or not the line holds it already; a refill may bring each compartment to any level; a compartment that gets
// another liquid is rinsed, and what stood in it is thrown out; in the morning that takes time, but shifts no arrival, and at a refill it is part of
// the refill (there it is kept rare, but that is not part of what is exact); a visit is not begun before its window, and one that is begun after it is said to be late, but not refused.
func PlanDay(d Day) (DayPlan, error) {
	w, err := d.work()
	if err != nil {
		return DayPlan{}, err
	}
	return w.best(w.ownOrder(), mostStates).plan, nil
}

func (d *Day) work() (*work, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	w := d.ready()
	return w, w.check()
}

// ownOrder is that of the operator.
func (w *work) ownOrder() []int {
	order := make([]int, len(w.visits))
	for i := range order {
		order[i] = i
	}
	return order
}

// solved is what a search comes to.
type solved struct {
	acts   []act
	score  score
	bound  score // that no plan of the order is below
	states int
}

// solve looks for the best plan of an order: what is cheapest at hand, then with few trails, then with all.
func (w *work) solve(order []int, most int) solved {
	out := solved{acts: w.greedy(order)}
	out.score = w.replay(order, out.acts).score()
	var low *ahead
	for _, width := range []int{8, 60, 0} {
		if low == nil || !low.apart() && width != 8 {
			low = w.ahead(order, width != 8)
		}
		s := &search{w: w, order: order, ahead: low, width: width, most: most, best: out.score}
		acts, total, found := s.run()
		if found {
			out.acts, out.score = acts, total
		}
		out.states += s.states
		if out.bound = min(out.score, s.dropped); out.bound == out.score {
			break
		}
	}
	return out
}

// best is the plan of an order, walked through.
func (w *work) best(order []int, most int) *replayed {
	s := w.solve(order, most)
	r := w.replay(order, s.acts)
	p := &r.plan
	p.States = s.states
	p.Exact = s.bound == s.score && w.allFree()
	p.Bound = minutes(s.bound.ms())
	if !w.allFree() {
		p.Bound = minutes(min(w.anyOrder(), s.bound.ms()))
	}
	p.Steps = w.d.says(p)
	return r
}

// allFree tells whether every order of the zones of each visit is tried.
func (w *work) allFree() bool {
	for i := range w.visits {
		if !w.visits[i].free() {
			return false
		}
	}
	return true
}
