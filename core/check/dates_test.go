package check

import (
	"strings"
	"testing"
)

// dateLines are one mix for each analysis; the day is 28 May.
const dateLines = siteLines + `
{"fact":"product","name":"NP","form":"liquid","kind":"fertiliser","grasses":["all_turf"],"nitrogen_pct":20,"phosphate_pct":5}
{"fact":"product","name":"N0","form":"liquid","kind":"fertiliser","grasses":["all_turf"],"nitrogen_pct":28,"phosphate_pct":0}
{"fact":"product","name":"blank","form":"liquid","kind":"fertiliser","grasses":["all_turf"]}
{"fact":"lawn","name":"Fir","zones":[{"name":"front","grass":"tall_fescue","area_sqft":4000}]}
`

func withMix(product string) string {
	return dateLines + `{"fact":"mix","name":"m","parts":[{"product":"` + product + `","rate_fl_oz_per_1000_sqft":1}]}
` + inHose("m")
}

func setting(name, value string) string {
	return `{"fact":"setting","name":"` + name + `","value":"` + value + `"}
`
}

var dateRows = []struct {
	name, product, settings string
	about                   string
	weight                  Weight
	says                    string
}{
	{"the day before a span", "NP", setting("restricted_dates", "05-29 to 09-30 nitrogen"), aboutDate, None, ""},
	{"the first day of a span", "NP", setting("restricted_dates", "05-28 to 09-30 nitrogen"), aboutDate, Stop, "2026-05-28 is a restricted date: nitrogen from 05-28 to 09-30; NP falls under it. Local rules decide."},
	{"the last day of a span over the year's end", "NP", setting("restricted_dates", "12-01 to 05-28 phosphorus"), aboutDate, Stop, "phosphorus from 12-01 to 05-28"},
	{"the day after it", "NP", setting("restricted_dates", "12-01 to 05-27 phosphorus"), aboutDate, None, ""},
	{"two spans at once", "NP", setting("restricted_dates", "05-01 to 06-30 nitrogen; 05-15 to 06-15 any"), aboutDate, Stop, "nitrogen from 05-01 to 06-30 and any fertiliser from 05-15 to 06-15"},
	{"phosphorus restricted, none in it", "N0", setting("restricted_dates", "05-01 to 06-30 phosphorus"), aboutDate, None, ""},
	{"nitrogen restricted, none in it", "K", setting("restricted_dates", "05-01 to 06-30 nitrogen"), aboutDate, None, ""},
	{"any fertiliser restricted, potash", "K", setting("restricted_dates", "05-01 to 06-30 any"), aboutDate, Stop, "any fertiliser"},
	{"any fertiliser restricted, a herbicide", "M", setting("restricted_dates", "05-01 to 06-30 any"), aboutDate, None, ""},
	{"an analysis that is blank", "blank", setting("restricted_dates", "05-01 to 06-30 phosphorus"), aboutDate, Stop, "blank counts as holding it, because its analysis is not entered."},
	{"no dates entered", "NP", "", aboutDate, None, ""},
	{"no phosphorus rule", "NP", setting("phosphorus_rule", "none"), aboutPhosphorus, None, ""},
	{"phosphorus with a soil test", "NP", setting("phosphorus_rule", "soil_test") + setting("phosphorus_note", "county code, test of 3 years"), aboutPhosphorus, Ask, "NP holds phosphorus, which your place allows only with a soil test (county code, test of 3 years). Local rules decide."},
	{"phosphorus never", "NP", setting("phosphorus_rule", "never"), aboutPhosphorus, Stop, "NP holds phosphorus, which your place does not allow on lawns. Local rules decide."},
	{"phosphorus never, none in it", "N0", setting("phosphorus_rule", "never"), aboutPhosphorus, None, ""},
	{"phosphorus never, an analysis that is blank", "blank", setting("phosphorus_rule", "never"), aboutPhosphorus, Stop, "blank counts as holding phosphorus"},
	{"phosphorus never, a herbicide", "M", setting("phosphorus_rule", "never"), aboutPhosphorus, None, ""},
}

func TestDatesOfThePlace(t *testing.T) {
	for _, row := range dateRows {
		t.Run(row.name, func(t *testing.T) {
			r := before(t, play(t, withMix(row.product)+row.settings), Intent{Lawn: "Fir"})
			f := about(r, "dates", row.about)
			if row.weight == None {
				if f != nil {
					t.Fatalf("it says %s", f.Says)
				}
				return
			}
			if f == nil {
				t.Fatalf("nothing is said: %+v", r.Findings)
			}
			if f.Weight != row.weight || !strings.Contains(f.Says, row.says) || f.Do == "" || f.Ground != GroundSetting || f.Source != "set by the operator; local rules decide" || f.Product != row.product {
				t.Errorf("%v %q\n[%s] %s %s\nwant %v %q", f.Weight, f.Says, f.Ground, f.Source, f.Product, row.weight, row.says)
			}
		})
	}
}

// Empty by default, and said so; what is spread is held against them too.
func TestRestrictedDatesAreEmptyByDefault(t *testing.T) {
	const line = "restricted dates of the place (none entered; local rules decide)"
	b := play(t, withMix("M"))
	if got := strings.Join(before(t, b, Intent{Lawn: "Fir"}).NotChecked, "; "); !strings.Contains(got, line) {
		t.Error(got)
	}
	more(t, b, setting("restricted_dates", "05-01 to 06-30 nitrogen")+`{"fact":"loaded","into":"spreader","parts":[{"product":"S","amount_lb":40}]}`)
	r := before(t, b, Intent{Lawn: "Fir", With: "spreader"})
	if got := strings.Join(r.NotChecked, "; "); strings.Contains(got, line) {
		t.Error(got)
	}
	if f := about(r, "dates", aboutDate); f == nil || f.Product != "S" || f.Weight != Stop {
		t.Errorf("%+v", r.Findings)
	}
}
