package label

import "example.com/tintline/core/measure"

// Active is an active ingredient of a product and its content; at most one of the two is known.
type Active struct {
	Name            string
	PoundsPerGallon float64 // 0: not entered
	PercentByWeight float64 // 0: not entered
	// MostYear is the most of this active that the label allows in its year, by weight, whatever product it comes in.
	MostYear measure.Maybe[measure.Rate]
}

// Yes and No are the answers of a label entry to a question; empty is blank.
const (
	Yes = "yes"
	No  = "no"
)

// Entry is what the operator entered from a product's label. A blank limit is not a limit of zero: it is
// "not checked", and the Has and Known flags say which are entered. NoneOnLabel says of which the label has none.
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

	Signal     string       // the signal word, in lower case
	Restricted string       // restricted use: Yes, No
	Sites      []string     // where it may be used: residential, sports, ...
	Rates      []GrassRates // what the label gives for some grasses only
	// Most is the most in one application; unknown: the highest rate.
	Most      measure.Maybe[measure.Rate]
	MostYear  measure.Maybe[measure.Rate]
	MostTimes measure.Maybe[float64] // applications in a year
	// YearDays is the label's own period in days, for MostYear and MostTimes; unknown: the calendar year.
	YearDays    measure.Maybe[float64]
	DaysBetween measure.Maybe[float64]
	TempMax     measure.Maybe[float64] // degrees Fahrenheit
	TempMin     measure.Maybe[float64]
	RainFree    measure.Maybe[float64] // hours
	NoInversion string                 // not under an inversion: Yes, No
	Reentry     string                 // the label's words
	FirstAid    string                 // the label's words, what to do first
	Emergency   string                 // the label's own number to call
	ReseedDays  measure.Maybe[float64] // from an application to seeding
	NewTurfDays measure.Maybe[float64] // from seeding or sodding to an application
	WaterFeet   measure.Maybe[float64] // strip to be left along water
	NoBloom     string                 // not on what is in bloom: Yes, No
	MixingClass string                 // the letters of the formulation: wg, sc, ec, sl, ...
	// MixingOrder are the label's own words on when it goes into the tank, which begin as CheckMixingOrder allows.
	MixingOrder string
	Price       measure.Maybe[measure.Money]
	Package     measure.Amount // what the price buys

	Nitrogen      measure.Maybe[float64] // per cent by weight
	Phosphate     measure.Maybe[float64] // P2O5, per cent by weight
	Potash        measure.Maybe[float64] // K2O, per cent by weight
	QuickNitrogen measure.Maybe[float64] // per cent of the nitrogen that acts at once
	Density       measure.Maybe[float64] // lb per gal, of a liquid

	// None names the limits of which the operator saw that the label has none, by their keys.
	None []string
}

// GrassRates are the rates of a label for some of its grasses.
type GrassRates struct {
	Grasses []string
	Low     measure.Maybe[measure.Rate]
	High    measure.Maybe[measure.Rate]
}

// The keys of what a label may have none of.
const (
	LimitRateLow     = "rate_low"
	LimitRateHigh    = "rate_high"
	LimitMost        = "most_application"
	LimitMostYear    = "most_year"
	LimitMostTimes   = "most_times"
	LimitDaysBetween = "days_between"
	LimitWindMax     = "wind_max"
	LimitTempMax     = "temp_max"
	LimitTempMin     = "temp_min"
	LimitRainFree    = "rain_free"
	LimitReseed      = "reseed_days"
	LimitNewTurf     = "new_turf_days"
	LimitWater       = "water"
)

// NoneOnLabel tells whether the operator saw that the label has no such limit.
func (e Entry) NoneOnLabel(limit string) bool {
	for _, n := range e.None {
		if n == limit {
			return true
		}
	}
	return false
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

// RatesFor is the lowest and the highest rate for a grass: those that the label gives for it, else the general ones.
func (e Entry) RatesFor(grass string) (low, high measure.Maybe[measure.Rate]) {
	low, high = measure.Maybe[measure.Rate]{V: e.RateLow, Known: e.HasRateLow}, measure.Maybe[measure.Rate]{V: e.RateHigh, Known: e.HasRateHigh}
	for _, r := range e.Rates {
		for _, g := range r.Grasses {
			if g != grass {
				continue
			}
			if r.Low.Known {
				low = r.Low
			}
			if r.High.Known {
				high = r.High
			}
			return low, high
		}
	}
	return low, high
}

// MostFor is the most that the label allows on a grass in one application; unknown where the entry has no such limit.
func (e Entry) MostFor(grass string) measure.Maybe[measure.Rate] {
	_, high := e.RatesFor(grass)
	if e.Most.Known && (!high.Known || e.Most.V.V < high.V.V) {
		return e.Most
	}
	return high
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
