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

// activeUnits are those in which labels give the most of an active in a year.
var activeUnits = []string{"lb_per_acre", "oz_per_acre", "lb_per_1000_sqft", "oz_per_1000_sqft", "ng_per_mm2"}

// sameRate is how near two rates are the same one, read in other ways.
const sameRate = 1e-12

// shortDigits is how long a figure is that a label would print: the first usual unit in which it is so is taken.
const shortDigits = 4

// RateText is a rate in a unit in which it is short, "8 fl oz per acre".
func RateText(r measure.Rate) string { return rateIn(r, rateUnits[r.Kind]) }

func rateIn(r measure.Rate, units []string) string {
	best := ""
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
		if len(digits) <= shortDigits {
			return digits + " " + spaced(u)
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
			s += " most " + rateIn(a.MostYear.V, activeUnits) + " per year"
		}
		out = append(out, s)
	}
	return strings.Join(out, "; ")
}

func grassRatesText(all []label.GrassRates) string {
	var out []string
	for _, g := range all {
		var names []string
		for _, n := range g.Grasses {
			names = append(names, label.GrassWords(n))
		}
		s := strings.Join(names, ", ") + ": "
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
