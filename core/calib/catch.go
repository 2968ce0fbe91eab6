package calib

import (
	"fmt"
	"math"
	"strconv"

	"example.com/tintline/core/measure"
)

// The kinds of applicator, as the book names them.
const (
	Gun      = "gun"
	RideOn   = "ride_on"
	Backpack = "backpack"
	Spreader = "spreader"
)

// Catch is a catch test as it was taken. Where neither plot nor course is given, the plot is that of the ounce method.
type Catch struct {
	Kind   string
	Runs   []float64      // seconds over the course, at the pace of work
	Course measure.Length // 0: the plot is given
	Swath  measure.Length // what one run covers
	Plot   measure.Area   // in place of course and swath
	// Caught is each catch; of a machine with several nozzles, that of each nozzle.
	Caught []measure.Volume
	// CaughtFor is how many seconds each was caught; unknown: the mean of the runs.
	CaughtFor measure.Maybe[float64]
	Weighed   []measure.Mass // of dry product, what each run dropped
	// Rated is what one nozzle gives when it is new, at the pressure of the test.
	Rated measure.Maybe[measure.Flow]
	PSI   measure.Maybe[float64] // at the applicator, while it was caught
	Tip   string
	Pans  []float64 // across the swath, from left to right, in any one unit
	Apart measure.Length
}

// Same tells whether two tests have the same measurements.
func (c Catch) Same(o Catch) bool { return fmt.Sprint(c) == fmt.Sprint(o) }

// Result is what a test says.
type Result struct {
	Delivery  measure.Rate
	Flow      measure.Maybe[measure.Flow]
	Area      float64 // mm2 that one run covers
	Seconds   float64 // the mean of the runs
	Speed     measure.Maybe[measure.Speed]
	Spread    float64 // share; of runs and catches the larger
	Variation float64 // share; of nozzles or pans
	Nozzles   []Nozzle
	Pattern   Pattern
	Working   []string
}

// Work works a test out. Refused, as a *measure.Trouble: what is missing, what cannot be, and runs or catches that differ by
// more than is allowed.
func (c Catch) Work(l Limits) (Result, error) {
	if err := c.complete(l); err != nil {
		return Result{}, err
	}
	r := Result{Seconds: Mean(c.Runs), Spread: SpreadOf(c.Runs)}
	if len(c.Runs) > 0 {
		if err := alike("runs", c.Runs, r.Spread, l, " s", "Walk the course again at an even pace, and leave out a run that went wrong."); err != nil {
			return Result{}, err
		}
		if len(c.Runs) > 1 {
			r.say("Runs of %s s: mean %s, the farthest %s per cent off.", numbers(c.Runs), seconds(r.Seconds), Percent(r.Spread))
		}
	}
	c.ground(&r)
	if c.Kind == Spreader {
		return r, c.dry(&r, l)
	}
	return r, c.wet(&r, l)
}

// ground works out what one run covers, and how fast.
func (c Catch) ground(r *Result) {
	switch {
	case c.Course > 0:
		r.Area = AreaOf(float64(c.Course), float64(c.Swath))
		r.say("%s at a swath of %s = %s.", feet(c.Course), feet(c.Swath), sqft(r.Area))
	case c.Plot > 0:
		r.Area = float64(c.Plot)
		r.say("The plot has %s.", sqft(r.Area))
	default:
		r.Area = OuncePlot()
		r.say("No plot is given: 1/128 acre, %s.", sqft(r.Area))
	}
	if c.Course > 0 && r.Seconds > 0 {
		v := measure.Speed(math.RoundToEven(SpeedOf(float64(c.Course), r.Seconds)))
		r.Speed = measure.Known(v)
		r.say("%s in %s = %s mph.", feet(c.Course), seconds(r.Seconds), num(v.MPH()))
	}
}

// wet works out a catch of liquid.
func (c Catch) wet(r *Result, l Limits) error {
	caught := make([]float64, len(c.Caught))
	for i, v := range c.Caught {
		caught[i] = float64(v)
	}
	held := c.CaughtFor.Or(r.Seconds)
	total := Mean(caught)
	if c.Kind == RideOn {
		total *= float64(len(caught))
		c.nozzles(r, caught, held, l)
	} else if len(caught) > 1 {
		spread := SpreadOf(caught)
		ounces := make([]float64, len(caught))
		for i, v := range caught {
			ounces[i] = v * 16 / float64(measure.USPint)
		}
		if err := alike("catches", ounces, spread, l, " fl oz", "Catch again for the same time, and leave out a catch that went wrong."); err != nil {
			return err
		}
		r.Spread = max(r.Spread, spread)
		r.say("Catches of %s fl oz: mean %s, the farthest %s per cent off.", numbers(ounces), volumeText(total), Percent(spread))
	}
	if held > 0 {
		flow := measure.Flow(total / held)
		r.Flow = measure.Known(flow)
		r.say("%s in %s = %s gal a minute.", volumeText(total), seconds(held), num(flow.GPM()))
	}
	r.Delivery = measure.Rate{V: LaidOn(total, held, r.Area, r.Seconds), Kind: measure.Liquid}
	if c.CaughtFor.Known && held != r.Seconds {
		total = total * r.Seconds / held
	}
	acre, _ := measure.Factor("area", "acre")
	r.say("%s on %s = %s, %s gal on an acre.", volumeText(total), sqft(r.Area), RateText(r.Delivery), num(r.Delivery.V*acre/float64(measure.USGallon)))
	if c.Kind != RideOn {
		c.worn(r, l)
	}
	return nil
}

