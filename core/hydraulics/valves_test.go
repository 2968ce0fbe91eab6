package hydraulics

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// rk4 integrates a system of ordinary differential equations in fixed steps: Runge and Kutta's classic of the fourth order.
// It knows the equations of the flows alone, no closed form.
func rk4(y []float64, until float64, steps int, rate func(y []float64) []float64) []float64 {
	h := until / float64(steps)
	at := func(y, k []float64, share float64) []float64 {
		out := make([]float64, len(y))
		for i := range y {
			out[i] = y[i] + share*k[i]
		}
		return out
	}
	for range steps {
		k1 := rate(y)
		k2 := rate(at(y, k1, h/2))
		k3 := rate(at(y, k2, h/2))
		k4 := rate(at(y, k3, h))
		next := make([]float64, len(y))
		for i := range y {
			next[i] = y[i] + h/6*(k1[i]+2*k2[i]+2*k3[i]+k4[i])
		}
		y = next
	}
	return y
}

// near compares with a figure of the other way of reckoning.
func near(t rapid.TB, what string, got, want, rel float64) {
	t.Helper()
	if math.Abs(got-want) > rel*max(math.Abs(want), 1e-6) {
		t.Errorf("%s: %.12g, the integrator says %.12g", what, got, want)
	}
}

// flows of a state of valves: volumes and product of A and B, y = VA, mA, VB, mB.
func elsewhereRates(gun, bypass float64) func([]float64) []float64 {
	return func(y []float64) []float64 {
		cA := y[1] / y[0]
		return []float64{-gun - bypass, -(gun + bypass) * cA, bypass, bypass * cA}
	}
}

func TestSuctionOnOneReturnOnTheOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		s := Elsewhere{
			A: Held{Gallons(f("va", 5, 300)), f("ca", 0, 5)}, B: Held{Gallons(f("vb", 0.5, 300)), f("cb", 0, 5)},
			Gun: f("gun", 0, 6), Bypass: f("bypass", 0, 20), RoomB: Gallons(f("room", 0, 200)),
		}
		minutes := f("minutes", 0, 30)
		a, b := s.After(minutes)
		if dry := s.DryAfter(); minutes < 0.99*dry {
			y := rk4([]float64{float64(s.A.Volume), s.A.Product(), float64(s.B.Volume), s.B.Product()}, minutes, 400, elsewhereRates(s.Gun, s.Bypass))
			near(t, "A", float64(a.Volume), y[0], 1e-9)
			near(t, "B", float64(b.Volume), y[2], 1e-9)
			near(t, "product of A", a.Product(), y[1], 1e-6)
			near(t, "product of B", b.Product(), y[3], 1e-6)
		} else if minutes >= dry && a.Volume > 1e-9*s.A.Volume {
			t.Errorf("A holds %g after it is dry", float64(a.Volume))
		}
		// What left A is at the gun or in B.
		gun := s.Gun * min(minutes, s.DryAfter())
		near(t, "volume", float64(a.Volume+b.Volume)+gun, float64(s.A.Volume+s.B.Volume), 1e-9)
		near(t, "product", a.Product()+b.Product()+gun*s.A.Strength, s.A.Product()+s.B.Product(), 1e-9)
		if over := s.OverAfter(); over < s.DryAfter() && minutes < over && b.Volume > s.B.Volume+s.RoomB {
			t.Errorf("B runs over at %g min, before %g", minutes, over)
		}
	})
	still := Elsewhere{A: Held{10, 1}, B: Held{10, 0}}
	if !math.IsInf(still.DryAfter(), 1) || !math.IsInf(still.OverAfter(), 1) {
		t.Error("without a flow it ends")
	}
	// Arithmetic: 60 gal at 3 + 5 gpm are dry after 7.5 min, 20 gal of room at 5 gpm are full after 4.
	s := Elsewhere{A: Held{60, 1}, B: Held{40, 0}, Gun: 3, Bypass: 5, RoomB: 20}
	if s.DryAfter() != 7.5 || s.OverAfter() != 4 {
		t.Errorf("dry after %g, over after %g", s.DryAfter(), s.OverAfter())
	}
	if _, b := s.After(4); b.Volume != 60 || math.Abs(b.Strength-1.0/3) > 1e-15 {
		t.Errorf("B is %+v", b)
	}
}

func TestCirculationBothWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		a0, b0 := Held{Gallons(f("va", 1, 300)), f("ca", 0, 5)}, Held{Gallons(f("vb", 1, 300)), f("cb", 0, 5)}
		q, minutes := f("flow", 0, 15), f("minutes", 0, 20)
		a, b := Circulate(a0, b0, q, minutes)
		y := rk4([]float64{a0.Product(), b0.Product()}, minutes, 2000, func(y []float64) []float64 {
			over := q * (y[0]/float64(a0.Volume) - y[1]/float64(b0.Volume))
			return []float64{-over, over}
		})
		near(t, "A", a.Product(), y[0], 1e-6)
		near(t, "B", b.Product(), y[1], 1e-6)
		near(t, "product", a.Product()+b.Product(), a0.Product()+b0.Product(), 1e-12)
		if (a.Strength-b.Strength)*(a0.Strength-b0.Strength) < 0 {
			t.Errorf("the strengths cross: %g and %g became %g and %g", a0.Strength, b0.Strength, a.Strength, b.Strength)
		}
	})
	if a, b := Circulate(Held{0, 1}, Held{5, 2}, 3, 4); a != (Held{0, 1}) || b != (Held{5, 2}) {
		t.Errorf("an empty compartment takes part: %v %v", a, b)
	}
}

