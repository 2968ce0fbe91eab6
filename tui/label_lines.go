package tui

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/setup"
)

// shownApart are the fields of a label that stand in rows of their own.
var shownApart = map[string]bool{
	"rate_low": true, "rate_high": true, "actives": true, "registration": true, "wind_max_mph": true, "grasses": true, "kind": true,
}

// labelRows are what else is entered of a product's label, a row for each page of its form.
func (m *Model) labelRows(p *core.Product) []row {
	f, ok := setup.For(setup.Label, p.ProductName, m.book)
	if !ok {
		return nil
	}
	var out []row
	for _, page := range f.Pages {
		var words []string
		for _, d := range page.Fields {
			switch {
			case d.Start == "" || shownApart[d.Key]:
			case d.Start == "none" && d.Key != "signal":
				words = append(words, d.Words+": none on the label")
			default:
				words = append(words, d.Words+": "+d.Start)
			}
		}
		if len(words) > 0 {
			out = append(out, m.labelled(page.Short, strings.Join(words, "; "))...)
		}
	}
	return out
}
