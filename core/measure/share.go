package measure

import (
	"math"
	"math/bits"
	"slices"
)

// LargestRemainder rounds parts to multiples of step so that they add up to total
// rounded to step (the method of largest remainders): printed columns then add up.
// Each part is rounded down; what is missing goes, a step at a time, to the parts
// that lost most, the earlier one first on a tie. When the parts do not add up to
// total, the difference is spread over them in the same order. A part that is no
// number counts as 0. Without parts, with a step that is not above 0, with a total
// that is no number, or with figures beyond 2^53 steps, parts are returned as they are.
func LargestRemainder(parts []float64, total, step float64) []float64 {
	out := slices.Clone(parts)
	// Dividing by a whole number gives the float64 nearest to the decimal figure,
	// which multiplying by 0.01 does not.
	inverse := math.Round(1 / step)
	exact := math.Abs(inverse*step-1) < 1e-9
	steps := func(f float64) float64 {
		if exact {
			return f * inverse
		}
		return f / step
	}
	goal := math.RoundToEven(steps(total))
	if len(parts) == 0 || !(step > 0) || math.IsInf(step, 0) || !(math.Abs(goal) < 1<<53) {
		return out
	}
	counts, rest := make([]int64, len(parts)), make([]float64, len(parts))
	missing := int64(goal)
	for i, p := range parts {
		s := steps(p)
		if math.IsNaN(s) {
			s = 0
		}
		if !(math.Abs(s) < 1<<53) {
			return out
		}
		// A figure that misses its multiple by rounding only stands on it.
		if near := math.Round(s); math.Abs(s-near) < 1e-9 {
			s = near
		}
		down := math.Floor(s)
		// To a millionth of a step, so that equal parts tie in spite of rounding.
		counts[i], rest[i] = int64(down), math.Round((s-down)*1e6)
		missing -= int64(down)
	}
	spread(counts, missing, largestFirst(rest))
	for i, n := range counts {
		if exact {
			out[i] = float64(n) / inverse
		} else {
			out[i] = float64(n) * step
		}
	}
	return out
}

// spread adds missing to the counts: the same to each, and the odd ones to those
// that come first in order. Fewer than none takes from those that come last.
func spread(counts []int64, missing int64, order []int) {
	n := int64(len(counts))
	each, odd := missing/n, missing%n
	if odd < 0 {
		each, odd = each-1, odd+n
	}
	for place, i := range order {
		counts[i] += each
		if int64(place) < odd {
			counts[i]++
		}
	}
}

// largestFirst gives the indices of rest, largest first, earlier first on a tie.
func largestFirst[T int64 | uint64 | float64](rest []T) []int {
	order := make([]int, len(rest))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case rest[a] > rest[b]:
			return -1
		case rest[a] < rest[b]:
			return 1
		}
		return 0
	})
	return order
}

// Apportion shares total by weights into whole units that add up to total exactly
// (the method of largest remainders; the earlier one first on a tie). A weight
// below 0 counts as 0; if all are 0 the shares are equal. Without weights there is
// no share. Weights that together pass int64 are halved until they do not.
func Apportion(weights []int64, total int64) []int64 {
	shares := make([]int64, len(weights))
	if len(weights) == 0 {
		return shares
	}
	w, sum := fitting(weights)
	size := magnitude(total)
	rest := make([]uint64, len(w))
	missing := size
	for i := range w {
		// w <= sum, so the quotient is at most size and cannot pass 64 bits.
		hi, lo := bits.Mul64(size, w[i])
		q, r := bits.Div64(hi, lo, sum)
		shares[i], rest[i] = int64(q), r
		missing -= q
	}
	// Fewer are missing than there are parts: each part lost less than one.
	for _, i := range largestFirst(rest)[:missing] {
		shares[i]++
	}
	if total < 0 {
		for i := range shares {
			shares[i] = -shares[i]
		}
	}
	return shares
}

// fitting gives the weights without those below 0, halved until their sum fits
// int64, and that sum, which is never 0.
func fitting(weights []int64) (w []uint64, sum uint64) {
	w = make([]uint64, len(weights))
	for halvings := 0; ; halvings++ {
		sum = 0
		over := false
		for i, n := range weights {
			w[i] = uint64(max(n, 0)) >> halvings
			sum += w[i]
			over = over || sum > math.MaxInt64
		}
		if !over {
			break
		}
	}
	if sum > 0 {
		return w, sum
	}
	for i := range w {
		w[i] = 1
	}
	return w, uint64(len(w))
}
