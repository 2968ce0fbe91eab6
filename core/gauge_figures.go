package core

import (
	"math"
	"math/big"

	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// figures are the marks of a chart that are figures, from the lowest up, with the curve through them.
type figures struct {
	marks []GaugeMark
	at    []*big.Rat
	x     []float64
	curve *hydraulics.Curve // nil for fewer than two
}

// figures makes the curve of a chart. Its figures go over into floats once, as the nearest ones; from there on the curve has
// sums, products and quotients only, so that each machine books the same.
func (c *RigCompartment) figures() figures {
	var f figures
	var y []float64
	for _, m := range c.Marks {
		at, ok := measure.ReadFigure(m.Mark)
		if !ok {
			continue
		}
		x, _ := at.Float64()
		f.marks, f.at, f.x, y = append(f.marks, m), append(f.at, at), append(f.x, x), append(y, float64(m.Volume))
	}
	f.curve, _ = hydraulics.NewCurve(f.x, y)
	return f
}

// volumeAt is the volume at a figure; ok is false where the chart does not reach it.
func (f figures) volumeAt(at *big.Rat) (v measure.Volume, ok bool) {
	for i, here := range f.at {
		switch at.Cmp(here) {
		case 0:
			return f.marks[i].Volume, true
		case -1:
			if i == 0 {
				return 0, false
			}
			if f.curve == nil { // two figures so near that they are one float
				return measure.Between(at, f.at[i-1], here, f.marks[i-1].Volume, f.marks[i].Volume)
			}
			x, _ := at.Float64()
			return measure.Volume(math.RoundToEven(f.curve.At(x))), true
		}
	}
	return 0, false
}

// spacing is how far the marks beside a figure are apart; beside a mark that is read as it stands, the wider of the two gaps.
func (f figures) spacing(x float64) float64 {
	widest := 0.0
	for i := range len(f.x) - 1 {
		if x >= f.x[i] && x <= f.x[i+1] {
			widest = max(widest, f.x[i+1]-f.x[i])
		}
	}
	return widest
}

// resolveGauge gives a reading by its mark the volume of the chart, and each reading how far it may be off. A volume that is
// given stays: the entry holds what was booked, whatever a later chart says.
func (s *state) resolveGauge(f *GaugeRead) (Fact, error) {
	set := s.RigCompartment(f.Compartment)
	if set == nil {
		return f, nil // admission names what is missing
	}
	c := *f
	if !c.Volume.Known {
		if c.Mark == "" {
			return f, nil
		}
		v, err := set.VolumeAt(c.Mark)
		if err != nil {
			return nil, err
		}
		c.Volume = Known(v)
	}
	if !c.GiveOrTake.Known {
		c.GiveOrTake = s.readingBand(set, &c)
	}
	if len(c.Teaching) == 0 {
		c.Teaching = s.teachesReading(set, &c)
	}
	return &c, nil
}

// readingBand is the standard uncertainty of a reading by the compartment's own chart: how finely its gauge is told there,
// and what a slope under the truck makes of it where the plan and the place of the gauge are in the book. It is unknown without a
// chart of two figures or more, beyond the chart, and at a mark that is a sign: then the settings' share of the tank
// stands.
func (s *state) readingBand(c *RigCompartment, f *GaugeRead) Maybe[measure.Volume] {
	slope, step, ok := c.toldAt(f, s.Setting(GaugeReadShare))
	if !ok {
		return Maybe[measure.Volume]{}
	}
	return Known(measure.Volume(math.RoundToEven(hydraulics.GaugeSD(slope, step, s.tilt(c)))))
}

// readingStep is the volume between two readings that a compartment's gauge can tell apart there; 0 where its chart does
// not tell.
func (s *state) readingStep(c *RigCompartment, f *GaugeRead) measure.Volume {
	slope, step, _ := c.toldAt(f, s.Setting(GaugeReadShare))
	return measure.Volume(math.RoundToEven(float64(slope * step)))
}

// toldAt is how finely the gauge is told at a reading, as told; ok is false without a chart of two figures or more, beyond the
// chart, and at a mark that is a sign.
func (c *RigCompartment) toldAt(f *GaugeRead, share float64) (slope, step float64, ok bool) {
	chart := c.figures()
	if chart.curve == nil {
		return 0, 0, false
	}
	x := 0.0
	if f.Mark == "" {
		x, ok = chart.curve.Inverse(float64(f.Volume.V))
	} else {
		x, ok = chart.place(f.Mark)
	}
	if !ok {
		return 0, 0, false
	}
	slope, step = chart.told(x, share)
	return slope, step, true
}

// place is where on the chart a mark stands; ok is false for a sign and beyond the chart.
func (f figures) place(mark string) (x float64, ok bool) {
	at, figure := measure.ReadFigure(mark)
	if !figure {
		return 0, false
	}
	x, _ = at.Float64()
	return x, x >= f.x[0] && x <= f.x[len(f.x)-1]
}

// told is how finely the gauge is told at a figure, and by how much the volume rises there, by one of the mark. It is taken
// over the step: at the end of a chart the slope itself may be nothing.
func (f figures) told(x, share float64) (slope, step float64) {
	step = float64(f.spacing(x) * share)
	low, high := max(x-step/2, f.x[0]), min(x+step/2, f.x[len(f.x)-1])
	if high > low {
		slope = (f.curve.At(high) - f.curve.At(low)) / (high - low)
	}
	return slope, step
}

// tilt is what a slope under the truck makes a gauge read wrong (nL); 0 where plan or place of the gauge are not in the book.
func (s *state) tilt(c *RigCompartment) float64 {
	if !c.Plan.Known || !c.GaugeOff.Known {
		return 0
	}
	plan := float64(c.Plan.V) / squareInch
	return float64(hydraulics.TiltGallons(plan, hydraulics.Inches(c.GaugeOff.V.Inches()), s.Setting(GaugeSlopePct)/100)) * float64(measure.USGallon)
}

// MarkBand is how far a reading at a mark of a compartment's gauge may be off (standard uncertainties): by how finely the gauge
// is told there, and by the slope of the settings under the truck. Each is unknown where the book does not have what it takes.
func (b *Book) MarkBand(letter byte, mark string) (spacing, slope Maybe[measure.Volume]) {
	c := b.RigCompartment(letter)
	if c == nil {
		return spacing, slope
	}
	if c.Plan.Known && c.GaugeOff.Known {
		slope = Known(measure.Volume(math.RoundToEven(b.tilt(c))))
	}
	chart := c.figures()
	if chart.curve == nil {
		return spacing, slope
	}
	if x, ok := chart.place(mark); ok {
		rise, step := chart.told(x, b.Setting(GaugeReadShare))
		spacing = Known(measure.Volume(math.RoundToEven(hydraulics.GaugeSD(rise, step, 0))))
	}
	return spacing, slope
}

// squareInch in square millimetres, exactly (the inch is 25.4 mm, NIST SP 811).
const squareInch = 25.4 * 25.4