// alike refuses figures of which one lies farther from the mean than is allowed.
func alike(what string, list []float64, spread float64, l Limits, unit, do string) error {
	if float64(100*spread) <= l.SpreadPct {
		return nil
	}
	return measure.Troublef(do, "The %s are %s%s: one lies %s per cent off their mean of %s%s, and %s per cent is allowed.",
		what, numbers(list), unit, Percent(spread), num(Mean(list)), unit, num(l.SpreadPct))
}

// Even says whether figures of a test agree within the limits: a *measure.Trouble where they do not.
func Even(runs []float64, l Limits) error {
	return alike("runs", runs, SpreadOf(runs), l, " s", "Walk the course again at an even pace, and leave out a run that went wrong.")
}

func (r *Result) say(format string, args ...any) {
	r.Working = append(r.Working, measure.Troublef("", format, args...).Error())
}

// complete refuses a test of which something is missing, or that could not have been.
func (c Catch) complete(l Limits) error {
	if need := l.Runs[c.Kind]; len(c.Runs) < need {
		return measure.Troublef("Time the course "+times(need)+" or more, at the pace of work.",
			"The test has %s; a %s needs %d.", runsText(len(c.Runs)), word(c.Kind), need)
	}
	for i, s := range c.Runs {
		if !(s > 0) || s > longestRun {
			return measure.Troublef("Give each run in seconds, more than 0 and up to an hour.", "Run %d took %s s.", i+1, num(s))
		}
	}
	if c.Course > 0 && c.Swath <= 0 {
		return measure.Troublef("Give the width that one run covers.", "The course is %s long, and its swath is not given.", feet(c.Course))
	}
	if c.Course < 0 || c.Swath < 0 || c.Plot < 0 || c.Course > farthest || c.Swath > farthest {
		return measure.Troublef("Give more than 0 and up to 10,000 ft.", "Course and swath are %s and %s.", feet(c.Course), feet(c.Swath))
	}
	return c.caughtSome()
}

// The longest run that is read, in seconds, and the longest course.
const (
	longestRun = 3600
	farthest   = 10_000 * measure.Foot
)

func (c Catch) caughtSome() error {
	if c.Kind == Spreader {
		if len(c.Weighed) == 0 {
			return measure.Troublef("Weigh what a run over the course dropped.", "Nothing was weighed.")
		}
		for i, m := range c.Weighed {
			if m <= 0 {
				return measure.Troublef("Give more than 0 lb, or leave the run out.", "Run %d dropped %s.", i+1, massText(float64(m)))
			}
		}
		return nil
	}
	if len(c.Caught) == 0 {
		return measure.Troublef("Catch what comes out in the time that the course takes.", "Nothing was caught.")
	}
	for i, v := range c.Caught {
		if v <= 0 && (c.Kind != RideOn || v < 0) {
			return measure.Troublef("Give more than 0 gal, or leave the catch out.", "Catch %d is %s.", i+1, volumeText(float64(v)))
		}
	}
	if s := c.CaughtFor; s.Known && (!(s.V > 0) || s.V > longestRun) {
		return measure.Troublef("Give the seconds of the catch, more than 0 and up to an hour.", "It was caught for %s s.", num(s.V))
	}
	if len(c.Runs) == 0 && c.CaughtFor.Known {
		return measure.Troublef("Time the course, or leave the seconds of the catch out.", "It was caught for %s s, and the course has no time.", num(c.CaughtFor.V))
	}
	sum := measure.Volume(0)
	for _, v := range c.Caught {
		sum += v
	}
	if sum <= 0 {
		return measure.Troublef("Look whether the valve was open; type what each nozzle gave.", "All nozzles together gave %s.", volumeText(float64(sum)))
	}
	return nil
}

func runsText(n int) string {
	switch n {
	case 0:
		return "no timed run"
	case 1:
		return "1 timed run"
	}
	return strconv.Itoa(n) + " timed runs"
}

func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return strconv.Itoa(n) + " times"
}

// word is the kind as a person says it.
func word(kind string) string {
	switch kind {
	case Gun:
		return "hand gun"
	case RideOn:
		return "ride-on"
	}
	return kind
}