func TestBothSuctionsOpen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		s := BothOpen{
			A: Held{Gallons(f("va", 5, 300)), f("ca", 0, 5)}, B: Held{Gallons(f("vb", 5, 300)), f("cb", 0, 5)},
			Pump: f("pump", 0.1, 15), Share: f("share", 0, 1),
		}
		s.Bypass = s.Pump * f("bypass share", 0, 1)
		if rapid.Bool().Draw(t, "constant") { // A neither gains nor loses, or all but
			s.Bypass = s.Share*s.Pump + rapid.SampledFrom([]float64{0, 1e-14, -1e-14, 1e-9, -1e-9, 1e-5}).Draw(t, "nearly")
			s.Bypass = max(s.Bypass, 0)
		}
		minutes := min(f("minutes", 0, 20), 0.9*s.DryAfter())
		a, b, gun := s.After(minutes)
		y := rk4([]float64{float64(s.A.Volume), s.A.Product(), float64(s.B.Volume)}, minutes, 2000, func(y []float64) []float64 {
			cA := y[1] / y[0]
			mixed := s.Share*cA + (1-s.Share)*s.B.Strength
			return []float64{s.Bypass - s.Share*s.Pump, s.Bypass*mixed - s.Share*s.Pump*cA, -(1 - s.Share) * s.Pump}
		})
		near(t, "A", float64(a.Volume), y[0], 1e-9)
		near(t, "product of A", a.Product(), y[1], 1e-6)
		near(t, "B", float64(b.Volume), y[2], 1e-9)
		cA := y[1] / y[0]
		near(t, "gun", gun, s.Share*cA+(1-s.Share)*s.B.Strength, 1e-6)
		if b.Strength != s.B.Strength {
			t.Errorf("B's strength changes to %g", b.Strength)
		}
		low, high := min(s.A.Strength, s.B.Strength), max(s.A.Strength, s.B.Strength)
		if a.Strength < low-1e-9 || a.Strength > high+1e-9 {
			t.Errorf("A's strength %g is not between %g and %g", a.Strength, low, high)
		}
	})
}

func TestGainingTank(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		g := Gaining{Volume: Gallons(f("v", 5, 500)), Product: f("m", 0, 500), In: f("in", 0, 10), Out: f("out", 0, 10), InStrength: f("c", 0, 5)}
		minutes := f("minutes", 0, 30)
		v, m, ok := g.After(minutes)
		end := float64(g.Volume) + (g.In-g.Out)*minutes
		if ok != (end > 0) {
			t.Fatalf("%t with %g gal left", ok, end)
		}
		if end < 0.05*float64(g.Volume) {
			return
		}
		y := rk4([]float64{float64(g.Volume), g.Product}, minutes, 2000, func(y []float64) []float64 {
			return []float64{g.In - g.Out, g.In*g.InStrength - g.Out*y[1]/y[0]}
		})
		near(t, "volume", float64(v), y[0], 1e-9)
		near(t, "product", m, y[1], 1e-6)
	})
}

func TestTanksInSeries(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		a, b, m, q, minutes := f("a", 5, 300), f("b", 5, 300), f("m", 0.1, 100), f("q", 0, 10), f("minutes", 0, 30)
		if rapid.Bool().Draw(t, "alike") {
			b = a * (1 + rapid.SampledFrom([]float64{0, 1e-15, 1e-12, 1e-8, 1e-4}).Draw(t, "nearly"))
		}
		inA, inB := Series(Gallons(a), Gallons(b), m, q, minutes)
		y := rk4([]float64{m, 0}, minutes, 2000, func(y []float64) []float64 {
			return []float64{-q * y[0] / a, q*y[0]/a - q*y[1]/b}
		})
		near(t, "first", inA, y[0], 1e-6)
		near(t, "second", inB, y[1], 1e-6)
	})
}

func TestRinsesAndWashout(t *testing.T) {
	// Own computation, exact fractions: 0.5 gal left, 6 gal in all.
	for _, row := range []struct {
		n    int
		want float64
	}{{1, 1.0 / 13}, {2, 1.0 / 49}, {3, 1.0 / 125}, {6, 1.0 / 729}} {
		if got := Rinses(0.5, 6, row.n); math.Abs(got-row.want) > 1e-15 {
			t.Errorf("%d rinses leave %g, not %g", row.n, got, row.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		r, w := Gallons(rapid.Float64Range(0.1, 5).Draw(t, "residual")), Gallons(rapid.Float64Range(0.1, 50).Draw(t, "water"))
		last := 1.0
		for n := 1; n <= 20; n++ {
			left := Rinses(r, w, n)
			if left > last || left < Washout(r, w) {
				t.Fatalf("%d rinses leave %g after %g; without end %g", n, left, last, Washout(r, w))
			}
			last = left
		}
	})
	if Washout(0, 1) != 0 {
		t.Error("nothing keeps some")
	}
}
