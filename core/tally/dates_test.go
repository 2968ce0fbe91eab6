package tally

import (
	"testing"
	"time"
)

func TestReadDates(t *testing.T) {
	const today = "2026-11-29" // a Sunday, by the proleptic Gregorian calendar of ISO 8601
	for _, c := range []struct{ said, from, to, wrong string }{
		{"5/26", "2026-05-26", "2026-05-26", ""},
		{"12/24", "2025-12-24", "2025-12-24", ""}, // the last one, not the next
		{"2/29", "2024-02-29", "2024-02-29", ""},
		{"2026-5-1 to 2026-05-31", "2026-05-01", "2026-05-31", ""},
		{"5/1, 5/15", "2026-05-01", "2026-05-15", ""},
		{"5/3/2024", "2024-05-03", "2024-05-03", ""},
		{"2024-02", "2024-02-01", "2024-02-29", ""},
		{"Feb", "2026-02-01", "2026-02-28", ""},
		{"december", "2025-12-01", "2025-12-31", ""},
		{"2025", "2025-01-01", "2025-12-31", ""},
		{"week", "2026-11-23", "2026-11-29", ""},
		{"month", "2026-11-01", "2026-11-30", ""},
		{"year", "2026-01-01", "2026-12-31", ""},
		{"today", today, today, ""},
		{"yesterday", "2026-11-28", "2026-11-28", ""},
		{"all", "", "", ""},
		{"march may", "2026-03-01", "2026-05-31", ""},
		{"5/15 5/1", "", "", "2026-05-15 to 2026-05-01 runs backwards."},
		{"13/40", "", "", `"13/40" is no day.`},
		{"", "", "", `"" is not one day, and not a first and a last one.`},
		{"1 2 3", "", "", `"1 2 3" is not one day, and not a first and a last one.`},
	} {
		from, to, err := ReadDates(c.said, today)
		wrong := ""
		if err != nil {
			wrong = err.Error()
		}
		if from != c.from || to != c.to || wrong != c.wrong {
			t.Errorf("%q: %s to %s, %s", c.said, from, to, wrong)
		}
	}
}

func FuzzReadDates(f *testing.F) {
	for _, s := range []string{"5/26", "2026-05", "may june", "all", "2/29", "9999"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, said string) {
		from, to, err := ReadDates(said, "2026-11-29")
		if err != nil || from == "" {
			return
		}
		first, a := time.Parse(time.DateOnly, from)
		last, b := time.Parse(time.DateOnly, to)
		if a != nil || b != nil || last.Before(first) {
			t.Fatalf("%q: %s to %s", said, from, to)
		}
	})
}
