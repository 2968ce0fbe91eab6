package hydraulics

import (
	"math"

	"example.com/tintline/core/measure"
)

// Law is how friction becomes loss.
type Law struct {
	// Roughness in metres, for Darcy and Weisbach.
	Roughness float64
	// Friction is the factor of Darcy by Reynolds number and relative roughness; nil: Friction.
	Friction func(re, rough float64) float64
	// C of Hazen and Williams; 0: Darcy and Weisbach.
	C float64
	// Factor on the friction of the hose, not on its fittings.
	Factor float64
}

// PlasticRoughness is that of a plastic hose, in metres.
func PlasticRoughness() float64 { return roughness }

// Plastic is a smooth plastic hose by Darcy and Weisbach with a factor on its friction.
func Plastic(factor float64) Law { return Law{Roughness: roughness, Factor: factor} }

// Head is a pressure as metres of this water.
func (w Water) Head(p measure.Pressure) float64 { return float64(p) / (w.Density * gravity) }

// Pressure is that of so many metres of this water.
func (w Water) Pressure(head float64) measure.Pressure {
	return measure.Pressure(head * w.Density * gravity)
}

// Loss is the pressure lost along the pipe at flow q and in fittings whose loss coefficients sum to k, each taken at the
// speed in the bore. Darcy (1857) and Weisbach (1845): (f L/d + k) rho u^2/2. Hazen and Williams (1905) in feet and cubic
// feet a second: h = 4.727 C^-1.852 d^-4.871 L q^1.852, with the constant of the EPANET manual (US EPA). 0 for no flow or no
// bore.
func (p Pipe) Loss(q measure.Flow, k float64, w Water, law Law) measure.Pressure {
	if !(q > 0) || !(p.Bore > 0) {
		return 0
	}
	u := p.Velocity(q)
	fittings := k * w.Density * u * u / 2
	if law.C > 0 {
		return measure.Pressure(float64(law.Factor*float64(w.Pressure(p.hazenWilliams(q, law.C)))) + fittings)
	}
	factor := law.Friction
	if factor == nil {
		factor = Friction
	}
	f := factor(p.Reynolds(q, w), law.Roughness/p.Bore)
	return measure.Pressure(float64(law.Factor*f*p.Length/p.Bore*w.Density*u*u/2) + fittings)
}

// foot is a foot in metres.
const foot = 0.3048

// hazenWilliams is the head lost, in metres.
func (p Pipe) hazenWilliams(q measure.Flow, c float64) float64 {
	cfs := cubicMetres(q) / (foot * foot * foot)
	return 4.727 * math.Pow(c, -1.852) * math.Pow(p.Bore/foot, -4.871) * p.Length * math.Pow(cfs, 1.852)
}

// FlowAt is the flow whose loss is a pressure at the inlet, the outlet open: the inverse of Loss, by halving. 0 for no
// pressure or no bore.
func (p Pipe) FlowAt(inlet measure.Pressure, k float64, w Water, law Law) measure.Flow {
	if !(inlet > 0) || !(p.Bore > 0) || math.IsInf(float64(inlet), 0) {
		return 0
	}
	enough := func(q measure.Flow) bool { return p.Loss(q, k, w, law) >= inlet }
	low, high := measure.Flow(0), p.FlowFor(1, w)
	for !enough(high) {
		if low, high = high, 2*high; high > 1e30 {
			return 0 // a pipe that costs nothing passes anything
		}
	}
	return halving(low, high, enough)
}

// StaticHead is the pressure that a height of water costs, uphill; NWCG gives 0.434 psi a foot.
func StaticHead(height measure.Length, c float64) measure.Pressure {
	return WaterAt(c).Pressure(height.Metres())
}

// Loss is the pressure lost along a hose at flow q with fittings of k in all, water of c degrees C and a factor on the
// hose's friction (1: a smooth pipe, which runs about 9 per cent low; HoseFactor until a pair of pressures is measured).
func Loss(q measure.Flow, bore, length measure.Length, k, c, factor float64) measure.Pressure {
	return PipeOf(bore, length).Loss(q, k, WaterAt(c), Plastic(factor))
}

// LossRange is Loss with the widest and the narrowest bore that the hose may have: most of what is not known of it, for
// loss goes with the bore to the power of -4.8.
func LossRange(q measure.Flow, bore, length measure.Length, k, c, factor float64) (low, high measure.Pressure) {
	narrow, wide := PipeOf(bore, length).Range()
	w, law := WaterAt(c), Plastic(factor)
	return wide.Loss(q, k, w, law), narrow.Loss(q, k, w, law)
}

// FlowAt is the flow that a pressure at the inlet drives through a hose, the inverse of Loss.
func FlowAt(inlet measure.Pressure, bore, length measure.Length, k, c, factor float64) measure.Flow {
	return PipeOf(bore, length).FlowAt(inlet, k, WaterAt(c), Plastic(factor))
}

// FactorOf is the factor on a hose's friction from a measured pair of pressures, at the pump and at the gun, at a flow and
// at the same height; ok is false where the pair says nothing: no loss, no flow, no length.
func FactorOf(q measure.Flow, bore, length measure.Length, pump, gun measure.Pressure, c float64) (factor float64, ok bool) {
	smooth := Loss(q, bore, length, 0, c, 1)
	if !(smooth > 0) || !(pump > gun) || math.IsInf(float64(pump-gun), 0) {
		return 0, false
	}
	return float64(pump-gun) / float64(smooth), true
}
