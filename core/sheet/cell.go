package sheet

import (
	"fmt"
	"strings"
	"unicode"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// reader turns a cell into a value, or says in one sentence what is wrong with it.
type reader struct {
	allowed string
	read    func(cell string) (any, error)
}

// text takes any text on one line.
func text() reader {
	return reader{fmt.Sprintf("any text on one line, up to %d letters", core.LongestText), func(cell string) (any, error) {
		return cell, plain(cell)
	}}
}

func plain(cell string) error {
	if n := len([]rune(cell)); n > core.LongestText {
		return faultf("The text has %d letters; %d are allowed.", n, core.LongestText)
	}
	if strings.ContainsFunc(cell, unicode.IsControl) {
		return faultf("%s holds a line break or another control character.", quote(cell))
	}
	return nil
}

// name takes what a thing is called in the book.
func name(what string) reader {
	allowed := fmt.Sprintf("the name of the %s on one line, up to %d letters, without a slash", what, core.LongestName)
	return reader{allowed, func(cell string) (any, error) { return cell, core.CheckName(what, cell) }}
}

// oneOf takes one of a few words, in any case, with spaces, hyphens or underscores.
func oneOf(words ...string) reader {
	last := len(words) - 1
	allowed := strings.Join(words[:last], ", ") + " or " + words[last]
	return reader{allowed, func(cell string) (any, error) {
		for _, w := range words {
			if headerName(cell) == w {
				return w, nil
			}
		}
		return nil, &fault{what: quote(cell) + " is not known here.", nearest: label.Nearest(cell, words)}
	}}
}

// form takes how a product is measured out.
func form() reader {
	words := oneOf(measure.Liquid.String(), measure.Dry.String())
	return reader{words.allowed, func(cell string) (any, error) {
		w, err := words.read(cell)
		if w == measure.Dry.String() {
			return measure.Dry, err
		}
		return measure.Liquid, err
	}}
}

// bounds are what an amount may be: Least is left out where open is set.
type bounds[T ~int64 | ~float64] struct {
	low, high T
	open      bool   // more than low
	words     string // of both, "more than 0 and up to 10,000 gal"
}

func (b bounds[T]) check(cell string, v T) error {
	if v < b.low || v > b.high || b.open && v == b.low {
		return faultf("%s is out of range: %s.", quote(cell), b.words)
	}
	return nil
}

// amount takes an amount of one quantity, as unit names it or with a unit of its own.
func amount[T ~int64 | ~float64](read func(text, unit string) (T, error), unit, other string, b bounds[T]) reader {
	allowed := b.words
	if other != "" {
		allowed += ", or in another unit such as " + other
	}
	return reader{allowed, func(cell string) (any, error) {
		v, err := read(cell, unit)
		if err == nil {
			err = b.check(cell, v)
		}
		return v, err
	}}
}

// gallons takes a volume; open: more than none.
func gallons(open bool) reader {
	b := bounds[measure.Volume]{0, core.LargestVolume, open, "0 to 10,000 gal"}
	if open {
		b.words = "more than 0 and up to 10,000 gal"
	}
	return amount(measure.ReadVolume, "gal", "41 qt", b)
}

func squareFeet() reader {
	return amount(measure.ReadArea, "sqft", "0.25 acre", bounds[measure.Area]{0, core.LargestArea, true, "more than 0 and up to 107,600,000 sq ft"})
}

func dollars() reader {
	return amount(measure.ReadMoney, "usd", "", bounds[measure.Money]{0, core.HighestPrice, false, "0 to 100,000 dollars"})
}

func milesPerHour() reader {
	return amount(measure.ReadSpeed, "mph", "4 m/s", bounds[measure.Speed]{0, core.StrongestWind, false, "0 to 100 mph"})
}

func gallonsPerMinute() reader {
	return amount(measure.ReadFlow, "gpm", "10 L/min", bounds[measure.Flow]{0, measure.GPM(core.LargestFlowGPM), true, "more than 0 and up to 500 gpm"})
}

func inches() reader {
	return amount(measure.ReadLength, "in", "10 mm", bounds[measure.Length]{0, core.WidestBore, true, "more than 0 and up to 12 in"})
}

func feet() reader {
	return amount(measure.ReadLength, "ft", "90 m", bounds[measure.Length]{0, core.LongestHose, true, "more than 0 and up to 10,000 ft"})
}

func pounds() reader {
	return amount(measure.ReadMass, "lb", "20 kg", bounds[measure.Mass]{0, core.LargestHopper, false, "0 to 22,000 lb"})
}

// delivery takes gallons for each 1,000 sq ft, or pounds where it is of a dry product.
func delivery(k measure.Kind) reader {
	unit, range_, other := "gal_per_1000_sqft", "more than 0 and up to 24,500 gal per 1,000 sq ft", "65 gal per acre"
	if k == measure.Dry {
		unit, range_, other = "lb_per_1000_sqft", "more than 0 and up to 200 lb per 1,000 sq ft", "150 lb per acre"
	}
	return reader{range_ + ", or in another unit such as " + other, func(cell string) (any, error) {
		r, err := measure.ReadRate(spaced(cell), unit, k)
		if err == nil && (!(r.V > 0) || r.V > core.LargestDelivery) {
			err = faultf("%s is no delivery rate.", quote(cell))
		}
		return r, err
	}}
}

// psi takes a pressure; one in psi is kept as it is written.
func psi() reader {
	b := bounds[float64]{0, core.HighestPSI, true, "more than 0 and up to 1,000 psi"}
	return amount(func(text, unit string) (float64, error) {
		if f, err := measure.ParseNumber(strings.TrimSpace(strings.TrimSuffix(strings.ToLower(text), unit))); err == nil {
			return f, nil
		}
		p, err := measure.ReadPressure(text, unit)
		return p.PSI(), err
	}, "psi", "2.8 bar", b)
}

// typedRate is a rate as it was written; what it means hangs on the form of its product.
type typedRate string

func (c typedRate) of(k measure.Kind) (measure.Rate, error) {
	r, err := measure.ReadRate(spaced(string(c)), "", k)
	if err == nil && !core.RateFits(r) {
		err = faultf("%s is no rate; it must be more than 0.", quote(string(c)))
	}
	return r, err
}

// rate takes an amount of a product for an area, both with their units.
func rate() reader {
	return reader{"more than 0, with both units, such as 1.5 fl oz per 1000 sqft or 2 lb per acre", func(cell string) (any, error) {
		c := typedRate(cell)
		return c, inEitherForm(c)
	}}
}

// inEitherForm refuses what can be read neither as of a liquid nor as of a dry product, by the form that its unit speaks for.
func inEitherForm[V any](c interface{ of(measure.Kind) (V, error) }) error {
	_, liquid := c.of(measure.Liquid)
	if liquid == nil {
		return nil
	}
	_, dry := c.of(measure.Dry)
	if dry == nil || strings.Contains(liquid.Error(), " is a weight") {
		return dry
	}
	return liquid
}

// spaced is a unit's key as a person would write it: fl_oz_per_acre is fl oz per acre.
func spaced(cell string) string { return strings.ReplaceAll(cell, "_", " ") }
