package hydraulics

import "math"

// Outlet is what leaves the nozzle after the valves were turned, as a function of what has been pushed since: a mixing
// cell washed out by the new liquid, the hose as a plug behind it, and the smear between them. All volumes are what the
// gun pushes. The zero of a field means that there is none.
//
// Turbulent (Levenspiel 1999 for the smear, a stirred cell before it): with x = v - Hose, s = Sigma and m = Cell
//
//	New = N(x/s) - exp(-x/m + s^2/(2 m^2)) N(x/s - s/m)
//
// Laminar: a hose without radial mixing, New = 1 - (Hose/v)^2/4 from half a hose on (Hart, Guymer, Sonnenwald and Stovin
// 2016 find it right for short pipes), and the cell before it, put together exactly by quadrature; Sigma is not used.
type Outlet struct {
	Hose, Sigma Gallons
	// Cell is the effective one, as EffectiveCell gives it.
	Cell    Gallons
	Laminar bool
}

// nothing is a volume below which a smear or a cell is taken as none: it is far below a drop.
const nothing = 1e-12

// parts are the outlet's figures for the pushed volume v: x past the plug's arrival, smear and cell.
func (o Outlet) parts(v float64) (x, s, m float64) {
	x = v - float64(o.Hose)
	if float64(o.Sigma) > nothing {
		s = float64(o.Sigma)
	}
	if float64(o.Cell) > nothing {
		m = float64(o.Cell)
	}
	return x, s, m
}

// Old is the share of old liquid in what leaves when v has been pushed, with full precision where it is small.
func (o Outlet) Old(v Gallons) float64 {
	if o.Laminar && o.Hose > nothing {
		return o.laminarOld(float64(v))
	}
	x, s, m := o.parts(float64(v))
	switch {
	case s == 0 && x <= 0:
		return 1
	case s == 0 && m == 0:
		return 0
	case s == 0:
		return math.Exp(-x / m)
	case m == 0:
		return below(-x / s)
	}
	return min(1, below(-x/s)+washed(x, s, m))
}

// New is the share of new liquid in what leaves when v has been pushed, between 0 and 1; it does not fall as v grows.
func (o Outlet) New(v Gallons) float64 {
	x, s, m := o.parts(float64(v))
	if x < 0 && s > 0 && !o.Laminar {
		// Before the plug nearly all is old: what is new is told from its own small figures.
		f := below(x / s)
		if m > 0 {
			f -= washed(x, s, m)
		}
		return max(0, f)
	}
	return 1 - o.Old(v)
}

// At is what must have been pushed until a share f of what leaves is new: 0 for f of 0 or less, without end for f of 1 or
// more.
func (o Outlet) At(f float64) Gallons {
	switch {
	case !(f > 0):
		return 0
	case f >= 1:
		return Gallons(math.Inf(1))
	}
	enough := func(v float64) bool {
		if f > 0.5 {
			return o.Old(Gallons(v)) <= 1-f
		}
		return o.New(Gallons(v)) >= f
	}
	low, high := 0.0, float64(max(0, o.Hose)+max(0, o.Sigma)+max(0, o.Cell))
	if !(high > 0) {
		return 0
	}
	if _, s, m := o.parts(0); s == 0 && m == 0 && !o.Laminar {
		return o.Hose
	}
	for !enough(high) && high < math.MaxFloat64/4 {
		low, high = high, 2*high
	}
	return Gallons(halving(low, high, enough))
}

// NewGone is the new liquid that has left when v has been pushed: the integral of New. With OldGone it is v.
func (o Outlet) NewGone(v Gallons) Gallons {
	x, s, m := o.parts(float64(v))
	var gone float64
	switch {
	case o.Laminar && o.Hose > nothing:
		gone = o.laminarHoseNew(float64(v))
	case s == 0:
		gone = max(0, x)
	default:
		gone = float64(x*below(x/s)) + float64(s*density(x/s))
	}
	gone -= float64(m * o.New(v))
	return Gallons(min(max(0, gone), max(0, float64(v))))
}

// OldGone is the old liquid that has left when v has been pushed.
func (o Outlet) OldGone(v Gallons) Gallons { return v - o.NewGone(v) }

// OldLeft is the old liquid that still stands in hose and cell when v has been pushed; with OldGone it is what stood there
// at the start, of the cell that part which the gun takes.
func (o Outlet) OldLeft(v Gallons) Gallons { return o.Hose + o.Cell - o.OldGone(v) }
