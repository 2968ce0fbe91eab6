package calib

import "example.com/tintline/core/measure"

// The formulas of this room take and give base units: um, mm2, s, nL, ng, nL/s. They are geometry and the definition of
// a rate; the command line calls them with what was typed, before any of it is rounded.

// square is how many um2 are a mm2.
const square = 1e6

// The plot of the ounce method is an acre over 128: as many fluid ounces as are caught on it are gallons on an acre,
// because a gallon has 128 of them (Ohio State extension, FABE-520, 2016).
const ounceShare = 128

// OuncePlot is the plot of the ounce method in mm2.
func OuncePlot() float64 {
	acre, _ := measure.Factor("area", "acre")
	return acre / ounceShare
}

// AreaOf is the area of a course that is so wide, mm2.
func AreaOf(course, width float64) float64 { return float64(course*width) / square }

// CourseFor is how long a course has to be so that it covers an area, um.
func CourseFor(area, width float64) float64 { return float64(area*square) / width }

// SpeedOf is the speed over a course, um/s.
func SpeedOf(course, seconds float64) float64 { return course / seconds }

// SecondsFor is how long a course takes at a speed, s.
func SecondsFor(course, speed float64) float64 { return course / speed }

// LaidBy is what a flow puts on each mm2 at a speed over a width, nL/mm2.
func LaidBy(flow, speed, width float64) float64 { return flow / AreaOf(speed, width) }

// LaidOn is what a catch of so many seconds puts on each mm2 of an area that is covered in seconds, nL/mm2 or ng/mm2.
func LaidOn(caught, caughtFor, area, seconds float64) float64 {
	if caughtFor == seconds {
		return caught / area
	}
	return float64(caught*seconds) / caughtFor / area
}

// PaceOf is the area covered in a second, mm2, of a width at a speed, of which a share is spent working
// (Iowa State extension, PM 696, 2001: field efficiency).
func PaceOf(width, speed, share float64) float64 { return float64(AreaOf(speed, width) * share) }

// OverBySlower is by what share more goes down if the speed falls by a share and the flow stays: what is laid goes with
// one over the speed.
func OverBySlower(drop float64) float64 { return 1/(1-drop) - 1 }
