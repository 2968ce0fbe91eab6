package core

import (
	"fmt"
	"math/big"

	"example.com/tintline/core/measure"
)

// VolumeAt is what a compartment holds when its gauge stands at a mark: one of its chart, or a figure that lies
// between two marks that are figures, on the curve through all of these (hydraulics.Curve), rounded to whole nanolitres. A
// mark that is a sign, such as full, is read as it stands and bends no curve. The error is a Problem that names the range of
// the chart.
func (c *RigCompartment) VolumeAt(mark string) (measure.Volume, error) {
	if len(c.Marks) == 0 {
		return 0, refuse("Give the gallons, or enter the chart with the rig.", "The gauge of %c has no chart of marks.", c.Letter)
	}
	for _, m := range c.Marks {
		if m.Mark == mark {
			return m.Volume, nil
		}
	}
	if at, figure := measure.ReadFigure(mark); figure {
		if v, ok := c.figures().volumeAt(at); ok {
			return v, nil
		}
	}
	return 0, refuse(fmt.Sprintf("Read a mark of the chart, %s, or give the gallons.", c.markRange()), "The chart of %c does not reach the mark %q.", c.Letter, mark)
}

// markRange names the marks from the lowest to the highest.
func (c *RigCompartment) markRange() string {
	first, last := c.Marks[0].Mark, c.Marks[len(c.Marks)-1].Mark
	if first == last {
		return "which has only " + first
	}
	return first + " to " + last
}

func admitMarks(c RigCompartment) error {
	var names []string
	var before GaugeMark
	var figure *big.Rat
	var figureMark string
	for i, m := range c.Marks {
		switch {
		case m.Mark == "" || len([]rune(m.Mark)) > LongestName:
			return refuse(fmt.Sprintf("Write it as it stands on the gauge, in 1 to %d letters.", LongestName), "Mark %d of the gauge of %c has %d letters.", i+1, c.Letter, len([]rune(m.Mark)))
		case m.Volume < 0 || m.Volume > c.Capacity:
			return refuse(fmt.Sprintf("Give 0 to %s gal.", c.Capacity.Text()), "Mark %s of the gauge of %c stands for %s gal.", m.Mark, c.Letter, m.Volume.Text())
		case i > 0 && m.Volume <= before.Volume:
			return refuse("Give the marks from the lowest up, each with more than the one before.", "Mark %s of the gauge of %c stands for %s gal, mark %s below it for %s gal.", m.Mark, c.Letter, m.Volume.Text(), before.Mark, before.Volume.Text())
		}
		if at, ok := measure.ReadFigure(m.Mark); ok {
			if figure != nil && at.Cmp(figure) <= 0 {
				return refuse("Give the marks from the lowest up.", "Mark %s of the gauge of %c comes after mark %s.", m.Mark, c.Letter, figureMark)
			}
			figure, figureMark = at, m.Mark
		}
		before, names = m, append(names, m.Mark)
	}
	return unique("mark of the gauge of "+string(c.Letter), names)
}

// NearestMark is the mark of the chart that is nearest to a volume, the lower of two; empty without a chart.
func (c *RigCompartment) NearestMark(v measure.Volume) string {
	best, off := "", measure.Volume(0)
	for _, m := range c.Marks {
		d := max(m.Volume-v, v-m.Volume)
		if best == "" || d < off {
			best, off = m.Mark, d
		}
	}
	return best
}
