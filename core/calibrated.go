package core

import (
	"math"

	"example.com/tintline/core/calib"
	"example.com/tintline/core/measure"
)

// RateInForce is the delivery rate that the last accepted test of an applicator and its tip gave. Product is that of a
// spreader. Meant is the rate that the rig was entered with, against which it has drifted.
type RateInForce struct {
	Applicator, Tip, Product string
	Delivery, Meant          measure.Rate
	Flow                     Maybe[measure.Flow]
	At                       Moment
}

// TestTaken is a test with its time.
type TestTaken struct {
	Test Calibrated
	At   Moment
}

// mostTests is how many tests of an applicator the book keeps beside the journal.
const mostTests = 12

// RatesInForce lists what accepted tests made the delivery rate in force, in the order of the first test of each.
func (s *state) RatesInForce() []RateInForce { return append([]RateInForce(nil), s.rates...) }

// Tests lists the last tests of an applicator, the newest last.
func (s *state) Tests(applicator string) []TestTaken {
	var out []TestTaken
	for _, t := range s.tests {
		if t.Test.Applicator == applicator {
			out = append(out, t)
		}
	}
	return out
}

// CatchLimits are what a test is held to, by the settings.
func (s *state) CatchLimits() calib.Limits {
	l := calib.Usual()
	l.SpreadPct = s.Setting(CatchSpreadPct)
	l.OffPct = s.Setting(RateOffPct)
	l.WornPct = s.Setting(NozzleWornPct)
	l.NozzleOffPct = s.Setting(NozzleOffPct)
	l.PressureTimes = s.Setting(TipPressureTimes)
	return l
}

// TipOn is the tip on an applicator: the one that was fitted, else the one with the delivery rate and flow that the
// applicator was entered with; empty where neither is.
func (s *state) TipOn(applicator string) string {
	a := s.entered.applicator(applicator)
	if on := s.fitted[applicator]; on != "" || a == nil {
		return on
	}
	for _, t := range a.Tips {
		if t.Delivery == a.Delivery && t.Flow == a.Flow {
			return t.Name
		}
	}
	return ""
}

// Entered is the delivery rate that was entered with the rig for an applicator with a tip; false where none was.
func (s *state) EnteredRate(applicator, tip string) (measure.Rate, bool) {
	a := s.entered.applicator(applicator)
	if a == nil {
		return measure.Rate{}, false
	}
	if t := a.tip(tip); t != nil {
		return t.Delivery, t.Delivery.V > 0
	}
	return a.Delivery, a.Delivery.V > 0
}

// MeantRate is the rate that an applicator with a tip is meant to lay: as the rig was entered before tests changed it; of
// a spreader with a product, that of its setting, else of the mix in its hopper or of the label.
func (s *state) MeantRate(applicator, tip, product string) (measure.Rate, bool) {
	if r := s.rateOf(applicator, tip, product); r != nil && r.Meant.V > 0 {
		return r.Meant, true
	}
	a := s.entered.applicator(applicator)
	if product == "" || a == nil {
		return s.EnteredRate(applicator, tip)
	}
	if r, ok := s.EnteredRate(applicator, tip); ok && r.Kind == measure.Dry {
		return r, true
	}
	return s.saidDryRate(applicator, product)
}

func (s *state) rateOf(applicator, tip, product string) *RateInForce {
	for i := range s.rates {
		if r := &s.rates[i]; r.Applicator == applicator && r.Tip == tip && r.Product == product {
			return r
		}
	}
	return nil
}

// resolveCalibrated fills in which tip it was, what the test comes to, and what was meant.
func (s *state) resolveCalibrated(f *Calibrated) (Fact, error) {
	c := *f
	a := s.Applicator(f.Applicator)
	if a == nil {
		return &c, nil // admission says so
	}
	if c.Tip == "" {
		c.Tip = s.TipOn(f.Applicator)
	}
	if c.Test == "" {
		if c.Test = a.Type; len(c.Weighed) > 0 {
			c.Test = Spreader
		}
	}
	if c.Accepted == "" {
		c.Accepted = No
	}
	if r, ok := s.MeantRate(c.Applicator, c.Tip, c.Product); ok && !c.Meant.Known {
		c.Meant = Known(r)
	}
	if len(c.Runs)+len(c.Caught)+len(c.Weighed) == 0 {
		return &c, nil // taken elsewhere: the rate is given
	}
	return &c, s.workOut(&c)
}

