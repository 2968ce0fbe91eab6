package batch

import "math/bits"

// loadState is how far a load is used: what each compartment holds, which of them the present load has taken, what can still be drawn of each
// liquid from those, and what the line holds. A compartment that no load takes keeps what it held.
type loadState struct {
	holds [mostCompartments]int8
	taken uint8
	line  int8
	used  uint16 // the liquids of the present load
	slack [mostLiquids]int64
}

// morning is the state before the first load.
func (w *work) morning() loadState {
	s := loadState{line: int8(w.d.Rig.Line.Holds)}
	for i := range s.holds {
		s.holds[i] = Nothing
	}
	for i, c := range w.d.Rig.Compartments {
		s.holds[i] = int8(c.Holds)
	}
	return s
}

// refilled is the state at a refill.
func (s loadState) refilled() loadState {
	s.taken, s.used, s.slack = 0, 0, [mostLiquids]int64{}
	return s
}

// free is what can be drawn from compartments that the load has not taken.
func (w *work) free(s *loadState) (sum int64) {
	for c, v := range w.usable {
		if s.taken&(1<<c) == 0 {
			sum += v
		}
	}
	return sum
}

// use gives each way in which an option can be laid out of a load: as it is, or with compartments that are given its liquid. The score is that
// of the changeover and of the rinses.
func (w *work) use(s loadState, o workOption, give func(loadState, [mostCompartments]int8, score)) {
	if o.liquid < 0 {
		give(s, takesNothing, 0)
		return
	}
	cost := score(0)
	if s.line != o.liquid {
		cost, s.line = scored(w.change, 0, 1), o.liquid
	}
	need := o.volume
	if s.used&(1<<o.liquid) == 0 {
		need += w.room
		s.used |= 1 << o.liquid
	}
	s.slack[o.liquid] -= need
	w.take(s, o.liquid, takesNothing, cost, 0, s.slack[o.liquid] < 0 || !w.hasTaken(&s, o.liquid), give)
}

func (w *work) hasTaken(s *loadState, l int8) bool {
	for m := s.taken; m != 0; m &= m - 1 {
		if s.holds[bits.TrailingZeros8(m)] == l {
			return true
		}
	}
	return false
}

// take gives a liquid one compartment after the other, each set of them once and none that another takes the place of, until they hold enough.
func (w *work) take(s loadState, l int8, takes [mostCompartments]int8, cost score, from int, more bool, give func(loadState, [mostCompartments]int8, score)) {
	if !more {
		give(s, takes, cost)
		return
	}
	for c := from; c < len(w.usable); c++ {
		if s.taken&(1<<c) != 0 || w.twin(&s, c, takes) {
			continue
		}
		n, t, price := s, takes, cost
		if n.holds[c] != l && n.holds[c] != Nothing {
			price += scored(w.rinse, 0, 0)
		}
		n.holds[c], t[c] = l, l
		n.taken |= 1 << c
		n.slack[l] += w.usable[c]
		w.take(n, l, t, price, c+1, n.slack[l] < 0, give)
	}
}

// twin tells whether an earlier compartment that is free is as this one: then only the earlier is tried.
func (w *work) twin(s *loadState, c int, takes [mostCompartments]int8) bool {
	for b := range c {
		if s.taken&(1<<b) == 0 && w.usable[b] == w.usable[c] && s.holds[b] == s.holds[c] && takes[b] == Nothing {
			return true
		}
	}
	return false
}
