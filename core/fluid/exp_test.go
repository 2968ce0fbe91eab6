package fluid

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

// bigDecay is e^-x to some 60 digits: the Taylor series (NIST DLMF 4.2.19) of x/2^k, squared k times.
func bigDecay(x float64) *big.Float {
	const bits = 300
	r := new(big.Float).SetPrec(bits).SetFloat64(-x)
	halvings := 0
	for r.Cmp(big.NewFloat(-0.01)) < 0 {
		r.Quo(r, big.NewFloat(2))
		halvings++
	}
	sum, term := new(big.Float).SetPrec(bits).SetInt64(1), new(big.Float).SetPrec(bits).SetInt64(1)
	for n := int64(1); n < 60; n++ {
		term.Mul(term, r)
		term.Quo(term, new(big.Float).SetPrec(bits).SetInt64(n))
		sum.Add(sum, term)
	}
	for range halvings {
		sum.Mul(sum, sum)
	}
	return sum
}

func relative(got float64, want *big.Float) float64 {
	d := new(big.Float).SetPrec(300).SetFloat64(got)
	d.Sub(d, want)
	d.Quo(d, want)
	f, _ := d.Float64()
	return math.Abs(f)
}

func decayArguments() []float64 {
	xs := []float64{1e-30, 1e-18, 1e-9, 1e-3, 0.0625, 0.1, 0.34657, 0.49999999, 0.5, 0.50000001, math.Ln2, 1, 2, 5, 16, 36.7, 100, 690, 699.9, 700}
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		xs = append(xs, r.Float64()*700, r.Float64()*0.7, math.Exp(r.Float64()*40-40))
	}
	return xs
}

func TestDecayAgainstSixtyDigits(t *testing.T) {
	one := new(big.Float).SetPrec(300).SetInt64(1)
	var worstLeft, worstGone float64
	for _, x := range decayArguments() {
		left, gone := decay(x)
		want := bigDecay(x)
		worstLeft = max(worstLeft, relative(left, want))
		worstGone = max(worstGone, relative(gone, new(big.Float).SetPrec(300).Sub(one, want)))
	}
	t.Logf("largest relative error: e^-x %.1e, 1-e^-x %.1e", worstLeft, worstGone)
	if worstLeft > 1e-14 || worstGone > 1e-14 {
		t.Error("above 1e-14")
	}
}

func TestDecayAtTheEnds(t *testing.T) {
	for _, row := range []struct {
		x, left float64
		source  string
	}{
		{1, 0.36787944117144233, "1/e, OEIS A068985"},
		{math.Ln2, 0.5, "by definition of ln 2"},
		{0, 1, "e^0"},
		{-3, 1, "what is not above 0 counts as 0"},
		{math.NaN(), 1, "what is not above 0 counts as 0"},
		{701, 0, "from 700 on nothing is left"},
		{math.Inf(1), 0, "from 700 on nothing is left"},
	} {
		left, gone := decay(row.x)
		if math.Abs(left-row.left) > 1e-15 || math.Abs(gone-(1-row.left)) > 1e-15 {
			t.Errorf("decay(%g) = %g, %g; want %g (%s)", row.x, left, gone, row.left, row.source)
		}
	}
}

func TestDecayAgainstLibrary(t *testing.T) {
	for _, x := range decayArguments() {
		left, gone := decay(x)
		if math.Abs(left/math.Exp(-x)-1) > 1e-14 || math.Abs(gone/-math.Expm1(-x)-1) > 1e-14 {
			t.Errorf("decay(%g) = %g, %g; the library says %g, %g", x, left, gone, math.Exp(-x), -math.Expm1(-x))
		}
	}
}