// workOut fills in what the measurements come to. Where that is given, it has to be what they come to.
func (s *state) workOut(c *Calibrated) error {
	l := s.CatchLimits()
	if c.Delivery.Known {
		l.SpreadPct = math.Inf(1)
	}
	r, err := c.Catch().Work(l)
	if err != nil {
		return troubled(err)
	}
	if c.Delivery.Known {
		if d := c.Delivery.V; d.Kind != r.Delivery.Kind || math.Abs(d.V-r.Delivery.V) > 1e-6*r.Delivery.V {
			return refuse("Leave the delivery rate out, or correct a measurement.",
				"The test comes to %s, and %s is given.", r.Delivery.Text(), d.Text())
		}
	} else {
		c.Delivery = Known(r.Delivery)
	}
	if !c.Flow.Known {
		c.Flow = r.Flow
	}
	if !c.SpreadPct.Known {
		c.SpreadPct = Known(float64(100 * r.Spread))
	}
	if !c.VariationPct.Known && r.Variation > 0 {
		c.VariationPct = Known(float64(100 * r.Variation))
	}
	return nil
}

// applyCalibrated keeps a test, and lets an accepted one rule.
func (s *state) applyCalibrated(e Entry, f *Calibrated) {
	s.keepTest(TestTaken{*f, e.At})
	if f.Accepted != Yes || !f.Delivery.Known || !(f.Delivery.V.V > 0) {
		return
	}
	now := RateInForce{
		Applicator: f.Applicator, Tip: f.Tip, Product: f.Product, Delivery: f.Delivery.V, Meant: f.Meant.V, Flow: f.Flow, At: e.At,
	}
	all := append([]RateInForce(nil), s.rates...)
	for i := range all {
		if r := &all[i]; r.Applicator == now.Applicator && r.Tip == now.Tip && r.Product == now.Product {
			*r = now
			s.rates = all
			s.fit()
			return
		}
	}
	s.rates = append(all, now)
	s.fit()
}

// keepTest keeps the last tests of each applicator.
func (s *state) keepTest(t TestTaken) {
	had := 0
	for _, o := range s.tests {
		if o.Test.Applicator == t.Test.Applicator {
			had++
		}
	}
	var all []TestTaken
	for _, o := range s.tests {
		if o.Test.Applicator == t.Test.Applicator && had >= mostTests {
			had--
			continue
		}
		all = append(all, o)
	}
	s.tests = append(all, t)
}

// keepCalibrated says which rates stay in force when the rig is entered anew: those of applicators and tips that it still
// has, unless it gives them another delivery rate. A form that changes something else brings the rate in force along. It
// is asked before the new rig stands in the book.
func (s *state) keepCalibrated(f *Rig) {
	var kept []RateInForce
	for _, r := range s.rates {
		a, was := f.applicator(r.Applicator), s.entered.applicator(r.Applicator)
		if a == nil || was == nil || r.Tip != "" && a.tip(r.Tip) == nil {
			continue
		}
		now, before := a.tip(r.Tip), was.tip(r.Tip)
		if now == nil || before == nil {
			now, before = &Tip{Delivery: a.Delivery, Flow: a.Flow}, &Tip{Delivery: was.Delivery, Flow: was.Flow}
		}
		if now.Delivery != before.Delivery && now.Delivery != r.Delivery {
			continue
		}
		if now.Flow != before.Flow && now.Flow != r.Flow {
			r.Flow = now.Flow
		}
		kept = append(kept, r)
	}
	s.rates = kept
}

// rule puts the rates of tests into an applicator of the rig in force.
func (s *state) rule(a *Applicator) {
	on, tips := s.TipOn(a.Name), false
	for _, r := range s.rates {
		if r.Applicator != a.Name || r.Product != "" {
			continue
		}
		if r.Tip == on {
			a.Delivery = r.Delivery
			if r.Flow.Known {
				a.Flow = r.Flow
			}
		}
		if a.tip(r.Tip) == nil {
			continue
		}
		if !tips {
			a.Tips, tips = append([]Tip(nil), a.Tips...), true
		}
		t := a.tip(r.Tip)
		t.Delivery = r.Delivery
		if r.Flow.Known {
			t.Flow = r.Flow
		}
	}
}

func (s *state) digestCalibrated(w *binaryWriter) {
	if len(s.rates) == 0 {
		return
	}
	w.str("calibrated")
	w.count(len(s.rates))
	for _, r := range s.rates {
		for _, t := range []string{r.Applicator, r.Tip, r.Product} {
			w.str(t)
		}
		for _, m := range []measure.Rate{r.Delivery, r.Meant} {
			w.int(int64(math.Float64bits(m.V)))
			w.int(int64(m.Kind))
		}
		w.yes(r.Flow.Known)
		w.int(int64(math.Float64bits(float64(r.Flow.V))))
	}
}
