package hydraulics

import "math"

// UniformSD is the standard uncertainty of a figure that is known to a step: half of it over the root of three, 0.29 of a
// step (JCGM 100:2008, 4.3.7 and F.2.2.1). It is in the unit of the step.
func UniformSD(step float64) float64 { return step / math.Sqrt(12) }

// GaugeSD is the standard uncertainty of a gauge reading in the unit of the volume: slope is how much the volume rises by
// one of the mark, step how finely a mark can be told (dV/dh times the step over the root of 12), tilt what the ground
// makes it read wrong.
func GaugeSD(slope, step, tilt float64) float64 {
	r := float64(slope * UniformSD(step))
	return math.Sqrt(float64(r*r) + float64(tilt*tilt))
}

// TiltGallons is how wrong a gauge reads that is off the middle of a tank along the slope of the ground: plan area (square
// inches) times how far off it is times the slope (a share: 0.05 is 5 per cent; the tangent of its angle). Geometry.
func TiltGallons(planSquareInches float64, off Inches, slope float64) Gallons {
	return Gallons(planSquareInches * math.Abs(float64(off)) * slope / cubicInches)
}
