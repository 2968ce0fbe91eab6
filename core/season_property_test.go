package core

import (
	"testing"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

// Whatever was laid: the part that got most has at least what all of the zone has on average, and no more than all doses
// together; and the date on which one more dose fits is the first on which it does.
func TestSeasonOfAnyYear(t *testing.T) {
	fits := map[string]int{}
	rapid.Check(t, func(r *rapid.T) {
		e := label.Entry{HasRateLow: true, RateLow: perAcre(20)}
		if rapid.Bool().Draw(r, "most") {
			e.MostYear = Known(perAcre(rapid.Float64Range(20, 600).Draw(r, "pounds")))
		}
		if rapid.Bool().Draw(r, "times") {
			e.MostTimes = Known(float64(rapid.IntRange(1, 5).Draw(r, "most times")))
		}
		if rapid.Bool().Draw(r, "period") {
			e.YearDays = Known(float64(rapid.IntRange(20, 400).Draw(r, "days")))
		}
		b := newYear(t, "2020-01-01", &Product{ProductName: "P", Label: e})
		day := dayNumber("2025-06-01")
		var amounts, doses float64 // of this year
		for range rapid.IntRange(0, 8).Draw(r, "layings") {
			day += rapid.IntRange(0, 90).Draw(r, "later")
			pounds, share := rapid.Float64Range(1, 150).Draw(r, "rate"), rapid.SampledFrom([]float64{1, 0.5, 0.3}).Draw(r, "share")
			b.on(dateOf(day), "P", pounds, share)
		}
		at := dateOf(day)
		dose := perAcre(rapid.Float64Range(20, 150).Draw(r, "dose"))
		ask := func(date string) SeasonLine {
			return b.Season("L", "front", date, []Went{b.Would(date, "L", "front", 0, dose, 4*measure.ThousandSquareFeet)}).Product(0)
		}
		line := ask(at)
		for _, w := range b.History("L", "front") {
			if w.Date >= line.From {
				amounts += float64(w.Amount) / float64(4*measure.ThousandSquareFeet)
				doses += w.Dose(measure.Dry).V
			}
		}
		if sum := line.Sum.V.V; sum*fullZone*1.000001 < amounts || sum > doses*1.000001 {
			r.Fatalf("the part that got most has %g, all of it %g on average, all doses together %g", sum, amounts, doses)
		}
		holds := func(l SeasonLine) bool {
			return (!l.Limit.Known || l.With.V.V <= l.Limit.V.V*Rounding) && (!l.MostTimes.Known || float64(l.TimesWith) <= l.MostTimes.V)
		}
		switch {
		case line.Fits == "":
			fits["never"]++
			if later := ask(dateOf(day + 1000)); holds(later) {
				r.Fatalf("it never fits, and in three years it does: %+v", later)
			}
		case !holds(ask(line.Fits)):
			r.Fatalf("on %s it does not fit: %+v", line.Fits, ask(line.Fits))
		case line.Fits == at:
			fits["at once"]++
		default:
			fits["later"]++
			if before := ask(dateOf(dayNumber(line.Fits) - 1)); holds(before) {
				r.Fatalf("the day before %s it fits too: %+v", line.Fits, before)
			}
		}
	})
	for _, when := range []string{"never", "at once", "later"} {
		if fits[when] < 3 {
			t.Errorf("%s was drawn %d times: %v", when, fits[when], fits)
		}
	}
}
