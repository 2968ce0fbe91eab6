package label

import (
	"testing"

	"example.com/tintline/core/measure"
)

// TestConditions: each condition from both sides, on a row that clears and on one that warns.
func TestConditions(t *testing.T) {
	rate := func(v float64) measure.Maybe[measure.Rate] {
		return measure.Known(measure.Rate{V: v, Kind: measure.Dry})
	}
	f := measure.Known[float64]
	out := RatingUnknown // the row does not count
	for _, row := range []struct {
		what           string
		when           Conditions
		c              Circumstances
		clears, warned Rating // of a row that says tolerant, and of one that says moderate
	}{
		{"nothing known", Conditions{TempMax: f(85), MostRate: rate(100), Months: []int{4}, Cultivar: "Meyer", Form: FormSpray, NotIn: []string{Dormant}}, Circumstances{}, Tolerant, Moderate},
		{"as hot as it may be", Conditions{TempMax: f(85)}, Circumstances{TempF: f(85)}, Tolerant, Moderate},
		{"too hot", Conditions{TempMax: f(85)}, Circumstances{TempF: f(86)}, out, NotTolerant},
		{"as cold as it may be", Conditions{TempMin: f(50)}, Circumstances{TempF: f(50)}, Tolerant, Moderate},
		{"too cold", Conditions{TempMin: f(50)}, Circumstances{TempF: f(49)}, out, out},
		{"at the rate that was tried", Conditions{MostRate: rate(100)}, Circumstances{Rate: rate(100)}, Tolerant, Moderate},
		{"above it by a rounding", Conditions{MostRate: rate(100)}, Circumstances{Rate: rate(100.4)}, Tolerant, Moderate},
		{"above the rate that was tried", Conditions{MostRate: rate(100)}, Circumstances{Rate: rate(101)}, out, Moderate},
		{"above the limit", Conditions{MostRate: rate(100), MostIsLimit: true}, Circumstances{Rate: rate(101)}, out, NotTolerant},
		{"a rate by volume is not compared", Conditions{MostRate: rate(100)}, Circumstances{Rate: measure.Known(measure.Rate{V: 900})}, Tolerant, Moderate},
		{"at the least rate", Conditions{LeastRate: rate(100)}, Circumstances{Rate: rate(100)}, Tolerant, Moderate},
		{"below it by a rounding", Conditions{LeastRate: rate(100)}, Circumstances{Rate: rate(99.6)}, Tolerant, Moderate},
		{"below the least rate", Conditions{LeastRate: rate(100)}, Circumstances{Rate: rate(99)}, out, out},
		{"in its months", Conditions{Months: []int{11, 12, 1}}, Circumstances{Month: 1}, Tolerant, Moderate},
		{"in another month", Conditions{Months: []int{11, 12, 1}}, Circumstances{Month: 2}, out, out},
		{"its cultivar", Conditions{Cultivar: "Raleigh, Palmetto"}, Circumstances{Cultivar: "palmetto"}, Tolerant, Moderate},
		{"its cultivar with more words", Conditions{Cultivar: "Pensacola"}, Circumstances{Cultivar: "Pensacola bahiagrass"}, Tolerant, Moderate},
		{"another cultivar", Conditions{Cultivar: "Raleigh, Palmetto"}, Circumstances{Cultivar: "Floratam"}, out, out},
		{"its form", Conditions{Form: FormGranule}, Circumstances{Form: FormGranule}, Tolerant, Moderate},
		{"another form", Conditions{Form: FormGranule}, Circumstances{Form: FormSpray}, out, out},
		{"a growth in which it does not hold", Conditions{NotIn: []string{GreeningUp, Stressed}}, Circumstances{Growth: Stressed}, out, out},
		{"a growth in which it holds", Conditions{NotIn: []string{GreeningUp, Stressed}}, Circumstances{Growth: Growing}, Tolerant, Moderate},
	} {
		for rating, want := range map[Rating]Rating{Tolerant: row.clears, Moderate: row.warned} {
			got, counts := judge(&Row{Rating: rating, When: row.when}, &row.c)
			if got != want || counts != (want != out) {
				t.Errorf("%s: a row that says %s counts (%v) as %s, not as %s", row.what, rating, counts, got, want)
			}
		}
	}
}

func TestRateOfAMixtureIsKnownIfAllAre(t *testing.T) {
	e := Entry{Form: measure.Dry, Actives: []Active{{Name: "2,4-D", PercentByWeight: 20}, {Name: "MCPP", PercentByWeight: 10}, {Name: "dicamba"}}}
	parts := e.parts(measure.Known(measure.Rate{V: 1000, Kind: measure.Dry}))
	last := parts[len(parts)-1]
	if last.of == nil || last.rate.Known || !parts[0].rate.Known {
		t.Errorf("%s: rate %+v", last.name, last.rate)
	}
	e.Actives[2].PercentByWeight = 2
	parts = e.parts(measure.Known(measure.Rate{V: 1000, Kind: measure.Dry}))
	if last = parts[len(parts)-1]; !last.rate.Known || last.rate.V.V != 320 {
		t.Errorf("%s: rate %+v", last.name, last.rate)
	}
}

// TestAMixtureThatWarnsIsNoOffer: actives that are cleared one by one and not together are not offered.
func TestAMixtureThatWarnsIsNoOffer(t *testing.T) {
	row := func(rating string) []block {
		return []block{{grass: "y", rows: "x\ty\t" + rating + "\testablished\ttrial" + "\t\t\t\t\t\t\t\t\t\t\t\twords\tJ-JOHN87\n"}}
	}
	for mixed, want := range map[string]bool{"tolerant": true, "moderate": false, "not_tolerant": false} {
		parts := []part{{name: "a", blocks: row("tolerant")}, {name: "b", blocks: row("tolerant")}, {name: "a + b", of: []string{"a", "b"}, blocks: row(mixed)}}
		if got := supported(parts, "y"); got != want {
			t.Errorf("mixed they are %s, and offered: %v", mixed, got)
		}
	}
}
