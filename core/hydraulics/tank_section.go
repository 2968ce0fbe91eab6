package hydraulics

import "math"

// Elliptical is a tank with an elliptical cross-section that lies, with flat ends or with ellipsoidal ones that stand out
// by EndDepth. It is the circular tank of its height, stretched in one direction.
type Elliptical struct{ Width, Tall, Length, EndDepth Inches }

// Height is that of the ellipse.
func (t Elliptical) Height() Inches { return t.Tall }

// Check refuses measures that make no tank.
func (t Elliptical) Check() error {
	if err := notNegative("depth of the ends", t.EndDepth); err != nil {
		return err
	}
	return positive(measured{"width", t.Width}, measured{"height", t.Tall}, measured{"length", t.Length})
}

func (t Elliptical) below(h float64) float64 { return t.Stretch() * t.round().below(h) }

// Stretch is how many times the circular tank of the same height the tank holds.
func (t Elliptical) Stretch() float64 { return float64(t.Width / t.Tall) }

// round is the circular tank of its height.
func (t Elliptical) round() Lying {
	c := Lying{Diameter: t.Tall, Length: t.Length}
	if t.EndDepth > 0 {
		c.Head, c.HeadDepth = EllipsoidalHead, t.EndDepth
	}
	return c
}

// Obround is a tank with a flat-sided oval as cross-section: two half circles with a rectangle between them. It stands on
// edge where it is taller than wide, and lies flat where it is wider.
type Obround struct{ Width, Tall, Length Inches }

// Height is that of the oval.
func (t Obround) Height() Inches { return t.Tall }

// Check refuses measures that make no tank.
func (t Obround) Check() error {
	return positive(measured{"width", t.Width}, measured{"height", t.Tall}, measured{"length", t.Length})
}

func (t Obround) below(h float64) float64 {
	w, tall := float64(t.Width), float64(t.Tall)
	if w >= tall { // the half circles are at the sides
		return (segment(tall/2, h) + float64((w-tall)*h)) * float64(t.Length)
	}
	r, straight := w/2, tall-w
	half := math.Pi * r * r / 2
	var a float64
	switch {
	case h <= r:
		a = segment(r, h)
	case h <= tall-r:
		a = half + float64(w*(h-r))
	default:
		a = half + half + float64(w*straight) - segment(r, tall-h)
	}
	return a * float64(t.Length)
}
