package fluid

import "math"

// ln2Hi and ln2Lo add up to ln 2; ln2Hi has few enough bits that k*ln2Hi is exact for the k used here.
const (
	ln2Hi = 6.93147180369123816490e-01
	ln2Lo = 1.90821492927058770002e-10
)

// decay returns e^-x and 1-e^-x for x of 0 or more, with a relative error below 1e-14 each; from 700 on,
// where e^-x is below 1e-304, it returns 0 and 1. What is not above 0 counts as 0.
//
// It is written out, every product guarded against fusing, because math.Exp differs in the last bits
// between processors and the book must not.
func decay(x float64) (left, gone float64) {
	switch {
	case !(x > 0):
		return 1, 0
	case x > 700:
		return 0, 1
	}
	if x <= 0.5 {
		gone = oneMinusExpSeries(x)
		return 1 - gone, gone
	}
	k := math.Floor(float64(x/math.Ln2) + 0.5)
	r := x - float64(k*ln2Hi)
	r -= float64(k * ln2Lo)
	e := 1 - oneMinusExpSeries(r)
	left = math.Ldexp(e, -int(k))
	return left, 1 - left
}

// oneMinusExpSeries is 1-e^-r by its Taylor series (NIST DLMF 4.2.19); for |r| <= 0.5 the 18 terms leave
// less than 1e-20.
func oneMinusExpSeries(r float64) float64 {
	const terms = 18
	s := 0.0
	for n := terms; n >= 1; n-- {
		// Horner from the inside: r/n * (1 - s)
		s = float64(float64(r/float64(n)) * (1 - s))
	}
	return s
}
