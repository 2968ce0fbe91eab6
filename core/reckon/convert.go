package reckon

import (
	"slices"

	"example.com/tintline/core/measure"
)

// kinds of unit that convert knows: a quantity, or one over another.
var (
	convertPlain = []string{"volume", "mass", "area", "length", "flow", "pressure", "speed", "money"}
	convertPer   = [][2]string{{"volume", "area"}, {"mass", "area"}, {"mass", "volume"}, {"volume", "volume"}}
)

// convert answers one quantity in every unit of its kind.
func convert(in *inputs) (map[string]any, error) {
	switch len(in.keys) {
	case 0:
		return nil, &MissingError{Kind: in.kind, What: "one quantity such as gal or gal_per_acre"}
	case 1:
	default:
		return nil, &InputError{Key: in.keys[1], Value: in.value[in.keys[1]], Want: "left out, for one quantity is converted at a time"}
	}
	out := answers{}
	for _, q := range convertPlain {
		got, err := in.one("", plain(q), false)
		if err != nil {
			return nil, err
		}
		if got.given {
			out.plain("", q, measure.UnitsOf(q), got.base)
			if q == "area" {
				out["acres"] = out["acre"]
			}
			return out, nil
		}
	}
	for _, p := range convertPer {
		got, err := in.one("", per(p[0], p[1]), false)
		if err != nil {
			return nil, err
		}
		if got.given {
			out.per("", p[0], measure.UnitsOf(p[0]), p[1], belowUnits(p[1]), got.base)
			return out, nil
		}
	}
	return nil, in.unknown()
}

// belowUnits are the units below a "per": volumes also in hundreds.
func belowUnits(quantity string) []string {
	units := measure.UnitsOf(quantity)
	if quantity == "volume" {
		return append(slices.Clone(units), "100_gal", "100_l")
	}
	return units
}
