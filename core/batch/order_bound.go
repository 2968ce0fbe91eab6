package batch

import (
	"math"
	"math/bits"
)

// anyOrder is a time (ms) that no plan in any order is below: a bound of the drive, and over each set of liquids that a day can use, the least work
// in them, a changeover to each but the first, and the refills that they cannot do without. Pins, windows and rinses are not asked about.
func (w *work) anyOrder() int64 {
	if len(w.visits) == 0 {
		return 0
	}
	least := int64(math.MaxInt64)
	table := w.leastWork()
	prices := w.prices()
	detour := w.leastDetour()
	for set := range 1 << w.liquids {
		least = min(least, w.leastWith(uint16(set), table, prices, detour))
	}
	if least == math.MaxInt64 {
		least = 0
	}
	return least + w.leastDrive()
}

// leastWork keeps of each zone and price what it takes by each liquid, and by hand at the end; MaxInt64: it cannot be.
func (w *work) leastWork() (out [][][]int64) {
	for _, price := range w.prices() {
		var zones [][]int64
		for _, v := range w.visits {
			for _, z := range v.zones {
				row := make([]int64, w.liquids+1)
				for i := range row {
					row[i] = math.MaxInt64
				}
				for _, o := range z.options {
					l, ms := int(o.liquid), o.score.ms()
					if l < 0 {
						l = w.liquids
					} else {
						ms += priced(price, o.volume).ms()
					}
					row[l] = min(row[l], ms)
				}
				zones = append(zones, row)
			}
		}
		out = append(out, zones)
	}
	return out
}

// leastWith is the least work with exactly these liquids, and its changeovers and refills; MaxInt64: a zone has none of them.
func (w *work) leastWith(set uint16, table [][][]int64, prices []int64, detour int64) int64 {
	changes := int64(bits.OnesCount16(set))
	if l := w.d.Rig.Line.Holds; l >= 0 && set&(1<<l) != 0 {
		changes--
	}
	sums := make([]int64, len(prices))
	for k := range prices {
		for _, row := range table[k] {
			least := row[w.liquids]
			for s := set; s != 0; s &= s - 1 {
				least = min(least, row[bits.TrailingZeros16(s)])
			}
			if least == math.MaxInt64 {
				return least
			}
			sums[k] += least
		}
		sums[k] += priced(prices[k], int64(bits.OnesCount16(set))*w.room).ms()
	}
	best := int64(math.MaxInt64)
	first := (bits.OnesCount16(set)+len(w.usable)-1)/len(w.usable) - 1
	for refills := int64(max(first, 0)); ; refills++ {
		take := refills * (w.refill + detour)
		most := sums[0] + take
		if most >= best {
			break
		}
		for k := 1; k < len(prices); k++ {
			most = max(most, sums[k]-pricedUp(prices[k], (refills+1)*w.tank).ms()+take)
		}
		best = min(best, most)
		if w.refill+detour == 0 {
			break
		}
	}
	return best + changes*w.change
}

// leastDetour is the least that driving to a refill adds anywhere.
func (w *work) leastDetour() int64 {
	least := int64(math.MaxInt64)
	for i := range w.visits {
		for j := range w.visits {
			least = min(least, w.detour(i, j))
		}
	}
	return least
}

// leastDrive is a bound of the way through all places: the least tree with a loop at the base, with weights on the places that make it as long as
// can be (Held and Karp 1970). All is in whole numbers, so the bound is exact.
func (w *work) leastDrive() int64 {
	n := len(w.leg)
	if n < 3 {
		return 2 * w.leg[0][n-1]
	}
	weights, degree := make([]int64, n), make([]int64, n)
	best, step := int64(0), int64(0)
	for i := range n {
		step = max(step, w.leg[w.base][i]/4)
	}
	for range 60 {
		for range 3 {
			length := w.tree(weights, degree)
			best = max(best, length)
			done := true
			for i := range weights {
				weights[i] += step * (degree[i] - 2)
				done = done && degree[i] == 2
			}
			if done {
				return best
			}
		}
		step = step * 9 / 10
	}
	return best
}

// tree is the length of the least tree over the visits with the two shortest ways to the base, less the weights; degree counts the ways at a place.
func (w *work) tree(weights, degree []int64) (length int64) {
	way := func(i, j int) int64 { return w.leg[i][j] + weights[i] + weights[j] }
	n := w.base
	near, from, in := make([]int64, n), make([]int, n), make([]bool, n)
	for i := range degree {
		degree[i] = 0
		length -= 2 * weights[i]
	}
	for i := range near {
		near[i], from[i] = math.MaxInt64, -1
	}
	near[0] = 0
	for range n {
		next := -1
		for i := range n {
			if !in[i] && (next < 0 || near[i] < near[next]) {
				next = i
			}
		}
		in[next] = true
		if f := from[next]; f >= 0 {
			length += near[next]
			degree[f]++
			degree[next]++
		}
		for i := range n {
			if c := way(next, i); !in[i] && c < near[i] {
				near[i], from[i] = c, next
			}
		}
	}
	a, b := -1, -1
	for i := range n {
		switch {
		case a < 0 || way(w.base, i) < way(w.base, a):
			a, b = i, a
		case b < 0 || way(w.base, i) < way(w.base, b):
			b = i
		}
	}
	degree[a]++
	degree[b]++
	degree[w.base] = 2
	return length + way(w.base, a) + way(w.base, b)
}
