package say

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// TestSeasonSaysWhenAgain: each case by hand from days between, the year's most and its times.
func TestSeasonSaysWhenAgain(t *testing.T) {
	rate := func(oz float64) core.Maybe[measure.Rate] {
		r, err := measure.RateUnit(oz, "oz_per_1000_sqft")
		if err != nil {
			t.Fatal(err)
		}
		return core.Known(r)
	}
	base := core.SeasonLine{
		Of: core.OfProduct, From: "2026-01-01", To: "2026-05-28", Sum: rate(1), AtLeast: rate(1).V, Times: 1,
		Last: "2026-05-04", DaysSince: core.Known(24), Again: "2026-05-28", Fits: "2026-05-28", Next: "2026-05-28",
	}
	for _, c := range []struct {
		name   string
		change func(*core.SeasonLine)
		want   []string
	}{
		{"nothing entered", func(*core.SeasonLine) {}, []string{"most in a year: blank, not checked", "when again is not checked", "24 days ago"}},
		{"none on the label", func(l *core.SeasonLine) { l.None = true }, []string{"most in a year: none on the label"}},
		{"days between", func(l *core.SeasonLine) {
			l.DaysBetween, l.Again, l.Next = core.Known(30.0), "2026-06-03", "2026-06-03"
		}, []string{"again from 2026-06-03, 30 days between"}},
		{"may now", func(l *core.SeasonLine) { l.DaysBetween = core.Known(14.0) }, []string{"by days and sums it may go down again now"}},
		{"year is full", func(l *core.SeasonLine) {
			l.Limit, l.Left, l.Fits, l.Next = rate(1), rate(0), "2027-01-01", "2027-01-01"
		}, []string{"1.00 of at most 1.00 oz per 1,000 sq ft, 0 left", "again from 2027-01-01, when the year's sum has room"}},
		{"never", func(l *core.SeasonLine) {
			l.Limit, l.Left, l.Fits, l.Next = rate(0.5), rate(0), "", ""
		}, []string{"no more of it fits"}},
		{"not known", func(l *core.SeasonLine) { l.Sum.Known, l.Unknown = false, []string{"food, poured out on 2026-04-01"} }, []string{"at least 1.00 oz", "not known: food, poured out on 2026-04-01"}},
		{"own year", func(l *core.SeasonLine) { l.From, l.MostTimes = "2025-05-29", core.Known(3.0) }, []string{"once of 3", "counted from 2025-05-29, the label's own year"}},
	} {
		l := base
		c.change(&l)
		got := Season(l)
		for _, w := range c.want {
			if !strings.Contains(got, w) {
				t.Errorf("%s: %q lacks %q", c.name, got, w)
			}
		}
		if strings.Contains(got, "safe") {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}
