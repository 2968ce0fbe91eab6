package batch

import "math"

// The functions of this file are the bare arithmetic, in any units that agree with one another. What is asked without a book and
// what is asked of the book both come here.

// ToAdd is the product that brings a volume to a strength: volume x strength - what is in it (mass balance). Below 0 there is too
// much in it already.
func ToAdd(volume, strength, have float64) float64 { return float64(volume*strength) - have }

// RightAt is the volume at which what a tank holds of a product has a strength (mass balance); without end where the strength is 0.
func RightAt(have, strength float64) float64 {
	if have == 0 {
		return 0
	}
	return have / strength
}

// Concentrate is how much of a concentrate makes a final amount of a weaker one: C1 V1 = C2 V2.
func Concentrate(final, finalStrength, concentrate float64) float64 {
	return final * finalStrength / concentrate
}

// Pearson is how many parts of a stock and of a diluent make a strength between theirs: each as many as the other is away from it (the
// square of Pearson, also called alligation).
func Pearson(stock, target, diluent float64) (partsStock, partsDiluent float64) {
	return math.Abs(target - diluent), math.Abs(stock - target)
}

// Stretchable is how many times its own volume a rest may become before it lays less than the lowest rate: its strength times what is
// laid on an area, over that rate (mass balance). Below 1 it lays less already.
func Stretchable(strength, delivery, lowest float64) float64 { return strength * delivery / lowest }

// Blended is the strength of two volumes together (mass balance).
func Blended(va, vb, ca, cb float64) float64 {
	return (float64(va*ca) + float64(vb*cb)) / (va + vb)
}

// Strengthened is the volume that a rest has when product alone has made it k times as strong; share is how much of the rest is liquid
// product (mass balance: what is added adds its own volume). ok is false where no product could do that.
func Strengthened(left, share, k float64) (volume float64, ok bool) {
	rest := 1 - float64(k*share)
	if !(rest > 0) {
		return 0, false
	}
	return left * (1 - share) / rest, true
}

// RinseWater is the water in all that leaves a share of the old liquid in a residual after n equal rinses: n r (share^(-1/n) - 1) (mass
// balance).
func RinseWater(residual, share float64, n int) float64 {
	return float64(n) * residual * (math.Pow(share, -1/float64(n)) - 1)
}

// RinsesFor is how many rinses of so much water leave at most a share of the old liquid in a residual; 0 where no number does.
func RinsesFor(residual, each, share float64) int {
	if !(each > 0) || !(share > 0) || !(residual > 0) {
		return 0
	}
	const most = 1000
	left := 1.0
	for n := 1; n <= most; n++ {
		if left *= residual / (residual + each); left <= share*(1+1e-12) {
			return n
		}
	}
	return 0
}
