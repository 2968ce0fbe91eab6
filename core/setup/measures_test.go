package setup

import (
	"math"
	"testing"

	"example.com/tintline/core"
)

func TestMeasuresAreEnteredAndTakenAway(t *testing.T) {
	b := fullRig(t)
	put := func(form, about string, said Answers) {
		t.Helper()
		facts, err := answer(t, form, about, b, said)
		enter(t, b, facts, err)
	}
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-6*want {
			t.Errorf("%s is %g, want %g", what, got, want)
		}
	}
	put(Gauge, "b", Answers{"plan_sqft": "6.5", "gauge_off_in": "10", "floor_in": "2", "mark_unit": core.MarksInches})
	put(Cross, "", Answers{"cross_inside_diameter_in": "1 1/4", "cross_length_ft": "6", "cross_loss": "7.3"})
	put(Reel, "reel", Answers{"outside_diameter_in": "5/8", "dry_lb": "40"})
	r := b.Rig()
	c, h := r.Compartments[1], r.Hoses[0]
	near("the plan", c.Plan.V.SquareFeet(), 6.5)
	near("the gauge", c.GaugeOff.V.Inches(), 10)
	near("the floor", c.Floor.V.Inches(), 2)
	near("the bore", r.CrossBore.V.Inches(), 1.25)
	near("the length", r.CrossLength.V.Feet(), 6)
	near("the loss", r.CrossLoss.V, 7.3)
	near("the outside", h.Outside.V.Inches(), 0.625)
	near("the weight", h.DryWeight.V.Pounds(), 40)
	if c.MarkUnit != core.MarksInches {
		t.Errorf("the marks are %q", c.MarkUnit)
	}
	for _, f := range []struct {
		form, about string
		said        Answers
	}{
		{Gauge, "b", Answers{"plan_sqft": "-1"}},
		{Gauge, "b", Answers{"gauge_off_in": "far"}},
		{Gauge, "b", Answers{"floor_in": "9999"}},
		{Cross, "", Answers{"cross_loss": "0"}},
		{Cross, "", Answers{"cross_length_ft": "6 gal"}},
		{Reel, "reel", Answers{"dry_lb": "x"}},
	} {
		if _, err := answer(t, f.form, f.about, b, f.said); err == nil {
			t.Errorf("%v was taken", f)
		}
	}
	put(Gauge, "b", Answers{"plan_sqft": "", "gauge_off_in": "", "floor_in": "", "mark_unit": ""})
	if c := b.Rig().Compartments[1]; c.Plan.Known || c.GaugeOff.Known || c.Floor.Known || c.MarkUnit != "" {
		t.Errorf("%+v", c)
	}
	if _, ok := For(Gauge, "f", b); ok {
		t.Error("a form for a compartment that the rig has not")
	}
}
