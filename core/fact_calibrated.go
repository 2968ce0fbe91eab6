package core

import (
	"example.com/tintline/core/calib"
	"example.com/tintline/core/measure"
)

// Calibrated: a catch test was taken of an applicator. One that is accepted makes what it measured the delivery rate in
// force of that applicator and tip; one that is not is kept beside it. It moves nothing: what went into the bucket goes back.
type Calibrated struct {
	Applicator string
	Tip        string // filled in: the one that is on
	Product    string // of dry product
	Test       string // Gun, RideOn, Backpack or Spreader; filled in
	Runs       []TimedRun
	Course     Maybe[measure.Length]
	Swath      Maybe[measure.Length]
	Plot       Maybe[measure.Area] // in place of course and swath
	Caught     []CaughtVolume      // of a machine, that of each nozzle
	CaughtFor  Maybe[float64]      // seconds; unknown: the mean of the runs
	Weighed    []WeighedRun
	PSI        Maybe[float64]      // at the applicator
	Rated      Maybe[measure.Flow] // of one nozzle when it is new
	Pans       []PanAcross
	PanSpacing Maybe[measure.Length]
	Accepted   string // Yes or No
	// What the test comes to, filled in. Meant is the rate that loads were made up for when it was taken.
	Delivery     Maybe[measure.Rate]
	Flow         Maybe[measure.Flow]
	SpreadPct    Maybe[float64]
	VariationPct Maybe[float64]
	Meant        Maybe[measure.Rate]
	Text         string
}

// TimedRun is a run over the course, in seconds; CaughtVolume a catch; WeighedRun what a run of a spreader dropped;
// PanAcross what a pan across the swath got, in any one unit.
type (
	TimedRun     struct{ Seconds float64 }
	CaughtVolume struct{ Volume measure.Volume }
	WeighedRun   struct{ Weight measure.Mass }
	PanAcross    struct{ Amount float64 }
)

// Whether a test is accepted.
const (
	Yes = "yes"
	No  = "no"
)

// Kind of the fact.
func (*Calibrated) Kind() Kind { return kindCalibrated }

// Name of the fact.
func (*Calibrated) Name() string { return "calibrated" }

func (f *Calibrated) fields(w walker) {
	w.text(1, "applicator", &f.Applicator)
	w.text(2, "accepted", &f.Accepted)
	w.maybeRate(3, "delivery", &f.Delivery)
	w.maybeFlow(4, "flow", &f.Flow)
	w.maybeRate(5, "meant", &f.Meant)
	w.later()
	w.text(6, "tip", &f.Tip)
	w.text(7, "product", &f.Product)
	w.text(8, "test", &f.Test)
	list(w, 9, "runs", &f.Runs, func(w walker, r *TimedRun) { w.number(1, "seconds", &r.Seconds) })
	w.maybeLength(10, "course", &f.Course)
	w.maybeLength(11, "swath", &f.Swath)
	w.maybeArea(12, "plot", &f.Plot)
	list(w, 13, "caught", &f.Caught, func(w walker, c *CaughtVolume) { w.volume(1, "volume", &c.Volume) })
	w.maybeNumber(14, "caught_for_seconds", &f.CaughtFor)
	list(w, 15, "weighed", &f.Weighed, func(w walker, r *WeighedRun) { w.mass(1, "weight", &r.Weight) })
	w.maybeNumber(16, "pressure_psi", &f.PSI)
	w.maybeFlow(17, "rated_flow", &f.Rated)
	list(w, 18, "pans", &f.Pans, func(w walker, p *PanAcross) { w.number(1, "amount", &p.Amount) })
	w.maybeLength(19, "pan_spacing", &f.PanSpacing)
	w.maybeNumber(20, "spread_pct", &f.SpreadPct)
	w.maybeNumber(21, "variation_pct", &f.VariationPct)
	w.text(22, "text", &f.Text)
}

// Catch is the test as core/calib works it out.
func (f *Calibrated) Catch() calib.Catch {
	c := calib.Catch{
		Kind: f.Test, Course: f.Course.V, Swath: f.Swath.V, Plot: f.Plot.V, CaughtFor: f.CaughtFor,
		Rated: f.Rated, PSI: f.PSI, Tip: f.Tip, Apart: f.PanSpacing.V,
	}
	for _, r := range f.Runs {
		c.Runs = append(c.Runs, r.Seconds)
	}
	for _, v := range f.Caught {
		c.Caught = append(c.Caught, v.Volume)
	}
	for _, m := range f.Weighed {
		c.Weighed = append(c.Weighed, m.Weight)
	}
	for _, p := range f.Pans {
		c.Pans = append(c.Pans, p.Amount)
	}
	return c
}

// CalibratedOf is a test as a fact.
func CalibratedOf(applicator string, c calib.Catch) *Calibrated {
	f := &Calibrated{Applicator: applicator, Tip: c.Tip, Test: c.Kind, CaughtFor: c.CaughtFor, PSI: c.PSI, Rated: c.Rated, Accepted: No}
	for _, s := range c.Runs {
		f.Runs = append(f.Runs, TimedRun{s})
	}
	for _, v := range c.Caught {
		f.Caught = append(f.Caught, CaughtVolume{v})
	}
	for _, m := range c.Weighed {
		f.Weighed = append(f.Weighed, WeighedRun{m})
	}
	for _, p := range c.Pans {
		f.Pans = append(f.Pans, PanAcross{p})
	}
	f.Course = knownIf(c.Course)
	f.Swath, f.Plot, f.PanSpacing = knownIf(c.Swath), knownIf(c.Plot), knownIf(c.Apart)
	return f
}

func knownIf[T ~int64](v T) Maybe[T] { return Maybe[T]{V: v, Known: v != 0} }
