package glance

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
)

// taught lists the applicators of which gauges have shown something.
func taught(b *core.Book) []Taught {
	out := []Taught{}
	if b.Rig() == nil {
		return out
	}
	for _, a := range b.Rig().Applicators {
		if t, ok := b.Taught(a.Name); ok {
			out = append(out, Taught{a.Name, t.Ratio, t.SD, t.Readings, t.Odd, t.Enough})
		}
	}
	return out
}

// writeTaught says it of those of which enough was read for it to be used.
func writeTaught(w *strings.Builder, d *Document) {
	label := "taught"
	for _, t := range d.Taught {
		if !t.Used {
			continue
		}
		fmt.Fprintf(w, "%-12s%s puts down %.3f times area times rate, give or take %.3f, from %d readings\n", label, t.Applicator, t.Ratio, t.SD, t.Readings)
		label = ""
	}
}
