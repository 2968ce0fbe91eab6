package calib

import "example.com/tintline/core/measure"

// Pattern is how evenly dry product falls across the swath.
type Pattern struct {
	Known     bool
	Variation float64        // share
	Lowest    float64        // the emptiest pan over the mean
	Highest   float64        // the fullest pan over the mean
	Effective measure.Length // between the pans that have half of what the middle has; 0: not known
}

// dry works out what a spreader dropped.
func (c Catch) dry(r *Result, l Limits) error {
	dropped := make([]float64, len(c.Weighed))
	pounds := make([]float64, len(c.Weighed))
	for i, m := range c.Weighed {
		dropped[i], pounds[i] = float64(m), m.Pounds()
	}
	mean, spread := Mean(dropped), SpreadOf(dropped)
	if len(dropped) > 1 {
		if err := alike("weights", pounds, spread, l, " lb", "Run the course again with the gate at the same mark, and leave out a run that went wrong."); err != nil {
			return err
		}
		r.say("Weights of %s lb: mean %s, the farthest %s per cent off.", numbers(pounds), massText(mean), Percent(spread))
	}
	r.Spread = max(r.Spread, spread)
	r.Delivery = measure.Rate{V: LaidOn(mean, 0, r.Area, 0), Kind: measure.Dry}
	r.say("%s on %s = %s.", massText(mean), sqft(r.Area), RateText(r.Delivery))
	if r.Pattern = PatternOf(c.Pans, c.Apart); r.Pattern.Known {
		r.Variation = r.Pattern.Variation
		r.say("%d pans: coefficient of variation %s per cent, the emptiest has %s and the fullest %s per cent of the mean.", len(c.Pans), Percent(r.Variation), Percent(r.Pattern.Lowest), Percent(r.Pattern.Highest))
		if r.Pattern.Effective > 0 {
			r.say("Half of what falls in the middle falls %s apart: the width from run to run.", feet(r.Pattern.Effective))
		}
	}
	return nil
}

// PatternOf reads pans that stood across the swath, from left to right. The width from run to run is that between the two
// places where half of the middle falls, so that the edges of two runs add up (extension teaching, recalled from memory).
func PatternOf(pans []float64, apart measure.Length) Pattern {
	mean := Mean(pans)
	if len(pans) < 3 || !(mean > 0) {
		return Pattern{}
	}
	p := Pattern{Known: true, Variation: Variation(pans), Lowest: pans[0] / mean, Highest: pans[0] / mean}
	for _, f := range pans {
		p.Lowest, p.Highest = min(p.Lowest, f/mean), max(p.Highest, f/mean)
	}
	n := len(pans)
	middle := pans[n/2]
	if n%2 == 0 {
		middle = (pans[n/2-1] + pans[n/2]) / 2
	}
	left, okLeft := halfAt(pans, n/2, -1, middle/2)
	right, okRight := halfAt(pans, (n-1)/2, 1, middle/2)
	if okLeft && okRight && apart > 0 {
		p.Effective = measure.Length((right - left) * float64(apart))
	}
	return p
}

// halfAt walks from the middle to one side and gives the place, in pans, where less than half falls.
func halfAt(pans []float64, from, step int, half float64) (float64, bool) {
	for i := from; i+step >= 0 && i+step < len(pans); i += step {
		if a, b := pans[i], pans[i+step]; a >= half && b < half {
			return float64(i) + float64(float64(step)*(a-half)/(a-b)), true
		}
	}
	return 0, false
}
