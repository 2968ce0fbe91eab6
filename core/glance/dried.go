package glance

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
)

// driedOn lists what may have dried on in strainers and dead ends, where no account reaches.
func driedOn(b *core.Book, at core.Moment) []DriedOn {
	out := []DriedOn{}
	for _, d := range check.StillDried(b, at) {
		row := DriedOn{Product: d.Product, Since: d.Since.String(), Opened: d.Opened, Rinses: map[string]int{}}
		for _, r := range d.Rinses {
			row.Rinses[string(r.Letter)] = r.Done
		}
		out = append(out, row)
	}
	return out
}

// writeDried says it in a line a product.
func writeDried(w *strings.Builder, b *core.Book, at core.Moment) {
	label := "dried on"
	for _, d := range check.StillDried(b, at) {
		fmt.Fprintf(w, "%-12s%s: %s\n", label, d.Product, d.Missing)
		label = ""
	}
}
