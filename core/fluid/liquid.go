package fluid

import "example.com/tintline/core/measure"

// Liquid is a volume of one composition.
//
// From says how much of it was drawn from which origin and sums to Volume; it is empty for what stands in
// a compartment, which is an origin itself. Holds says how much of each product is in it: a liquid
// product's volume (nL) is part of Volume, a dry product's mass (ng) adds none.
type Liquid struct {
	Volume measure.Volume
	From   Parts
	Holds  Parts
}

// NoTank is the origin of liquid that was drawn from no compartment: the first water of a rig, and what
// nobody can explain.
const NoTank int32 = 0

// Water is plain water of the given volume and origin.
func Water(v measure.Volume, origin int32) Liquid {
	if v <= 0 {
		return Liquid{}
	}
	return Liquid{Volume: v, From: Parts{{origin, int64(v)}}}
}

// Empty tells whether there is neither liquid nor product.
func (l Liquid) Empty() bool { return l.Volume == 0 && len(l.Holds) == 0 }

// Plus returns l and o mixed.
func (l Liquid) Plus(o Liquid) Liquid {
	return Liquid{l.Volume + o.Volume, l.From.Plus(o.From), l.Holds.Plus(o.Holds)}
}

// Split takes v out of l in proportion. Each product's share is rounded to the unit, half to even, and the
// remainder stays in rest; taken and rest always add up to l. More than there is takes all.
func (l Liquid) Split(v measure.Volume) (taken, rest Liquid) {
	switch {
	case v <= 0:
		return Liquid{}, l
	case v >= l.Volume:
		return l, Liquid{}
	}
	taken.Volume, rest.Volume = v, l.Volume-v
	taken.Holds, rest.Holds = l.Holds.split(v, l.Volume)
	taken.From = l.From.shareWhole(v, l.Volume)
	rest.From = l.From.Minus(taken.From)
	return taken, rest
}

// Strength is the amount of a product in each unit of volume: nL/nL or ng/nL.
func (l Liquid) Strength(product int32) measure.Concentration {
	if l.Volume == 0 {
		return 0
	}
	return measure.Concentration(float64(l.Holds.Of(product)) / float64(l.Volume))
}

// ShareFrom is the part of l that was drawn from an origin, 0 to 1.
func (l Liquid) ShareFrom(origin int32) float64 {
	if l.Volume == 0 {
		return 0
	}
	return float64(l.From.Of(origin)) / float64(l.Volume)
}

// As returns v of liquid with the composition of l, made from nothing: the caller books where it comes from.
// Of an empty l it is water, with no origin.
func (l Liquid) As(v measure.Volume) Liquid {
	if l.Volume == 0 || v <= 0 {
		return Liquid{Volume: max(v, 0)}
	}
	out := Liquid{Volume: v, Holds: l.Holds.share(v, l.Volume, measure.MulDivRound)}
	if len(l.From) > 0 {
		out.From = l.From.shareWhole(v, l.Volume)
		if d := int64(v) - out.From.Sum(); d != 0 {
			out.From = out.From.Plus(Parts{{l.From[0].Key, d}})
		}
	}
	return out
}

// alike tells whether two liquids are the same but for a relative difference of at most tol in each
// product and each origin.
func alike(a, b Liquid, tol float64) bool {
	if a.Volume == 0 || b.Volume == 0 {
		return a.Volume == b.Volume
	}
	return alikeWithin(a, b, tol, 0)
}

// alikeWithin is alike with so many units more that a difference may have, for each unit of volume.
func alikeWithin(a, b Liquid, tol, unit float64) bool {
	return nearParts(a.Holds, b.Holds, a.Volume, b.Volume, tol, unit) && nearParts(a.From, b.From, a.Volume, b.Volume, tol, unit)
}

func nearParts(p, q Parts, vp, vq measure.Volume, tol, unit float64) bool {
	i, j := 0, 0
	for i < len(p) || j < len(q) {
		var x, y float64
		switch {
		case j == len(q) || (i < len(p) && p[i].Key < q[j].Key):
			x = float64(p[i].N) / float64(vp)
			i++
		case i == len(p) || q[j].Key < p[i].Key:
			y = float64(q[j].N) / float64(vq)
			j++
		default:
			x, y = float64(p[i].N)/float64(vp), float64(q[j].N)/float64(vq)
			i, j = i+1, j+1
		}
		if d := x - y; max(d, -d) > float64(tol*max(x, y, -x, -y))+unit {
			return false
		}
	}
	return true
}
