package upkeep

import (
	"fmt"

	"example.com/tintline/core"
)

// PaperItem is a paper and the days left of it.
type PaperItem struct {
	core.Paper
	Days  int // below 0: it has ended
	State string
	Says  string
}

// SoonDays is how many days before its end a paper is said to end soon.
//
// Common practice, no source.
const SoonDays = 30

// Papers lists the papers, those that end first first.
func Papers(b *core.Book, today string) []PaperItem {
	var out []PaperItem
	for _, p := range b.Papers() {
		it := PaperItem{Paper: p, Days: days(today, p.Until), State: Later}
		switch {
		case it.Days < 0:
			it.State, it.Says = DueNow, fmt.Sprintf("ended on %s", p.Until)
		case it.Days <= SoonDays:
			it.State, it.Says = Soon, fmt.Sprintf("ends on %s, in %d days", p.Until, it.Days)
		default:
			it.Says = "valid until " + p.Until
		}
		if p.Training.Known && p.Training.V > 0 {
			it.Says += fmt.Sprintf("; %g h of training still to be had", p.Training.V)
		}
		at := len(out)
		for at > 0 && out[at-1].Until > p.Until {
			at--
		}
		out = append(out[:at], append([]PaperItem{it}, out[at:]...)...)
	}
	return out
}
