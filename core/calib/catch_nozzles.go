package calib

import (
	"math"

	"example.com/tintline/core/measure"
)

// Nozzle is one nozzle of several.
type Nozzle struct {
	Number   int
	Caught   measure.Volume
	Flow     measure.Maybe[measure.Flow]
	OffMean  float64                // share: below 0 it gives less than the mean
	OffRated measure.Maybe[float64] // share, against what one gives when it is new
	Far      bool                   // from the mean by more than the limit
	Worn     bool                   // from what it gives when new by more than the limit
}

// nozzles holds each nozzle against the mean of all and against a new one.
func (c Catch) nozzles(r *Result, caught []float64, held float64, l Limits) {
	mean := Mean(caught)
	r.Variation = Variation(caught)
	ounces := make([]float64, len(caught))
	for i, v := range caught {
		ounces[i] = v * 16 / float64(measure.USPint)
		n := Nozzle{Number: i + 1, Caught: c.Caught[i], OffMean: v/mean - 1}
		n.Far = float64(100*math.Abs(n.OffMean)) > l.NozzleOffPct
		if held > 0 {
			n.Flow = measure.Known(measure.Flow(v / held))
			n.wear(c.Rated, l)
		}
		r.Nozzles = append(r.Nozzles, n)
	}
	r.say("%d nozzles gave %s fl oz: mean %s, coefficient of variation %s per cent.", len(caught), numbers(ounces), num(Mean(ounces)), Percent(r.Variation))
	for _, n := range r.Nozzles {
		n.say(r, l)
	}
}

func (n *Nozzle) wear(rated measure.Maybe[measure.Flow], l Limits) {
	if !rated.Known || !(rated.V > 0) || !n.Flow.Known {
		return
	}
	n.OffRated = measure.Known(float64(n.Flow.V)/float64(rated.V) - 1)
	n.Worn = float64(100*n.OffRated.V) > l.WornPct
}

func (n Nozzle) say(r *Result, l Limits) {
	if n.Far {
		r.say("Nozzle %d is %s per cent off the mean, more than %s: clean or replace it.", n.Number, signed(n.OffMean), num(l.NozzleOffPct))
	}
	if n.Worn {
		r.say("Nozzle %d gives %s per cent against a new one, more than %s: replace it.", n.Number, signed(n.OffRated.V), num(l.WornPct))
	}
}

// worn holds the only tip against a new one.
func (c Catch) worn(r *Result, l Limits) {
	if !c.Rated.Known || !r.Flow.Known {
		return
	}
	n := Nozzle{Number: 1, Caught: c.Caught[0], Flow: r.Flow}
	n.wear(c.Rated, l)
	r.Nozzles = []Nozzle{n}
	if n.Worn {
		r.say("The tip gives %s per cent against a new one, more than %s: replace it.", signed(n.OffRated.V), num(l.WornPct))
	}
}

// Worn lists the nozzles that are worn or far from the mean.
func (r Result) Worn() []int {
	var out []int
	for _, n := range r.Nozzles {
		if n.Worn || n.Far {
			out = append(out, n.Number)
		}
	}
	return out
}

func signed(share float64) string {
	if share > 0 {
		return "+" + Percent(share)
	}
	return Percent(share)
}
