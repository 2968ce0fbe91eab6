package hydraulics

import "math"

// Held is a mixed compartment: what it holds and how strong that is, in any product a gallon.
type Held struct {
	Volume   Gallons
	Strength float64
}

// Product is what it holds of the product.
func (h Held) Product() float64 { return float64(float64(h.Volume) * h.Strength) }

// Elsewhere is the state in which the suction stands on A and the return on B, while the gun may be open. Flows are in
// gallons a minute.
type Elsewhere struct {
	A, B        Held
	Gun, Bypass float64
	RoomB       Gallons // what still goes into B
}

// After is both compartments so many minutes later; A's strength stays, B takes the bypass (mass balance). It goes no
// further than to the moment at which A is dry. What no longer fits into B is over its rim, and is counted in it here.
func (s Elsewhere) After(minutes float64) (a, b Held) {
	minutes = min(minutes, s.DryAfter())
	a, b = s.A, s.B
	a.Volume = max(s.A.Volume-Gallons((s.Gun+s.Bypass)*minutes), 0)
	moved := Gallons(s.Bypass * minutes)
	b.Volume = s.B.Volume + moved
	if b.Volume > 0 {
		b.Strength = (s.B.Product() + float64(float64(moved)*s.A.Strength)) / float64(b.Volume)
	}
	return a, b
}

// DryAfter is how many minutes it is until A is dry; infinite without a flow.
func (s Elsewhere) DryAfter() float64 { return minutesFor(s.A.Volume, s.Gun+s.Bypass) }

// OverAfter is how many minutes it is until B runs over; infinite without a bypass. A may be dry before.
func (s Elsewhere) OverAfter() float64 { return minutesFor(s.RoomB, s.Bypass) }

func minutesFor(v Gallons, flow float64) float64 {
	if !(flow > 0) {
		return math.Inf(1)
	}
	return max(float64(v), 0) / flow
}

// Circulate is two compartments after so many minutes in which the same flow (gal/min) went from each into the other: the
// difference of their strengths decays with flow (1/A + 1/B) (mass balance).
func Circulate(a, b Held, flow, minutes float64) (Held, Held) {
	va, vb := float64(a.Volume), float64(b.Volume)
	if !(va > 0) || !(vb > 0) {
		return a, b
	}
	both := va + vb
	mean := (a.Product() + b.Product()) / both
	off := (a.Strength - b.Strength) * math.Exp(-flow*(1/va+1/vb)*minutes)
	a.Strength, b.Strength = mean+float64(off*vb/both), mean-float64(off*va/both)
	return a, b
}

// BothOpen is the state in which both suctions are open and all of the return goes to A. Flows are in gallons a minute; Share
// is what of the pump's flow comes from A.
type BothOpen struct {
	A, B         Held
	Pump, Bypass float64
	Share        float64
}

// After is both compartments so many minutes later, and the strength at the gun then: A takes the return, B keeps its
// strength (mass balance). It goes no further than to the moment at which one is dry.
func (s BothOpen) After(minutes float64) (a, b Held, gun float64) {
	minutes = min(minutes, s.DryAfter())
	a, b = s.A, s.B
	gain := s.gain()
	a.Volume = max(s.A.Volume+Gallons(gain*minutes), 0)
	b.Volume = max(s.B.Volume-Gallons((1-s.Share)*s.Pump*minutes), 0)
	if s.A.Volume > 0 {
		left := turnover(float64(s.A.Volume), gain, s.Bypass*(1-s.Share), minutes)
		a.Strength = s.B.Strength - float64((s.B.Strength-s.A.Strength)*left)
	} else if s.Bypass > 0 {
		a.Strength = s.B.Strength
	}
	return a, b, float64(s.Share*a.Strength) + float64((1-s.Share)*b.Strength)
}

// gain is how much A gains a minute.
func (s BothOpen) gain() float64 { return s.Bypass - float64(s.Share*s.Pump) }

// DryAfter is how many minutes it is until the first of the two is dry; infinite where neither gets less.
func (s BothOpen) DryAfter() float64 {
	return min(minutesFor(s.A.Volume, -s.gain()), minutesFor(s.B.Volume, (1-s.Share)*s.Pump))
}
