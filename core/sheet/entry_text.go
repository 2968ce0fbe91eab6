package sheet

import (
	"math"
	"strconv"
	"strings"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// figure is a number with all its digits and no exponent.
func figure(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }

// The units in which rates are written, the usual ones first; the last of each kind takes every value to its last digit.
var rateUnits = map[measure.Kind][]string{
	measure.Liquid: {"fl_oz_per_1000_sqft", "fl_oz_per_acre", "pt_per_acre", "qt_per_acre", "gal_per_acre", "gal_per_1000_sqft", "nl_per_mm2"},
	measure.Dry:    {"oz_per_1000_sqft", "lb_per_1000_sqft", "oz_per_acre", "lb_per_acre", "g_per_1000_sqft", "kg_per_ha", "ng_per_mm2"},
}

// sameRate is how near two rates are the same one, read in other ways.
const sameRate = 1e-12

// RateText is a rate in the unit in which it is shortest, "8 fl oz per acre".
func RateText(r measure.Rate) string {
	best := ""
	units := rateUnits[r.Kind]
	for _, u := range units[:len(units)-1] {
		f, err := r.In(u)
		if err != nil {
			continue
		}
		digits := strconv.FormatFloat(f, 'f', -1, 64)
		if short, err := strconv.ParseFloat(strconv.FormatFloat(f, 'g', 7, 64), 64); err == nil {
			digits = figure(short)
		}
		back, err := measure.ReadRate(digits, u, r.Kind)
		if err != nil || math.Abs(back.V-r.V) > sameRate*r.V {
			continue
		}
		if n, _, _ := strings.Cut(best, " "); best == "" || len(digits) < len(n) {
			best = digits + " " + spaced(u)
		}
	}
	if best == "" {
		return figure(r.V) + " " + spaced(units[len(units)-1])
	}
	return best
}

func speedText(s measure.Speed) string {
	f := float64(s) / float64(measure.MilePerHour)
	digits := strconv.FormatFloat(f, 'g', 6, 64)
	if back, err := measure.ReadSpeed(digits, "mph"); err == nil && back == s {
		return digits
	}
	return strconv.FormatInt(int64(s), 10) + " um/s"
}

func moneyText(m measure.Money) string {
	return strconv.FormatFloat(float64(m)/float64(measure.Dollar), 'f', -1, 64)
}

// shortParts is how many digits behind the point a person would write.
const shortParts = 2

// amountText is an amount in the largest unit in which it is short; empty if it is nothing.
func amountText(a measure.Amount) string {
	if a.N == 0 {
		return ""
	}
	units, last := []string{"gal", "qt", "pt", "fl_oz", "l", "ml"}, "nl"
	if a.Kind == measure.Dry {
		units, last = []string{"lb", "oz", "kg", "g"}, "ng"
	}
	exact := ""
	for _, u := range units {
		f, err := a.In(u)
		if err != nil {
			continue
		}
		digits := strconv.FormatFloat(f, 'g', 7, 64)
		if back, err := measure.ReadAmount(digits, u, a.Kind); err != nil || back != a {
			continue
		}
		if _, parts, _ := strings.Cut(digits, "."); len(parts) <= shortParts {
			return digits + " " + spaced(u)
		}
		if exact == "" {
			exact = digits + " " + spaced(u)
		}
	}
	if exact != "" {
		return exact
	}
	return strconv.FormatInt(a.N, 10) + " " + last
}

// activesText writes actives as they are read.
func activesText(all []label.Active) string {
	var out []string
	for _, a := range all {
		s := a.Name
		if !label.KnownActive(a.Name) {
			s = ownActive + " " + s
		}
		switch {
		case a.PoundsPerGallon > 0:
			s += " " + figure(a.PoundsPerGallon) + " lb/gal"
		case a.PercentByWeight > 0:
			s += " " + figure(a.PercentByWeight) + "%"
		}
		if a.MostYear.Known {
			s += " most " + RateText(a.MostYear.V) + " per year"
		}
		out = append(out, s)
	}
	return strings.Join(out, "; ")
}

func grassRatesText(all []label.GrassRates) string {
	var out []string
	for _, g := range all {
		s := strings.Join(g.Grasses, ", ") + ": "
		switch {
		case g.Low.Known && g.High.Known:
			s += RateText(g.Low.V) + " to " + RateText(g.High.V)
		case g.Low.Known:
			s += "at least " + RateText(g.Low.V)
		case g.High.Known:
			s += "up to " + RateText(g.High.V)
		default:
			continue
		}
		out = append(out, s)
	}
	return strings.Join(out, "; ")
}
