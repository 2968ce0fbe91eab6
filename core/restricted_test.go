package core

import (
	"strings"
	"testing"
)

func TestRestrictedDatesAreRead(t *testing.T) {
	got, err := ParseRestricted(" 06-01 to 09-30 Nitrogen;12-01 to 03-01 phosphorus; 11-15 to 02-29 any;")
	want := []Restricted{{"06-01", "09-30", "nitrogen"}, {"12-01", "03-01", "phosphorus"}, {"11-15", "02-29", "any"}}
	if err != nil || len(got) != len(want) {
		t.Fatalf("%v %v", got, err)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%v, want %v", got[i], want[i])
		}
	}
	for date, in := range map[string][3]bool{
		"2026-05-31": {}, "2026-06-01": {true}, "2026-09-30": {true}, "2026-10-01": {},
		"2026-11-14": {}, "2026-11-15": {false, false, true}, "2026-11-30": {false, false, true}, "2026-12-01": {false, true, true}, "2026-12-31": {false, true, true},
		"2027-01-01": {false, true, true}, "2028-02-29": {false, true, true}, "2027-03-01": {false, true, false}, "2027-03-02": {}, "": {},
	} {
		for i, r := range got {
			if r.Holds(date) != in[i] {
				t.Errorf("%s in %v: %v", date, r, r.Holds(date))
			}
		}
	}
}

// The second sentence says how it is to be written, with all words that are allowed.
func TestWrongRestrictedDatesAreRefusedAtEntry(t *testing.T) {
	for value, says := range map[string]string{
		"June to September nitrogen":              `"june" is no month and day.`,
		"06-01 nitrogen":                          `"06-01 nitrogen" is no span of dates.`,
		"06-31 to 09-30 nitrogen":                 `"06-31" is no month and day.`,
		"6-1 to 9-30 nitrogen":                    `"6-1" is no month and day.`,
		"06-01 to 09-30 nitrogen; 12-01 to 03-01": `"12-01 to 03-01" is no span of dates.`,
		"06-01 to 09-30 potash":                   `"potash" is nothing that can be restricted.`,
		"06-01 - 09-30 any":                       `"06-01 - 09-30 any" is no span of dates.`,
		";":                                       "There is no span of dates in it.",
		"":                                        "restricted_dates is empty.",
		strings.Repeat("06-01 to 09-30 nitrogen; ", 10) + "": "restricted_dates has 250 letters; up to 200 are possible.",
	} {
		b := NewBook(1)
		_, err := b.Prepare("x", Moment{}, &Setting{RestrictedDates, value})
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v, want %s", value, err, says)
		}
	}
	b := NewBook(1)
	for _, f := range []*Setting{{RestrictedDates, "06-01 to 09-30 nitrogen"}, {PhosphorusNote, "county rule, test of three years"}, {PhosphorusRule, PhosphorusSoilTest}} {
		es, err := b.Prepare("x", Moment{}, f)
		if err != nil {
			t.Fatal(err)
		}
		if err := b.Apply(es[0]); err != nil {
			t.Fatal(err)
		}
	}
	if got := b.Restricted(); len(got) != 1 || got[0].What != RestrictsNitrogen {
		t.Errorf("%v", got)
	}
	if _, err := b.Prepare("x", Moment{}, &Setting{PhosphorusRule, "sometimes"}); err == nil {
		t.Error("a rule that does not exist was taken")
	}
}
