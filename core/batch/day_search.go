package batch

import (
	"cmp"
	"slices"
)

// trail is a way to have come to a position: what it has cost, and what the tank and the line hold then.
type trail struct {
	score score
	low   score // that no way on comes below
	clock int64 // ms of the day, without rinses; kept only where a visit has a window
	state loadState
	past  int32 // its last act
	dead  bool  // another is no worse in anything
}

// past is an act with what came before it.
type past struct {
	act
	before int32
}

// search goes through an order, position by position, and keeps at each the trails of which none is as good in all: exact dynamic programming
// over labels, here trails (Desrochers and Soumis 1988), with bounds of what is ahead.
type search struct {
	w       *work
	order   []int
	ahead   *ahead
	width   int   // trails that are kept at a position; 0: all
	most    int   // states after which only narrow are kept
	best    score // of a plan that is known: nothing that cannot come below it is kept
	states  int
	dropped score // the lowest bound of what was dropped for its number
	past    []past
}

const narrow = 50

// layer is a position with the trails that lead to it.
type layer struct {
	trails []trail
	byKey  map[stateKey][]int32
}

// stateKey is what two trails must have in common to be compared. Compartments with the same room stand in the order of what they hold.
type stateKey struct {
	line  int8
	taken uint8
	holds [mostCompartments]int8
}

func (s *search) key(st *loadState) stateKey {
	k := stateKey{line: st.line, taken: st.taken, holds: st.holds}
	for i := range s.w.usable {
		for j := range i {
			if s.w.usable[i] == s.w.usable[j] && k.before(i, j) {
				k.swap(i, j)
			}
		}
	}
	return k
}

func (k *stateKey) before(i, j int) bool {
	a, b := k.taken>>i&1, k.taken>>j&1
	return a < b || a == b && k.holds[i] < k.holds[j]
}

func (k *stateKey) swap(i, j int) {
	k.holds[i], k.holds[j] = k.holds[j], k.holds[i]
	if a, b := k.taken>>i&1, k.taken>>j&1; a != b {
		k.taken ^= 1<<i | 1<<j
	}
}

// run gives the acts of the best plan below s.best, and whether there is one.
func (s *search) run() (acts []act, total score, found bool) {
	s.dropped = never
	first := trail{state: s.w.morning(), clock: millis(s.w.d.Start), past: -1}
	first.low = s.ahead.from(0, 0, &first.state)
	now := layer{trails: []trail{first}}
	for i, v := range s.order {
		layers := make([]layer, s.w.visits[v].positions())
		layers[0] = now
		for at := range len(layers) - 1 {
			s.narrow(&layers[at])
			for _, l := range layers[at].trails {
				if !l.dead && l.low < s.best {
					s.expand(l, i, at, layers)
				}
			}
			layers[at] = layer{}
		}
		now = layers[len(layers)-1]
	}
	total = s.best
	end := int32(-1)
	for _, l := range now.trails {
		if sum := l.score + s.homeward(); !l.dead && sum < total {
			total, end, found = sum, l.past, true
		}
	}
	for ; end >= 0; end = s.past[end].before {
		acts = append(acts, s.past[end].act)
	}
	slices.Reverse(acts)
	return acts, total, found
}

func (s *search) homeward() score {
	if len(s.order) == 0 {
		return 0
	}
	return scored(s.w.leg[s.order[len(s.order)-1]][s.w.base], 0, 0)
}

// narrow drops the worst trails of a position where there are too many.
func (s *search) narrow(l *layer) {
	width := s.width
	if width == 0 && s.states > s.most {
		width = narrow
	}
	if width == 0 || len(l.trails) <= width {
		return
	}
	live := slices.DeleteFunc(l.trails, func(l trail) bool { return l.dead || l.low >= s.best })
	slices.SortStableFunc(live, func(a, b trail) int { return cmp.Compare(a.low, b.low) })
	if len(live) > width {
		s.dropped = min(s.dropped, live[width].low)
		live = live[:width]
	}
	l.trails = live
}

// expand lays each zone that can come next, with each option, out of the load or after a refill.
func (s *search) expand(l trail, i, at int, layers []layer) {
	v := s.order[i]
	from := v
	if at == 0 {
		from = s.w.base
		if i > 0 {
			from = s.order[i-1]
		}
	}
	for _, refill := range [2]bool{false, true} {
		if refill && l.state.taken == 0 {
			continue
		}
		n, drive := l, int64(0)
		if at == 0 {
			drive = s.w.leg[from][v]
		}
		if refill {
			drive += s.w.detour(from, v) + s.w.refill
			n.state = l.state.refilled()
		}
		n.pass(drive)
		if at == 0 && s.w.visits[v].from > n.clock && s.w.waits {
			n.pass(s.w.visits[v].from - n.clock)
		}
		for _, m := range s.w.visits[v].moves(at) {
			for o, opt := range s.w.visits[v].zones[m.zone].options {
				s.w.use(n.state, opt, func(st loadState, takes [mostCompartments]int8, cost score) {
					next := trail{score: n.score + cost + opt.score, clock: n.clock, state: st, past: l.past}
					if s.w.waits {
						next.clock += opt.score.ms()
						if opt.liquid >= 0 && opt.liquid != n.state.line {
							next.clock += s.w.change
						}
					}
					s.put(next, act{visit: v, zone: m.zone, option: o, refill: refill, takes: takes}, i, m.next, &layers[m.next])
				})
			}
		}
	}
}

func (l *trail) pass(ms int64) {
	l.score += scored(ms, 0, 0)
	l.clock += ms
}

// put keeps a trail at a position unless one that is there is as good in all, and drops those that it is as good as.
func (s *search) put(l trail, a act, i, at int, into *layer) {
	s.states++
	for k, rest := range s.ahead.rest[i][at] {
		l.state.slack[k] = min(l.state.slack[k], rest)
	}
	l.low = l.score + s.ahead.from(i, at, &l.state)
	if l.low >= s.best {
		return
	}
	key := s.key(&l.state)
	if into.byKey == nil {
		into.byKey = map[stateKey][]int32{}
	}
	same := into.byKey[key]
	kept := same[:0]
	for _, j := range same {
		if s.asGood(&into.trails[j], &l) {
			return
		}
	}
	for _, j := range same {
		if s.asGood(&l, &into.trails[j]) {
			into.trails[j].dead = true
			continue
		}
		kept = append(kept, j)
	}
	s.past = append(s.past, past{a, l.past})
	l.past = int32(len(s.past) - 1)
	into.trails = append(into.trails, l)
	into.byKey[key] = append(kept, int32(len(into.trails)-1))
}

// asGood tells whether a is as good as b in score, time and all that the tank still gives.
func (s *search) asGood(a, b *trail) bool {
	if a.score > b.score {
		return false
	}
	if s.w.waits && (a.clock > b.clock || a.score-scored(a.clock, 0, 0) > b.score-scored(b.clock, 0, 0)) {
		return false
	}
	for k := range s.w.liquids {
		if a.state.slack[k] < b.state.slack[k] {
			return false
		}
	}
	return true
}
