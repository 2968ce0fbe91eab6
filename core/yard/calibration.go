package yard

import (
	"fmt"
	"math"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/calib"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// CalibrationDoc is how the applicators of the rig stand, as a document: keys end in their unit, what is not known is null.
// What the readings of gauges teach of an applicator stands beside its tests.
type CalibrationDoc struct {
	Applicators []ApplicatorDoc `json:"applicators"`
	Due         []string        `json:"due"`
	Gauges      map[string]any  `json:"gauges"` // what readings of gauges teach
}

// ApplicatorDoc is one applicator with the tip that is on it; a spreader with the product that it was tested with.
type ApplicatorDoc struct {
	Applicator string    `json:"applicator"`
	Kind       string    `json:"kind"`
	Tip        *string   `json:"tip"`
	Product    *string   `json:"product"`
	Meant      *float64  `json:"meant_gal_per_1000_sqft"`
	InForce    *float64  `json:"in_force_gal_per_1000_sqft"`
	MeantDry   *float64  `json:"meant_lb_per_1000_sqft"`
	InForceDry *float64  `json:"in_force_lb_per_1000_sqft"`
	Flow       *float64  `json:"flow_gpm"`
	ByTest     bool      `json:"by_test"`
	Since      *string   `json:"since"`
	Days       *int      `json:"days_since_test"`
	Drift      *float64  `json:"drift_pct"`
	Weight     *string   `json:"drift"`
	Says       *string   `json:"says"`
	Due        []string  `json:"due"`
	Tests      []TestDoc `json:"tests"`
}

// TestDoc is a test, with its working.
type TestDoc struct {
	At         string    `json:"at"`
	Accepted   bool      `json:"accepted"`
	Tip        *string   `json:"tip"`
	Delivery   *float64  `json:"delivery_gal_per_1000_sqft"`
	Dry        *float64  `json:"delivery_lb_per_1000_sqft"`
	Flow       *float64  `json:"flow_gpm"`
	PSI        *float64  `json:"pressure_psi"`
	Spread     *float64  `json:"spread_pct"`
	Variation  *float64  `json:"variation_pct"`
	Drift      *float64  `json:"drift_pct"`
	RunSeconds []float64 `json:"run_seconds"`
	CaughtGal  []float64 `json:"caught_gal"`
	WeighedLb  []float64 `json:"weighed_lb"`
	Working    []string  `json:"working"`
}

// Calibration arranges it.
func Calibration(b *core.Book, at core.Moment) CalibrationDoc {
	doc := CalibrationDoc{Applicators: []ApplicatorDoc{}, Due: check.CalibrationDue(b, at), Gauges: Taught(b).Document()}
	for _, c := range check.Calibrations(b, at) {
		doc.Applicators = append(doc.Applicators, applicatorDoc(b, c))
	}
	return doc
}

func applicatorDoc(b *core.Book, c check.Calibration) ApplicatorDoc {
	d := ApplicatorDoc{
		Applicator: c.Applicator, Kind: c.Kind, Tip: said(c.Tip), Product: said(c.Product), ByTest: c.ByTest, Due: append([]string{}, c.Due...), Tests: []TestDoc{}, Days: c.Days.Pointer(),
		Meant: wet(c.Meant), MeantDry: dry(c.Meant), InForce: wet(c.InForce), InForceDry: dry(c.InForce),
	}
	if c.Flow.Known {
		d.Flow = figure(c.Flow.V.GPM())
	}
	if c.ByTest {
		d.Since = said(c.Since.String())
	}
	if c.Drift.Known {
		d.Drift, d.Weight, d.Says = figure(100*c.Drift.V.Share), said(c.Drift.V.Weight), said(c.Drift.V.Dose())
	}
	for _, t := range c.Tests {
		d.Tests = append(d.Tests, testDoc(b, t))
	}
	return d
}

func testDoc(b *core.Book, t core.TestTaken) TestDoc {
	f := &t.Test
	d := TestDoc{
		At: t.At.String(), Accepted: f.Accepted == core.Yes, Tip: said(f.Tip), Delivery: wet(f.Delivery), Dry: dry(f.Delivery),
		PSI: f.PSI.Pointer(), Spread: f.SpreadPct.Pointer(), Variation: f.VariationPct.Pointer(),
		RunSeconds: []float64{}, CaughtGal: []float64{}, WeighedLb: []float64{}, Working: []string{},
	}
	if f.Flow.Known {
		d.Flow = figure(f.Flow.V.GPM())
	}
	if drift, ok := calib.DriftOf(f.Delivery.V, f.Meant.V, b.CatchLimits()); ok {
		d.Drift = figure(100 * drift.Share)
	}
	for _, r := range f.Runs {
		d.RunSeconds = append(d.RunSeconds, r.Seconds)
	}
	for _, v := range f.Caught {
		d.CaughtGal = append(d.CaughtGal, v.Volume.Gallons())
	}
	for _, m := range f.Weighed {
		d.WeighedLb = append(d.WeighedLb, m.Weight.Pounds())
	}
	if len(f.Runs)+len(f.Caught)+len(f.Weighed) > 0 {
		l := b.CatchLimits()
		l.SpreadPct = math.Inf(1) // it was admitted under the limits of its day
		if r, err := f.Catch().Work(l); err == nil {
			d.Working = append(d.Working, r.Working...)
		}
	}
	return d
}

func said(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

func figure(f float64) *float64 { return &f }

func wet(r core.Maybe[measure.Rate]) *float64 {
	if !r.Known || r.V.Kind != measure.Liquid {
		return nil
	}
	return figure(r.V.GalPer1000())
}

func dry(r core.Maybe[measure.Rate]) *float64 {
	if !r.Known || r.V.Kind != measure.Dry {
		return nil
	}
	f, _ := r.V.In("lb_per_1000_sqft") // the unit is in the table
	return figure(f)
}

// CalibrationText is the same for a person: an applicator in a few lines, its last tests below it.
func CalibrationText(b *core.Book, at core.Moment) string {
	var w strings.Builder
	all := check.Calibrations(b, at)
	if len(all) == 0 {
		return "The book has no rig yet.\n"
	}
	for i := range all {
		c := &all[i]
		fmt.Fprintf(&w, "%s: %s\n", c.Name(), RateWords(c))
		for _, due := range c.Due {
			fmt.Fprintf(&w, "  due: %s\n", due)
		}
		for _, t := range c.Tests {
			fmt.Fprintf(&w, "  %s %s\n", t.At.Date(), TestWords(b, t))
		}
		if c.Never {
			w.WriteString("  no catch test is in this book\n")
		}
	}
	w.WriteString("\n" + Taught(b).Text())
	return w.String()
}

// RateWords say what an applicator is taken to lay and since when: "1.59 gal per 1,000 sq ft by the test of 2026-05-28, 6.0
// per cent more than the 1.5 meant".
func RateWords(c *check.Calibration) string {
	if !c.InForce.Known {
		return "no delivery rate"
	}
	s := calib.RateText(c.InForce.V)
	if c.Tip != "" {
		s += " with " + c.Tip
	}
	if !c.ByTest {
		return s + ", as entered"
	}
	s += " by the test of " + c.Since.Date()
	if c.Drift.Known && !c.Drift.V.Same() {
		s += ", " + c.Drift.V.Words() + " than the " + calib.RateText(c.Meant.V) + " meant"
	}
	return s
}

// TestWords say what a test came to.
func TestWords(b *core.Book, t core.TestTaken) string {
	f := &t.Test
	s := calib.RateText(f.Delivery.V)
	if f.Flow.Known {
		s += ", " + f.Flow.V.Text()
	}
	if f.PSI.Known {
		s += fmt.Sprintf(" at %.0f psi", f.PSI.V)
	}
	if d, ok := calib.DriftOf(f.Delivery.V, f.Meant.V, b.CatchLimits()); ok {
		if d.Same() {
			s += ", as meant"
		} else {
			s += ", " + d.Words()
		}
	}
	if len(f.Runs) > 1 && f.SpreadPct.Known {
		s += fmt.Sprintf(", runs within %.1f per cent", f.SpreadPct.V)
	}
	if f.Accepted != core.Yes {
		s += "; a note"
	}
	return s
}
