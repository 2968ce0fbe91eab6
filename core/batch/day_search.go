package batch

import (
	"cmp"
	"slices"
)

// trail is a way to have come to a position: what it has cost, and what the tank and the line hold then.
type trail struct {
	score score
	low   score // that no way on comes below
	clock int64 // ms of the day, without rinses
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

const narrow = 200

// mostCompared is how many trails of a position a new one is compared with.
const mostCompared = 100

// layer is a position with the trails that lead to it.
type layer struct {
	trails []trail
	byKey  map[stateKey][]int32
}

// stateKey is what two trails must have in common to be compared.
type stateKey struct {
	line  int8
	first bool
	used  bool // something of the load: one of which nothing is used cannot be left for another by a refill
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
	s.w.allotAll(acts)
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
		if refill && l.state.used == 0 {
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
				st, cost, fits := s.w.use(n.state, opt)
				if !fits {
					continue
				}
				next := trail{score: n.score + cost + opt.score, clock: n.clock + opt.score.ms(), state: st, past: l.past}
				if opt.liquid >= 0 && opt.liquid != n.state.line {
					next.clock += s.w.change
				}
				s.put(next, act{visit: v, zone: m.zone, option: o, refill: refill}, i, m.next, &layers[m.next])
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
	l.low = l.score + s.ahead.from(i, at, &l.state)
	if l.low >= s.best {
		return
	}
	key := stateKey{l.state.line, l.state.first, l.state.used != 0}
	if into.byKey == nil {
		into.byKey = map[stateKey][]int32{}
	}
	same := into.byKey[key]
	for _, j := range same[max(len(same)-mostCompared, 0):] {
		if s.asGood(&into.trails[j], &l) {
			return
		}
		if s.asGood(&l, &into.trails[j]) {
			into.trails[j].dead = true
		}
	}
	s.past = append(s.past, past{a, l.past})
	l.past = int32(len(s.past) - 1)
	into.trails = append(into.trails, l)
	into.byKey[key] = append(same, int32(len(into.trails)-1))
}

// asGood tells whether a is as good as b in score, time and all that the load is used for. The rinses of b may only grow to more than those of a.
func (s *search) asGood(a, b *trail) bool {
	rinsed := scored(int64(a.state.rinses-b.state.rinses)*s.w.rinse, 0, 0)
	if a.score-rinsed > b.score {
		return false
	}
	if s.w.waits && (a.clock > b.clock || a.score-rinsed-scored(a.clock, 0, 0) > b.score-scored(b.clock, 0, 0)) {
		return false
	}
	for k := range s.w.liquids {
		if a.state.need[k] > b.state.need[k] {
			return false
		}
	}
	return true
}
