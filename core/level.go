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
	stands, ok := s.standing(letter)
	if !ok {
		return Standing{}, false
	}
	return stands(v), true
}

// standing is StandingAt of a compartment for any volume: who asks many times has its chart read once.
func (s *state) standing(letter byte) (func(measure.Volume) Standing, bool) {
	set, c := s.RigCompartment(letter), s.plumbing.Compartment(letter)
	if set == nil || c == nil || c.Capacity <= 0 {
		return nil, false
	}
	charted, capacity, deep := set.depths(), float64(c.Capacity), measure.Inches(s.Setting(TankDepthIn)).Metres()
	return func(v measure.Volume) Standing {
		out := Standing{Letter: letter, Known: true}
		m3 := float64(max(v, 0)) / cubicMetre
		switch depth, area, ok := charted.at(m3); {
		case ok:
			out.Level, out.Area = hydraulics.Metres(depth), hydraulics.SquareMetres(area)
		case set.Plan.Known && set.Plan.V > 0:
			area := float64(set.Plan.V) / squareMetre
			out.Level, out.Area = hydraulics.Metres(m3/area), hydraulics.SquareMetres(area)
		default:
			out.Known = false
			out.Level = hydraulics.Metres(float64(max(v, 0)) / capacity * deep)
			out.Area = hydraulics.SquareMetres(capacity / cubicMetre / deep)
		}
		out.Level += hydraulics.Metres(set.Floor.Or(0).Metres())
		return out
	}, true
}

// depths is a gauge read backwards, in metres and cubic metres; without a curve where its marks are no depths.
type depths struct {
	depth, holds []float64
	curve        *hydraulics.Curve
}

func (c *RigCompartment) depths() depths {
	var d depths
	var unit float64
	switch c.MarkUnit {
	case MarksInches:
		unit = measure.Inch.Metres()
	case MarksCentims:
		unit = measure.Metres(0.01).Metres()
	default:
		return d
	}
	chart := c.figures()
	for i, x := range chart.x {
		d.depth, d.holds = append(d.depth, x*unit), append(d.holds, float64(chart.marks[i].Volume)/cubicMetre)
	}
	if len(d.depth) > 0 && d.depth[0] > 0 && d.holds[0] > 0 {
		d.depth, d.holds = append([]float64{0}, d.depth...), append([]float64{0}, d.holds...)
	}
	d.curve, _ = hydraulics.NewCurve(d.depth, d.holds)
	return d
}

// at is the depth at a volume and the area there. Between two marks it goes by the curve of the chart, below the lowest in
// proportion; above the highest it stands at that one.
func (d depths) at(m3 float64) (depth, area float64, ok bool) {
	if d.curve == nil {
		return 0, 0, false
	}
	last := len(d.holds) - 1
	depth, ok = d.curve.Inverse(min(max(m3, d.holds[0]), d.holds[last]))
	if area = d.curve.Slope(depth); !(area > 0) {
		area = (d.holds[last] - d.holds[0]) / (d.depth[last] - d.depth[0]) // an even one, where the chart is level
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
