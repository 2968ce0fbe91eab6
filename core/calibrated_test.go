package core

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.com/tintline/core/calib"
	"example.com/tintline/core/measure"
)

// gunTest is a test of the gun over 1,000 sq ft in which so many gallons were caught.
func gunTest(gal float64, accepted string) *Calibrated {
	f := CalibratedOf("gun", calib.Catch{
		Runs: []float64{77, 79, 78}, Course: measure.Feet(200), Swath: measure.Feet(5), Caught: []measure.Volume{measure.Gallons(gal)},
	})
	f.Accepted = accepted
	return f
}

func lays(b *Book, applicator string) float64 {
	return math.Round(b.Applicator(applicator).Delivery.GalPer1000()*1e6) / 1e6
}

func TestAnAcceptedTestIsTheRateInForce(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	entered := b.Applicator("gun").Delivery
	before := b.StateDigest()
	mustEnter(t, b, gunTest(1.9, No))
	if b.Applicator("gun").Delivery != entered || b.StateDigest() != before {
		t.Error("a test that is kept as a note changed the rate")
	}
	mustEnter(t, b, gunTest(1.7, Yes))
	if lays(b, "gun") != 1.7 || !near(b.Applicator("gun").Flow.V.GPM(), 1.7/78*60) {
		t.Errorf("the gun lays %g at %s", lays(b, "gun"), b.Applicator("gun").Flow.V.Text())
	}
	if b.StateDigest() == before {
		t.Error("a rate in force says nothing in the digest")
	}
	in := b.RatesInForce()
	if len(in) != 1 || in[0].Meant != entered || in[0].At.Unix != 1_780_000_000 {
		t.Errorf("in force: %+v", in)
	}
	tests := b.Tests("gun")
	if len(tests) != 2 || tests[1].Test.SpreadPct.V < 1.2 || tests[1].Test.SpreadPct.V > 1.3 || tests[1].Test.Meant.V != entered {
		t.Errorf("tests: %+v", tests)
	}
	mustEnter(t, b, gunTest(1.6, Yes)) // a later one replaces it; what was meant stays
	if in := b.RatesInForce(); len(in) != 1 || lays(b, "gun") != 1.6 || in[0].Meant != entered {
		t.Errorf("in force: %+v", in)
	}
	mustEnter(t, b, &Struck{Of: int64(b.Seq())})
	if lays(b, "gun") != 1.7 {
		t.Errorf("struck, and the gun lays %g", lays(b, "gun"))
	}
	balanced(t, b)
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Abs(b) }

func TestTheRateInForceAndTheRig(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	rig := func(change func(r *Rig)) *Rig {
		r := *b.Rig()
		r.Applicators = slices.Clone(r.Applicators)
		r.Hoses = slices.Clone(r.Hoses)
		change(&r)
		return &r
	}
	entered := *b.Rig()
	meant := b.Applicator("gun").Delivery
	mustEnter(t, b, gunTest(1.7, Yes))
	mustEnter(t, b, &entered) // the rig as it was entered
	if lays(b, "gun") != 1.7 {
		t.Errorf("the same rig again took the test away: %g", lays(b, "gun"))
	}
	mustEnter(t, b, rig(func(r *Rig) { r.RigName = "other" })) // the rig in force, as a form gives it back
	if in := b.RatesInForce(); lays(b, "gun") != 1.7 || len(in) != 1 || in[0].Meant != meant {
		t.Errorf("another name of the rig: %g, %+v", lays(b, "gun"), in)
	}
	mustEnter(t, b, rig(func(r *Rig) { r.Applicators[0].Flow = Known(measure.GPM(3)) }))
	if lays(b, "gun") != 1.7 || b.Applicator("gun").Flow.V != measure.GPM(3) {
		t.Errorf("another flow by hand: %g, %s", lays(b, "gun"), b.Applicator("gun").Flow.V.Text())
	}
	mustEnter(t, b, rig(func(r *Rig) { r.Applicators[0].Delivery = perThousand(2.5) }))
	if in := b.RatesInForce(); lays(b, "gun") != 2.5 || len(in) != 0 {
		t.Errorf("2.5 by hand, and the gun lays %g: %+v", lays(b, "gun"), in)
	}
	if got, _ := b.MeantRate("gun", "", ""); got != perThousand(2.5) {
		t.Errorf("meant is %s", got.Text())
	}
}

