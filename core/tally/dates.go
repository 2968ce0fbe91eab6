package tally

import (
	"fmt"
	"strings"
	"time"

	"example.com/tintline/core/measure"
)

// ReadDates reads days as a person types them, both inclusive: "2026-05-26", "5/26", "5/1 5/15", "2026-05", "may", "2026", "week",
// "month", "year"; "all" has no bounds. Today is the day from which what is short is told: a day or a month without a year is the last one
// that is not ahead of it. The error is a measure.Trouble.
func ReadDates(said, today string) (from, to string, err error) {
	now, wrong := time.Parse(time.DateOnly, today)
	if wrong != nil {
		return "", "", measure.Troublef("Open a day first.", "%q is no date from which days could be told.", today)
	}
	words := strings.FieldsFunc(strings.ToLower(said), func(r rune) bool { return r == ' ' || r == ',' || r == ';' })
	words = without(words, "to", "until", "-")
	switch len(words) {
	case 1:
		first, last, err := daysOf(words[0], now)
		if err != nil || words[0] == "all" { // no bounds
			return "", "", err
		}
		return first.Format(time.DateOnly), last.Format(time.DateOnly), nil
	case 2:
		first, _, err := daysOf(words[0], now)
		if err != nil {
			return "", "", err
		}
		_, last, err := daysOf(words[1], now)
		if err != nil {
			return "", "", err
		}
		if last.Before(first) {
			return "", "", measure.Troublef("Write the earlier day first.", "%s to %s runs backwards.", first.Format(time.DateOnly), last.Format(time.DateOnly))
		}
		return first.Format(time.DateOnly), last.Format(time.DateOnly), nil
	}
	return "", "", measure.Troublef(datesForm, "%q is not one day, and not a first and a last one.", said)
}

const datesForm = "Write 5/26, or 2026-05-26, or two days for a span, or may, 2026, week, month, year, all."

func without(words []string, drop ...string) []string {
	var out []string
	for _, w := range words {
		keep := true
		for _, d := range drop {
			keep = keep && w != d
		}
		if keep {
			out = append(out, w)
		}
	}
	return out
}

// daysOf are the first and the last day of what one word says.
func daysOf(word string, now time.Time) (first, last time.Time, err error) {
	day := func(t time.Time) (time.Time, time.Time, error) { return t, t, nil }
	month := func(t time.Time) (time.Time, time.Time, error) { return t, t.AddDate(0, 1, -1), nil }
	thisMonth := time.Date(now.Year(), now.Month(), 1, 0, 0, 0, 0, time.UTC)
	thisYear := time.Date(now.Year(), 1, 1, 0, 0, 0, 0, time.UTC)
	switch word {
	case "all":
		return now, now, nil
	case "today":
		return day(now)
	case "yesterday":
		return day(now.AddDate(0, 0, -1))
	case "week": // from Monday on
		monday := now.AddDate(0, 0, -(int(now.Weekday())+6)%7)
		return monday, monday.AddDate(0, 0, 6), nil
	case "month":
		return month(thisMonth)
	case "year":
		return thisYear, thisYear.AddDate(1, 0, -1), nil
	}
	if t, wrong := time.Parse("2006-1-2", word); wrong == nil {
		return day(t)
	}
	if t, wrong := time.Parse("1/2/2006", word); wrong == nil {
		return day(t)
	}
	for year := now.Year(); year > now.Year()-5; year-- { // 2/29 is not in every year
		if t, wrong := time.Parse("2006/1/2", fmt.Sprintf("%04d/%s", year, word)); wrong == nil && !t.After(now) {
			return day(t)
		}
	}
	if t, wrong := time.Parse("2006-1", word); wrong == nil {
		return month(t)
	}
	if t, wrong := time.Parse("2006", word); wrong == nil {
		return t, t.AddDate(1, 0, -1), nil
	}
	for _, form := range []string{"Jan", "January"} {
		if t, wrong := time.Parse(form, word); wrong == nil { // time.Parse knows no case in names of months
			t = time.Date(now.Year(), t.Month(), 1, 0, 0, 0, 0, time.UTC)
			if t.After(now) {
				t = t.AddDate(-1, 0, 0)
			}
			return month(t)
		}
	}
	return now, now, measure.Troublef(datesForm, "%q is no day.", word)
}
