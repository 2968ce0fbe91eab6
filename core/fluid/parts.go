package fluid

import (
	"slices"

	"example.com/tintline/core/measure"
)

// Part is an amount N under a key: a product (nL or ng) or an origin (nL).
type Part struct {
	Key int32
	N   int64
}

// Parts is a sparse column of amounts, sorted by key, without zeros. It is never changed in place, so
// that copies of the plumbing may share it.
type Parts []Part

// Of returns the amount under key, 0 if there is none.
func (p Parts) Of(key int32) int64 {
	for _, q := range p {
		if q.Key == key {
			return q.N
		}
	}
	return 0
}

// Plus returns p + q.
func (p Parts) Plus(q Parts) Parts { return p.combine(q, 1) }

// Minus returns p - q.
func (p Parts) Minus(q Parts) Parts { return p.combine(q, -1) }

func (p Parts) combine(q Parts, sign int64) Parts {
	switch {
	case len(q) == 0:
		return p
	case len(p) == 0 && sign > 0 && !slices.ContainsFunc(q, func(x Part) bool { return x.N == 0 }):
		return q
	}
	out := make(Parts, 0, len(p)+len(q))
	i, j := 0, 0
	put := func(k int32, n int64) {
		if n != 0 {
			out = append(out, Part{k, n})
		}
	}
	for i < len(p) || j < len(q) {
		switch {
		case j == len(q) || (i < len(p) && p[i].Key < q[j].Key):
			put(p[i].Key, p[i].N)
			i++
		case i == len(p) || q[j].Key < p[i].Key:
			put(q[j].Key, sign*q[j].N)
			j++
		default:
			put(p[i].Key, p[i].N+sign*q[j].N)
			i, j = i+1, j+1
		}
	}
	return out
}

// Sum adds up all amounts.
func (p Parts) Sum() int64 {
	var s int64
	for _, q := range p {
		s += q.N
	}
	return s
}

// share returns the part of p that goes with v of whole; round is how each amount is rounded to the unit.
func (p Parts) share(v, whole measure.Volume, round func(a, b, c int64) int64) Parts {
	out := make(Parts, 0, len(p))
	for _, q := range p {
		if n := round(q.N, int64(v), int64(whole)); n != 0 {
			out = append(out, Part{q.Key, n})
		}
	}
	return out
}

// shareWhole is share, rounded down, for amounts that make up the whole: what rounding leaves out goes to the parts that
// have the most room left, first come first, so that the result sums to v.
func (p Parts) shareWhole(v, whole measure.Volume) Parts {
	out := p.share(v, whole, measure.MulDiv)
	short := int64(v) - out.Sum()
	for i := 0; short > 0 && i < len(p); i++ {
		give := min(short, p[i].N-out.Of(p[i].Key))
		if give > 0 {
			out = out.more(p[i].Key, give)
			short -= give
		}
	}
	return out
}

// more adds to one amount of a column that nobody shares yet: in place where the amount stays.
func (p Parts) more(key int32, n int64) Parts {
	for i := range p {
		if p[i].Key == key && p[i].N+n != 0 {
			p[i].N += n
			return p
		}
	}
	return p.Plus(Parts{{key, n}})
}

// with returns p with one amount more, or less.
func (p Parts) with(f Part) Parts {
	i := 0
	for i < len(p) && p[i].Key < f.Key {
		i++
	}
	if i == len(p) || p[i].Key != f.Key || p[i].N+f.N == 0 {
		return p.Plus(Parts{f})
	}
	out := make(Parts, len(p))
	copy(out, p)
	out[i].N += f.N
	return out
}

// split parts p into the share that goes with v of whole, rounded half to even, and the rest.
func (p Parts) split(v, whole measure.Volume) (taken, rest Parts) {
	if len(p) == 0 {
		return nil, p
	}
	room := make(Parts, 2*len(p)) // one piece of memory for both: a round of the pump splits a thousand times
	taken, rest = room[:0:len(p)], room[len(p):len(p)]
	for _, q := range p {
		n := measure.MulDivRound(q.N, int64(v), int64(whole))
		if n != 0 {
			taken = append(taken, Part{q.Key, n})
		}
		if n != q.N {
			rest = append(rest, Part{q.Key, q.N - n})
		}
	}
	return taken, rest
}
