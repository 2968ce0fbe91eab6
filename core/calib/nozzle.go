package calib

import "math"

// Flow through a nozzle goes with the square root of the pressure at it (the law of an orifice, Torricelli 1643; the EPA
// and NASDA core manual, chapter 11, gives it for nozzles). It holds within the pressures that a tip is made for.

// FlowAt is the flow at another pressure, in the unit of flow.
func FlowAt(flow, pressure, other float64) float64 { return float64(flow * math.Sqrt(other/pressure)) }

// PressureFor is the pressure that another flow takes, in the unit of pressure.
func PressureFor(pressure, flow, other float64) float64 {
	ratio := other / flow
	return float64(pressure * PressureRatio(ratio))
}

// PressureRatio is by what the pressure has to be multiplied so that the flow is multiplied by a ratio.
func PressureRatio(flow float64) float64 { return float64(flow * flow) }

// FlowRatio is by what the flow is multiplied if the pressure is multiplied by a ratio.
func FlowRatio(pressure float64) float64 { return math.Sqrt(pressure) }
