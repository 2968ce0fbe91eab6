package core

import (
	"strings"
	"time"
)

// What a span of restricted dates is about.
const (
	RestrictsNitrogen   = "nitrogen"
	RestrictsPhosphorus = "phosphorus"
	RestrictsAny        = "any" // any fertiliser
)

// Restricted is a span of days of the year, both ends within it, on which something is not to be laid. From after To runs
// over the turn of the year.
type Restricted struct {
	From, To string // month and day, "06-01"
	What     string // one of RestrictsNitrogen, RestrictsPhosphorus, RestrictsAny
}

const restrictedForm = "Write spans as 06-01 to 09-30 nitrogen; 12-01 to 03-01 any, with nitrogen, phosphorus or any."

// ParseRestricted reads spans of restricted dates, parted by semicolons: "06-01 to 09-30 nitrogen; 12-01 to 03-01 any".
// The error is a Problem.
func ParseRestricted(text string) ([]Restricted, error) {
	var out []Restricted
	for _, part := range strings.Split(text, ";") {
		words := strings.Fields(strings.ToLower(part))
		if len(words) == 0 {
			continue
		}
		if len(words) != 4 || words[1] != "to" {
			return nil, refuse(restrictedForm, "%q is no span of dates.", strings.TrimSpace(part))
		}
		r := Restricted{From: words[0], To: words[2], What: words[3]}
		for _, day := range []string{r.From, r.To} {
			// a leap year, so that 02-29 is a day
			if _, err := time.Parse(time.DateOnly, "2024-"+day); err != nil {
				return nil, refuse(restrictedForm, "%q is no month and day.", day)
			}
		}
		if r.What != RestrictsNitrogen && r.What != RestrictsPhosphorus && r.What != RestrictsAny {
			return nil, refuse(restrictedForm, "%q is nothing that can be restricted.", r.What)
		}
		out = append(out, r)
	}
	if len(out) == 0 {
		return nil, refuse(restrictedForm, "There is no span of dates in it.")
	}
	return out, nil
}

// Holds tells whether a date, "2026-06-01", lies in the span.
func (r Restricted) Holds(date string) bool {
	if len(date) != len(time.DateOnly) {
		return false
	}
	day := date[5:]
	if r.From <= r.To {
		return r.From <= day && day <= r.To
	}
	return day >= r.From || day <= r.To
}

// Restricted lists the spans of restricted dates of the operator's place; none where none are entered.
func (s *state) Restricted() []Restricted {
	text, set := s.SettingText(RestrictedDates)
	if !set {
		return nil
	}
	out, err := ParseRestricted(text)
	if err != nil {
		return nil // admitted by another version
	}
	return out
}
