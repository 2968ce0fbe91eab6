package glance

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/notice"
)

// clocksShown is how many re-entry clocks the text has; the page and the document have all.
const clocksShown = 4

// writeNotices says what is owed of notices and signs, which signs stand, and which lawns' hours still run.
func writeNotices(w *strings.Builder, b *core.Book, at core.Moment) {
	o := notice.Look(b, at)
	if s := notice.Short(o.Owed); s != "" {
		fmt.Fprintf(w, "notices     %s\n", s)
	}
	if n := len(o.Signs); n > 0 {
		s := fmt.Sprintf("at %d lawns", n)
		if n == 1 {
			s = "at " + o.Signs[0].Lawn
		}
		fmt.Fprintf(w, "signs       stand %s\n", s)
	}
	shown, more := 0, 0
	for i := range o.Clocks {
		c := &o.Clocks[i]
		switch {
		case c.Until.Zero() || c.Until.Unix <= at.Unix:
		case shown == clocksShown:
			more++
		default:
			fmt.Fprintf(w, "%-12s%s: %s left by the label entry of %s\n", []string{"re-entry", ""}[min(shown, 1)], c.Lawn, c.Left(at), c.By)
			shown++
		}
	}
	if more > 0 {
		fmt.Fprintf(w, "            and %d more\n", more)
	}
}
