package batch

import "math/bits"

// lowKey is what the bounds of a position hang on beside the room that is left.
type lowKey struct {
	visit, position int
	line            int8
	used            uint16
	free            int
}

// lows are the bounds by number of refills and price, without what the room earns.
type lows [refillsAhead][]score

// from is a lower bound of what follows a state.
func (a *ahead) from(i, at int, s *loadState) score {
	room, free := a.w.tank-a.w.needs(s), len(a.w.usable)-bits.OnesCount16(s.used)
	key := lowKey{i, at, s.line, s.used, free}
	if !a.apart() {
		key.used, key.free = 0, 0
	}
	l := a.known[key]
	if l == nil {
		l = a.lows(key)
		a.known[key] = l
	}
	best := never
	for _, byPrice := range l {
		most := byPrice[0]
		for k, low := range byPrice[1:] {
			if most >= best {
				break
			}
			if low < never/2 {
				most = max(most, low-pricedUp(a.prices[k+1], room))
			}
		}
		best = min(best, most)
	}
	return best
}

// lows takes the lowest over the sets that the load can still come to: those with all that it has, and no more others than compartments are free.
func (a *ahead) lows(key lowKey) *lows {
	line := int(key.line)
	if line < 0 {
		line = a.w.liquids
	}
	out := &lows{}
	for refills := range out {
		out[refills] = make([]score, len(a.prices))
		for k, price := range a.prices {
			least := never
			for set, has := range a.sets {
				more := bits.OnesCount16(has &^ key.used)
				if a.apart() && (has&key.used != key.used || more > key.free) {
					continue
				}
				c := a.low[key.visit][key.position][a.at(set, refills, k)+line]
				if a.apart() {
					c += priced(price, int64(more)*a.w.room)
				}
				least = min(least, c)
			}
			out[refills][k] = least
		}
	}
	return out
}
