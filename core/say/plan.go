package say

import (
	"fmt"

	"example.com/tintline/core"
)

// dayPlanned is a plan of a day in one sentence.
func dayPlanned(f *core.DayPlanned) string {
	order := "in the order given"
	if f.Order == core.OrderBest {
		order = "in the order found"
	}
	refills := 0
	for _, l := range f.Loads {
		if l.Before != "" {
			refills++
		}
	}
	s := fmt.Sprintf("planned %s %s: lawns %d, refills %d", f.Date, order, len(f.Lawns()), refills)
	if f.Changeovers.Known {
		s += fmt.Sprintf(", changeovers %.0f", f.Changeovers.V)
	}
	if f.Minutes.Known {
		s += fmt.Sprintf(", %.0f min", f.Minutes.V)
	}
	if f.Saved.Known && f.Saved.V >= 1 {
		s += fmt.Sprintf(", %.0f min less than in the order given", f.Saved.V)
	}
	return s
}
