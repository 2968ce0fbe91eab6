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
	return out
}

func (w *work) cheapest(s loadState, v, z int) (best act, next loadState, ok bool) {
	least := never
	for o, opt := range w.visits[v].zones[z].options {
		w.use(s, opt, func(n loadState, takes [mostCompartments]int8, cost score) {
			cost += opt.score
			if cost < least {
				best, next, ok, least = act{visit: v, zone: z, option: o, takes: takes}, n, true, cost
			}
		})
	}
	return best, next, ok
}
