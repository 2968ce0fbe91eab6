package core

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/tintline/core/measure"
)

// taughtTruck is a truck whose gun puts down a tenth more than is thought, as four readings have shown.
func taughtTruck(t *testing.T) *Book {
	t.Helper()
	b := gaugedTruck(t, 300)
	for range 4 {
		spray(t, b, "gun", 20000)
		mustEnter(t, b, &GaugeRead{Compartment: 'a', Volume: Known(b.Plumbing().Compartment('a').Liquid.Volume - measure.Gallons(2))})
	}
	return b
}

// A tank that was empty and is loaded anew is not read yet: what is expected of it after some lawns goes by the gun as well.
func TestExpectedInATankLoadedAnew(t *testing.T) {
	b := taughtTruck(t)
	mustEnter(t, b, &Dumped{From: "compartment/a", To: "waste/pit"})
	mustEnter(t, b, &Loaded{Into: "a", Volume: measure.Gallons(200)})
	c := b.Plumbing().Compartment('a')
	if _, _, ok := b.Expected(c); ok || b.Band(&c.Tank) != measure.Gallons(3) {
		t.Errorf("before any lawn: band %s", b.Band(&c.Tank).Text())
	}
	spray(t, b, "gun", 60000)
	k, _ := b.Taught("gun")
	v, sd, ok := b.Expected(c)
	want := 200 - k.Ratio*60
	// 1 per cent of the tank, 5 per cent of the job, and the gun.
	spread := math.Sqrt(3*3 + math.Pow(0.05*60, 2) + math.Pow(k.SD*60, 2))
	if !ok || math.Abs(v.Gallons()-want) > 1e-6 || math.Abs(sd.Gallons()-spread) > 1e-6 {
		t.Errorf("%v %s ±%s, not %g ±%g", ok, v.Text(), sd.Text(), want, spread)
	}
}

// What is left after a lawn ahead is what will be expected when it was sprayed and before the gauge is read.
func TestExpectedAfterIsWhatWillBeExpected(t *testing.T) {
	for _, before := range []float64{0, 30000} {
		b := taughtTruck(t)
		if before > 0 {
			spray(t, b, "gun", before)
		}
		c := b.Plumbing().Compartment('a')
		v, sd, ok := b.ExpectedAfter(c, "gun", measure.Gallons(40))
		if _, was, _ := b.Expected(c); !ok || was >= sd {
			t.Errorf("the lawn adds nothing: ±%s, then ±%s", was.Text(), sd.Text())
		}
		spray(t, b, "gun", 40000)
		got, gotSD, ok := b.Expected(c)
		if !ok || math.Abs((got-v).Gallons()) > 1e-6 || math.Abs((gotSD-sd).Gallons()) > 1e-6 {
			t.Errorf("%s ±%s, and then %s ±%s", v.Text(), sd.Text(), got.Text(), gotSD.Text())
		}
	}
	b := taughtTruck(t)
	c := b.Plumbing().Compartment('a')
	if _, _, ok := b.ExpectedAfter(c, "wide", measure.Gallons(40)); ok {
		t.Error("an applicator that was never read is known")
	}
	if _, _, ok := b.ExpectedAfter(c, "none", measure.Gallons(40)); ok {
		t.Error("an applicator that the rig does not have is known")
	}
	if v, _, _ := b.ExpectedAfter(c, "gun", measure.Gallons(1000)); v >= 0 {
		t.Errorf("%s left after more than there is", v.Text())
	}
}

// Spraying never makes what is left known better.
func TestBandDoesNotShrinkAsOneSprays(t *testing.T) {
	b := taughtTruck(t)
	c := b.Plumbing().Compartment('a')
	was := b.Band(&c.Tank)
	for range 6 {
		spray(t, b, "gun", 5000)
		if now := b.Band(&c.Tank); now < was {
			t.Errorf("±%s after ±%s", now.Text(), was.Text())
		} else {
			was = now
		}
	}
}

// Over invented days the truth lies as far from what is taught and expected as the standard deviations say: the mean square of
// that ratio is 1 (Bar-Shalom's normalised error, for one unknown).
func TestTaughtIsConsistent(t *testing.T) {
	dice := rand.New(rand.NewPCG(11, 3))
	const days = 150
	factor, tank := 0.0, 0.0
	for range days {
		b := gaugedTruck(t, 300)
		k := 1 + 0.12*dice.NormFloat64()
		left := 300 + 3*dice.NormFloat64() // the load is as good as the gauge
		job := func(gallons float64) {
			spray(t, b, "gun", gallons*1000)
			left -= gallons * (k + 0.05*dice.NormFloat64())
		}
		for range 4 {
			job(20)
			job(25)
			mustEnter(t, b, &GaugeRead{Compartment: 'a', Volume: Known(measure.Gallons(max(left+3*dice.NormFloat64(), 0)))})
		}
		job(15)
		got, _ := b.Taught("gun")
		v, sd, ok := b.Expected(b.Plumbing().Compartment('a'))
		if !ok || got.Readings+got.Odd != 4 {
			t.Fatalf("%+v", got)
		}
		if got.Odd > 0 {
			continue // beyond four standard deviations: not learned from
		}
		factor += math.Pow((k-got.Ratio)/got.SD, 2)
		tank += math.Pow((left-v.Gallons())/sd.Gallons(), 2)
	}
	t.Logf("factor %.3f, tank %.3f", factor/days, tank/days)
	for name, sum := range map[string]float64{"factor": factor, "tank": tank} {
		if mean := sum / days; mean < 0.7 || mean > 1.35 {
			t.Errorf("%s: mean square %.3f", name, mean)
		}
	}
}

// The screen asks for the band at every frame.
func TestBandAllocatesNothing(t *testing.T) {
	b := taughtTruck(t)
	spray(t, b, "gun", 30000)
	c := b.Plumbing().Compartment('a')
	if _, _, ok := b.Expected(c); !ok {
		t.Fatal("nothing is taught")
	}
	if n := testing.AllocsPerRun(100, func() { b.Band(&c.Tank) }); n > 0 {
		t.Errorf("%g allocations", n)
	}
}
