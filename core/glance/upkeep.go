package glance

import (
	"example.com/tintline/core"
	"example.com/tintline/core/upkeep"
)

// upkeepDue lists the tasks that are due, and the papers that have ended or end soon.
func upkeepDue(b *core.Book, at core.Moment) []string {
	out := []string{}
	for _, it := range upkeep.Due(b, at) {
		if it.State == upkeep.DueNow {
			out = append(out, it.Words())
		}
	}
	for _, p := range upkeep.Papers(b, at.Date()) {
		if p.State != upkeep.Later {
			out = append(out, p.PaperName+" "+p.Says)
		}
	}
	return out
}
