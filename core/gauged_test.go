package core

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core/measure"
)

// gaugedTruck is a book with a day open, a gun that lays 1 gal per 1,000 sq ft, and a lawn of which any part can be sprayed.
func gaugedTruck(t *testing.T, gallons float64) *Book {
	t.Helper()
	return play(t, NewBook(1), fmt.Sprintf(`
{"fact":"rig","name":"truck","compartments":[{"letter":"a","capacity_gal":300},{"letter":"b","capacity_gal":200}],"hoses":[{"name":"reel","volume_gal":1}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1},{"name":"wide","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":2}]}
{"fact":"lawn","name":"field","zones":[{"name":"all","grass":"tall_fescue","area_sqft":100000}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["field"]}
{"fact":"loaded","into":"a","volume_gal":%g}
{"fact":"loaded","into":"b","volume_gal":150}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"visit_begun","lawn":"field"}
`, gallons))
}

func spray(t *testing.T, b *Book, with string, sqft float64) {
	t.Helper()
	mustEnter(t, b, &Sprayed{Lawn: "field", Zones: []string{"all"}, Applicator: with, By: ByArea, Area: Known(measure.SquareFeet(sqft))})
}

func readGauge(t *testing.T, b *Book, gallons, step, other, tank, prior float64) {
	t.Helper()
	mustEnter(t, b, &GaugeRead{Compartment: 'a', Volume: Known(measure.Gallons(gallons)), Teaching: []Teaching{{
		ReadSD: measure.Gallons(math.Hypot(step/math.Sqrt(12), other)), TankSD: measure.Gallons(tank), Job: 0.05, OddSDs: 4,
		Factors: []TeachingFactor{{"gun", prior}},
	}}})
}

// TestTaughtLikeTheReference: the two days of the check values (recursion and conditioning at once agree to ten digits),
// logged as an operator logs them.
func TestTaughtLikeTheReference(t *testing.T) {
	check := func(b *Book, v, k, sv, sk, corr float64) {
		t.Helper()
		got, ok := b.Taught("gun")
		f := b.gauged.filter()
		gal, sd := f.Gallons(0)
		gal += b.Plumbing().Compartment('a').Liquid.Volume.Gallons()
		if !ok || math.Abs(gal-v) > 1e-4 || math.Abs(got.Ratio-k) > 1e-5 || math.Abs(sd-sv) > 1e-4 || math.Abs(got.SD-sk) > 1e-5 || math.Abs(f.Correlation(0, 0)-corr) > 1e-4 {
			t.Errorf("%.5f gal ±%.5f, %+v, %.5f; want %g ±%g, %g ±%g, %g", gal, sd, got, f.Correlation(0, 0), v, sv, k, sk, corr)
		}
	}
	one := gaugedTruck(t, 100)
	spray(t, one, "gun", 24000)
	readGauge(t, one, 72, 5, 0.5, 2, 0.10)
	check(one, 72.6897, 1.07094, 1.3896, 0.07579, -0.3929)

	day := gaugedTruck(t, 150)
	for _, sqft := range []float64{10000, 14000, 8000} {
		spray(t, day, "gun", sqft)
	}
	readGauge(t, day, 115, 5, 1, 1.5, 0.08)
	spray(t, day, "gun", 12000)
	spray(t, day, "gun", 16000)
	mustEnter(t, day, &Loaded{Into: "a", Volume: measure.Gallons(60)})
	for _, sqft := range []float64{9000, 11000, 13000} {
		spray(t, day, "gun", sqft)
	}
	readGauge(t, day, 105, 5, 1, 1, 0.08)
	check(day, 105.8060, 1.11071, 1.6485, 0.03015, -0.5723)
	if got, _ := day.Taught("gun"); got.Readings != 2 || got.Enough {
		t.Errorf("%+v", got)
	}
}

// TestTaughtIsUsed: after enough readings the band and what is expected follow from what gauges have shown; before, the
// shares of the settings stand.
func TestTaughtIsUsed(t *testing.T) {
	b := gaugedTruck(t, 300)
	c := b.Plumbing().Compartment('a')
	for n := range 4 {
		spray(t, b, "gun", 20000)
		_, _, ok := b.Expected(c)
		if want := n >= 3; ok != want {
			t.Errorf("after %d readings: used %v", n, ok)
		}
		if n < 3 && b.Band(&c.Tank) != bySettings(b, 'a') {
			t.Errorf("after %d readings the band is %s", n, b.Band(&c.Tank).Text())
		}
		if n < 3 { // a tenth more than is thought leaves each time
			mustEnter(t, b, &GaugeRead{Compartment: 'a', Volume: Known(c.Liquid.Volume - measure.Gallons(2))})
		}
	}
	got, _ := b.Taught("gun")
	if got.Readings != 3 || math.Abs(got.Ratio-1.1) > 0.05 || got.SD > 0.1 || b.RatioOf("gun") != got.Ratio {
		t.Errorf("%+v", got)
	}
	v, sd, _ := b.Expected(c)
	if off := (c.Liquid.Volume - v).Gallons(); off < 0.3 || off > 3 || sd != b.Band(&c.Tank) {
		t.Errorf("booked %s, expected %s ±%s", c.Liquid.Volume.Text(), v.Text(), sd.Text())
	}
	if _, ok := b.Taught("wide"); ok {
		t.Error("an applicator that was never read is taught")
	}
}

