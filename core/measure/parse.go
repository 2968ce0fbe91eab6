package measure

import (
	"math/big"
	"strconv"
)

// Bounds of a stored figure: enough for every int64 in every unit, and small
// enough that no text can make the arithmetic slow.
const (
	maxDigits   = 64
	maxExponent = 30
)

// ParseIn reads a plain decimal number ("1.5", "6200", "1e3") of a unit into the
// quantity's base unit, exactly and rounded once, half to even. quantity is
// volume, mass, area, length, speed or money; unit is a key of units.csv. A text
// of more than 64 characters, an exponent beyond 30 either way, anything that is
// no decimal number, and a figure that does not fit are refused in one sentence.
func ParseIn(quantity, unit, text string) (int64, error) {
	if quantity == "flow" || quantity == "pressure" {
		return 0, textErrorf("A %s is not kept in whole units.", quantity)
	}
	u, err := unitOf(quantity, unit)
	if err != nil {
		return 0, err
	}
	if u.num == 1 && u.den == 1 {
		// The journal's own figures: whole base units, by far the most common.
		n, err := strconv.ParseInt(text, 10, 64)
		if err == nil && len(text) <= maxDigits && text[0] != '+' {
			return n, nil
		}
	}
	r, err := decimal(text)
	if err != nil {
		return 0, err
	}
	n, ok := ratInt(r.Mul(r, u.ratio))
	if !ok {
		return 0, textErrorf("%s %s is more than can be kept; the most is about %s %s.", text, unit, mostIn(u), unit)
	}
	return n, nil
}

// mostIn gives the largest figure of a unit, for a sentence.
func mostIn(u *unit) string {
	return strconv.FormatFloat(u.of(1<<63), 'g', 3, 64)
}

// ParseRateIn reads a plain decimal number of a rate's unit, such as
// fl_oz_per_1000_sqft, to the nearest float64. Refused as in ParseIn.
func ParseRateIn(unit, text string) (Rate, error) {
	amount, area, kind, err := rateUnits(unit)
	if err != nil {
		return Rate{}, err
	}
	r, err := decimal(text)
	if err != nil {
		return Rate{}, err
	}
	r.Mul(r, amount.ratio)
	v, _ := r.Quo(r, area.ratio).Float64()
	return Rate{V: v, Kind: kind}, nil
}

// ParseFlowIn reads a plain decimal number of a unit of flow (gpm, l_per_min) to
// the nearest float64. Refused as in ParseIn.
func ParseFlowIn(unit, text string) (Flow, error) {
	f, err := parseFloatIn("flow", unit, text)
	return Flow(f), err
}

// ParsePressureIn reads a plain decimal number of a unit of pressure (psi, kpa)
// to the nearest float64. Refused as in ParseIn.
func ParsePressureIn(unit, text string) (Pressure, error) {
	f, err := parseFloatIn("pressure", unit, text)
	return Pressure(f), err
}

func parseFloatIn(quantity, unit, text string) (float64, error) {
	u, err := unitOf(quantity, unit)
	if err != nil {
		return 0, err
	}
	r, err := decimal(text)
	if err != nil {
		return 0, err
	}
	f, _ := r.Mul(r, u.ratio).Float64()
	return f, nil
}

// ParseNumber reads a plain decimal number without a unit to the nearest
// float64. Refused as in ParseIn.
func ParseNumber(text string) (float64, error) {
	r, err := decimal(text)
	if err != nil {
		return 0, err
	}
	f, _ := r.Float64()
	return f, nil
}

// decimal reads a plain decimal number exactly.
func decimal(text string) (*big.Rat, error) {
	if len(text) > maxDigits {
		return nil, textErrorf("A number of %d characters is too long; at most %d are read.", len(text), maxDigits)
	}
	exponent, ok := plainDecimal(text)
	if !ok {
		return nil, textErrorf("%q is not a number; write digits with a decimal point, such as 1.5.", text)
	}
	if exponent > maxExponent || exponent < -maxExponent {
		return nil, textErrorf("%q has an exponent beyond %d.", text, maxExponent)
	}
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		return nil, textErrorf("%q is not a number; write digits with a decimal point, such as 1.5.", text)
	}
	return r, nil
}

// plainDecimal checks the form [-]digits[.digits][e[+-]digits], where one of the
// two runs of digits may be missing, and gives the exponent. It stands before
// big.Rat because that also reads fractions, other bases and underscores.
func plainDecimal(text string) (exponent int, ok bool) {
	if text != "" && text[0] == '-' {
		text = text[1:]
	}
	whole := digits(text)
	text = text[whole:]
	fraction := 0
	if text != "" && text[0] == '.' {
		fraction = digits(text[1:])
		text = text[1+fraction:]
	}
	if whole+fraction == 0 {
		return 0, false
	}
	if text == "" {
		return 0, true
	}
	if text[0] != 'e' && text[0] != 'E' {
		return 0, false
	}
	text = text[1:]
	sign := text
	if text != "" && (text[0] == '+' || text[0] == '-') {
		text = text[1:]
	}
	if n := digits(text); n == 0 || n != len(text) {
		return 0, false
	}
	exponent, err := strconv.Atoi(sign)
	if err != nil { // more digits than an int holds: far beyond the bound
		return maxExponent + 1, true
	}
	return exponent, true
}

// digits counts the ASCII digits that text begins with.
func digits(text string) int {
	n := 0
	for n < len(text) && text[n] >= '0' && text[n] <= '9' {
		n++
	}
	return n
}
