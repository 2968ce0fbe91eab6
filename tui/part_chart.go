package tui

import (
	"fmt"

	"example.com/tintline/core/season"
	"example.com/tintline/tui/theme"
)

// chartRows draw a plot by the signs of the screen: a bar a line with its figure, and the axis below. The chart libraries at hand draw with
// signs that have no twin in ASCII and carry their facts by colour; these bars need neither. Each line can be chosen, so that one can go
// down the page by lines.
func (m *Model) chartRows(c *season.Chart, id string) []row {
	out := []row{{id: id, line: text(theme.Strong, m.g.fit(m.g.clean(c.Title), m.w-tableMarks))}}
	if len(c.Bars) == 0 {
		return append(out, m.wrapped(theme.Dim, c.None+".")...)
	}
	clean := season.Chart{Title: c.Title, Unit: c.Unit, Both: c.Both}
	for _, b := range c.Bars {
		clean.Bars = append(clean.Bars, season.Bar{Name: m.g.clean(b.Name), Value: b.Value, Says: m.g.clean(b.Says)})
	}
	lines := clean.Lines(m.w-tableMarks, m.g.full, m.g.rule, '|')
	for i, l := range lines {
		r := row{line: text(theme.Base, m.g.fit(l, m.w-tableMarks))}
		if i < len(clean.Bars) {
			r.id = fmt.Sprint(id, "/", i)
		} else {
			r.line = text(theme.Dim, m.g.fit(l, m.w-tableMarks))
		}
		out = append(out, r)
	}
	return out
}
