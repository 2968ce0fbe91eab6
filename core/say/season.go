package say

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
)

// Season is what went on a zone of a product, of an active or of nitrogen in a year, against what the label allows, and
// when it may go down again. The name is left out.
func Season(l core.SeasonLine) string {
	var parts []string
	add := func(format string, args ...any) { parts = append(parts, fmt.Sprintf(format, args...)) }
	sum := l.AtLeast.Text()
	if lb, err := l.AtLeast.In("lb_per_1000_sqft"); err == nil && l.Of == core.OfNitrogen {
		sum = fmt.Sprintf("%.2f lb per 1,000 sq ft", lb)
	}
	if !l.Sum.Known {
		sum = "at least " + sum
	}
	switch {
	case l.Limit.Known:
		add("%s of at most %s, %s left", withoutUnit(sum, l.Limit.V.Text()), l.Limit.V.Text(), withoutUnit(l.Left.V.Text(), l.Limit.V.Text()))
	case l.Of == core.OfNitrogen:
		add("%s", sum)
	case l.None:
		add("%s; most in a year: none on the label", sum)
	default:
		add("%s; most in a year: blank, not checked", sum)
	}
	if len(l.Unknown) > 0 {
		add("not known: %s", strings.Join(l.Unknown, ", "))
	}
	if l.Of == core.OfProduct {
		times := fmt.Sprintf("%d times", l.Times)
		if l.Times == 1 {
			times = "once"
		}
		if l.MostTimes.Known {
			times += fmt.Sprintf(" of %g", l.MostTimes.V)
		}
		add("%s", times)
	}
	if l.DaysSince.Known {
		add("last %s, %s", l.Last, daysAgo(l.DaysSince.V))
	}
	if l.Of == core.OfProduct {
		parts = append(parts, again(l))
	}
	if !strings.HasSuffix(l.From, "-01-01") {
		add("counted from %s, the label's own year", l.From)
	}
	return strings.Join(parts, "; ")
}

// withoutUnit leaves the unit of a figure out where it is that of the one beside it.
func withoutUnit(figure, beside string) string {
	_, unit, _ := strings.Cut(beside, " ")
	return strings.TrimSuffix(figure, " "+unit)
}

func daysAgo(n int) string {
	switch n {
	case 0:
		return "today"
	case 1:
		return "1 day ago"
	}
	return fmt.Sprintf("%d days ago", n)
}

// again says when it may go down again, as far as the label entry tells.
func again(l core.SeasonLine) string {
	switch {
	case !l.DaysBetween.Known && !l.Limit.Known && !l.MostTimes.Known:
		return "when again is not checked: the label entry has neither days between nor a year's most"
	case l.Fits == "":
		return "no more of it fits into the label's year"
	case l.Next == l.To:
		return "by days and sums it may go down again now"
	case l.Fits > l.Again:
		return "again from " + l.Next + ", when the year's sum has room"
	}
	return fmt.Sprintf("again from %s, %g days between", l.Next, l.DaysBetween.V)
}
