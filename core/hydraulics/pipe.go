package hydraulics

import (
	"math"

	"example.com/tintline/core/measure"
)

// Pipe is a round bore of a length, in metres, unrounded.
type Pipe struct{ Bore, Length float64 }

// PipeOf is a pipe of a bore and a length.
func PipeOf(bore, length measure.Length) Pipe {
	return Pipe{Bore: bore.Metres(), Length: length.Metres()}
}

// Area is its section in square metres.
func (p Pipe) Area() float64 { return math.Pi / 4 * p.Bore * p.Bore }

// Volume is what it holds.
func (p Pipe) Volume() Gallons { return Gallons(p.Area() * p.Length / cubicMetre) }

// cubicMetres is a flow in cubic metres a second.
func cubicMetres(q measure.Flow) float64 { return float64(q) * 1e-12 }

// Velocity is the mean speed at flow q, in metres a second; 0 for no bore.
func (p Pipe) Velocity(q measure.Flow) float64 {
	if !(p.Bore > 0) {
		return 0
	}
	return cubicMetres(q) / p.Area()
}

// Reynolds is u d / nu at flow q; 0 for no bore.
func (p Pipe) Reynolds(q measure.Flow, w Water) float64 { return p.Velocity(q) * p.Bore / w.Viscosity }

// FlowFor is the flow of a Reynolds number.
func (p Pipe) FlowFor(re float64, w Water) measure.Flow {
	return measure.Flow(re * w.Viscosity * math.Pi / 4 * p.Bore * 1e12)
}

// MinFlow is the flow from which the bore is surely turbulent, Re 4,000: below it a changeover is not clean.
func (p Pipe) MinFlow(w Water) measure.Flow { return p.FlowFor(turbulentFrom, w) }

// HoseVolume is what a hose of a bore and a length holds by geometry.
func HoseVolume(bore, length measure.Length) Gallons { return PipeOf(bore, length).Volume() }

// Velocity is the mean speed in a bore at flow q; 0 for no bore.
func Velocity(q measure.Flow, bore measure.Length) measure.Speed {
	return measure.Speed(math.Round(PipeOf(bore, 0).Velocity(q) * 1e6))
}

// Reynolds is the Reynolds number of water of c degrees C in a bore at flow q; 0 for no bore.
func Reynolds(q measure.Flow, bore measure.Length, c float64) float64 {
	return PipeOf(bore, 0).Reynolds(q, WaterAt(c))
}

// MinFlow is the flow for Re 4,000 in a bore with water of c degrees C.
func MinFlow(bore measure.Length, c float64) measure.Flow { return PipeOf(bore, 0).MinFlow(WaterAt(c)) }

// Turbulent says whether a flow of this Reynolds number is surely turbulent: 4,000 or more.
func Turbulent(re float64) bool { return re >= turbulentFrom }

// IsLaminar says whether a flow of this Reynolds number is surely laminar: below 2,300.
func IsLaminar(re float64) bool { return re < laminarBelow }
