package reckon

import (
	"errors"
	"strings"

	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// TankError says what is wrong with the measures of a tank, or a depth in it.
type TankError struct{ err *hydraulics.TankError }

func (e *TankError) Error() string { return e.err.What }

// Do says what to do about it.
func (e *TankError) Do() string { return e.err.Do }

func tankProblem(err error) error {
	var t *hydraulics.TankError
	if errors.As(err, &t) {
		return &TankError{t}
	}
	return err
}

// gaugeMeasures are the lengths that a tank is measured by.
var gaugeMeasures = []string{
	"diameter", "radius", "length", "width", "height", "head_depth", "bottom_depth", "end_depth",
	"slant_height", "wall_height", "cap_radius", "cap_height",
}

// tank is what was given of a tank.
type tank struct {
	in                  *inputs
	size                map[string]quantity
	used                map[string]bool // of size
	shape, head, bottom string
}

// gauge answers what a tank holds at a depth, what part of a circle lies below one, and how good a reading by a step is.
func gauge(in *inputs) (map[string]any, error) {
	out := answers{}
	step, err := in.one("gauge_step_", plain("volume"), true)
	if err != nil {
		return nil, err
	}
	depth, err := in.depth()
	if err != nil {
		return nil, err
	}
	t := &tank{in: in, used: map[string]bool{}, shape: in.word("shape"), head: in.word("head"), bottom: in.word("bottom")}
	if t.size, err = in.several(plain("length"), true, gaugeMeasures...); err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	if step.given {
		out.gallons("sd_", hydraulics.Gallons(hydraulics.UniformSD(step.base/float64(measure.USGallon))))
	}
	if len(t.size) == 0 && t.shape == "" && !depth.given {
		if !step.given {
			return nil, in.missing("the shape of a tank with its measures and depth_in, or gauge_step_gal")
		}
		return out, nil
	}
	return out, t.answer(depth, out)
}

func (in *inputs) missing(what string) error { return &MissingError{Kind: in.kind, What: what} }

// depth reads how high a tank is filled: a depth, or a level.
func (in *inputs) depth() (quantity, error) {
	d, err := in.one("depth_", plain("length"), false)
	if err != nil {
		return d, err
	}
	l, err := in.one("level_", plain("length"), false)
	if err != nil || !l.given {
		return d, err
	}
	if d.given {
		return d, in.twice(d, l)
	}
	return l, nil
}

// answer gives the volume at the depth, and of a tank whose top is known the whole.
func (t *tank) answer(depth quantity, out answers) error {
	if t.named() == "segment" {
		return t.segment(depth, out)
	}
	s, err := t.measured()
	if err == nil {
		err = t.beside()
	}
	if err != nil {
		return err
	}
	if s.Height() > 0 {
		full, err := hydraulics.FullVolume(s)
		if err != nil {
			return tankProblem(err)
		}
		out.gallons("full_", full)
	}
	if e, ok := s.(hydraulics.Elliptical); ok {
		full, _ := hydraulics.FullVolume(s)
		out.gallons("circular_equivalent_", full/hydraulics.Gallons(e.Stretch()))
		out["scale_factor"] = e.Stretch()
	}
	if !depth.given {
		if s.Height() > 0 {
			return nil
		}
		return t.in.missing("depth_in")
	}
	v, err := hydraulics.VolumeAt(s, hydraulics.Inches(depth.base/perInch))
	if err != nil {
		return tankProblem(err)
	}
	out.gallons("volume_", v)
	return nil
}

// segment answers the area of a circle below a depth.
func (t *tank) segment(depth quantity, out answers) error {
	d, err := t.inches("diameter")
	if err != nil {
		return err
	}
	if !depth.given {
		return t.in.missing("depth_in")
	}
	if err := t.beside(); err != nil {
		return err
	}
	a, err := hydraulics.SegmentArea(d, hydraulics.Inches(depth.base/perInch))
	if err != nil {
		return tankProblem(err)
	}
	out["area_in2"] = a
	out.area("area_", a*perInch*perInch/1e6)
	return nil
}

// named is the shape that was named, else the one that the measures make; empty where they make several.
func (t *tank) named() string {
	has := func(name string) bool { return t.size[name].given }
	switch {
	case t.shape != "":
		return t.shape
	case has("slant_height") || has("cap_radius") || has("wall_height"):
		return "slant"
	case t.bottom != "" || has("bottom_depth"):
		return "upright"
	case t.head != "" || has("head_depth") || (has("diameter") && has("length")):
		return "lying"
	case has("end_depth"):
		return "ellipse"
	case has("diameter") && has("height"):
		return "upright"
	case has("diameter"):
		return "segment"
	}
	return ""
}

// inches is a measure that the shape needs.
func (t *tank) inches(name string) (hydraulics.Inches, error) {
	q := t.size[name]
	if !q.given {
		return 0, t.in.missing(name + "_in")
	}
	return t.maybe(name), nil
}

func (t *tank) maybe(name string) hydraulics.Inches {
	t.used[name] = true
	return hydraulics.Inches(t.size[name].base / perInch)
}

// fill reads the measures that a shape needs.
func (t *tank) fill(needs map[string]*hydraulics.Inches, order ...string) error {
	for _, name := range order {
		v, err := t.inches(name)
		if err != nil {
			return err
		}
		*needs[name] = v
	}
	return nil
}

// beside refuses a measure that the shape has no use for.
func (t *tank) beside() error {
	shape := t.named()
	for _, name := range gaugeMeasures {
		if q := t.size[name]; q.given && !t.used[name] {
			return &InputError{Key: q.key, Value: t.in.value[q.key], Want: "left out, for the shape " + shape + " is not measured by it"}
		}
	}
	for _, end := range [][2]string{{"head", "lying"}, {"bottom", "upright"}} {
		if v, given := t.in.value[end[0]]; given && shape != end[1] {
			return &InputError{Key: end[0], Value: v, Want: "left out, for the shape " + shape + " has none"}
		}
	}
	return nil
}

// measured makes the shape of what was given.
func (t *tank) measured() (hydraulics.Shape, error) {
	switch t.named() {
	case "lying":
		return t.lying()
	case "upright":
		return t.upright()
	case "ellipse", "elliptical":
		s := hydraulics.Elliptical{EndDepth: t.maybe("end_depth")}
		err := t.fill(map[string]*hydraulics.Inches{"width": &s.Width, "height": &s.Tall, "length": &s.Length}, "width", "height", "length")
		return s, err
	case "obround":
		s := hydraulics.Obround{}
		err := t.fill(map[string]*hydraulics.Inches{"width": &s.Width, "height": &s.Tall, "length": &s.Length}, "width", "height", "length")
		return s, err
	case "slant":
		s := hydraulics.Slanted{CapRadius: t.maybe("cap_radius"), CapHeight: t.maybe("cap_height")}
		err := t.fill(map[string]*hydraulics.Inches{"radius": &s.Radius, "slant_height": &s.Slant, "wall_height": &s.Wall}, "radius", "slant_height", "wall_height")
		return s, err
	case "":
		return nil, t.in.missing("shape (lying, upright, ellipse, obround, segment or slant)")
	}
	return nil, &InputError{Key: "shape", Value: t.shape, Want: "lying, upright, ellipse, obround, segment or slant"}
}

func (t *tank) lying() (hydraulics.Shape, error) {
	kind, shares, _ := strings.Cut(t.head, " ")
	s := hydraulics.Lying{Head: hydraulics.Head(kind), HeadDepth: t.maybe("head_depth")}
	if kind == "hemispherical" {
		s.Head, s.HeadDepth = hydraulics.DishedHead, t.maybe("diameter")/2
	}
	if s.Head == hydraulics.TorisphericalHead {
		for _, part := range strings.Fields(shares) {
			name, value, _ := strings.Cut(part, "=")
			f, err := measure.ParseNumber(value)
			switch {
			case err == nil && name == "f":
				s.DishRadius = f
			case err == nil && name == "k":
				s.KnuckleRadius = f
			default:
				return nil, t.torispherical()
			}
		}
		if s.DishRadius == 0 {
			return nil, t.torispherical()
		}
	} else if shares != "" {
		return nil, &InputError{Key: "head", Value: t.in.value["head"], Want: "flat, ellipsoidal, spherical, hemispherical, conical or torispherical f=1 k=0.06"}
	}
	switch s.Head {
	case hydraulics.EllipsoidalHead, hydraulics.DishedHead, hydraulics.ConicalHead:
		if kind != "hemispherical" && !t.size["head_depth"].given {
			return nil, t.in.missing("head_depth_in")
		}
	}
	err := t.fill(map[string]*hydraulics.Inches{"diameter": &s.Diameter, "length": &s.Length}, "diameter", "length")
	return s, err
}

func (t *tank) torispherical() error {
	return &InputError{Key: "head", Value: t.in.value["head"], Want: "torispherical f=1 k=0.06, the radii of dish and knuckle as shares of the diameter"}
}

func (t *tank) upright() (hydraulics.Shape, error) {
	s := hydraulics.Upright{Bottom: hydraulics.Bottom(t.bottom), BottomDepth: t.maybe("bottom_depth"), Tall: t.maybe("height")}
	if t.bottom != "" && t.bottom != string(hydraulics.FlatBottom) && !t.size["bottom_depth"].given {
		return nil, t.in.missing("bottom_depth_in")
	}
	if t.size["length"].given || t.size["width"].given {
		s.Diameter = t.maybe("diameter")
		err := t.fill(map[string]*hydraulics.Inches{"length": &s.Length, "width": &s.Width}, "length", "width")
		return s, err
	}
	err := t.fill(map[string]*hydraulics.Inches{"diameter": &s.Diameter}, "diameter")
	return s, err
}
