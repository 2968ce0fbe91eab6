package fluid

import "example.com/tintline/core/measure"

// Flows are the day's movements of one tank. What is left is always
// Start + Loaded + PushedIn - Drawn + Other + Unexplained.
type Flows struct {
	Start, Loaded, PushedIn, Drawn, Other, Unexplained measure.Volume
}

// Left is what the flows add up to.
func (f Flows) Left() measure.Volume {
	return f.Start + f.Loaded + f.PushedIn - f.Drawn + f.Other + f.Unexplained
}

// Tank is anything that holds well-mixed liquid: a compartment of the rig or an applicator's own tank.
// The suction cannot draw the Heel.
type Tank struct {
	Capacity, Heel measure.Volume
	Liquid         Liquid
	Flows          Flows
	// Moved is what was drawn since the last reading or load, for the band around what is left.
	Moved measure.Volume
	// ReadBand is the standard uncertainty of that reading, where its chart told it; 0 where it is not known.
	ReadBand measure.Volume
	// Origin is the origin that liquid drawn from here carries; a negative one keeps the liquid's own.
	Origin int32
	// Strange is what of a compartment's liquid came from another compartment, or from what stood in this one before, by
	// origin; StrangeIn what of it has come in all since the tank was last empty or rinsed (see strange.go).
	Strange, StrangeIn Parts
}

// KeepOrigins marks a tank whose liquid keeps the origins that it came with.
const KeepOrigins int32 = -1

// Compartment is one part of the split tank.
type Compartment struct {
	Letter byte
	Tank
}

// Drawable is what the suction can get.
func (t *Tank) Drawable() measure.Volume { return max(t.Liquid.Volume-t.Heel, 0) }

// Room is what still goes in.
func (t *Tank) Room() measure.Volume { return max(t.Capacity-t.Liquid.Volume, 0) }

// put mixes l in.
func (t *Tank) put(l Liquid) {
	if t.Origin != KeepOrigins {
		t.meet(l)
		l.From = nil
	}
	t.Liquid = t.Liquid.Plus(l)
}

// take draws v, without looking at the heel.
func (t *Tank) take(v measure.Volume) Liquid {
	taken, rest := t.Liquid.Split(v)
	t.part(rest.Volume)
	t.Liquid = rest
	if t.Origin != KeepOrigins && taken.Volume > 0 {
		taken.From = Parts{{t.Origin, int64(taken.Volume)}}
	}
	return taken
}

// StartDay begins new flows from what is there.
func (t *Tank) StartDay() { t.Flows = Flows{Start: t.Liquid.Volume} }