func bySettings(b *Book, letter byte) measure.Volume {
	t := b.Plumbing().Compartment(letter).Tank // a copy: none of the truck's
	return b.Band(&t)
}

// TestOddReadingTeachesNothing: one that lies more than the setting's standard deviations off is counted, and not learned.
func TestOddReadingTeachesNothing(t *testing.T) {
	b := gaugedTruck(t, 200)
	spray(t, b, "gun", 10000)
	mustEnter(t, b, &GaugeRead{Compartment: 'a', Volume: Known(measure.Gallons(120))})
	got, ok := b.Taught("gun")
	if !ok || got.Readings != 0 || got.Odd != 1 || got.Ratio != 1 {
		t.Errorf("%+v", got)
	}
	if v := b.Plumbing().Compartment('a').Liquid.Volume; v != measure.Gallons(120) {
		t.Errorf("%s gal are booked", v.Text())
	}
}

// TestJobByGaugeTeaches: a spraying whose gallons were read stands against its own area.
func TestJobByGaugeTeaches(t *testing.T) {
	b := gaugedTruck(t, 200)
	mustEnter(t, b, &Sprayed{Lawn: "field", Zones: []string{"all"}, Applicator: "gun", By: ByGauge, Area: Known(measure.SquareFeet(50000)), Before: Known(measure.Gallons(200)), After: Known(measure.Gallons(145))})
	got, ok := b.Taught("gun")
	// 55 gal for 50 gal by rate, read within 1 per cent of 300 gal twice, 5 per cent of the job, 12 before.
	r := math.Pow(math.Sqrt2*3/50, 2) + 0.05*0.05
	want := 1 + 0.1*0.12*0.12/(0.12*0.12+r)
	if !ok || math.Abs(got.Ratio-want) > 1e-6 || got.Readings != 1 {
		t.Errorf("%+v, want %g", got, want)
	}
}

// TestOldReadingsTeachNothing: a reading that was logged without the figures it would rest on changes no factor.
func TestOldReadingsTeachNothing(t *testing.T) {
	b := gaugedTruck(t, 200)
	spray(t, b, "gun", 10000)
	e := Entry{Seq: b.Seq() + 1, Truck: b.Truck(), What: &GaugeRead{Compartment: 'a', Volume: Known(measure.Gallons(188))}}
	b.apply(e)
	if _, ok := b.Taught("gun"); ok || len(b.gauged.tanks[0].draws) != 0 {
		t.Errorf("%+v", b.gauged)
	}
}

// TestTaughtStaysBounded: whatever is sprayed and read, covariances stay those of something, and the state stays small.
func TestTaughtStaysBounded(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		b := gaugedTruck(t, 250)
		for range rapid.IntRange(1, 25).Draw(rt, "steps") {
			with := rapid.SampledFrom([]string{"gun", "wide"}).Draw(rt, "with")
			c := b.Plumbing().Compartment('a')
			switch rapid.IntRange(0, 5).Draw(rt, "what") {
			case 0, 1, 2:
				spray(t, b, with, rapid.Float64Range(10, 3000).Draw(rt, "sqft"))
			case 3:
				v := rapid.Float64Range(0, 300).Draw(rt, "read")
				mustEnter(t, b, &GaugeRead{Compartment: 'a', Volume: Known(measure.Gallons(v))})
			case 4:
				if c.Room() > measure.Gallons(5) {
					mustEnter(t, b, &Loaded{Into: "a", Volume: measure.Gallons(5)})
				}
			case 5:
				if c.Drawable() > 0 {
					mustEnter(t, b, &Dumped{From: "compartment/a", To: "waste/pit"})
					mustEnter(t, b, &Loaded{Into: "a", Volume: measure.Gallons(200)})
				}
			}
			if c.Drawable() < measure.Gallons(20) {
				mustEnter(t, b, &Loaded{Into: "a", Volume: measure.Gallons(200)})
			}
			if b.gauged == nil {
				continue
			}
			for i, row := range b.gauged.cov {
				for j, v := range row {
					if math.IsNaN(v) || math.IsInf(v, 0) || (i == j && v < -1e-9) || math.Abs(v-b.gauged.cov[j][i]) > 1e-6 {
						rt.Fatalf("%v", b.gauged.cov)
					}
				}
			}
			if len(b.gauged.tanks) > 2 || len(b.gauged.factors) > 2 {
				rt.Fatalf("%+v", b.gauged)
			}
		}
	})
}
