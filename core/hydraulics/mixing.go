package hydraulics

import "math"

// Washout is the share of the old liquid left in a mixed volume that so many gallons have passed: e^(-passed/volume)
// (mass balance). Without a volume nothing is left of it.
func Washout(volume, passed Gallons) float64 {
	if volume <= 0 {
		return 0
	}
	return math.Exp(-float64(passed / volume))
}

// Rinses is the share of the old liquid left after equal rinses, of which each is mixed with the residual and run out down to
// it (mass balance). n is 1 or more; total is all the rinse water.
func Rinses(residual, total Gallons, n int) float64 {
	each := residual / (residual + total/Gallons(float64(n)))
	share := 1.0
	for range n {
		share *= float64(each)
	}
	return share
}

// Heel is the strength of a tank of which a heel of one strength was filled up to its capacity with liquid of another.
func Heel(capacity, heel Gallons, heelStrength, newStrength float64) float64 {
	return (float64(float64(heel)*heelStrength) + float64(float64(capacity-heel)*newStrength)) / float64(capacity)
}

// HeelNeeds is the product that brings the filled tank to a strength, in the strength's product; below 0 it is already too
// strong.
func HeelNeeds(capacity, heel Gallons, heelStrength, wanted float64) float64 {
	return float64(float64(capacity)*wanted) - float64(float64(heel)*heelStrength)
}

// Gaining is a mixed tank that liquid of one strength flows into and whose own flows out. Flows are in gallons a minute.
type Gaining struct {
	Volume     Gallons
	Product    float64 // in it at the start, in any unit
	In, Out    float64 // gal/min
	InStrength float64 // product in a gallon
}

// After is the tank so many minutes later: m = c V + (m0 - c V0)(V/V0)^(-out/s) with s = in - out; where s is 0 the
// product decays (mass balance). ok is false where the tank is dry before.
func (g Gaining) After(minutes float64) (volume Gallons, product float64, ok bool) {
	s := g.In - g.Out
	v0 := float64(g.Volume)
	v := v0 + float64(s*minutes)
	if !(v > 0) || !(v0 > 0) {
		return Gallons(max(v, 0)), 0, false
	}
	rest := g.Product - float64(g.InStrength*v0)
	return Gallons(v), float64(g.InStrength*v) + float64(rest*turnover(v0, s, g.Out, minutes)), true
}

// turnover is what is left of an old content: (V/V0)^(-out/s), which goes over into e^(-out t/V0) as s goes to 0. The
// logarithm of 1 + s t/V0 keeps its digits where s is small.
func turnover(v0, s, out, minutes float64) float64 {
	grown := s * minutes / v0
	if math.Abs(grown) < 1e-12 {
		return math.Exp(-out * minutes / v0)
	}
	return math.Exp(-out / s * math.Log1p(grown))
}

// Series are two mixed tanks that one flow passes, clean water into the first: what each holds of a product after so many
// minutes. a and b are their gallons, product what the first holds at the start; flow is in gallons a minute.
func Series(a, b Gallons, product, flow, minutes float64) (inA, inB float64) {
	ka, kb := flow/float64(a), flow/float64(b)
	inA = product * math.Exp(-ka*minutes)
	if math.Abs(ka-kb) < 1e-12*ka {
		return inA, product * ka * minutes * math.Exp(-ka*minutes)
	}
	// expm1 of the small difference keeps the digits where the tanks are almost equal.
	return inA, product * ka / (kb - ka) * -math.Expm1(-(kb-ka)*minutes) * math.Exp(-ka*minutes)
}
