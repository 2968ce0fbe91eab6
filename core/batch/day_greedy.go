package batch

// greedy takes for each zone the option with the lowest score that still fits, in the order in which they are given, and refills when none
// does. Every zone with an option gets one.
func (w *work) greedy(order []int) []act {
	var out []act
	s := w.morning()
	for _, v := range order {
		for z := range w.visits[v].zones {
			a, next, ok := w.cheapest(s, v, z)
			if !ok {
				a, next, _ = w.cheapest(s.refilled(), v, z)
				a.refill = true
			}
			out, s = append(out, a), next
		}
	}
	w.allotAll(out)
	return out
}

func (w *work) cheapest(s loadState, v, z int) (best act, next loadState, ok bool) {
	least := never
	for o, opt := range w.visits[v].zones[z].options {
		if n, cost, fits := w.use(s, opt); fits && cost+opt.score < least {
			best, next, ok, least = act{visit: v, zone: z, option: o}, n, true, cost+opt.score
		}
	}
	return best, next, ok
}
