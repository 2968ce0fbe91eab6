package hydraulics

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core/measure"
)

func TestFrictionFormulasAgree(t *testing.T) {
	for re := 5000.0; re < 1e5; re *= 1.3 {
		want := Colebrook(re, 1e-4)
		for name, got := range map[string]float64{"Swamee-Jain": SwameeJain(re, 1e-4), "Haaland": Haaland(re, 1e-4), "Churchill": Churchill(re, 1e-4)} {
			if math.Abs(got/want-1) > 0.03 {
				t.Errorf("Re %g: %s gives %g, Colebrook %g", re, name, got, want)
			}
		}
		if got := Blasius(re); math.Abs(got/Colebrook(re, 0)-1) > 0.03 {
			t.Errorf("Re %g: Blasius gives %g, smooth Colebrook %g", re, got, Colebrook(re, 0))
		}
		// The root itself.
		if rest := 1/math.Sqrt(want) + 2*math.Log10(1e-4/3.7+2.51/(re*math.Sqrt(want))); math.Abs(rest) > 1e-12 {
			t.Errorf("Re %g: Colebrook leaves %g", re, rest)
		}
	}
	if got := Churchill(1000, 0); math.Abs(got/Laminar(1000)-1) > 1e-3 {
		t.Errorf("Churchill at Re 1,000 is %g", got)
	}
}

func TestLossHasNoJumpAndNeverFalls(t *testing.T) {
	bore, length := measure.Inches(0.5), measure.Feet(300)
	last := measure.Pressure(0)
	for gpm := 0.01; gpm < 12; gpm += 0.005 {
		p := Loss(measure.GPM(gpm), bore, length, 1.5, 20, 1.15)
		if p <= last {
			t.Fatalf("at %g gpm the loss is %g, before it %g", gpm, p, last)
		}
		if gpm > 0.1 && p > last*1.15 {
			t.Fatalf("at %g gpm the loss jumps from %g to %g", gpm, last, p)
		}
		last = p
	}
}

func TestFlowAtIsTheInverseOfLoss(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bore := measure.Inches(rapid.Float64Range(0.2, 2).Draw(t, "bore"))
		length := measure.Feet(rapid.Float64Range(1, 800).Draw(t, "length"))
		k, c := rapid.Float64Range(0, 20).Draw(t, "k"), rapid.Float64Range(0, 40).Draw(t, "c")
		factor := rapid.Float64Range(1, 1.3).Draw(t, "factor")
		q := measure.GPM(rapid.Float64Range(0.01, 60).Draw(t, "gpm"))
		back := FlowAt(Loss(q, bore, length, k, c, factor), bore, length, k, c, factor)
		if math.Abs(float64(back/q)-1) > 1e-9 {
			t.Fatalf("%g gpm comes back as %g", q.GPM(), back.GPM())
		}
		p := PipeOf(bore, length)
		law := Law{C: HazenWilliams, Factor: factor}
		if back := p.FlowAt(p.Loss(q, k, WaterAt(c), law), k, WaterAt(c), law); math.Abs(float64(back/q)-1) > 1e-9 {
			t.Fatalf("by Hazen and Williams %g gpm comes back as %g", q.GPM(), back.GPM())
		}
	})
}

func TestFactorOfAPair(t *testing.T) {
	bore, length, q := measure.Inches(0.5), measure.Feet(300), measure.GPM(3)
	pump := measure.PSI(120)
	gun := pump - Loss(q, bore, length, 0, 20, 1.22)
	if f, ok := FactorOf(q, bore, length, pump, gun, 20); !ok || math.Abs(f-1.22) > 1e-12 {
		t.Errorf("factor %g, %t", f, ok)
	}
	for _, pair := range [][2]float64{{100, 100}, {80, 100}, {math.NaN(), 10}, {math.Inf(1), 10}} {
		if f, ok := FactorOf(q, bore, length, measure.PSI(pair[0]), measure.PSI(pair[1]), 20); ok {
			t.Errorf("%v gives %g", pair, f)
		}
	}
	if _, ok := FactorOf(0, bore, length, pump, gun, 20); ok {
		t.Error("no flow gives a factor")
	}
}

