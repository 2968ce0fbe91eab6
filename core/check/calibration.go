package check

import (
	"fmt"
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/calib"
	"example.com/tintline/core/measure"
)

// Calibration is how an applicator stands, with the tip that is on it: what it was entered with, what it is taken to lay,
// and what its tests say.
type Calibration struct {
	Applicator, Kind, Tip, Product string
	Meant                          core.Maybe[measure.Rate] // the rate it was entered with
	InForce                        core.Maybe[measure.Rate]
	Flow                           core.Maybe[measure.Flow]
	ByTest                         bool        // InForce is what an accepted test gave
	Since                          core.Moment // of that test
	Drift                          core.Maybe[calib.Drift]
	Tests                          []core.TestTaken // newest first
	Days                           core.Maybe[int]  // since the newest
	// Due says why it should be tested, or looked at, before the day begins; empty: nothing is due. Never is one that this
	// book has no test of, which is said on its page alone.
	Due   []string
	Never bool
}

// Calibrations lists all applicators of the rig in its order, a spreader once for each product that it was tested with.
func Calibrations(b *core.Book, at core.Moment) []Calibration {
	out := []Calibration{}
	if b.Rig() == nil {
		return out
	}
	for i := range b.Rig().Applicators {
		a := &b.Rig().Applicators[i]
		products := []string{""}
		if !a.Sprays() {
			products = testedWith(b, a.Name)
		} else if a.Hopper > 0 {
			products = append(products, with(testedWith(b, a.Name))...)
		}
		for _, p := range products {
			out = append(out, calibration(b, at, a, p))
		}
	}
	return out
}

// testedWith are the products that an applicator was tested with; one without a name where there is none.
func testedWith(b *core.Book, applicator string) []string {
	var out []string
	for _, t := range b.Tests(applicator) {
		if t.Test.Test == core.Spreader && !hasText(out, t.Test.Product) {
			out = append(out, t.Test.Product)
		}
	}
	if len(out) == 0 {
		return []string{""}
	}
	return out
}

// with leaves out the one without a name.
func with(products []string) []string {
	var out []string
	for _, p := range products {
		if p != "" {
			out = append(out, p)
		}
	}
	return out
}

func calibration(b *core.Book, at core.Moment, a *core.Applicator, product string) Calibration {
	c := Calibration{Applicator: a.Name, Kind: a.Type, Tip: b.TipOn(a.Name), Product: product}
	dry := !a.Sprays() || product != ""
	if r, ok := b.MeantRate(a.Name, c.Tip, product); ok && (r.Kind == measure.Dry) == dry {
		c.Meant = core.Known(r)
	}
	if a.Delivery.V > 0 && (a.Delivery.Kind == measure.Dry) == dry {
		c.InForce = core.Known(a.Delivery)
	}
	if dry {
		if r, ok := b.DryRate(a.Name, product); ok {
			c.InForce = core.Known(r)
		}
	} else {
		c.Flow = a.Flow
	}
	for _, r := range b.RatesInForce() {
		if r.Applicator == a.Name && r.Tip == c.Tip && r.Product == product {
			c.ByTest, c.Since = true, r.At
		}
	}
	if d, ok := calib.DriftOf(c.InForce.V, c.Meant.V, b.CatchLimits()); ok && c.ByTest {
		c.Drift = core.Known(d)
	}
	for _, t := range b.Tests(a.Name) {
		if t.Test.Tip == c.Tip && t.Test.Product == product && (t.Test.Test == core.Spreader) == dry {
			c.Tests = append([]core.TestTaken{t}, c.Tests...)
		}
	}
	c.due(b, at)
	return c
}

// due says what is due: the test is old, or what it showed is past the limit.
func (c *Calibration) due(b *core.Book, at core.Moment) {
	if len(c.Tests) == 0 {
		c.Never = true
		return
	}
	last := c.Tests[0]
	days := int(math.Floor(at.MinutesSince(last.At) / (24 * 60)))
	c.Days = core.Known(days)
	name := c.Name()
	if most := b.Setting(core.CalibrateDays); float64(days) > most {
		c.Due = append(c.Due, fmt.Sprintf("%s: the last catch test is %d days old; %g are meant.", name, days, most))
	}
	d := c.Drift.V
	if !c.Drift.Known || last.Test.Accepted != core.Yes {
		// What a test showed that was not accepted is not in force, and counts all the same.
		d, _ = calib.DriftOf(last.Test.Delivery.V, last.Test.Meant.V, b.CatchLimits())
	}
	if d.Weight == calib.Off || d.Weight == calib.Worn {
		c.Due = append(c.Due, fmt.Sprintf("%s: it lays %s than meant by its last test; %g per cent are allowed.", name, d.Words(), b.Setting(core.RateOffPct)))
	}
}

// Name is the applicator with the product it was tested with.
func (c *Calibration) Name() string {
	if c.Product != "" {
		return c.Applicator + " with " + c.Product
	}
	return c.Applicator
}

// CalibrationDue lists what should be tested, or looked at, before the day begins.
func CalibrationDue(b *core.Book, at core.Moment) []string {
	out := []string{}
	for _, c := range Calibrations(b, at) {
		out = append(out, c.Due...)
	}
	return out
}

// Trial is a test as it would be entered: worked out, held against what is meant, with what would bring it back.
type Trial struct {
	Fact   *core.Calibrated
	Result core.Maybe[calib.Result]
	Drift  core.Maybe[calib.Drift]
	Back   calib.Back
}

// Try works a test out without entering it. What is refused is what the book would refuse.
func Try(b *core.Book, at core.Moment, f *core.Calibrated) (Trial, error) {
	es, err := b.Prepare("", at, f)
	if err != nil {
		return Trial{}, err
	}
	full := es[0].What.(*core.Calibrated)
	t := Trial{Fact: full}
	l := b.CatchLimits()
	if d, ok := calib.DriftOf(full.Delivery.V, full.Meant.V, l); ok {
		t.Drift = core.Known(d)
	}
	if r, err := full.Catch().Work(l); err == nil {
		t.Result = core.Known(r)
		t.Back = full.Catch().BringBack(r, full.Meant.V, gives(b, full.Applicator), l)
	}
	return t, nil
}

// gives is the pressure that the pump gives at most, and what the hose takes of it.
func gives(b *core.Book, applicator string) calib.Gives {
	var g calib.Gives
	if b.Rig() == nil || b.Plumbing().Tank(applicator) != nil {
		return g // the pump of a machine is not in the rig
	}
	g.Pump = b.Rig().PumpPSI
	if p, ok := PressureOf(b, applicator); ok && p.Loss.Known {
		g.Loss = core.Known(p.Loss.V.PSI())
	}
	return g
}

// Working is all of the working, what is meant and what would bring it back included.
func (t *Trial) Working() []string {
	out := append([]string{}, t.Result.V.Working...)
	if t.Drift.Known {
		out = append(out, t.Drift.V.Working...)
		if !t.Drift.V.Same() {
			out = append(append(out, t.Drift.V.Dose()), t.Back.Working...)
		}
	}
	return out
}
