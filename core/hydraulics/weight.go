package hydraulics

import (
	"math"

	"example.com/tintline/core/measure"
)

// WaterWeight is what so much water of c degrees C weighs.
func WaterWeight(v Gallons, c float64) measure.Mass {
	return measure.Kilograms(float64(v) * cubicMetre * WaterAt(c).Density)
}

// DryWeight estimates an empty hose from its wall: pi/4 (outside^2 - bore^2) length at an assumed density of 0.047 lb/in3.
// 0 if the outside is not wider than the bore.
func DryWeight(bore, outside, length measure.Length) measure.Mass {
	if outside <= bore {
		return 0
	}
	d, o := bore.Inches(), outside.Inches()
	return measure.Pounds(math.Pi / 4 * (float64(o*o) - float64(d*d)) * length.Inches() * hoseDensity)
}
