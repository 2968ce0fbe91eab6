package measure

import (
	"math"
	"strconv"
	"strings"
)

// notKnown is printed for a figure that is no number.
const notKnown = "?"

// decimals prints n hundredths, tenths or whole ones (places 2, 1, 0) with
// thousands separators; nothing is ever printed as minus zero.
func decimals(n int64, places int) string {
	digits := strconv.FormatUint(magnitude(n), 10)
	if len(digits) <= places {
		digits = strings.Repeat("0", places+1-len(digits)) + digits
	}
	whole, fraction := digits[:len(digits)-places], digits[len(digits)-places:]
	out := thousands(whole)
	if fraction != "" {
		out += "." + fraction
	}
	if n < 0 {
		return "-" + out
	}
	return out
}

// thousands puts a comma before every third digit from the end.
func thousands(digits string) string {
	for i := len(digits) - 3; i > 0; i -= 3 {
		digits = digits[:i] + "," + digits[i:]
	}
	return digits
}

// Commas prints f at so many places with separators of thousands, and nothing as minus zero; "?" for what is no number.
func Commas(f float64, places int) string {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return notKnown
	}
	text := strconv.FormatFloat(math.Abs(f), 'f', places, 64)
	whole, fraction, _ := strings.Cut(text, ".")
	text = thousands(whole)
	if fraction != "" {
		text += "." + fraction
	}
	if f < 0 && strings.Trim(text, "0.,") != "" {
		return "-" + text
	}
	return text
}

// Text prints v in gallons: to 0.1 from 10 on, to 0.01 below, with thousands
// separators and without the unit: "11.1", "3.12", "1,240.0", "-0.30".
func (v Volume) Text() string {
	hundredths := MulDivRound(int64(v), 100, int64(USGallon))
	if magnitude(hundredths) >= 1000 {
		return decimals(MulDivRound(int64(v), 10, int64(USGallon)), 1)
	}
	return decimals(hundredths, 2)
}

// Text prints a in square feet to 10, without the unit: "7,400".
func (a Area) Text() string {
	return decimals(MulDivRound(int64(a), 10, hundredSquareFeet)*10, 0)
}

// Thousands prints a in thousands of square feet for a narrow place: "98k", and
// "0.4k" below 1,000.
func (a Area) Thousands() string {
	tenths := MulDivRound(int64(a), 10, int64(ThousandSquareFeet))
	if magnitude(tenths) >= 10 {
		return decimals(MulDivRound(int64(a), 1, int64(ThousandSquareFeet)), 0) + "k"
	}
	return decimals(tenths, 1) + "k"
}

// Multiple prints how many times one figure is another, to 0.1: "5.0"; "?" for
// what is no number.
func Multiple(f float64) string { return Commas(f, 1) }

// SecondsText prints a time to the second, without the unit: "74"; "?" for what is
// no number.
func SecondsText(s float64) string { return Commas(s, 0) }

// Text prints m in dollars and cents: "$1,240.50", "-$3.00".
func (m Money) Text() string {
	if m < 0 {
		return "-$" + decimals(int64(m), 2)[1:]
	}
	return "$" + decimals(int64(m), 2)
}

// Text prints s to a tenth of a mile an hour: "3.0 mph".
func (s Speed) Text() string {
	return decimals(MulDivRound(int64(s), 10, int64(MilePerHour)), 1) + " mph"
}

// Text prints f to a hundredth of a gallon a minute: "4.04 gpm".
func (f Flow) Text() string { return Commas(f.GPM(), 2) + " gpm" }

// Text prints p to the pound a square inch: "40 psi".
func (p Pressure) Text() string { return Commas(p.PSI(), 0) + " psi" }

// Text prints an amount of product to three significant digits in fl oz or, from a
// gallon on, gal; in oz or, from a pound on, lb: "5.12 fl oz", "1.25 gal", "75.0 lb".
func (a Amount) Text() string {
	return amountText(float64(a.N), a.Kind)
}

// Text prints a rate to three significant digits for each 1,000 sq ft, in the unit
// that Amount.Text takes: "1.47 fl oz per 1,000 sq ft".
func (r Rate) Text() string {
	return amountText(r.V*float64(ThousandSquareFeet), r.Kind) + " per 1,000 sq ft"
}

// amountText prints so many base units of a kind in the small or the large unit.
// Which one is decided by the figure as printed, so that what rounds to 128 fl oz
// stands as 1.00 gal.
func amountText(base float64, k Kind) string {
	small, large, many, smallName, largeName := float64(USPint)/16, float64(USGallon), 128.0, "fl oz", "gal"
	if k == Dry {
		small, large, many, smallName, largeName = float64(Ounce), float64(Pound), 16.0, "oz", "lb"
	}
	f := base / small
	if math.Abs(threeDigits(f)) >= many {
		f = base / large
		if math.Abs(f) < 1 {
			f = math.Copysign(1, f)
		}
		return significant(f) + " " + largeName
	}
	return significant(f) + " " + smallName
}

// threeDigits rounds f to three significant digits.
func threeDigits(f float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(f, 'e', 2, 64), 64)
	if err != nil {
		return f
	}
	return r
}

// significant prints f to three significant digits. What is less than 0.001 but
// not nothing is said to be so: a trace must not look like none.
func significant(f float64) string {
	switch size := math.Abs(threeDigits(f)); {
	case math.IsNaN(f) || math.IsInf(f, 0):
		return notKnown
	case f == 0:
		return "0"
	case size < 0.001 && f > 0:
		return "under 0.001"
	case size < 0.001:
		return "above -0.001"
	case size < 1:
		return strconv.FormatFloat(f, 'f', 2-int(math.Floor(math.Log10(size))), 64)
	case size < 10:
		return Commas(f, 2)
	case size < 100:
		return Commas(f, 1)
	}
	return Commas(threeDigits(f), 0)
}
