package setup

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// rateUnit is a unit in which labels give rates; its amount says whether the product is measured out as a liquid.
type rateUnit struct {
	key, words, typed string
	kind              measure.Kind
}

var rateUnits = []rateUnit{
	{"fl_oz_per_1000_sqft", "fl oz per 1,000 sq ft", "fl oz/1000 sq ft", measure.Liquid},
	{"fl_oz_per_acre", "fl oz per acre", "fl oz/acre", measure.Liquid},
	{"pt_per_acre", "pt per acre", "pt/acre", measure.Liquid},
	{"qt_per_acre", "qt per acre", "qt/acre", measure.Liquid},
	{"gal_per_acre", "gal per acre", "gal/acre", measure.Liquid},
	{"oz_per_1000_sqft", "oz per 1,000 sq ft", "oz/1000 sq ft", measure.Dry},
	{"lb_per_1000_sqft", "lb per 1,000 sq ft", "lb/1000 sq ft", measure.Dry},
	{"oz_per_acre", "oz per acre", "oz/acre", measure.Dry},
	{"lb_per_acre", "lb per acre", "lb/acre", measure.Dry},
}

func rateOptions() []Option {
	out := []Option{{"", "choose"}}
	for _, u := range rateUnits {
		out = append(out, Option{u.key, u.typed + ", " + u.kind.String()})
	}
	return out
}

func unitOf(key string) (rateUnit, bool) {
	for _, u := range rateUnits {
		if u.key == key {
			return u, true
		}
	}
	return rateUnit{}, false
}

// readRate reads a rate in the unit that was chosen, or with units of its own.
func readRate(a Answers, said string) (measure.Rate, error) {
	u, ok := unitOf(a[keyUnit])
	if !ok {
		return measure.Rate{}, &Wrong{Field: keyUnit, What: "The unit of the rates is not chosen yet.", Do: "Choose it first."}
	}
	r, err := measure.ReadRate(said, u.key, u.kind)
	if err == nil && !core.RateFits(r) {
		err = &Wrong{What: fmt.Sprintf("%q is no rate.", said), Do: "Type more than 0."}
	}
	return r, err
}

// readTypedRate reads a rate with its units. A bare figure is asked for: the two readings that are usual for the
// product, and what to type for each.
func readTypedRate(said string, k measure.Kind) (measure.Rate, error) {
	if _, err := measure.ParseNumber(said); err == nil {
		var two []rateUnit
		for _, u := range rateUnits {
			if u.kind == k && (u.key == "fl_oz_per_1000_sqft" || u.key == "pt_per_acre" || u.key == "oz_per_1000_sqft" || u.key == "lb_per_acre") {
				two = append(two, u)
			}
		}
		return measure.Rate{}, &Wrong{
			What: fmt.Sprintf("%s %s, or %s %s?", said, two[0].words, said, two[1].words),
			Do:   fmt.Sprintf("Type %s %s or %s %s.", said, two[0].typed, said, two[1].typed),
		}
	}
	r, err := measure.ReadRate(said, "", k)
	if err == nil && !core.RateFits(r) {
		err = &Wrong{What: fmt.Sprintf("%q is no rate.", said), Do: "Type more than 0."}
	}
	return r, err
}

// grassOptions lists the grasses by the words of the screen.
func grassOptions(first ...Option) []Option {
	for _, g := range label.Grasses() {
		first = append(first, Option{g.Name, label.GrassWords(g.Name)})
	}
	return first
}
