package hydraulics

import (
	"math"
	"sort"
)

// Curve goes through points of which both figures rise, rises between them and nowhere leaves the two beside it: the piecewise
// cubic of Fritsch and Carlson (SIAM J. Numer. Anal. 17, 1980) with the slopes of Fritsch and Butland (SIAM J. Sci. Stat.
// Comput. 5, 1984). With two points it is a straight line. It knows sums, products and quotients only, and fuses none, so
// that it gives the same on every processor.
type Curve struct{ x, y, slope []float64 }

// NewCurve goes through the points; ok is false for fewer than two points, or points that do not rise in x. Where y falls
// or stays, the curve does so too.
func NewCurve(x, y []float64) (c *Curve, ok bool) {
	n := len(x)
	if n < 2 || len(y) != n {
		return nil, false
	}
	for i := range n - 1 {
		if !(x[i+1] > x[i]) {
			return nil, false
		}
	}
	c = &Curve{x: append([]float64(nil), x...), y: append([]float64(nil), y...), slope: make([]float64, n)}
	step := func(i int) float64 { return x[i+1] - x[i] }
	rise := func(i int) float64 { return (y[i+1] - y[i]) / step(i) }
	if n == 2 {
		c.slope[0], c.slope[1] = rise(0), rise(0)
		return c, true
	}
	for i := 1; i < n-1; i++ {
		before, after := rise(i-1), rise(i)
		if before == 0 || after == 0 || (before > 0) != (after > 0) {
			continue
		}
		w1 := float64(2*step(i)) + step(i-1)
		w2 := step(i) + float64(2*step(i-1))
		c.slope[i] = (w1 + w2) / (w1/before + w2/after)
	}
	c.slope[0] = endSlope(step(0), step(1), rise(0), rise(1))
	c.slope[n-1] = endSlope(step(n-2), step(n-3), rise(n-2), rise(n-3))
	return c, true
}

// endSlope is the one-sided slope through three points, held to the shape: 0 where it has the wrong sign, and at most three
// times the first rise where the rises differ in sign.
func endSlope(h0, h1, d0, d1 float64) float64 {
	s := (float64((h0+h0+h1)*d0) - float64(h0*d1)) / (h0 + h1)
	switch {
	case s == 0 || d0 == 0 || (s > 0) != (d0 > 0):
		return 0
	case (d1 == 0 || (d0 > 0) != (d1 > 0)) && math.Abs(s) > math.Abs(3*d0):
		return 3 * d0
	}
	return s
}

// At is the figure at x; outside the points it is that of the end.
func (c *Curve) At(x float64) float64 {
	i, t, h := c.piece(x)
	if t <= 0 {
		return c.y[i]
	}
	if t >= 1 {
		return c.y[i+1]
	}
	rise := c.y[i+1] - c.y[i]
	d0, d1 := float64(h*c.slope[i]), float64(h*c.slope[i+1])
	// y0 + t (d0 + t (3 rise - 2 d0 - d1 + t (d0 + d1 - 2 rise)))
	third := d0 + d1 - float64(2*rise)
	second := float64(3*rise) - float64(2*d0) - d1
	in := second + float64(t*third)
	in = d0 + float64(t*in)
	v := c.y[i] + float64(t*in)
	return min(max(v, min(c.y[i], c.y[i+1])), max(c.y[i], c.y[i+1]))
}

// Slope is how much the figure rises by one of x there; outside the points it is that of the end.
func (c *Curve) Slope(x float64) float64 {
	i, t, h := c.piece(x)
	t = min(max(t, 0), 1)
	rise := (c.y[i+1] - c.y[i]) / h
	third := c.slope[i] + c.slope[i+1] - float64(2*rise)
	second := float64(3*rise) - float64(2*c.slope[i]) - c.slope[i+1]
	in := float64(2*second) + float64(3*float64(t*third))
	return c.slope[i] + float64(t*in)
}

// Inverse is the x at which a figure stands, of a curve that rises; ok is false where the curve does not reach it. Where
// the curve is level it is the lowest such x.
func (c *Curve) Inverse(y float64) (x float64, ok bool) {
	n := len(c.y)
	if !(y >= c.y[0] && y <= c.y[n-1]) {
		return 0, false
	}
	i := sort.Search(n, func(i int) bool { return c.y[i] >= y })
	if c.y[i] == y {
		return c.x[i], true
	}
	low, high := c.x[i-1], c.x[i]
	for range 200 {
		mid := low + (high-low)/2
		if mid <= low || mid >= high {
			break
		}
		if c.At(mid) < y {
			low = mid
		} else {
			high = mid
		}
	}
	return high, true
}

// piece is the piece that x lies in, how far along it, and its length.
func (c *Curve) piece(x float64) (i int, t, h float64) {
	i = sort.SearchFloat64s(c.x, x) - 1
	i = min(max(i, 0), len(c.x)-2)
	h = c.x[i+1] - c.x[i]
	return i, (x - c.x[i]) / h, h
}
