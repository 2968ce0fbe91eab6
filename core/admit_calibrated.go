package core

import "example.com/tintline/core/measure"

// The most of each kind that a test may have, so that a slip does not fill the book.
const (
	mostRuns    = 30
	mostNozzles = 100
)

func (s *state) admitCalibrated(f *Calibrated) error {
	if err := s.needRig(); err != nil {
		return err
	}
	a := s.Applicator(f.Applicator)
	if a == nil {
		return refuse(s.applicatorsHint(), "There is no applicator %q.", f.Applicator)
	}
	if f.Tip != "" && a.tip(f.Tip) == nil {
		return refuse("Enter the tip with the rig first.", "%s has no tip %q.", f.Applicator, f.Tip)
	}
	switch f.Accepted {
	case Yes, No:
	default:
		return refuse("Write yes or no.", "Whether the test is accepted is %q.", f.Accepted)
	}
	if len(f.Runs) > mostRuns || len(f.Caught) > mostNozzles || len(f.Weighed) > mostRuns || len(f.Pans) > mostNozzles {
		return refuse("Give up to 30 runs and 100 catches.", "The test has %d runs and %d catches, weights or pans.", len(f.Runs), len(f.Caught)+len(f.Weighed)+len(f.Pans))
	}
	if err := s.admitTestOf(f, a); err != nil {
		return err
	}
	return admitTestFigures(f)
}

// admitTestOf refuses a test that the applicator cannot have had.
func (s *state) admitTestOf(f *Calibrated, a *Applicator) error {
	dry := f.Test == Spreader
	switch f.Test {
	case Gun, RideOn, Backpack, Spreader:
	default:
		return refuse("Write gun, ride_on, backpack or spreader.", "The kind of the test is %q.", f.Test)
	}
	switch {
	case dry && a.Sprays() && a.Hopper == 0:
		return refuse("Name a spreader, or give what was caught.", "%s has no hopper; no dry product was weighed from it.", a.Name)
	case !dry && !a.Sprays():
		return refuse("Give what a run dropped, by weight.", "%s spreads dry product; no liquid was caught from it.", a.Name)
	case !dry && f.Product != "":
		return refuse("Leave the product out.", "A test of liquid names the product %q; what is caught is mix or water.", f.Product)
	case dry && a.Sprays() && f.Product == "":
		return refuse("Name the product.", "The hopper of %s was tested without a product.", a.Name)
	}
	if f.Product == "" {
		return nil
	}
	p := s.Product(f.Product)
	if p == nil {
		return refuse("Enter the product first.", "There is no product %q in the book.", f.Product)
	}
	if p.Label.Form != measure.Dry {
		return refuse("Name a dry product.", "%s is liquid; a spreader spreads dry product.", f.Product)
	}
	return nil
}

func admitTestFigures(f *Calibrated) error {
	if !f.Delivery.Known {
		return refuse("Give the runs and what was caught, or the delivery rate.", "The test of %s says no rate.", f.Applicator)
	}
	d, kind := f.Delivery.V, measure.Liquid
	if f.Test == Spreader {
		kind = measure.Dry
	}
	if !(d.V > 0) || d.V > LargestDelivery || d.Kind != kind {
		return refuse("Look at course, swath and catch.", "The test of %s comes to a delivery rate of %s.", f.Applicator, d.Text())
	}
	if m := f.Meant; m.Known && (!(m.V.V > 0) || m.V.V > LargestDelivery) {
		return refuse("Leave it out; the rig says it.", "The rate meant is %s.", m.V.Text())
	}
	for _, q := range []Maybe[measure.Flow]{f.Flow, f.Rated} {
		if q.Known && (!(q.V > 0) || q.V > measure.GPM(LargestFlowGPM)) {
			return refuse("Give more than 0 and up to 500 gpm, or leave it out.", "A flow of the test of %s is %s.", f.Applicator, q.V.Text())
		}
	}
	if f.PSI.Known && (!(f.PSI.V > 0) || f.PSI.V > HighestPSI) {
		return refuse("Give more than 0 and up to 1,000 psi, or leave it out.", "The pressure of the test is %g psi.", f.PSI.V)
	}
	for _, p := range []Maybe[float64]{f.SpreadPct, f.VariationPct} {
		if p.Known && !(p.V >= 0 && p.V <= 10_000) {
			return refuse("Leave it out; it is worked out.", "A spread of the test is %g per cent.", p.V)
		}
	}
	for _, p := range f.Pans {
		if !(p.Amount >= 0) {
			return refuse("Give what each pan got, 0 or more.", "A pan got %g.", p.Amount)
		}
	}
	return admitTestGround(f)
}

func admitTestGround(f *Calibrated) error {
	for _, l := range []Maybe[measure.Length]{f.Course, f.Swath, f.PanSpacing} {
		if l.Known && (l.V <= 0 || l.V > LongestHose) {
			return refuse("Give more than 0 and up to 10,000 ft.", "A length of the test is %.6g ft.", l.V.Feet())
		}
	}
	if f.Plot.Known && (f.Plot.V <= 0 || f.Plot.V > LargestArea) {
		return refuse("Give more than 0 sq ft.", "The plot of the test has %s sq ft.", f.Plot.V.Text())
	}
	for _, c := range f.Caught {
		if c.Volume < 0 || c.Volume > LargestVolume {
			return bounded("A catch", c.Volume)
		}
	}
	for _, w := range f.Weighed {
		if w.Weight < 0 || w.Weight > LargestHopper {
			return refuse("Give 0 to 22,000 lb.", "A run dropped %.6g lb.", w.Weight.Pounds())
		}
	}
	return nil
}
