package setup

import (
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// roundSteps are the volumes, in gallons, by which a chart is filled: those that a meter is easily stopped at (common practice,
// no source).
var roundSteps = []int64{1, 2, 5, 10, 20, 25, 50, 100, 200, 500, 1000}

const (
	fillMarks  = 15 // about so many marks in the middle of the chart
	closeParts = 5  // the lowest and the highest fifth get them closer: there the shape of a tank changes most
)

// fillSteps are the step in the middle of a tank and the closer one at its bottom and its top.
func fillSteps(capacity measure.Volume) (step, closer measure.Volume) {
	step, closer = measure.USGallon, measure.USGallon
	for _, gal := range roundSteps {
		if v := measure.Volume(gal) * measure.USGallon; v <= capacity/fillMarks {
			step = v
		}
	}
	for _, gal := range roundSteps {
		if v := measure.Volume(gal) * measure.USGallon; v <= step/2 {
			closer = v
		}
	}
	return step, closer
}

// FillPlan lists the volumes at which a gauge is read while its tank is filled with a meter: round steps, closer at the
// bottom and at the top, and the capacity last.
func FillPlan(capacity measure.Volume) []measure.Volume {
	step, closer := fillSteps(capacity)
	var out []measure.Volume
	for v := measure.USGallon; v < capacity; v += measure.USGallon {
		every := step
		if v <= capacity/closeParts || v >= capacity-capacity/closeParts {
			every = closer
		}
		if v%every == 0 {
			out = append(out, v)
		}
	}
	return append(out, capacity)
}

// NextFill is the next volume of the plan above one that is given at which the chart has no mark; false where there is none.
func NextFill(c *core.RigCompartment, above measure.Volume) (measure.Volume, bool) {
	for _, v := range FillPlan(c.Capacity) {
		if v > above && !slices.ContainsFunc(c.Marks, func(m core.GaugeMark) bool { return m.Volume == v }) {
			return v, true
		}
	}
	return 0, false
}

// WithChart is the rig with another chart for the gauge of a compartment; nil where the rig has it not.
func WithChart(b *core.Book, letter byte, marks []core.GaugeMark, unit string) *core.Rig {
	if b.Rig() == nil {
		return nil
	}
	r := rigCopy(b.Rig())
	for i := range r.Compartments {
		if r.Compartments[i].Letter == letter {
			r.Compartments[i].Marks, r.Compartments[i].MarkUnit = marks, unit
			return r
		}
	}
	return nil
}
