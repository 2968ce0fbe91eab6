package glance

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// loads are the loads that are planned, with what of them is in.
func loads(b *core.Book) []Load {
	out := []Load{}
	for _, p := range b.LoadPlans() {
		row := Load{Into: p.Into, Volume: p.Volume.Gallons(), Mix: text(p.Mix), For: text(p.For), Items: []LoadItem{}}
		for _, i := range b.LoadItems(&p) {
			item := LoadItem{Item: i.Item, Unit: unitOf(i), Ticked: i.Done}
			item.Amount, _ = i.Amount.In(item.Unit) // the units are in the table
			row.Items = append(row.Items, item)
		}
		out = append(out, row)
	}
	return out
}

func unitOf(i core.LoadItem) string {
	switch {
	case i.Item == core.WaterItem:
		return "gal"
	case i.Amount.Kind == measure.Dry:
		return "oz"
	}
	return "fl_oz"
}

// writeLoads says what is to be loaded, a line a tank.
func writeLoads(w *strings.Builder, b *core.Book) {
	for i, p := range b.LoadPlans() {
		head := ""
		if i == 0 {
			head = "to load"
		}
		s := p.Volume.Text() + " gal"
		if p.Mix != "" {
			s += " of " + p.Mix
		}
		var in, out []string
		for _, item := range b.LoadItems(&p) {
			words := item.Item + " " + item.Amount.Text()
			if item.Done {
				in = append(in, words)
			} else {
				out = append(out, words)
			}
		}
		if len(in) > 0 {
			s += "; in: " + strings.Join(in, ", ")
		}
		if len(out) > 0 {
			s += "; to come: " + strings.Join(out, ", ")
		}
		fmt.Fprintf(w, "%-11s %s: %s\n", head, p.Into, s)
	}
}
