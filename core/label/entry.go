package label

import "example.com/tintline/core/measure"

// Active is an active ingredient of a product and its content; at most one of the two is known.
type Active struct {
	Name            string
	PoundsPerGallon float64 // 0: not entered
	PercentByWeight float64 // 0: not entered
}

// Entry is what the operator entered from a product's label. A blank limit is not a limit of zero: it is
// "not checked", and the Has flags say which are entered.
type Entry struct {
	Form         measure.Kind // how it is measured out: liquid or dry
	Kind         string       // herbicide, fertiliser, iron, ...
	Actives      []Active
	Registration string
	Grasses      []string // names of grasses, or AllTurf
	HasRateLow   bool
	RateLow      measure.Rate
	HasRateHigh  bool
	RateHigh     measure.Rate
	HasWindMax   bool
	WindMax      measure.Speed
}

// Lists tells whether the label entry lists a grass.
func (e Entry) Lists(grass string) bool {
	for _, g := range e.Grasses {
		if g == grass || g == AllTurf {
			return true
		}
	}
	return false
}

// Words names the product by its actives, "dicamba + 2,4-D"; empty if none is entered.
func (e Entry) Words() string {
	s := ""
	for i, a := range e.Actives {
		if i > 0 {
			s += " + "
		}
		s += a.Name
	}
	return s
}
