package label

import (
	_ "embed"
	"strings"

	"example.com/tintline/core/measure"
)

// RateRow is a row of the reference on rates: what one source gives for an active in one formulation. Rates of trials are
// what was tried, not limits of a label.
type RateRow struct {
	Active      string
	Formulation string
	RateLow     measure.Maybe[float64]
	RateHigh    measure.Maybe[float64]
	RateUnit    string
	PoundsLow   measure.Maybe[float64] // of active per acre; of nitrogen in RateUnit
	PoundsHigh  measure.Maybe[float64]
	MostOnce    measure.Maybe[float64] // pounds of active per acre
	MostYear    measure.Maybe[float64]
	DaysBetween measure.Maybe[float64]
	TempMax     measure.Maybe[float64] // degrees Fahrenheit
	RainFree    measure.Maybe[float64] // hours
	ReseedWeeks measure.Maybe[float64]
	Signal      string
	Source      string
}

//go:embed rates.tsv
var ratesTSV string

func readRates(text string) []RateRow {
	const table = "rates.tsv"
	out := make([]RateRow, 0, rowsIn(text))
	lines(table, text, func(c []string) {
		n := func(i int) measure.Maybe[float64] { return maybeNumber(table, c[i]) }
		out = append(out, RateRow{
			Active: c[0], Formulation: c[1], RateLow: n(2), RateHigh: n(3), RateUnit: c[4], PoundsLow: n(5), PoundsHigh: n(6),
			MostOnce: n(7), MostYear: n(8), DaysBetween: n(9), TempMax: n(10), RainFree: n(11), ReseedWeeks: n(12),
			Signal: c[13], Source: c[14],
		})
	})
	return out
}

// RatesOf lists what the reference has on the rates of an active, or of a mixture under its name in the reference. What
// it has on an active in a mixture comes with it.
func RatesOf(active string) []RateRow {
	name := active
	if a, ok := FindActive(active); ok {
		name = a.Name
	}
	var out []RateRow
	for _, r := range Rates() {
		if r.Active == name || strings.HasPrefix(r.Active, name+" (") {
			out = append(out, r)
		}
	}
	return out
}

// Rates lists all rows on rates, in the order of the table. They are read when they are asked for.
func Rates() []RateRow { return readRates(ratesTSV) }
