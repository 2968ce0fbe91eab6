package measure

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// hostile draws integers of every size, the ends often.
func hostile() *rapid.Generator[int64] {
	return rapid.OneOf(
		rapid.Int64(),
		rapid.Int64Range(-1000, 1000),
		rapid.SampledFrom([]int64{0, 1, -1, 2, math.MaxInt64, math.MinInt64, math.MaxInt64 - 1, math.MinInt64 + 1, 1 << 32, int64(USGallon)}),
	)
}

func clamp(b *big.Int) int64 {
	if b.IsInt64() {
		return b.Int64()
	}
	return signed(math.MaxUint64, b.Sign() < 0)
}

func TestMulDivIsThatOfBigIntegers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := hostile().Draw(t, "a"), hostile().Draw(t, "b"), hostile().Draw(t, "c")
		if c == 0 {
			if MulDiv(a, b, c) != 0 || MulDivRound(a, b, c) != 0 {
				t.Fatal("division by zero gives 0")
			}
			return
		}
		ab := new(big.Int).Mul(big.NewInt(a), big.NewInt(b))
		if got, want := MulDiv(a, b, c), clamp(new(big.Int).Quo(ab, big.NewInt(c))); got != want {
			t.Fatalf("MulDiv(%d, %d, %d) = %d, want %d", a, b, c, got, want)
		}
		n, ok := ratInt(new(big.Rat).SetFrac(ab, big.NewInt(c)))
		if !ok {
			n = signed(math.MaxUint64, (ab.Sign() < 0) != (c < 0))
		}
		if got := MulDivRound(a, b, c); got != n {
			t.Fatalf("MulDivRound(%d, %d, %d) = %d, want %d", a, b, c, got, n)
		}
	})
}

func TestMulDivRoundTies(t *testing.T) {
	tests := []struct{ a, b, c, want int64 }{
		{1, 1, 2, 0},
		{3, 1, 2, 2},
		{5, 1, 2, 2},
		{7, 1, 2, 4},
		{-1, 1, 2, 0},
		{-3, 1, 2, -2},
		{math.MinInt64, 1, 1, math.MinInt64},
		{math.MinInt64, 1, -1, math.MaxInt64},
		{math.MinInt64, math.MinInt64, math.MinInt64, math.MinInt64},
		{math.MaxInt64, math.MaxInt64, 1, math.MaxInt64},
		{math.MinInt64, 1, math.MinInt64, 1},
		{math.MaxInt64, 1, 2, 1 << 62},
	}
	for _, tt := range tests {
		if got := MulDivRound(tt.a, tt.b, tt.c); got != tt.want {
			t.Errorf("MulDivRound(%d, %d, %d) = %d, want %d", tt.a, tt.b, tt.c, got, tt.want)
		}
	}
}

func TestTimesFloatIsTheExactProductRounded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-1e6, 1e6), rapid.Float64Range(-1, 1)).Draw(t, "f")
		n := hostile().Draw(t, "n")
		exact := new(big.Rat).SetFloat64(f)
		want, ok := ratInt(exact.Mul(exact, new(big.Rat).SetInt64(n)))
		if !ok {
			want = signed(math.MaxUint64, exact.Sign() < 0)
		}
		if got := timesFloat(f, n); got != want {
			t.Fatalf("%v x %d = %d, want %d", f, n, got, want)
		}
	})
}

func TestRateOverAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		gal := rapid.Float64Range(0.01, 500).Draw(t, "gal")
		sqft := rapid.Float64Range(1, 5e6).Draw(t, "sqft")
		v, a := Gallons(gal), SquareFeet(sqft)
		r := VolumeRate(v, a)
		if d := int64(r.Volume(a)) - int64(v); d < -1 || d > 1 {
			t.Fatalf("%d over %d comes back %d off", v, a, d)
		}
		if back := r.AreaFor(v); math.Abs(float64(back-a)) > 1 {
			t.Fatalf("area %d comes back as %d", a, back)
		}
		if g := GalPer1000(gal).GalPer1000(); math.Abs(g-gal) > 1e-12*gal {
			t.Fatalf("%v comes back as %v", gal, g)
		}
	})
}

func TestRateCases(t *testing.T) {
	r := GalPer1000(5.25)
	if got := r.Volume(SquareFeet(1000)); got != Gallons(5.25) {
		t.Errorf("5.25 gal over 1,000 sq ft: %d nL", got)
	}
	if got, err := r.In("gal_per_acre"); err != nil || math.Abs(got-228.69) > 1e-9 {
		t.Errorf("5.25 gal per 1,000 sq ft is %v gal per acre (%v), want 228.69", got, err)
	}
	if got := (Rate{}).AreaFor(USGallon); got != 0 {
		t.Errorf("a rate of 0 covers %d", got)
	}
	if got := (Rate{V: math.NaN()}).AreaFor(USGallon); got != 0 {
		t.Errorf("no rate covers %d", got)
	}
	if got := (Rate{V: 1e-300}).AreaFor(USGallon); got != math.MaxInt64 {
		t.Errorf("a tiny rate covers %d", got)
	}
	if got := (Rate{V: 1e300}).Over(Hectare).N; got != math.MaxInt64 {
		t.Errorf("a huge rate puts down %d", got)
	}
	if got := RateOf(Amount{N: 5, Kind: Dry}, 0); got != (Rate{Kind: Dry}) {
		t.Errorf("over no area: %v", got)
	}
	if _, err := r.In("lb_per_acre"); err == nil {
		t.Error("a liquid rate in pounds")
	}
	if _, err := r.In("gal"); err == nil {
		t.Error("a rate without an area")
	}
	dry, err := RateUnit(50, "lb_per_acre")
	if err != nil || dry.Kind != Dry || dry.Over(Acres(10)) != DryAmount(Pounds(500)) {
		t.Errorf("50 lb per acre on 10 acres: %v (%v)", dry.Over(Acres(10)), err)
	}
	c := ConcentrationOf(LiquidAmount(FluidOunces(32)), Gallons(20))
	if got := c.PerGallon(Liquid); math.Abs(got-1.6) > 1e-8 {
		t.Errorf("32 fl oz in 20 gal: %v a gallon", got)
	}
	if got := c.In(Gallons(10), Liquid); got != LiquidAmount(FluidOunces(16)) {
		t.Errorf("half of it: %v", got)
	}
	if ConcentrationOf(Amount{N: 1}, 0) != 0 {
		t.Error("in no volume")
	}
	if got := ConcentrationOf(DryAmount(Pounds(3)), Gallons(100)).PerGallon(Dry); math.Abs(got-0.48) > 1e-9 {
		t.Errorf("3 lb in 100 gal: %v oz a gallon", got)
	}
	if got, err := LiquidAmount(USGallon).In("pt"); err != nil || got != 8 {
		t.Errorf("a gallon: %v pt (%v)", got, err)
	}
	if _, err := LiquidAmount(USGallon).In("lb"); err == nil {
		t.Error("a volume in pounds")
	}
}
