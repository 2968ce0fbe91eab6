package hydraulics

import "math"

// ShareForStrength is the share of new liquid from which the strength of a product is within a share of what it should
// be, when the old liquid has it at ratio times the strength of the new: 1 - within/|ratio - 1|. From 8 times to 1 within
// 5 per cent takes 0.993, the other way 0.943. 0 where the old liquid itself is within.
func ShareForStrength(ratio, within float64) float64 {
	off := math.Abs(ratio - 1)
	if off <= within {
		return 0
	}
	return 1 - within/off
}

// Contamination is what a volume of A does to B: the strength of A's product in B (in the unit of conc, per gallon), its
// dose where B is laid at carrier gallons on an area, and that as a share of the label's rate on the same area. 0 where B
// would hold nothing; no label rate gives no share.
func Contamination(of, into Gallons, conc, carrier, label float64) (strength, dose, share float64) {
	if all := float64(of + into); all > 0 {
		strength = float64(of) * conc / all
	}
	dose = strength * carrier
	if label > 0 {
		share = dose / label
	}
	return strength, dose, share
}
