package sheet

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

const (
	wordsBlank = "; empty: not checked"
	acreRate   = "8 fl oz per acre"
)

// entryFields are the fields of a label entry, in the order of the template's columns.
var entryFields = append(append(append(plainFields(), rateFields()...), limitFields()...), stuffFields()...)

func plainFields() []entryField {
	return []entryField{
		field(
			Column{Name: "form", Words: "how it is measured out: by volume or by weight", Example: "liquid", Required: true}, form(),
			func(r *row, name string, e *label.Entry) { e.Form, r.formed = get[measure.Kind](r, name) },
			func(e *label.Entry) string { return e.Form.String() },
		),
		textField(Column{Name: "kind", Words: "what it is for", Example: "herbicide"}, text(), func(e *label.Entry) *string { return &e.Kind }),
		field(
			Column{Name: "actives", Words: "its active ingredients, as on the label, each with its content and the most of it in a year", Example: "mesotrione 4 lb/gal most 0.5 lb per acre per year"}, actives(),
			func(r *row, name string, e *label.Entry) { e.Actives = value[[]label.Active](r, name) },
			func(e *label.Entry) string { return activesText(e.Actives) },
		),
		textField(Column{Name: "registration", Words: "its registration number, as on the label", Example: "00000-91"}, text(), func(e *label.Entry) *string { return &e.Registration }),
		textField(Column{Name: "signal", Words: "the signal word of the label" + wordsBlank, Example: "caution"}, oneOf(label.Signals()...), func(e *label.Entry) *string { return &e.Signal }),
		textField(Column{Name: "restricted", Words: "whether its use is restricted" + wordsBlank, Example: "no"}, yesNo(), func(e *label.Entry) *string { return &e.Restricted }),
		field(
			Column{Name: "sites", Words: "where the label lets it be used", Example: "residential lawns; sports turf"}, texts(),
			func(r *row, name string, e *label.Entry) { e.Sites = value[[]string](r, name) },
			func(e *label.Entry) string { return strings.Join(e.Sites, "; ") },
		),
		field(
			Column{Name: "grasses", Words: "the grasses that the label lists", Example: "tall fescue; kentucky bluegrass"}, grasses(),
			func(r *row, name string, e *label.Entry) { e.Grasses = value[[]string](r, name) },
			func(e *label.Entry) string { return strings.Join(e.Grasses, "; ") },
		),
	}
}

func rateFields() []entryField {
	return []entryField{
		rateField(
			Column{Name: "rate_low", Words: "the lowest rate on the label" + wordsBlank, Example: "4 fl oz per acre"}, label.LimitRateLow,
			func(e *label.Entry) core.Maybe[measure.Rate] {
				return core.Maybe[measure.Rate]{V: e.RateLow, Known: e.HasRateLow}
			},
			func(e *label.Entry, m core.Maybe[measure.Rate]) { e.RateLow, e.HasRateLow = m.V, m.Known },
		),
		rateField(
			Column{Name: "rate_high", Words: "the highest rate on the label" + wordsBlank, Example: acreRate}, label.LimitRateHigh,
			func(e *label.Entry) core.Maybe[measure.Rate] {
				return core.Maybe[measure.Rate]{V: e.RateHigh, Known: e.HasRateHigh}
			},
			func(e *label.Entry, m core.Maybe[measure.Rate]) { e.RateHigh, e.HasRateHigh = m.V, m.Known },
		),
		field(
			Column{Name: "rates", Words: "rates that the label gives for some of its grasses only", Example: "tall fescue, kentucky bluegrass: 4 to 8 fl oz per acre"}, grassRates(),
			func(r *row, name string, e *label.Entry) { e.Rates = r.grassRates(name, e.Form) },
			func(e *label.Entry) string { return grassRatesText(e.Rates) },
		),
		maybeRateField(Column{Name: "most_application", Words: "the most in one application, where the label gives it besides the rates" + wordsBlank, Example: acreRate}, label.LimitMost, func(e *label.Entry) *core.Maybe[measure.Rate] { return &e.Most }),
		maybeRateField(Column{Name: "most_year", Words: "the most of the product in a year" + wordsBlank, Example: "16 fl oz per acre"}, label.LimitMostYear, func(e *label.Entry) *core.Maybe[measure.Rate] { return &e.MostYear }),
		numberField(Column{Name: "most_times", Words: "the most applications in a year" + wordsBlank, Example: "2"}, label.LimitMostTimes, number("times", 1, core.MostTimes), func(e *label.Entry) *core.Maybe[float64] { return &e.MostTimes }),
		numberField(Column{Name: "year_days", Words: "the days that the label counts as its year; empty: the calendar year", Example: "365"}, "", number("days", 1, core.LongestDays), func(e *label.Entry) *core.Maybe[float64] { return &e.YearDays }),
		numberField(Column{Name: "days_between", Words: "the least days between two applications" + wordsBlank, Example: "21"}, label.LimitDaysBetween, days(), func(e *label.Entry) *core.Maybe[float64] { return &e.DaysBetween }),
	}
}

