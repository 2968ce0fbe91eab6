package batch

import "math/bits"

// loadState is how far a load is used: what is laid of each liquid, with its room, and compartments that would do, with the fewest rinses.
type loadState struct {
	line   int8
	first  bool   // the load of the morning, for which compartments are rinsed in the time of the day
	used   uint16 // the liquids of the load
	rinses int8
	gives  [mostCompartments]int8 // the liquid of each compartment, or Nothing
	need   [mostLiquids]int64
}

var takesNothing = [mostCompartments]int8{Nothing, Nothing, Nothing, Nothing, Nothing, Nothing}

// morning is the state before the first load.
func (w *work) morning() loadState {
	return loadState{line: int8(w.d.Rig.Line.Holds), first: true, gives: takesNothing}
}

// refilled is the state at a refill.
func (s loadState) refilled() loadState { return loadState{line: s.line, gives: takesNothing} }

// use lays an option out of a load, if there are compartments for it. The score is that of the changeover and of the rinses.
func (w *work) use(s loadState, o workOption) (next loadState, cost score, ok bool) {
	if o.liquid < 0 {
		return s, 0, true
	}
	if s.line != o.liquid {
		cost, s.line = scored(w.change, 0, 1), o.liquid
	}
	if s.used&(1<<o.liquid) == 0 {
		s.need[o.liquid] = w.room
		s.used |= 1 << o.liquid
	}
	s.need[o.liquid] += o.volume
	had := s.rinses
	if !w.enough(&s, o.liquid) && !w.allot(&s) {
		return s, 0, false
	}
	return s, cost + scored(int64(s.rinses-had)*w.rinse, 0, 0), true
}

// enough tells whether the compartments that are thought of for a liquid still do.
func (w *work) enough(s *loadState, l int8) bool {
	sum, has := -s.need[l], false
	for c, v := range w.usable {
		if s.gives[c] == l {
			sum, has = sum+v, true
		}
	}
	return has && sum >= 0
}

// allot thinks of compartments for all liquids of the load, with the fewest rinses. A need that grows never needs fewer.
func (w *work) allot(s *loadState) bool {
	if sum := w.needs(s); sum > w.tank || bits.OnesCount16(s.used) > len(w.usable) {
		return false
	}
	holds := takesNothing
	if s.first {
		holds = w.holds
	}
	found := false
	w.allotments(s, holds, func(gives [mostCompartments]int8, rinses int8) int8 {
		s.gives, s.rinses, found = gives, rinses, true
		return rinses - 1
	})
	return found
}

// needs is all that a load takes.
func (w *work) needs(s *loadState) (sum int64) {
	for _, v := range s.need[:w.liquids] {
		sum += v
	}
	return sum
}
