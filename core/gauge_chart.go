package core

import (
	"fmt"
	"math/big"

	"example.com/tintline/core/measure"
)

// VolumeAt is what a compartment holds when its gauge stands at a mark: one of its chart, or a figure that lies
// between two marks that are figures, on a straight line between their volumes. The error is a Problem that names
// the range of the chart.
func (c *RigCompartment) VolumeAt(mark string) (measure.Volume, error) {
	if len(c.Marks) == 0 {
		return 0, refuse("Give the gallons, or enter the chart with the rig.", "The gauge of %c has no chart of marks.", c.Letter)
	}
	for _, m := range c.Marks {
		if m.Mark == mark {
			return m.Volume, nil
		}
	}
	at, figure := measure.ReadFigure(mark)
	var low GaugeMark
	var lowAt *big.Rat
	for _, m := range c.Marks {
		here, ok := measure.ReadFigure(m.Mark)
		if !ok {
			continue
		}
		if figure && lowAt != nil {
			if v, between := measure.Between(at, lowAt, here, low.Volume, m.Volume); between {
				return v, nil
			}
		}
		if figure && at.Cmp(here) == 0 {
			return m.Volume, nil
		}
		low, lowAt = m, here
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

// resolveGauge gives a reading by its mark the volume of the chart. A volume that is given stays: the entry holds
// what was booked, whatever a later chart says.
func (s *state) resolveGauge(f *GaugeRead) (Fact, error) {
	if f.Volume.Known || f.Mark == "" {
		return f, nil
	}
	set := s.RigCompartment(f.Compartment)
	if set == nil {
		return f, nil // admission names what is missing
	}
	v, err := set.VolumeAt(f.Mark)
	if err != nil {
		return nil, err
	}
	c := *f
	c.Volume = Known(v)
	return &c, nil
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
