package hydraulics

import "math"

// Upright is a tank whose walls stand upright: round with a Diameter, or a box of Length and Width. A round one may have
// a shaped bottom, which is as deep as BottomDepth.
type Upright struct {
	Diameter      Inches
	Length, Width Inches
	Bottom        Bottom
	BottomDepth   Inches
	Tall          Inches // inside, with the bottom; 0: not given
}

// Bottom is the shape of an upright tank's bottom.
type Bottom string

// The bottoms.
const (
	FlatBottom        Bottom = "flat"
	ConicalBottom     Bottom = "conical"
	EllipsoidalBottom Bottom = "ellipsoidal"
	SphericalBottom   Bottom = "spherical"
)

// Height is that of the tank with its bottom.
func (t Upright) Height() Inches { return t.Tall }

// Check refuses measures that make no tank.
func (t Upright) Check() error {
	if err := notNegative("height", t.Tall); err != nil {
		return err
	}
	shaped := t.Bottom != "" && t.Bottom != FlatBottom
	box := t.Length != 0 || t.Width != 0
	switch {
	case box && t.Diameter != 0:
		return tankError("Give the diameter of a round tank, or length and width of a box.", "The tank has a diameter, and a length and a width too.")
	case box && shaped:
		return tankError("Leave the bottom out, or give a diameter.", "A shaped bottom belongs to a round tank.")
	case box:
		return positive(measured{"length", t.Length}, measured{"width", t.Width})
	}
	if err := positive(measured{"diameter", t.Diameter}); err != nil || !shaped {
		return err
	}
	switch t.Bottom {
	case ConicalBottom, EllipsoidalBottom:
	case SphericalBottom:
		if t.BottomDepth > t.Diameter/2 {
			return tankError("Give up to half the diameter, "+inchText(t.Diameter/2)+" in.", "A spherical bottom cannot be %s in deep.", inchText(t.BottomDepth))
		}
	default:
		return tankError("Write flat, conical, ellipsoidal or spherical.", "The bottom is %q.", string(t.Bottom))
	}
	if err := positive(measured{"depth of the bottom", t.BottomDepth}); err != nil {
		return err
	}
	if t.Tall != 0 && t.Tall < t.BottomDepth {
		return tankError("Give the height with the bottom.", "The tank is %s in high, its bottom alone %s in.", inchText(t.Tall), inchText(t.BottomDepth))
	}
	return nil
}

// below: D. Jones, Compute Fluid Volumes in Vertical Tanks.
func (t Upright) below(h float64) float64 {
	if t.Length != 0 {
		return float64(t.Length) * float64(t.Width) * h
	}
	d, a := float64(t.Diameter), float64(t.BottomDepth)
	circle := math.Pi / 4 * d * d
	low := min(h, a)
	var v float64
	switch t.Bottom {
	case ConicalBottom:
		v = circle / 3 * (low / a) * (low / a) * low
	case EllipsoidalBottom:
		v = circle * (low / a) * (low / a) * (a - low/3)
	case SphericalBottom:
		ball := ballRadius(d/2, a)
		v = math.Pi * low * low * (ball - low/3)
	default:
		return circle * h
	}
	return v + float64(circle*(h-low))
}

// Slanted is an upright round tank whose floor slants from one side to the other and whose top is dished: a cap of a ball.
// Wall is the height of the wall above the upper end of the floor.
type Slanted struct{ Radius, Slant, Wall, CapRadius, CapHeight Inches }

// Height is that of the whole, from the lower end of the floor to the middle of the cap.
func (t Slanted) Height() Inches { return t.Slant + t.Wall + t.CapHeight }

// Check refuses measures that make no tank.
func (t Slanted) Check() error {
	for _, m := range []measured{{"slant", t.Slant}, {"wall", t.Wall}, {"cap", t.CapHeight}} {
		if err := notNegative(m.name, m.v); err != nil {
			return err
		}
	}
	if err := positive(measured{"radius", t.Radius}, measured{"height", t.Height()}); err != nil {
		return err
	}
	if t.CapHeight == 0 {
		return nil
	}
	if t.CapHeight > t.CapRadius*(1+1e-9) { // a half ball, whatever the rounding
		return tankError("Give a cap that is no higher than its radius.", "The cap is %s in high with a radius of %s in.", inchText(t.CapHeight), inchText(t.CapRadius))
	}
	r, c, h := float64(t.Radius), float64(t.CapRadius), float64(t.CapHeight)
	if base := leg(c, c-h); math.Abs(base-r) > 0.01*r {
		return tankError("Give radius and height of a cap that stands on the wall.", "The cap is %.6g in wide below, the tank %.6g in.", 2*base, 2*r)
	}
	return nil
}

// below: the wedge over the floor, the wall, the zone of the ball (geometry).
func (t Slanted) below(h float64) float64 {
	r, slant, wall := float64(t.Radius), float64(t.Slant), float64(t.Wall)
	circle := math.Pi * r * r
	if h <= slant && slant > 0 {
		edge := r * ((h+h)/slant - 1) // where the level meets the floor, from the middle
		half := leg(r, edge)
		return slant / (2 * r) * (float64(edge*segment(r, edge+r)) + float64(2*half*half*half/3))
	}
	if h <= slant+wall {
		return circle * (h - slant/2)
	}
	v := circle * (wall + slant/2)
	up := h - slant - wall
	c, low := float64(t.CapRadius), float64(t.CapRadius-t.CapHeight) // from the middle of the ball to the foot of the cap
	ball := func(z float64) float64 { return float64(c*c*z) - float64(z*z*z/3) }
	return v + float64(math.Pi*(ball(low+up)-ball(low)))
}