func limitFields() []entryField {
	degrees := func() reader { return number("F", core.ColdestF, core.HottestF) }
	wind := field(
		Column{Name: "wind_max_mph", Words: "the strongest wind that the label allows" + wordsBlank, Example: "9"}, milesPerHour(),
		func(r *row, name string, e *label.Entry) { e.WindMax, e.HasWindMax = get[measure.Speed](r, name) },
		func(e *label.Entry) string {
			if !e.HasWindMax {
				return ""
			}
			return speedText(e.WindMax)
		},
	)
	return []entryField{
		wind.orNone(label.LimitWindMax),
		numberField(Column{Name: "temp_max_f", Words: "the highest temperature that the label allows, Fahrenheit" + wordsBlank, Example: "85"}, label.LimitTempMax, degrees(), func(e *label.Entry) *core.Maybe[float64] { return &e.TempMax }),
		numberField(Column{Name: "temp_min_f", Words: "the lowest temperature that the label allows, Fahrenheit" + wordsBlank, Example: "45"}, label.LimitTempMin, degrees(), func(e *label.Entry) *core.Maybe[float64] { return &e.TempMin }),
		numberField(Column{Name: "rain_free_h", Words: "the hours that it must stay dry afterwards" + wordsBlank, Example: "6"}, label.LimitRainFree, number("h", 0, core.LongestHours), func(e *label.Entry) *core.Maybe[float64] { return &e.RainFree }),
		textField(Column{Name: "no_inversion", Words: "whether the label forbids it under an inversion" + wordsBlank, Example: "yes"}, yesNo(), func(e *label.Entry) *string { return &e.NoInversion }),
		textField(Column{Name: "first_aid", Words: "the label's words on what to do first", Example: "in eyes: rinse for 15 to 20 minutes, then call"}, text(), func(e *label.Entry) *string { return &e.FirstAid }),
		textField(Column{Name: "emergency_phone", Words: "the number to call that stands on the label", Example: "555-0199"}, text(), func(e *label.Entry) *string { return &e.Emergency }),
		textField(Column{Name: "reentry", Words: "the label's words on going back onto the lawn", Example: "keep off until it has dried"}, text(), func(e *label.Entry) *string { return &e.Reentry }),
		numberField(Column{Name: "reseed_days", Words: "the days to wait before seeding" + wordsBlank, Example: "28"}, label.LimitReseed, days(), func(e *label.Entry) *core.Maybe[float64] { return &e.ReseedDays }),
		numberField(Column{Name: "new_turf_days", Words: "the days to wait after seeding or sodding" + wordsBlank, Example: "60"}, label.LimitNewTurf, days(), func(e *label.Entry) *core.Maybe[float64] { return &e.NewTurfDays }),
		numberField(Column{Name: "water_ft", Words: "the strip to be left along water, feet" + wordsBlank, Example: "25"}, label.LimitWater, number("ft", 0, core.FurthestFeet), func(e *label.Entry) *core.Maybe[float64] { return &e.WaterFeet }),
		textField(Column{Name: "no_bloom", Words: "whether the label forbids it on what is in bloom" + wordsBlank, Example: "no"}, yesNo(), func(e *label.Entry) *string { return &e.NoBloom }),
	}
}

func stuffFields() []entryField {
	share := func(name, words, example string, p func(*label.Entry) *core.Maybe[float64]) entryField {
		return numberField(Column{Name: name, Words: words, Example: example}, "", number("%", 0, 100), p)
	}
	return []entryField{
		textField(Column{Name: "mixing_class", Words: "the letters of its formulation: wg, sc, ec, sl and so on", Example: "sc"}, text(), func(e *label.Entry) *string { return &e.MixingClass }),
		textField(Column{Name: "mixing_order", Words: "when the label has it go into the tank: first, last, or before, after or with a step of the order of adding, and its words behind a colon; empty: by its formulation", Example: "before ec: add to the half full tank"}, ownOrder(), func(e *label.Entry) *string { return &e.MixingOrder }),
		field(
			Column{Name: "price_usd", Words: "what a package costs, dollars", Example: "120"}, dollars(),
			func(r *row, name string, e *label.Entry) { e.Price = maybe[measure.Money](r, name) },
			func(e *label.Entry) string {
				if !e.Price.Known {
					return ""
				}
				return moneyText(e.Price.V)
			},
		),
		field(
			Column{Name: "package", Words: "what is in the package", Example: "2.5 gal"}, packaged(),
			func(r *row, name string, e *label.Entry) { e.Package = r.amountOf(name, e.Form) },
			func(e *label.Entry) string { return amountText(e.Package) },
		),
		share("nitrogen_pct", "its nitrogen, per cent by weight", "2", func(e *label.Entry) *core.Maybe[float64] { return &e.Nitrogen }),
		share("phosphate_pct", "its phosphate (P2O5), per cent by weight", "0", func(e *label.Entry) *core.Maybe[float64] { return &e.Phosphate }),
		share("potash_pct", "its potash (K2O), per cent by weight", "3", func(e *label.Entry) *core.Maybe[float64] { return &e.Potash }),
		share("quick_nitrogen_pct", "how much of the nitrogen acts at once, per cent of it", "100", func(e *label.Entry) *core.Maybe[float64] { return &e.QuickNitrogen }),
		numberField(Column{Name: "density_lb_per_gal", Words: "what a gallon of a liquid weighs, pounds", Example: "9.6"}, "", density(), func(e *label.Entry) *core.Maybe[float64] { return &e.Density }),
	}
}
