package hydraulics

import "math"

// below is the share of a standard normal distribution below z.
func below(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// density is the standard normal density at z.
func density(z float64) float64 { return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }

// quantile is the z below which a share f lies.
func quantile(f float64) float64 { return -math.Sqrt2 * math.Erfcinv(2*f) }

// scaledErfc is exp(t^2) erfc(t) for t of 0 or more, which does not overflow: from 25 on by its asymptotic series
// (Abramowitz and Stegun 1964, 7.1.23), whose next term is there below 1e-12.
func scaledErfc(t float64) float64 {
	if t < 25 {
		return math.Exp(t*t) * math.Erfc(t)
	}
	u := 1 / (2 * t * t)
	return (1 - float64(u*(1-float64(3*u*(1-float64(5*u)))))) / (t * math.Sqrt(math.Pi))
}

// washed is exp(-x/m + s^2/(2 m^2)) below(x/s - s/m): the part of a well-mixed cell m that, smeared by s, still stands
// before x. The exponent is large where the normal share is small, so they are never taken apart.
func washed(x, s, m float64) float64 {
	z, r := x/s, s/m
	if a := z - r; a >= 0 {
		return math.Exp(-r*(a+r/2)) * below(a)
	}
	return math.Exp(-z*z/2) * scaledErfc((r-z)/math.Sqrt2) / 2
}