// TestATestIsOfItsTip: each tip has a rate of its own, and the one that was not fitted by name counts as on.
func TestATestIsOfItsTip(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	r := *b.Rig()
	r.Applicators = slices.Clone(r.Applicators)
	a := &r.Applicators[0]
	a.Tips = []Tip{{Name: "red", Delivery: a.Delivery, Flow: a.Flow}, {Name: "blue", Delivery: perThousand(3)}}
	mustEnter(t, b, &r)
	mustEnter(t, b, gunTest(1.7, Yes))
	if in := b.RatesInForce(); len(in) != 1 || in[0].Tip != "red" || lays(b, "gun") != 1.7 {
		t.Errorf("%+v, the gun lays %g", in, lays(b, "gun"))
	}
	if next, more := b.NextTip("gun"); next.Name != "blue" || !more {
		t.Errorf("next is %q", next.Name)
	}
	mustEnter(t, b, &Fitted{Applicator: "gun", Tip: "blue"})
	if lays(b, "gun") != 3 {
		t.Errorf("blue lays %g", lays(b, "gun"))
	}
	mustEnter(t, b, gunTest(3.1, Yes))
	mustEnter(t, b, &Fitted{Applicator: "gun", Tip: "red"})
	if lays(b, "gun") != 1.7 || len(b.RatesInForce()) != 2 {
		t.Errorf("red again, and the gun lays %g", lays(b, "gun"))
	}
	tips := b.Applicator("gun").Tips
	if got := tips[1].Delivery.GalPer1000(); math.Abs(got-3.1) > 1e-6 {
		t.Errorf("the list of tips says %g of blue", got)
	}
	r.Applicators = slices.Clone(r.Applicators)
	r.Applicators[0].Tips = r.Applicators[0].Tips[:1]
	mustEnter(t, b, &r)
	if in := b.RatesInForce(); len(in) != 1 || in[0].Tip != "red" {
		t.Errorf("blue is gone from the rig, and its rate is not: %+v", in)
	}
}

func TestASpreaderIsTestedWithAProduct(t *testing.T) {
	b := dryBook(t, "")
	was, _ := b.DryRate("drop", "food")
	f := CalibratedOf("drop", calib.Catch{Course: measure.Feet(100), Swath: measure.Feet(3), Weighed: []measure.Mass{measure.Pounds(1.05)}})
	f.Product, f.Accepted = "food", Yes
	mustEnter(t, b, f)
	got, ok := b.DryRate("drop", "food")
	if lb, _ := got.In("lb_per_1000_sqft"); !ok || math.Abs(lb-3.5) > 1e-6 {
		t.Errorf("it lays %g lb", lb)
	}
	if in := b.RatesInForce(); len(in) != 1 || in[0].Meant != was {
		t.Errorf("in force %+v, meant %s", in, was.Text())
	}
	if _, ok := b.DryRate("drop", "lime"); ok {
		t.Error("the test of one product says what another lays")
	}
}

func TestTheBookKeepsTheLastTests(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	for i := range mostTests + 5 {
		mustEnter(t, b, gunTest(1.5+float64(i)/100, No))
	}
	backpack := gunTest(0.3, No)
	backpack.Applicator = "ride-on"
	mustEnter(t, b, backpack)
	tests := b.Tests("gun")
	if len(tests) != mostTests || len(b.Tests("ride-on")) != 1 {
		t.Fatalf("%d tests of the gun, %d of the ride-on", len(tests), len(b.Tests("ride-on")))
	}
	if last := tests[mostTests-1].Test.Delivery.V.GalPer1000(); math.Abs(last-1.66) > 1e-6 {
		t.Errorf("the last came to %g", last)
	}
}

func TestSettingsOfTestsAreThoseOfTheirRoom(t *testing.T) {
	if got, want := NewBook(1).CatchLimits(), calib.Usual(); fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("by the settings %+v, by the room %+v", got, want)
	}
	for _, r := range calib.LimitRows() {
		if row, ok := settingRow(r.Name); ok && (row.Source != r.Source || row.Words != r.Words) {
			t.Errorf("%s has two sources or words", r.Name)
		}
	}
	b := play(t, NewBook(1), setUp)
	wide := gunTest(1.6, Yes)
	wide.Runs[0].Seconds = 88
	mustRefuse(t, b, wide, "The runs are 88, 79 and 78 s: one lies 7.8 per cent off their mean of 81.67 s, and 5 per cent is allowed.")
	mustEnter(t, b, &Setting{SettingName: CatchSpreadPct, Value: "10"})
	mustEnter(t, b, wide)
}

func TestCalibratedRefusals(t *testing.T) {
	refusals(t, "testdata/refusals_calibrated.tsv", dryBook(t, ""), 14)
}
