package fluid

import (
	"math"

	"example.com/tintline/core/measure"
)

// Cell is the dead volume of pump, strainer and manifold, in which old and new liquid blend at once.
type Cell struct {
	Size   measure.Volume
	Liquid Liquid
}

// void is how much air the cell holds; it fills before anything leaves.
func (c *Cell) void() measure.Volume { return max(c.Size-c.Liquid.Volume, 0) }

// fill takes of what comes in what the cell holds of air, and returns the rest.
func (c *Cell) fill(in Liquid) (rest Liquid) {
	gap := c.void()
	if gap == 0 {
		return in
	}
	fill, rest := in.Split(gap)
	c.Liquid = c.Liquid.Plus(fill)
	return rest
}

// exchange pushes in through the full cell and returns the same volume that left it.
//
// For a stirred cell of volume V with inflow strength ci, after a volume v has passed
// (Levenspiel 1999, mixed-flow step response):
//
//	amount out = ci*v + (cm - ci)*V*(1 - e^(-v/V)),   cell ends at ci + (cm - ci)*e^(-v/V)
//
// Each amount is rounded to its unit once; what the cell keeps is the exact remainder, so mass is kept
// for any step.
func (c *Cell) exchange(in Liquid) Liquid {
	v := in.Volume
	if v <= 0 {
		return Liquid{}
	}
	if c.Size == 0 || c.Liquid.Volume == 0 {
		return in
	}
	x := float64(v) / float64(c.Liquid.Volume)
	_, gone := decay(x)
	out := Liquid{Volume: v}
	was := c.Liquid.From
	out.Holds, c.Liquid.Holds = leaving(c.Liquid.Holds, in.Holds, gone, x)
	out.From, c.Liquid.From = leaving(was, in.From, gone, x)
	if out.From.Sum() != int64(v) {
		total := was.Plus(in.From)
		out.From = settle(out.From, total, int64(v))
		c.Liquid.From = total.Minus(out.From)
	}
	return out
}

// leaving is, part by part, what leaves the cell and what stays of both together. Of a part that no longer comes in at
// least one unit leaves, so that its last ones do too.
func leaving(cell, in Parts, gone, x float64) (out, stays Parts) {
	most := len(cell) + len(in)
	room := make(Parts, 2*most) // one piece of memory for both: a round of the pump comes by a thousand times
	out, stays = room[:0:most], room[most:most]
	for a, b := 0, 0; a < len(cell) || b < len(in); {
		var key int32
		var m, i int64
		switch {
		case b == len(in) || (a < len(cell) && cell[a].Key < in[b].Key):
			key, m = cell[a].Key, cell[a].N
			a++
		case a == len(cell) || in[b].Key < cell[a].Key:
			key, i = in[b].Key, in[b].N
			b++
		default:
			key, m, i = cell[a].Key, cell[a].N, in[b].N
			a, b = a+1, b+1
		}
		if m+i == 0 {
			continue
		}
		n := leavingOf(m, i, gone, x)
		if n != 0 {
			out = append(out, Part{key, n})
		}
		if left := m + i - n; left != 0 {
			stays = append(stays, Part{key, left})
		}
	}
	return out, stays
}

// leavingOf is what leaves of m units in the cell and i that come in.
func leavingOf(m, i int64, gone, x float64) int64 {
	f := float64(i) + float64((float64(m)-float64(i)/x)*gone)
	f = math.RoundToEven(f)
	if i == 0 {
		f = max(f, 1)
	}
	n := m + i
	if f < float64(n) { // compared before it is made an integer: beyond int64 that differs by processor
		n = int64(max(f, 0))
	}
	return n
}

// settle makes the origins of a parcel sum to its volume: the difference that rounding left goes to the
// largest part that can take it. It changes p, which nobody shares yet.
func settle(p, total Parts, want int64) Parts {
	for d := want - p.Sum(); d != 0; d = want - p.Sum() {
		best, room := int32(-1), int64(0)
		for _, t := range total {
			r := t.N - p.Of(t.Key)
			if d < 0 {
				r = p.Of(t.Key)
			}
			if r > room {
				best, room = t.Key, r
			}
		}
		if best < 0 {
			return p
		}
		p = p.more(best, max(min(d, room), -room))
	}
	return p
}
