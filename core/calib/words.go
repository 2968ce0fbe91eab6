package calib

import (
	"math"
	"strconv"
	"strings"

	"example.com/tintline/core/measure"
)

// num prints a figure to four digits, without zeros at its end.
func num(f float64) string { return digits(f, 4) }

func digits(f float64, n int) string {
	if f == 0 || math.IsNaN(f) || math.IsInf(f, 0) {
		return strconv.FormatFloat(f, 'f', -1, 64)
	}
	places := max(n-1-int(math.Floor(math.Log10(math.Abs(f)))), 0)
	s := strconv.FormatFloat(f, 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return grouped(s)
}

// grouped puts commas between the thousands.
func grouped(s string) string {
	whole, rest, point := strings.Cut(s, ".")
	for i := len(whole) - 3; i > 0 && whole[i-1] != '-'; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if point {
		return whole + "." + rest
	}
	return whole
}

// Percent prints a share as a per cent to a tenth.
func Percent(share float64) string { return strconv.FormatFloat(float64(100*share), 'f', 1, 64) }

func seconds(s float64) string { return strconv.FormatFloat(s, 'f', 1, 64) + " s" }

func feet(l measure.Length) string { return num(l.Feet()) + " ft" }

func sqft(mm2 float64) string {
	f, _ := measure.Factor("area", "sqft")
	return num(mm2/f) + " sq ft"
}

func volumeText(v float64) string {
	gal := v / float64(measure.USGallon)
	if gal < 1 {
		return num(float64(gal*128)) + " fl oz"
	}
	return num(gal) + " gal"
}

func massText(m float64) string { return num(m/float64(measure.Pound)) + " lb" }

// RateText prints a rate for each 1,000 sq ft, liquid in gallons and dry in pounds: "0.187 gal per 1,000 sq ft".
func RateText(r measure.Rate) string {
	if r.Kind == measure.Dry {
		return num(lbPer1000(r)) + " lb per 1,000 sq ft"
	}
	return num(r.GalPer1000()) + " gal per 1,000 sq ft"
}

func lbPer1000(r measure.Rate) float64 {
	f, err := r.In("lb_per_1000_sqft")
	if err != nil {
		return 0
	}
	return f
}

func listOf(parts []string) string {
	switch n := len(parts); n {
	case 0:
		return "none"
	case 1:
		return parts[0]
	default:
		return strings.Join(parts[:n-1], ", ") + " and " + parts[n-1]
	}
}

func numbers(list []float64) string {
	var out []string
	for _, f := range list {
		out = append(out, num(f))
	}
	return listOf(out)
}
