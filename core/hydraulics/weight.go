package hydraulics

import (
	"math"

	"example.com/tintline/core/measure"
)

// Weight is what so much of this water weighs, in kilograms.
func (w Water) Weight(v Gallons) float64 { return float64(v) * cubicMetre * w.Density }

// WaterWeight is what so much water of c degrees C weighs.
func WaterWeight(v Gallons, c float64) measure.Mass { return measure.Kilograms(WaterAt(c).Weight(v)) }

// poundPerCubicInch is a pound a cubic inch in kilograms a cubic metre (NIST SP 811 (2008), Appendix B.8).
const poundPerCubicInch = 0.45359237 / (0.0254 * 0.0254 * 0.0254)

// DryWeight estimates the empty hose around this bore from its wall, in kilograms: pi/4 (outside^2 - bore^2) length, the
// outside diameter in metres, at an assumed density of 0.047 lb/in3. 0 if the outside is not wider than the bore.
func (p Pipe) DryWeight(outside float64) float64 {
	if !(outside > p.Bore) {
		return 0
	}
	return math.Pi / 4 * (outside - p.Bore) * (outside + p.Bore) * p.Length * hoseDensity * poundPerCubicInch
}

// DryWeight is Pipe.DryWeight of a hose.
func DryWeight(bore, outside, length measure.Length) measure.Mass {
	return measure.Kilograms(PipeOf(bore, length).DryWeight(outside.Metres()))
}