// Sensitivities as reckoned apart: loss with the flow to 1.77 and the bore to -4.8, 6 per cent more at 10 C and 5 less at
// 30, a fitting of K = 1 at 3 gpm 0.51 psi in 3/8 in and 0.16 in 1/2 in.
func TestSensitivities(t *testing.T) {
	at := func(gpm, bore, c float64) float64 {
		return Loss(measure.GPM(gpm), measure.Inches(bore), measure.Feet(100), 0, c, 1).PSI()
	}
	near := func(name string, got, want, tolerance float64) {
		t.Helper()
		if math.Abs(got-want) > tolerance {
			t.Errorf("%s is %.4g, not %g", name, got, want)
		}
	}
	near("power of the flow", math.Log(at(3.1, 0.5, 20)/at(2.9, 0.5, 20))/math.Log(3.1/2.9), 1.77, 0.03)
	near("power of the bore", math.Log(at(3, 0.51, 20)/at(3, 0.49, 20))/math.Log(0.51/0.49), -4.8, 0.05)
	near("10 C", at(3, 0.5, 10)/at(3, 0.5, 20), 1.06, 0.015)
	near("30 C", at(3, 0.5, 30)/at(3, 0.5, 20), 0.95, 0.01)
	fitting := func(bore float64) float64 {
		return Loss(measure.GPM(3), measure.Inches(bore), 0, 1, 20, 1).PSI()
	}
	near("a fitting in 3/8 in", fitting(0.375), 0.51, 0.005)
	near("a fitting in 1/2 in", fitting(0.5), 0.16, 0.005)
	low, high := LossRange(measure.GPM(3), measure.Inches(0.5), measure.Feet(100), 0, 20, 1)
	mid := at(3, 0.5, 20)
	near("the widest bore", low.PSI()/mid, math.Pow(13.5/12.7, -4.8), 0.01)
	near("the narrowest bore", high.PSI()/mid, math.Pow(11.9/12.7, -4.8), 0.02)
}

// Bore ranges of ISO 1307:2006 as gallons of 100 ft, and the dry weights reckoned apart.
func TestBoreRangeAndWeight(t *testing.T) {
	for _, tt := range []struct{ bore, low, high, u float64 }{{0.375, 0.479, 0.671, 0.10}, {0.5, 0.896, 1.153, 0.07}, {0.625, 1.442, 1.764, 0.06}, {0.25, 0.213, 0.298, 0.10}, {1, 3.691, 4.515, 0.06}} {
		bore := measure.Inches(tt.bore)
		low, high := VolumeRange(bore, measure.Feet(100))
		if math.Abs(float64(low)-tt.low) > 6e-4 || math.Abs(float64(high)-tt.high) > 6e-4 || BoreBand(bore) != tt.u {
			t.Errorf("%g in: %.4f to %.4f gal, u %g", tt.bore, low, high, BoreBand(bore))
		}
	}
	for _, tt := range []struct{ bore, outside, lb float64 }{{0.375, 0.625, 11}, {0.5, 0.78, 16}, {0.5, 0.86, 22}, {0.625, 0.92, 20}, {0.625, 1.02, 29}} {
		if got := DryWeight(measure.Inches(tt.bore), measure.Inches(tt.outside), measure.Feet(100)).Pounds(); math.Abs(got-tt.lb) > 0.51 {
			t.Errorf("%g by %g in weighs %.2f lb dry, not %g", tt.bore, tt.outside, got, tt.lb)
		}
	}
	if DryWeight(measure.Inches(0.5), measure.Inches(0.4), measure.Feet(100)) != 0 {
		t.Error("a wall of less than nothing has a weight")
	}
}

func TestWater(t *testing.T) {
	for c, nu := range map[float64]float64{10: 1.307e-6, 20: 1.0034e-6, 30: 0.801e-6} {
		if w := WaterAt(c); w.Viscosity != nu {
			t.Errorf("%g C: %g", c, w.Viscosity)
		}
	}
	// 15 C is 1.139e-6 m2/s and 999.1 kg/m3 in standard tables; 5 C is 1.519e-6.
	if w := WaterAt(15); math.Abs(w.Viscosity-1.139e-6) > 0.01e-6 || math.Abs(w.Density-999.1) > 0.2 {
		t.Errorf("15 C: %+v", w)
	}
	if w := WaterAt(5); math.Abs(w.Viscosity-1.519e-6) > 0.04e-6 {
		t.Errorf("5 C: %+v", w)
	}
	last := math.Inf(1)
	for c := -40.0; c < 80; c += 0.5 {
		w := WaterAt(c)
		if w.Viscosity > last || w.Viscosity <= 0 {
			t.Fatalf("%g C: %g", c, w.Viscosity)
		}
		last = w.Viscosity
	}
	if WaterAt(math.NaN()) != WaterAt(20) {
		t.Error("no temperature")
	}
}

func TestHostileFiguresEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), 1e-320}))
		q := measure.Flow(f.Draw(t, "q"))
		bore := measure.Length(rapid.Int64().Draw(t, "bore"))
		length := measure.Length(rapid.Int64().Draw(t, "length"))
		c, factor := f.Draw(t, "c"), f.Draw(t, "factor")
		Loss(q, bore, length, f.Draw(t, "k"), c, factor)
		FlowAt(measure.Pressure(f.Draw(t, "p")), bore, length, 1, c, factor)
		r := Run{Hose: Gallons(f.Draw(t, "hose")), Bore: bore, Length: length, Cell: Gallons(f.Draw(t, "cell")), Gun: q, Bypass: measure.Flow(f.Draw(t, "bypass")), C: c}
		o := r.Outlet(1.25)
		v := o.At(f.Draw(t, "f"))
		o.NewGone(v)
		VolumeRange(bore, length)
	})
}
