package calib

import (
	"math"

	"example.com/tintline/core/measure"
)

// How far a rate is from the one meant.
const (
	Within = "within" // the limit of OffPct
	Off    = "off"    // past it
	Worn   = "worn"   // past the limit at which a tip is replaced
)

// Drift is a rate held against the one that is meant.
type Drift struct {
	Measured, Meant measure.Rate
	Share           float64 // above 0: more goes down than is meant
	Weight          string  // Within, Off, Worn
	Working         []string
}

// DriftOf holds a delivery rate against the one that loads are made up for. It is false where either is not known, or one
// is of liquid and the other of dry product.
func DriftOf(measured, meant measure.Rate, l Limits) (Drift, bool) {
	if !(measured.V > 0) || !(meant.V > 0) || measured.Kind != meant.Kind {
		return Drift{}, false
	}
	d := Drift{Measured: measured, Meant: meant, Share: measured.V/meant.V - 1, Weight: Within}
	pct := float64(100 * math.Abs(d.Share))
	switch {
	case pct > l.WornPct:
		d.Weight = Worn
	case pct > l.OffPct:
		d.Weight = Off
	}
	r := Result{}
	r.say("%s against %s meant: %s.", RateText(measured), RateText(meant), d.Words())
	switch d.Weight {
	case Within:
		r.say("That is within %s per cent (%s).", num(l.OffPct), SourceOf("rate_off_pct"))
	case Off:
		r.say("That is past %s per cent (%s).", num(l.OffPct), SourceOf("rate_off_pct"))
	default:
		r.say("That is past %s per cent, at which a tip is replaced (%s).", num(l.WornPct), SourceOf("nozzle_worn_pct"))
	}
	d.Working = r.Working
	return d, true
}

// Words says the drift: "6.0 per cent more".
func (d Drift) Words() string {
	switch {
	case d.Same():
		return "the same"
	case d.Share > 0:
		return Percent(d.Share) + " per cent more"
	}
	return Percent(-d.Share) + " per cent less"
}

// Same says whether the drift is none as it is printed.
func (d Drift) Same() bool { return math.Abs(d.Share) < 0.0005 }

// Dose says what it means for the lawns that got what was loaded for the rate meant.
func (d Drift) Dose() string {
	if d.Same() {
		return "Every lawn gets the dose that is meant."
	}
	return "What is loaded for " + RateText(d.Meant) + " puts " + d.Words() + " product on every lawn."
}

// Gives is what pump and tip can do.
type Gives struct {
	Pump measure.Maybe[float64] // psi at the pump, at most
	Loss measure.Maybe[float64] // psi that the hose takes at the flow measured
}

// Back is how a rate that has drifted is brought back.
type Back struct {
	PSI      measure.Maybe[float64] // at the applicator
	Possible bool                   // pump and tip give that pressure
	Why      string                 // not, or not known
	Seconds  measure.Maybe[float64] // for the course, at the flow measured
	Working  []string
}

// BringBack works out which pressure, or which pace, lays the rate that is meant.
func (c Catch) BringBack(r Result, meant measure.Rate, g Gives, l Limits) Back {
	var b Back
	if !(r.Delivery.V > 0) || !(meant.V > 0) || r.Delivery.Kind != meant.Kind {
		return b
	}
	says := Result{}
	ratio := meant.V / r.Delivery.V
	if r.Seconds > 0 && c.Kind != Spreader {
		b.Seconds = measure.Known(float64(r.Seconds * ratio))
		says.say("At the same flow: the course in %s instead of %s.", seconds(b.Seconds.V), seconds(r.Seconds))
	}
	if c.Kind == Spreader {
		says.say("Move the gate: %s times what falls now.", num(ratio))
		b.Working = says.Working
		return b
	}
	if !c.PSI.Known || !(c.PSI.V > 0) {
		b.Why = "The pressure at which it was caught is not known."
		says.say("At the same pace: %s times the pressure, for the flow goes with its square root.", num(PressureRatio(ratio)))
		if far(PressureRatio(ratio), l) {
			says.say("%s", tooFar)
		}
		b.Working = says.Working
		return b
	}
	b.PSI = measure.Known(PressureFor(c.PSI.V, 1, ratio))
	says.say("At the same pace: %s psi instead of %s, for the flow goes with the square root of the pressure.", num(b.PSI.V), num(c.PSI.V))
	b.within(c.PSI.V, ratio, g, l)
	if b.Why != "" {
		says.say("%s", b.Why)
	}
	b.Working = says.Working
	return b
}

const tooFar = "That is too far for pressure alone: change the tip, or the pace."

func far(ratio float64, l Limits) bool {
	return ratio > l.PressureTimes || ratio < 1/l.PressureTimes
}

// within says whether pump and tip give the pressure. What the hose takes grows about with the square of the flow.
func (b *Back) within(now, times float64, g Gives, l Limits) {
	ratio := b.PSI.V / now
	must := b.PSI.V
	if g.Loss.Known {
		must += float64(g.Loss.V * PressureRatio(times))
	}
	switch {
	case far(ratio, l):
		b.Why = tooFar
	case g.Pump.Known && must > g.Pump.V:
		b.Why = "The pump would have to give " + num(must) + " psi and gives at most " + num(g.Pump.V) + ": change the tip, or the pace."
	case !g.Pump.Known:
		b.Possible = true
		b.Why = "What the pump gives at most is not in the rig: look at its gauge."
	default:
		b.Possible = true
	}
}
