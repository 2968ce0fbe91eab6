package hydraulics

import "math"

// In a laminar hose without radial mixing nothing arrives before half a hose is pushed, and from there on the share
// (Hose/v)^2/4 is still old.

// hoseOld is the old share behind the hose alone.
func (o Outlet) hoseOld(v float64) float64 {
	h := float64(o.Hose)
	if v <= h/2 {
		return 1
	}
	return h * h / (4 * v * v)
}

// laminarHoseNew is the new liquid that has left the hose alone.
func (o Outlet) laminarHoseNew(v float64) float64 {
	h := float64(o.Hose)
	if v <= h/2 {
		return 0
	}
	return v - h + h*h/(4*v)
}

// laminarOld is the old share behind cell and hose: that of the hose, and for each stay t in it what of the cell was still
// old when that liquid came in, integral h^2/(2 t^3) exp(-(v-t)/m) dt from h/2 to v. It is summed from v down, in steps no
// longer than the cell and than a part of t, by Gauss and Legendre; what is older than forty cells is nothing.
func (o Outlet) laminarOld(v float64) float64 {
	h, m := float64(o.Hose), float64(o.Cell)
	old := o.hoseOld(v)
	// A cell of a billionth of what was pushed changes nothing, and its steps would be lost in rounding.
	if !(m > nothing) || m < 1e-9*v || v <= h/2 {
		return old
	}
	for high := v; high > h/2 && v-high < 40*m; {
		low := max(h/2, high-min(m, high/4))
		half, mid := (high-low)/2, (high+low)/2
		sum := 0.0
		for i, node := range gaussNodes {
			for _, t := range []float64{mid - float64(half*node), mid + float64(half*node)} {
				sum += float64(gaussWeights[i] * math.Exp((t-v)/m) / (t * t * t))
			}
		}
		old += float64(half * sum * h * h / 2)
		high = low
	}
	return min(1, old)
}

// Nodes and weights of the Gauss-Legendre rule of eight points (Abramowitz and Stegun 1964, table 25.4).
var (
	gaussNodes   = [4]float64{0.183434642495650, 0.525532409916329, 0.796666477413627, 0.960289856497536}
	gaussWeights = [4]float64{0.362683783378362, 0.313706645877887, 0.222381034453374, 0.101228536290376}
)
