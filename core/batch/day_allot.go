package batch

import (
	"cmp"
	"math/bits"
	"slices"
)

// allotments gives each way to share the compartments among the liquids of the load, none with one to spare. What is answered is the most rinses
// that are still of interest.
func (w *work) allotments(s *loadState, holds [mostCompartments]int8, give func([mostCompartments]int8, int8) int8) {
	order := w.mostFirst(s)
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

// mostFirst lists the liquids of a load, the one of which most is needed first.
func (w *work) mostFirst(s *loadState) []int8 {
	var order []int8
	for m := s.used; m != 0; m &= m - 1 {
		order = append(order, int8(bits.TrailingZeros16(m)))
	}
	slices.SortStableFunc(order, func(a, b int8) int { return cmp.Compare(s.need[b], s.need[a]) })
	return order
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
	liked  int                      // how many compartments got what they hold in the morning, and then what they usually hold
	gives  [][mostCompartments]int8 // one a load
}

// before tells whether a way is the better one: fewer rinses, more of what compartments hold or usually hold, then letters from
// the front, the liquid of which most is needed first.
func (a *allotted) before(b *allotted, order []int8) int {
	if c := cmp.Or(cmp.Compare(a.rinses, b.rinses), cmp.Compare(b.liked, a.liked)); c != 0 {
		return c
	}
	return cmp.Compare(a.letters(order), b.letters(order))
}

// letters tells which compartments the liquids of the last load got, the first liquid's weighing most.
func (a *allotted) letters(order []int8) (out uint64) {
	last := a.gives[len(a.gives)-1]
	for _, l := range order {
		var mask uint64
		for c, g := range last {
			if g == l {
				mask |= 1 << c
			}
		}
		out = out<<mostCompartments | mask
	}
	return out
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
			n := allotted{holds: way.holds, rinses: way.rinses + int(rinses), liked: way.liked}
			for c, l := range gives {
				if l >= 0 {
					n.holds[c] = l
				}
				switch {
				case l < 0:
				case w.holds[c] == l: // it is there already
					n.liked += mostCompartments + 1
				case w.likes[c] == l:
					n.liked++
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
	order := w.mostFirst(&s)
	slices.SortStableFunc(out, func(a, b allotted) int { return a.before(&b, order) })
	return out[:min(len(out), mostAllotted)]
}
