package hydraulics

import "math"

// Friction factors of Darcy, from the Reynolds number and the roughness over the bore.

// Laminar is 64/Re (Hagen 1839, Poiseuille 1840).
func Laminar(re float64) float64 { return 64 / re }

// Colebrook is the root of 1/sqrt(f) = -2 log10(rough/3.7 + 2.51/(Re sqrt(f))) (Colebrook 1939), by repeated substitution
// until it stands still.
func Colebrook(re, rough float64) float64 {
	x := 1 / math.Sqrt(SwameeJain(re, rough))
	for range 100 {
		next := -2 * math.Log10(rough/3.7+2.51*x/re)
		still := math.Abs(next-x) <= 1e-15*math.Abs(x)
		if x = next; still {
			break
		}
	}
	return 1 / (x * x)
}

// SwameeJain is explicit: Swamee and Jain (1976).
func SwameeJain(re, rough float64) float64 {
	l := math.Log10(rough/3.7 + 5.74/math.Pow(re, 0.9))
	return 0.25 / (l * l)
}

// Haaland is explicit: Haaland (1983).
func Haaland(re, rough float64) float64 {
	l := -1.8 * math.Log10(math.Pow(rough/3.7, 1.11)+6.9/re)
	return 1 / (l * l)
}

// Blasius is that of a smooth pipe below Re of about 100,000: Blasius (1913).
func Blasius(re float64) float64 { return 0.3164 * math.Pow(re, -0.25) }

// Churchill covers all regimes without a jump: Churchill (1977).
func Churchill(re, rough float64) float64 {
	a := math.Pow(2.457*math.Log(1/(math.Pow(7/re, 0.9)+float64(0.27*rough))), 16)
	b := math.Pow(37530/re, 16)
	return 8 * math.Pow(math.Pow(8/re, 12)+1/math.Pow(a+b, 1.5), 1.0/12)
}

// Friction is what Loss takes: laminar below Re 2,300, Colebrook from 4,000 on, and a straight line between them, so that
// the loss has no jump and never falls as the flow grows.
func Friction(re, rough float64) float64 {
	switch {
	case re < laminarBelow:
		return Laminar(re)
	case re >= turbulentFrom:
		return Colebrook(re, rough)
	}
	a, b := Laminar(laminarBelow), Colebrook(turbulentFrom, rough)
	return a + float64((b-a)*(re-laminarBelow)/(turbulentFrom-laminarBelow))
}
