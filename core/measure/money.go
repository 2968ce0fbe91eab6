package measure

// Money is an amount of money in US cents.
type Money int64

// The cent and the dollar.
const (
	Cent   Money = 1
	Dollar Money = 100
)

// Dollars makes an amount of dollars, rounded once to the cent, half to even. It
// stops at the ends of int64; NaN gives 0.
func Dollars(f float64) Money { return Money(timesFloat(f, int64(Dollar))) }

// Dollars gives m in dollars.
func (m Money) Dollars() float64 { return float64(m) / float64(Dollar) }
