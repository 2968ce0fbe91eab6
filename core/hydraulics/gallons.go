package hydraulics

import "example.com/tintline/core/measure"

// Gallons is a volume in US gallons that is an estimate and not an account.
type Gallons float64

// cubicMetre is a US gallon in cubic metres: 231 cubic inches (NIST Handbook 44, Appendix C).
const cubicMetre = 231 * 0.0254 * 0.0254 * 0.0254

// Of gives an account's volume as an estimate.
func Of(v measure.Volume) Gallons { return Gallons(v.Gallons()) }

// Volume rounds g to whole nanolitres, half to even. It stops at the ends of int64; NaN gives 0.
func (g Gallons) Volume() measure.Volume { return measure.Gallons(float64(g)) }

// Seconds is how long g takes at flow q; 0 if q is 0.
func (g Gallons) Seconds(q measure.Flow) float64 {
	if q == 0 {
		return 0
	}
	return float64(g) / q.GPM() * 60
}

// Text prints g as measure prints a volume, without the unit.
func (g Gallons) Text() string { return g.Volume().Text() }
