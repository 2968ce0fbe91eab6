package hydraulics

import "math"

// How far one liquid smears into the next, as D/(u d): the dispersion coefficient over mean speed and bore.

// wenFanFrom is the least Reynolds number of the data that the fit rests on.
const wenFanFrom = 2000

// WenFan is the fit of Wen and Fan (1975) to measured pipes, as in Levenspiel, Chemical Reaction Engineering, 3rd ed.
// (1999), p. 310: D/(u d) = 3.0e7/Re^2.1 + 1.35/Re^0.125, for Re above 2,000; below it is held, for a laminar flow has no
// such figure. It is the one that Sigma takes.
func WenFan(re float64) float64 {
	re = max(re, wenFanFrom)
	return 3.0e7/math.Pow(re, 2.1) + 1.35/math.Pow(re, 0.125)
}

// taylor is Taylor's constant (1954): D = 10.1 a u*, a the radius and u* the shear velocity.
const taylor = 10.1

// fromShear turns D/(a u*) into D/(u d) with the friction of a smooth pipe: u* = u sqrt(f/8).
func fromShear(k, re float64) float64 { return k / 2 * math.Sqrt(Colebrook(re, 0)/8) }

// Taylor is G. I. Taylor (1954), for high Reynolds numbers; it is too small below about 20,000.
func Taylor(re float64) float64 { return fromShear(taylor, re) }

// EPAShear is D/(a u*) = 10.1 + 577 (Re/1000)^-2.2: US EPA, EPANET-MSX 2.0 (EPA/600/R-22/199, 2023), equation 2.17,
// after Basha and Malaeb (2007); Re above 2,300.
func EPAShear(re float64) float64 { return taylor + 577*math.Pow(re/1000, -2.2) }

// EPA is EPAShear as D/(u d).
func EPA(re float64) float64 { return fromShear(EPAShear(re), re) }

// Hart is Hart, Guymer, Sonnenwald and Stovin (2016), for Re of 3,000 to 20,000: D/(u d) = 1.17e9 Re^-2.5 + 0.41. The
// coefficients are recalled from memory and were not read again: it is a cross-check and decides nothing.
func Hart(re float64) float64 { return 1.17e9*math.Pow(re, -2.5) + 0.41 }

// AustinPalfrey is the length of the interface between batches from 1 to 99 per cent, in metres: Austin and Palfrey
// (1963), coefficients as commonly quoted and not read again in the original.
func (p Pipe) AustinPalfrey(re float64) float64 {
	root := math.Sqrt(p.Bore * p.Length)
	if re >= p.CriticalReynolds() {
		return 11.75 * root * math.Pow(re, -0.1)
	}
	return 18420 * root * math.Pow(re, -0.9) * math.Exp(2.18*math.Sqrt(p.Bore))
}

// CriticalReynolds is where the two branches of AustinPalfrey meet.
func (p Pipe) CriticalReynolds() float64 { return 1e4 * math.Exp(2.72*math.Sqrt(p.Bore)) }

// InterfaceConstant is c in S^2 = c a X u*/u, the length S of the interface between two shares at distance X, from
// k = D/(a u*): (z_upper - z_lower)^2 2 k. Taylor (1954) gives 437 for 1 and 99 per cent.
func InterfaceConstant(lower, upper, k float64) float64 {
	z := quantile(upper) - quantile(lower)
	return z * z * 2 * k
}

// NumberFromVariance is the dispersion number D/(u L) of small dispersion by how the variance of a pulse grows between two
// places, in squares of the mean time between them: Levenspiel (1999), ch. 13.
func NumberFromVariance(grown float64) float64 { return grown / 2 }

// NumberOfClosedVessel is the dispersion number D/(u L) of a closed vessel from the variance of a pulse in squares of its
// mean time, between 0 and 1: the root of 2 N - 2 N^2 (1 - exp(-1/N)), Levenspiel (1999), ch. 13.
func NumberOfClosedVessel(variance float64) float64 {
	low, high := 0.0, 1.0
	spread := func(n float64) float64 { return 2*n + float64(2*n*n*math.Expm1(-1/n)) }
	for spread(high) < variance && high < 1e6 {
		high *= 2
	}
	for range 200 {
		if mid := (low + high) / 2; spread(mid) < variance {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}
