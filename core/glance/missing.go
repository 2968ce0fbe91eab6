package glance

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
)

func stillToEnter(b *core.Book) []Missing {
	out := []Missing{}
	for _, m := range check.StillToEnter(b) {
		out = append(out, Missing{Product: text(m.Product), Lawn: text(m.Lawn), Zone: text(m.Zone), Field: m.Field, Why: m.Why})
	}
	return out
}

func offRecord(b *core.Book) []string {
	out := []string{}
	for _, h := range b.Products() {
		if h.Now().Label.OffRecord() != "" {
			out = append(out, h.Name)
		}
	}
	return out
}

// writeMissing says how much is still to enter, and which products have no registration number.
func writeMissing(w *strings.Builder, b *core.Book, d *Document) {
	if words := check.StillToEnterWords(b); words != "" {
		fmt.Fprintf(w, "to enter    %s\n", words)
	}
	if len(d.OffRecord) > 0 {
		fmt.Fprintf(w, "off record  no registration number, so the record stays incomplete: %s\n", strings.Join(d.OffRecord, ", "))
	}
}
