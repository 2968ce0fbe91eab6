package reckon

import (
	"strings"

	"example.com/tintline/core/measure"
)

// The units that every answer is given in. Convert goes further: it answers in all
// units that measure knows.
var (
	volumeUnits = []string{"fl_oz", "pt", "qt", "gal", "ml", "l", "tbsp", "tsp"}
	massUnits   = []string{"oz", "lb", "g", "kg"}
	areaUnits   = []string{"sqft", "100_sqft", "1000_sqft", "acre", "ha", "m2"}
	lengthUnits = []string{"in", "ft", "yd", "m", "mi"}
	// mixUnits are the volumes of mix that a strength is told for.
	mixUnits = []string{"gal", "100_gal", "l", "100_l", "fl_oz", "pt", "qt", "ml"}
)

// plain gives the factor of a unit of one quantity to its base unit.
func plain(quantity string) func(string) (float64, bool) {
	return func(unit string) (float64, bool) {
		return factor(quantity, unit)
	}
}

// factor gives a unit's factor to the base unit; "acres" is the acre's other name,
// and a volume may stand in hundreds, as strengths are told.
func factor(quantity, unit string) (float64, bool) {
	if quantity == "area" && unit == "acres" {
		unit = "acre"
	}
	if rest, ok := strings.CutPrefix(unit, "100_"); ok && quantity == "volume" {
		f, ok := measure.Factor(quantity, rest)
		return 100 * f, ok
	}
	return measure.Factor(quantity, unit)
}

// per gives the factor of a unit such as gal_per_acre: one quantity over another.
func per(above, below string) func(string) (float64, bool) {
	return func(unit string) (float64, bool) {
		top, bottom, found := strings.Cut(unit, "_per_")
		if !found {
			return 0, false
		}
		a, okA := factor(above, top)
		b, okB := factor(below, bottom)
		if !okA || !okB {
			return 0, false
		}
		return a / b, true
	}
}

// answers gathers figures under their keys.
type answers map[string]any

// plain answers base under prefix and each unit of the quantity.
func (a answers) plain(prefix, quantity string, units []string, base float64) {
	for _, u := range units {
		f, _ := factor(quantity, u)
		a[prefix+u] = base / f
	}
}

// area answers an area under prefix and each unit; the acre under both its names.
func (a answers) area(prefix string, base float64) {
	a.plain(prefix, "area", areaUnits, base)
	a[prefix+"acres"] = a[prefix+"acre"]
}

// per answers base under each pair of units as prefix + above_per_below.
func (a answers) per(prefix, above string, aboves []string, below string, belows []string, base float64) {
	for _, top := range aboves {
		for _, bottom := range belows {
			f, _ := factor(above, top)
			g, _ := factor(below, bottom)
			a[prefix+top+"_per_"+bottom] = base / f * g
		}
	}
}
