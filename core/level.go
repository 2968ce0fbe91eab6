package core

import (
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// Standing is a compartment as gravity sees it.
type Standing struct {
	Letter byte
	Level  hydraulics.Metres       // of its surface, above the lowest compartment's floor
	Area   hydraulics.SquareMetres // seen from above, at that level
	// Known: by a chart of depths or a plan area; otherwise by the setting for the depth of a full compartment.
	Known bool
}

// squareMetre in the unit of an area, cubicMetre in that of a volume.
const (
	squareMetre = float64(measure.SquareMetre)
	cubicMetre  = 1000 * float64(measure.Litre)
)

// StandingAt is how high a compartment would stand with so much in it.
func (s *state) StandingAt(letter byte, v measure.Volume) (Standing, bool) {
	set, c := s.RigCompartment(letter), s.plumbing.Compartment(letter)
	if set == nil || c == nil || c.Capacity <= 0 {
		return Standing{}, false
	}
	out := Standing{Letter: letter, Known: true}
	m3 := float64(max(v, 0)) / cubicMetre
	switch depth, area, charted := set.depthByChart(v); {
	case charted:
		out.Level, out.Area = hydraulics.Metres(depth), hydraulics.SquareMetres(area)
	case set.Plan.Known && set.Plan.V > 0:
		area := float64(set.Plan.V) / squareMetre
		out.Level, out.Area = hydraulics.Metres(m3/area), hydraulics.SquareMetres(area)
	default:
		deep := measure.Inches(s.Setting(TankDepthIn)).Metres()
		out.Known = false
		out.Level = hydraulics.Metres(float64(max(v, 0)) / float64(c.Capacity) * deep)
		out.Area = hydraulics.SquareMetres(float64(c.Capacity) / cubicMetre / deep)
	}
	out.Level += hydraulics.Metres(set.Floor.Or(0).Metres())
	return out, true
}

// depthByChart reads the gauge backwards: the depth at a volume, in metres, and the area there. Between two marks it goes
// by the curve of the chart, below the lowest in proportion; above the highest it stands at that one.
func (c *RigCompartment) depthByChart(v measure.Volume) (depth, area float64, ok bool) {
	var unit float64
	switch c.MarkUnit {
	case MarksInches:
		unit = measure.Inch.Metres()
	case MarksCentims:
		unit = measure.Metres(0.01).Metres()
	default:
		return 0, 0, false
	}
	var at, holds []float64
	for _, m := range c.Marks {
		figure, isFigure := measure.ReadFigure(m.Mark)
		if !isFigure {
			continue
		}
		f, _ := figure.Float64()
		at, holds = append(at, f*unit), append(holds, float64(m.Volume)/cubicMetre)
	}
	if len(at) > 0 && at[0] > 0 && holds[0] > 0 {
		at, holds = append([]float64{0}, at...), append([]float64{0}, holds...)
	}
	curve, drawn := hydraulics.NewCurve(at, holds)
	if !drawn {
		return 0, 0, false
	}
	y := min(max(float64(v)/cubicMetre, holds[0]), holds[len(holds)-1])
	depth, ok = curve.Inverse(y)
	if area = curve.Slope(depth); !(area > 0) {
		area = (holds[len(holds)-1] - holds[0]) / (at[len(at)-1] - at[0]) // an even one, where the chart is level
	}
	return depth, area, ok && area > 0
}

// CrossPath is the way by which liquid runs from one open compartment to another: of the rig, else of the settings; from
// names those that were taken from the settings.
func (s *state) CrossPath() (p hydraulics.Path, from []string) {
	bore, length, loss := measure.Inches(s.Setting(CrossBoreIn)), measure.Feet(s.Setting(CrossLengthFt)), s.Setting(CrossLossK)
	r := s.rig
	if r != nil && r.CrossBore.Known && r.CrossBore.V > 0 {
		bore = r.CrossBore.V
	} else {
		from = append(from, CrossBoreIn)
	}
	if r != nil && r.CrossLength.Known && r.CrossLength.V >= 0 {
		length = r.CrossLength.V
	} else {
		from = append(from, CrossLengthFt)
	}
	if r != nil && r.CrossLoss.Known && r.CrossLoss.V > 0 {
		loss = r.CrossLoss.V
	} else {
		from = append(from, CrossLossK)
	}
	return hydraulics.Path{Bore: hydraulics.Metres(bore.Metres()), Length: hydraulics.Metres(length.Metres()), Loss: loss}, from
}

// branch is the way from one compartment to the pump: half of that between two.
func branch(p hydraulics.Path) hydraulics.Path {
	p.Length, p.Loss = p.Length/2, p.Loss/2
	return p
}
