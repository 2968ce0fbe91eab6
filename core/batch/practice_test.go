package batch

import (
	"math"
	"strings"
	"testing"

	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

func TestPractice(t *testing.T) {
	for _, name := range []string{Thin, RinsateShare} {
		if l := Practice(name); !(l.Value > 0) || l.Source == "" || l.Unit == "" {
			t.Errorf("%s: %+v", name, l)
		}
	}
	if RinsateIn(measure.Gallons(100)) != measure.Gallons(5) {
		t.Error(RinsateIn(measure.Gallons(100)))
	}
}

// What is left after rinses, as a table of mass balance has it: water to residual, per cent after 1, 2 and 3.
func TestRinsesTable(t *testing.T) {
	for _, row := range []struct {
		water   float64
		percent [3]float64
	}{
		{1, [3]float64{50, 25, 12.5}},
		{2, [3]float64{33.3, 11.1, 3.70}},
		{3, [3]float64{25, 6.25, 1.56}},
		{5, [3]float64{16.7, 2.78, 0.463}},
		{9, [3]float64{10, 1, 0.1}},
		{10, [3]float64{9.09, 0.826, 0.0751}},
	} {
		for i, want := range row.percent {
			n := i + 1
			got, err := RinseAsk{Residual: 1, Water: hydraulics.Gallons(row.water * float64(n)), Rinses: n}.Work()
			if err != nil || math.Abs(100*got.Share-want) > 0.005*want {
				t.Errorf("%v to 1, %d times: %v, want %v (%v)", row.water, n, 100*got.Share, want, err)
			}
		}
	}
	// To reach 1 %: one rinse needs 99 r, two 9 r each, three 3.64 r each (mass balance).
	for n, each := range map[int]float64{1: 99, 2: 9, 3: 3.64} {
		got, err := RinseAsk{Residual: 2, Rinses: n, Share: 0.01}.Work()
		if err != nil || math.Abs(float64(got.Each)/2-each) > 0.005 || math.Abs(got.Share-0.01) > 1e-12 {
			t.Errorf("%d: %+v %v", n, got, err)
		}
	}
	got, err := RinseAsk{Residual: 0.5, Water: 2, Share: 0.01}.Work()
	if err != nil || got.Rinses != 3 || got.Water != 6 || math.Abs(got.Share-0.008) > 1e-12 {
		t.Errorf("%+v %v", got, err)
	}
}

// One to ten lays 1/11 of the rate, and ground treated with 91 % of the most can take it (mass balance).
func TestUseUpOneToTen(t *testing.T) {
	full := rateIn(t, 3, "fl_oz_per_1000_sqft")
	gun := measure.GalPer1000(1.5)
	ask := func(laid float64, can CanTake) UseUpPlace {
		t.Helper()
		can.Product, can.Laid = "Warm", measure.Rate{V: full.V * laid}
		left := measure.Gallons(2)
		got, err := UseUpAsk{
			Left: left, Holds: []Held{{"Warm", entryOf(measure.Liquid), measure.Concentration(full.V/gun.V).In(left, measure.Liquid)}}, Delivery: gun, Thin: Practice(Thin).Value,
			Grounds: []Ground{{Name: "ahead", Area: measure.SquareFeet(40_000), Can: []CanTake{can}}},
		}.Work()
		if err != nil {
			t.Fatal(err)
		}
		if !near(got.Share, 1./11) || !near(got.Volume.Gallons(), 22) {
			t.Errorf("%+v", got)
		}
		return got.Places[0]
	}
	most := CanTake{Most: measure.Known(full)}
	if p := ask(0, most); !p.May || p.Takes != measure.Gallons(2) || math.Abs(p.Ceiling.V-10./11) > 1e-6 {
		t.Errorf("untreated: %+v", p)
	}
	if p := ask(0.909, most); !p.May {
		t.Errorf("91 %%: %+v", p)
	}
	if p := ask(1, most); p.May || p.LeastTo.Known || !strings.Contains(p.Why, "the most in one application leaves 0 ") {
		t.Errorf("treated in full: %+v", p)
	}
	if p := ask(0.95, most); p.May || math.Abs(float64(p.LeastTo.V)-19) > 1e-6 {
		t.Errorf("95 %%: 1 to 19 would do: %+v", p)
	}
	if p := ask(0, CanTake{Not: "is not listed for bermudagrass"}); p.May || p.Why != "Warm is not listed for bermudagrass" || p.LeastTo.Known {
		t.Errorf("not listed: %+v", p)
	}
	if p := ask(0, CanTake{Most: measure.Known(full), Year: measure.Known(measure.Rate{V: full.V / 20})}); p.May || !strings.Contains(p.Why, "the year") {
		t.Errorf("the year: %+v", p)
	}
	if p := ask(0, CanTake{}); !p.May || len(p.Unknown) != 1 {
		t.Errorf("no limit known: %+v", p)
	}
}

func TestTintComesBackToItsDose(t *testing.T) {
	dose := measure.ConcentrationOf(measure.LiquidAmount(measure.FluidOunces(0.5)), measure.USGallon)
	got, err := TintAsk{Tint: "blue", Left: measure.Gallons(20), Has: measure.LiquidAmount(measure.FluidOunces(10)), Dose: dose, Volume: measure.Gallons(50)}.Work()
	if err != nil || math.Abs(got.Share-1) > 1e-6 || got.Add.Text() != "15.0 fl oz" {
		t.Errorf("%+v %v", got, err)
	}
	thin, err := TintAsk{Tint: "blue", Left: measure.Gallons(20), Has: measure.LiquidAmount(measure.FluidOunces(4)), Dose: dose, Volume: measure.Gallons(20)}.Work()
	if err != nil || thin.Possible || math.Abs(thin.Share-0.4) > 1e-6 {
		t.Errorf("a full tank takes no more: %+v %v", thin, err)
	}
}

func TestDilutes(t *testing.T) {
	// U.S. Army, pest control guide: 55 gal of 1 % from 48 %; 300 mL of 70 % to 40 %.
	if got, err := DiluteTo(55, 1, 48, "gal"); err != nil || !near(got.Concentrate, 1.145833) || !near(got.Water, 53.85417) {
		t.Errorf("%+v %v", got, err)
	}
	if got, err := DiluteStock(300, 70, 40, 0, "mL"); err != nil || !near(got.Water, 225) || !near(got.Total, 525) {
		t.Errorf("%+v %v", got, err)
	}
	// Strengthened with a stronger one: 300 of 10 % and x of 50 % make 20 %: x = 300 x 10 / 30.
	if got, err := DiluteStock(300, 10, 20, 50, "mL"); err != nil || !near(got.Water, 100) {
		t.Errorf("%+v %v", got, err)
	}
}
