package batch

import (
	"math"
	"strconv"
	"strings"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// Part is a product of a mix: what its label entry says of it, and how much of it goes on an area.
type Part struct {
	Product string
	Label   label.Entry
	Rate    measure.Rate
}

// Held is how much of a product a liquid holds.
type Held struct {
	Product string
	Label   label.Entry
	Amount  measure.Amount
}

// Dose is a product that goes into a tank, and how strong it is then in what the tank holds.
type Dose struct {
	Product  string
	Amount   measure.Amount
	Strength measure.Concentration
}

// largest is the most of anything that is reckoned with: 2.6 million gallons or 22,000 lb.
const largest = 1e16

// steps gathers the working.
type steps []Step

func (s *steps) say(words ...string) { *s = append(*s, Step{Says: strings.Join(words, "")}) }

// checkVolume refuses nothing, less than nothing and more than can be reckoned with.
func checkVolume(what string, v measure.Volume) error {
	if v <= 0 || v > largest {
		return measure.Troublef("Give more than 0 gal, and no more than a tank holds.", "%s is %s gal.", what, v.Text())
	}
	return nil
}

// checkDelivery refuses a delivery rate that lays nothing.
func checkDelivery(what string, r measure.Rate) error {
	if r.Kind != measure.Liquid || !(r.V > 0) || math.IsInf(r.V, 0) {
		return measure.Troublef("Give gallons for each 1,000 sq ft, as a catch test found them.", "%s is %s gal per 1,000 sq ft.", what, figure(r.GalPer1000()))
	}
	return nil
}

// checkAmount refuses an amount in the wrong kind of unit, and a negative one.
func checkAmount(product string, form measure.Kind, a measure.Amount) error {
	if a.Kind != form {
		return wrongKind(product, form, a.Text())
	}
	if a.N < 0 || a.N > largest {
		return measure.Troublef("Give 0 or more, and no more than a tank could take.", "The amount of %s is %s.", product, a.Text())
	}
	return nil
}

// checkRate refuses a rate in the wrong kind of unit, and one that is nothing or no figure.
func checkRate(product string, form measure.Kind, r measure.Rate) error {
	if r.Kind != form {
		return wrongKind(product, form, r.Text())
	}
	if !(r.V > 0) || math.IsInf(r.V, 0) {
		return measure.Troublef("Give a rate above 0.", "The rate of %s is %s.", product, r.Text())
	}
	return nil
}

// wrongKind is the refusal of a weight of a liquid, or of a volume of what is dry.
func wrongKind(product string, form measure.Kind, given string) error {
	if form == measure.Dry {
		return measure.Troublef("Give a weight, such as oz or lb.", "%s is dry and is weighed, but %s is a volume.", product, given)
	}
	return measure.Troublef("Give a volume, such as fl oz or gal.", "%s is liquid and is measured by volume, but %s is a weight.", product, given)
}

// once refuses a product that is named twice.
func once(names []string) error {
	for i, n := range names {
		for _, m := range names[:i] {
			if n == m {
				return measure.Troublef("Name it once, with all of it.", "%s is named twice.", n)
			}
		}
	}
	return nil
}

// figure prints a figure to three digits or, from 100 on, to the whole.
func figure(f float64) string {
	switch {
	case math.IsNaN(f) || math.IsInf(f, 0):
		return "?"
	case math.Abs(f) >= 100:
		return strconv.FormatFloat(f, 'f', 0, 64)
	case math.Abs(f) >= 10:
		return strconv.FormatFloat(f, 'f', 1, 64)
	case math.Abs(f) >= 0.1 || f == 0:
		return strconv.FormatFloat(f, 'f', 2, 64)
	}
	return strconv.FormatFloat(f, 'g', 3, 64)
}

// laying prints a delivery rate, in gallons however low it is.
func laying(r measure.Rate) string { return figure(r.GalPer1000()) + " gal per 1,000 sq ft" }

// aGallon prints a strength: "1.15 fl oz a gal".
func aGallon(c measure.Concentration, k measure.Kind) string {
	return c.In(measure.USGallon, k).Text() + " a gal"
}

// percent prints a share: "9.1 %".
func percent(share float64) string {
	p := 100 * share
	if p >= 99.5 { // two digits would round it up to 1e+02
		return strconv.FormatFloat(p, 'f', 0, 64) + " %"
	}
	return strconv.FormatFloat(p, 'g', 2, 64) + " %"
}

// times prints how many times one figure is another, to a hundredth.
func times(f float64) string { return strconv.FormatFloat(f, 'f', 2, 64) + " times" }

// liquids is how much of amounts is liquid: a dry product adds no volume of its own.
func liquids(doses []Dose) measure.Volume {
	var v measure.Volume
	for _, d := range doses {
		if d.Amount.Kind == measure.Liquid {
			v += measure.Volume(d.Amount.N)
		}
	}
	return v
}
