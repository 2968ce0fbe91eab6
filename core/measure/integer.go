package measure

import (
	"math"
	"math/big"
	"math/bits"
)

// magnitude gives |n| without overflowing on the smallest int64.
func magnitude(n int64) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}

// signed gives m with a sign, stopped at the ends of int64.
func signed(m uint64, negative bool) int64 {
	switch {
	case negative && m >= 1<<63:
		return math.MinInt64
	case negative:
		return -int64(m)
	case m > math.MaxInt64:
		return math.MaxInt64
	}
	return int64(m)
}

// product gives a*b/c as magnitudes with the remainder, and whether the quotient
// needs more than 64 bits. c must not be zero.
func product(a, b, c uint64) (quotient, remainder uint64, over bool) {
	hi, lo := bits.Mul64(a, b)
	if hi >= c {
		return 0, 0, true
	}
	quotient, remainder = bits.Div64(hi, lo, c)
	return quotient, remainder, false
}

// MulDiv gives a*b/c with a 128-bit product, the fraction cut off toward zero.
// It stops at the ends of int64, and is 0 when c is 0.
func MulDiv(a, b, c int64) int64 {
	if c == 0 {
		return 0
	}
	negative := (a < 0) != (b < 0) != (c < 0)
	q, _, over := product(magnitude(a), magnitude(b), magnitude(c))
	if over {
		q = math.MaxUint64
	}
	return signed(q, negative)
}

// MulDivRound gives a*b/c with a 128-bit product, rounded half to even. It stops
// at the ends of int64, and is 0 when c is 0.
func MulDivRound(a, b, c int64) int64 {
	if c == 0 {
		return 0
	}
	negative := (a < 0) != (b < 0) != (c < 0)
	m := magnitude(c)
	q, r, over := product(magnitude(a), magnitude(b), m)
	switch {
	case over:
		q = math.MaxUint64
	case q < math.MaxUint64 && roundsUp(q, r, m):
		q++
	}
	return signed(q, negative)
}

// roundsUp says whether q + r/c goes to q+1 when rounded half to even (r < c).
func roundsUp(q, r, c uint64) bool {
	rest := c - r
	return r > rest || (r == rest && q&1 == 1)
}

// timesFloat gives f*n rounded once, half to even, from the exact product: a
// float64 is a 53-bit integer and a power of two, so the product fits 128 bits.
// It stops at the ends of int64; for NaN it is 0.
func timesFloat(f float64, n int64) int64 {
	if f == 0 || n == 0 || math.IsNaN(f) {
		return 0
	}
	negative := (f < 0) != (n < 0)
	if math.IsInf(f, 0) {
		return signed(math.MaxUint64, negative)
	}
	frac, exp := math.Frexp(math.Abs(f))
	hi, lo := bits.Mul64(uint64(math.Ldexp(frac, 53)), magnitude(n))
	exp -= 53
	switch {
	case exp >= 0:
		// The significand has 53 bits, so shifting it and |n| >= 1 past 63 is over.
		if hi != 0 || exp > 63 || bits.Len64(lo)+exp > 63 {
			return signed(math.MaxUint64, negative)
		}
		return signed(lo<<exp, negative)
	case exp <= -128:
		return 0
	}
	return signed(shiftRound(hi, lo, uint(-exp)), negative)
}

// shiftRound gives the 128-bit number hi:lo divided by 2^s, rounded half to even,
// stopped at the end of uint64; 1 <= s <= 127.
func shiftRound(hi, lo uint64, s uint) uint64 {
	var q, restHi, restLo, halfHi, halfLo uint64
	if s >= 64 {
		q = hi >> (s - 64)
		restHi, restLo = hi&(1<<(s-64)-1), lo
	} else {
		if hi>>s != 0 {
			return math.MaxUint64
		}
		q = hi<<(64-s) | lo>>s
		restLo = lo & (1<<s - 1)
	}
	if s > 64 {
		halfHi = 1 << (s - 65)
	} else {
		halfLo = 1 << (s - 1)
	}
	above := restHi > halfHi || (restHi == halfHi && restLo > halfLo)
	tie := restHi == halfHi && restLo == halfLo
	if (above || (tie && q&1 == 1)) && q < math.MaxUint64 {
		q++
	}
	return q
}

// ratInt rounds r half to even; ok is false when it does not fit int64.
func ratInt(r *big.Rat) (n int64, ok bool) {
	q, rest := new(big.Int).QuoRem(r.Num(), r.Denom(), new(big.Int))
	twice := rest.Abs(rest)
	twice.Lsh(twice, 1)
	if c := twice.Cmp(r.Denom()); c > 0 || (c == 0 && q.Bit(0) == 1) {
		q.Add(q, big.NewInt(int64(r.Sign())))
	}
	return q.Int64(), q.IsInt64()
}

// fromFloat gives f*num/den rounded once, half to even, stopped at the ends of
// int64; for NaN it is 0.
func fromFloat(f float64, num, den int64) int64 {
	if den == 1 || math.IsNaN(f) || math.IsInf(f, 0) {
		return timesFloat(f, num)
	}
	r := new(big.Rat).SetFloat64(f)
	n, ok := ratInt(r.Mul(r, big.NewRat(num, den)))
	if !ok {
		return signed(math.MaxUint64, f < 0)
	}
	return n
}

// roundFloat gives f rounded half to even, stopped at the ends of int64; for NaN
// it is 0.
func roundFloat(f float64) int64 { return timesFloat(f, 1) }
