package hydraulics

import "math"

// Estimate is a figure with its standard uncertainty.
type Estimate struct{ Value, SD float64 }

// Timed is what has gone at a flow in a time, flow and time each with its uncertainty (that of the flow as a share): the
// variances add (JCGM 100:2008, 5.1.2).
func Timed(flow, flowShare, time, timeSD float64) Estimate {
	v := flow * time
	return Estimate{v, math.Hypot(flow*timeSD, v*flowShare)}
}

// With puts a second estimate of the same figure to the first, each weighed by the inverse of its variance (product of
// two normal distributions). One that is known exactly stands.
func (e Estimate) With(o Estimate) Estimate {
	all := float64(e.SD*e.SD) + float64(o.SD*o.SD)
	if all == 0 {
		return e
	}
	k := e.SD * e.SD / all
	return Estimate{e.Value + float64(k*(o.Value-e.Value)), math.Sqrt(e.SD * e.SD * o.SD * o.SD / all)}
}

// SDWithin is the standard deviation of an error, normal about nothing, of which a share lies within so much to either
// side.
func SDWithin(share, within float64) float64 { return within / quantile((1+share)/2) }

// Remaining is what is left in a compartment, in gallons, together with the factor by which the true rate differs from
// the nominal one, and how both are known.
type Remaining struct {
	Volume, Factor float64
	VV, VF, FF     float64 // variances and covariance
}

// Between is the same after a reading that says only that the volume lies from low to high: the moments of the normal
// distribution cut off at both ends, exactly. ok is false where the reading is so far off that it says something else:
// less than one in a million.
func (r Remaining) Between(low, high float64) (after Remaining, ok bool) {
	s := math.Sqrt(r.VV)
	a, b := (low-r.Volume)/s, (high-r.Volume)/s
	z := below(b) - below(a)
	if !(s > 0) || !(z > 1e-6) {
		return r, false
	}
	m := (density(a) - density(b)) / z
	shrink := 1 + float64((float64(a*density(a))-float64(b*density(b)))/z) - float64(m*m)
	g := r.VF / r.VV
	after = Remaining{Volume: r.Volume + float64(s*m), VV: r.VV * shrink}
	after.Factor = r.Factor + float64(g*(after.Volume-r.Volume))
	after.VF = g * after.VV
	after.FF = r.FF - float64(g*r.VF) + float64(g*g*after.VV)
	return after, true
}
