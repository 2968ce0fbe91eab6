package hydraulics

import "math"

// Lying is a cylinder that lies: its length without the heads, and two equal heads. All heads are the one solid of
// revolution that their name says.
type Lying struct {
	Diameter, Length Inches
	Head             Head
	// HeadDepth is how far an ellipsoidal, dished or conical head stands out.
	HeadDepth Inches
	// DishRadius and KnuckleRadius of a torispherical head, as shares of the diameter.
	DishRadius, KnuckleRadius float64
}

// Head is how a lying cylinder ends.
type Head string

// The heads.
const (
	FlatHead          Head = "flat"
	EllipsoidalHead   Head = "ellipsoidal"
	DishedHead        Head = "spherical"
	ConicalHead       Head = "conical"
	TorisphericalHead Head = "torispherical"
)

// Height is the diameter.
func (t Lying) Height() Inches { return t.Diameter }

// Check refuses measures that make no tank.
func (t Lying) Check() error {
	if err := positive(measured{"diameter", t.Diameter}); err != nil {
		return err
	}
	if err := notNegative("length", t.Length); err != nil {
		return err
	}
	switch t.Head {
	case FlatHead, "":
		return positive(measured{"length", t.Length})
	case EllipsoidalHead, ConicalHead:
		return positive(measured{"depth of the heads", t.HeadDepth})
	case DishedHead:
		if t.HeadDepth > t.Diameter/2 {
			return tankError("Give up to half the diameter, "+inchText(t.Diameter/2)+" in.", "A dished head cannot be %s in deep.", inchText(t.HeadDepth))
		}
		return positive(measured{"depth of the heads", t.HeadDepth})
	case TorisphericalHead:
		k, f := t.KnuckleRadius, t.DishRadius
		if !(k >= 0 && k < 0.5 && f > 0.5 && f < 100) {
			return tankError("Give the dish 0.5 to 100 and the knuckle 0 to 0.5 of the diameter.", "A torispherical head has no dish of %g and knuckle of %g of the diameter.", f, k)
		}
		return nil
	}
	return tankError("Write flat, ellipsoidal, spherical, conical or torispherical.", "The heads are %q.", string(t.Head))
}

// below: the segment of the circle times the length; the ellipsoidal heads in closed form (D. Jones, Calculating Tank
// Volume), the others by strips.
func (t Lying) below(h float64) float64 {
	r := float64(t.Diameter) / 2
	v := segment(r, h) * float64(t.Length)
	switch t.Head {
	case EllipsoidalHead:
		return v + float64(math.Pi*float64(t.HeadDepth)*h*h*(1-h/(3*r)))
	case DishedHead:
		ball := ballRadius(r, float64(t.HeadDepth))
		return v + float64(2*revolved(0, float64(t.HeadDepth), h-r, func(x float64) float64 { return leg(ball, x+ball-float64(t.HeadDepth)) }))
	case ConicalHead:
		return v + float64(2*revolved(0, float64(t.HeadDepth), h-r, func(x float64) float64 { return r * (1 - x/float64(t.HeadDepth)) }))
	case TorisphericalHead:
		return v + float64(2*t.torispherical(h-r))
	}
	return v
}

// torispherical is one head up to a level y above the axis: a knuckle, a part of a torus that goes over into the cylinder, and a
// dish, a part of a ball that the knuckle goes over into.
func (t Lying) torispherical(y float64) float64 {
	d := float64(t.Diameter)
	dish, knuckle := t.DishRadius*d, t.KnuckleRadius*d
	centre := d/2 - knuckle // of the knuckle's circle, from the axis
	sin := centre / (dish - knuckle)
	cos := leg(1, sin)
	bend := knuckle * cos // where knuckle and dish meet, from the cylinder
	top := bend + float64(dish*(1-cos))
	v := revolved(bend, top, y, func(x float64) float64 { return leg(dish, x-top+dish) })
	if bend > 0 {
		v += revolved(0, bend, y, func(x float64) float64 { return centre + leg(knuckle, x) })
	}
	return v
}

// ballRadius is the radius of the ball of which a cap of a depth stands on a circle.
func ballRadius(circle, depth float64) float64 {
	return (float64(circle*circle) + float64(depth*depth)) / (2 * depth)
}

// leg is the other leg of a right triangle; 0 where there is none.
func leg(long, other float64) float64 {
	return math.Sqrt(max(float64(long*long)-float64(other*other), 0))
}

// strips of a head; an even number. With 400 the published heads agree to 1e-8.
const strips = 400

// revolved is what a solid of revolution about a lying axis holds up to a level y above the axis, from x = from to x = to,
// by Simpson's rule over the segments of its circles.
func revolved(from, to, y float64, radius func(x float64) float64) float64 {
	if to <= from {
		return 0
	}
	step := (to - from) / strips
	area := func(i int) float64 {
		r := radius(from + float64(float64(i)*step))
		return segment(r, y+r)
	}
	sum := area(0) + area(strips)
	for i := 1; i < strips; i++ {
		w := 2.0
		if i%2 == 1 {
			w = 4
		}
		sum += float64(w * area(i))
	}
	return sum * step / 3
}

// segment is the part of a circle below a level h above its lowest point, in the square of r's unit.
func segment(r, h float64) float64 {
	switch {
	case r <= 0 || h <= 0:
		return 0
	case h >= 2*r:
		return math.Pi * r * r
	}
	return float64(r*r*math.Acos((r-h)/r)) - float64((r-h)*leg(r, r-h))
}

// SegmentArea is the part of a circle below a level, in square inches: what stands in the cross-section of a lying
// cylinder. The error is a TankError.
func SegmentArea(diameter, depth Inches) (squareInches float64, err error) {
	t := Lying{Diameter: diameter, Length: 1}
	if _, err := VolumeAt(t, depth); err != nil {
		return 0, err
	}
	return segment(float64(diameter)/2, float64(depth)), nil
}
