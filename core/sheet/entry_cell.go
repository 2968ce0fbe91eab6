package sheet

import (
	"fmt"
	"regexp"
	"strings"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// unitWords are the ways in which the unit of a bare figure may stand behind it.
var unitWords = map[string][]string{
	"F": {"f", "°f", "deg f", "degrees f", "degrees fahrenheit", "fahrenheit", "degrees"}, "days": {"d", "day", "days"},
	"h": {"h", "hr", "hrs", "hour", "hours"}, "ft": {"ft", "feet", "foot", "'"}, "%": {"%", "pct", "per cent", "percent"},
	"times": {"time", "times", "x", "applications", "application"}, "lb/gal": {"lb/gal", "lb per gal", "lbs per gal", "lb per gallon"},
}

var figureUnit = regexp.MustCompile(`^(-?[0-9][0-9.,/ ]*[0-9]|-?[0-9]|-?\.[0-9]+)\s*(.*)$`)

// thousands finds the commas within a figure.
var thousands = regexp.MustCompile(`([0-9]),([0-9]{3})`)

// number takes a figure in one unit, with the unit behind it or without.
func number(unit string, low, high float64) reader {
	return reader{fmt.Sprintf("%g to %g (%s)", low, high, unit), func(cell string) (any, error) {
		f, err := readFigure(cell, unit)
		if err == nil && (f < low || f > high) {
			err = faultf("%s is out of range: %g to %g.", quote(cell), low, high)
		}
		return f, err
	}}
}

func readFigure(cell, unit string) (float64, error) {
	m := figureUnit.FindStringSubmatch(strings.TrimSpace(cell))
	if m == nil {
		return 0, faultf("%s is no number.", quote(cell))
	}
	if rest := strings.ToLower(strings.TrimSpace(m[2])); rest != "" {
		known := false
		for _, w := range unitWords[unit] {
			known = known || rest == w
		}
		if !known {
			return 0, faultf("%s is no unit here; a figure stands for %s.", quote(m[2]), unit)
		}
	}
	minus := strings.HasPrefix(m[1], "-")
	f, err := measure.ParseNumber(thousands.ReplaceAllString(strings.TrimPrefix(m[1], "-"), "$1$2"))
	if minus {
		f = -f
	}
	return f, err
}

func days() reader { return number("days", 0, core.LongestDays) }

func density() reader {
	r := number("lb/gal", 0, core.MostPoundsPerGallon)
	read := r.read
	return reader{"more than 0 and up to 20 (lb/gal)", func(cell string) (any, error) {
		f, err := read(cell)
		if err == nil && f == 0.0 {
			err = faultf("%s is no weight of a gallon.", quote(cell))
		}
		return f, err
	}}
}

// ownOrder takes the words of a label on when it goes into the tank.
func ownOrder() reader {
	allowed := "first, last, or before, after or with a step, then a colon and the label's words"
	return reader{allowed, func(cell string) (any, error) {
		if err := label.CheckMixingOrder(cell); err != nil {
			return nil, faultf("%s", err.Error())
		}
		return cell, plain(cell)
	}}
}

func yesNo() reader { return oneOf(label.Yes, label.No) }

// date takes a day of the calendar.
func date() reader {
	return reader{"a date such as 2026-05-28", func(cell string) (any, error) {
		if _, err := time.Parse(time.DateOnly, cell); err != nil {
			return nil, faultf("%s is not a date.", quote(cell))
		}
		return cell, nil
	}}
}

// typedAmount is an amount as it was written; what it means hangs on the form of its product.
type typedAmount string

func (c typedAmount) of(k measure.Kind) (measure.Amount, error) {
	a, err := measure.ReadAmount(string(c), "", k)
	if err == nil && (a.N <= 0 || !core.PackageFits(a)) {
		err = faultf("%s is out of range: more than 0 and up to 10,000 gal or 22,000 lb.", quote(string(c)))
	}
	return a, err
}

// packaged takes what a package holds.
func packaged() reader {
	return reader{"more than 0, with its unit, such as 2.5 gal or 50 lb", func(cell string) (any, error) {
		c := typedAmount(cell)
		return c, inEitherForm(c)
	}}
}

func (r *row) amountOf(column string, form measure.Kind) measure.Amount {
	typed, ok := get[typedAmount](r, column)
	if !ok || !r.formed {
		return measure.Amount{}
	}
	a, err := typed.of(form)
	if err != nil {
		r.bad(column, err)
		return measure.Amount{}
	}
	return a
}

// typedGroup are the rates for some grasses as they were written; either rate may be missing.
type typedGroup struct {
	grasses   []string
	low, high typedRate
}

// grassRates takes the rates of a label for some of its grasses.
func grassRates() reader {
	allowed := "grasses with commas between them, a colon and their rates, such as tall fescue, fine fescue: 4 to 8 fl oz per acre; zoysiagrass: up to 4 fl oz per acre"
	return reader{allowed, func(cell string) (any, error) {
		var out []typedGroup
		for _, s := range items(cell) {
			g, err := readGroup(s)
			if err != nil {
				return nil, err
			}
			out = append(out, g)
		}
		return out, plain(cell)
	}}
}

func readGroup(s string) (typedGroup, error) {
	var g typedGroup
	list, rates, ok := strings.Cut(s, ":")
	if !ok {
		return g, faultf("%s has no colon between grasses and rates.", quote(s))
	}
	for _, one := range strings.Split(list, ",") {
		n, known := label.ReadGrass(one)
		if !known || n == label.AllTurf {
			return g, unknownGrass(strings.TrimSpace(one))
		}
		g.grasses = append(g.grasses, n)
	}
	rates = strings.TrimSpace(rates)
	switch low, high, two := strings.Cut(rates, " to "); {
	case strings.HasPrefix(rates, "up to "):
		g.high = typedRate(strings.TrimSpace(strings.TrimPrefix(rates, "up to ")))
	case strings.HasPrefix(rates, "at least "):
		g.low = typedRate(strings.TrimSpace(strings.TrimPrefix(rates, "at least ")))
	case two:
		low, high = strings.TrimSpace(low), strings.TrimSpace(high)
		if m := figureUnit.FindStringSubmatch(high); m != nil {
			if _, err := measure.ParseNumber(low); err == nil {
				low += " " + m[2]
			}
		}
		g.low, g.high = typedRate(low), typedRate(high)
	default:
		g.high = typedRate(rates)
	}
	for _, c := range []typedRate{g.low, g.high} {
		if c == "" {
			continue
		}
		if _, err := rate().read(string(c)); err != nil {
			return g, err
		}
	}
	if g.low == "" && g.high == "" {
		return g, faultf("%s gives no rate.", quote(s))
	}
	return g, nil
}

func (r *row) grassRates(column string, form measure.Kind) []label.GrassRates {
	var out []label.GrassRates
	groups, ok := get[[]typedGroup](r, column)
	if !ok || !r.formed {
		return nil
	}
	for _, g := range groups {
		made := label.GrassRates{Grasses: g.grasses}
		for _, one := range []struct {
			typed typedRate
			rate  *core.Maybe[measure.Rate]
		}{{g.low, &made.Low}, {g.high, &made.High}} {
			if one.typed == "" {
				continue
			}
			v, err := one.typed.of(form)
			if err != nil {
				r.bad(column, err)
				return nil
			}
			*one.rate = core.Known(v)
		}
		out = append(out, made)
	}
	return out
}

// clock takes a time of day.
func clock() reader {
	return reader{"a time of day such as 09:30", func(cell string) (any, error) {
		if _, err := core.MinuteOfDay(cell); err != nil {
			return nil, faultf("%s is no time of day.", quote(cell))
		}
		return cell, nil
	}}
}
