package batch

import (
	"cmp"
	"math/bits"
	"slices"
)

// allotments gives each way to share the compartments among the liquids of the load, none with one to spare. What is answered is the most rinses
// that are still of interest.
func (w *work) allotments(s *loadState, holds [mostCompartments]int8, give func([mostCompartments]int8, int8) int8) {
	var order []int8
	for m := s.used; m != 0; m &= m - 1 {
		order = append(order, int8(bits.TrailingZeros16(m)))
	}
	slices.SortStableFunc(order, func(a, b int8) int { return cmp.Compare(s.need[b], s.need[a]) })
	most := int8(mostCompartments)
	var next func(k, free int, gives [mostCompartments]int8, rinses int8)
	next = func(k, free int, gives [mostCompartments]int8, rinses int8) {
		if rinses > most {
			return
		}
		if k == len(order) {
			most = give(gives, rinses)
			return
		}
		l := order[k]
		for m := free; m != 0; m = (m - 1) & free {
			if w.sums[m] < s.need[l] || w.spare(m, w.sums[m]-s.need[l]) {
				continue
			}
			g, r := gives, rinses
			for x := m; x != 0; x &= x - 1 {
				c := bits.TrailingZeros(uint(x))
				if g[c] = l; holds[c] != l && holds[c] != Nothing {
					r++
				}
			}
			next(k+1, free&^m, g, r)
		}
	}
	next(0, 1<<len(w.usable)-1, takesNothing, 0)
}

// spare tells whether one of the compartments can be done without.
func (w *work) spare(m int, over int64) bool {
	if m&(m-1) == 0 {
		return false
	}
	for x := m; x != 0; x &= x - 1 {
		if w.usable[bits.TrailingZeros(uint(x))] <= over {
			return true
		}
	}
	return false
}

// allotted is a way to have shared out the compartments up to a load.
type allotted struct {
	holds  [mostCompartments]int8
	rinses int
	gives  [][mostCompartments]int8 // one a load
}

// mostAllotted is how many ways are kept from load to load.
const mostAllotted = 200

// allotAll gives the compartments of each load to its liquids, with the fewest rinses in the morning and then few over
// the day, and writes that into the acts.
func (w *work) allotAll(acts []act) {
	ways := []allotted{{holds: w.holds}}
	first := true
	for from := 0; from < len(acts); {
		to := from + 1
		for to < len(acts) && !acts[to].refill {
			to++
		}
		ways = w.allotLoad(ways, acts[from:to])
		if first { // its rinses take time: only the fewest
			ways = slices.DeleteFunc(ways, func(a allotted) bool { return a.rinses > ways[0].rinses })
			first = false
		}
		from = to
	}
	k := -1
	for i := range acts {
		if acts[i].takes = takesNothing; i == 0 || acts[i].refill {
			k++
			acts[i].takes = ways[0].gives[k]
		}
	}
}

func (w *work) allotLoad(ways []allotted, acts []act) (out []allotted) {
	var s loadState
	for _, a := range acts {
		if o := w.visits[a.visit].zones[a.zone].options[a.option]; o.liquid >= 0 {
			if s.used&(1<<o.liquid) == 0 {
				s.used |= 1 << o.liquid
				s.need[o.liquid] = w.room
			}
			s.need[o.liquid] += o.volume
		}
	}
	at := map[[mostCompartments]int8]int{}
	for _, way := range ways {
		w.allotments(&s, way.holds, func(gives [mostCompartments]int8, rinses int8) int8 {
			n := allotted{holds: way.holds, rinses: way.rinses + int(rinses)}
			for c, l := range gives {
				if l >= 0 {
					n.holds[c] = l
				}
			}
			i, known := at[n.holds]
			if !known || n.rinses < out[i].rinses {
				n.gives = append(slices.Clone(way.gives), gives)
				if !known {
					i = len(out)
					at[n.holds], out = i, append(out, n)
				}
				out[i] = n
			}
			return mostCompartments
		})
	}
	slices.SortStableFunc(out, func(a, b allotted) int { return cmp.Compare(a.rinses, b.rinses) })
	return out[:min(len(out), mostAllotted)]
}
