package tui

import (
	"strings"

	"example.com/tintline/core/notice"
	"example.com/tintline/core/tally"
	"example.com/tintline/tui/theme"
)

// noticePage shows the customer's notice of a lawn whole, as the command prints it.
func noticePage() *pageSpec {
	return &pageSpec{page: pageNotice, title: "The customer's notice", show: (*Model).showNotice}
}

// showNotice is the notice of what was put down in the book's day; where nothing was, of what is meant for it.
func (m *Model) showNotice() sheet {
	date := m.book.Day().Date
	if date == "" {
		date = m.moment().Date()
	}
	d, err := notice.Of(m.book, m.subject.lawn, date, tally.RecordsOf(m.book))
	if err != nil {
		what, do := sentences(err)
		return sheet{rows: append(m.wrapped(theme.Base, what), m.wrapped(theme.Base, do)...)}
	}
	out := sheet{about: m.told(theme.Dim, "Printed by: tintline notice --lawn NAME --as html")}
	out.rows = append(out.rows, row{line: text(theme.Strong, m.g.clean(d.Title))})
	for _, l := range d.About {
		out.rows = append(out.rows, m.wrapped(theme.Base, l)...)
	}
	for _, p := range d.Parts {
		out.rows = append(out.rows, blankRow())
		if p.Title != "" {
			out.rows = append(out.rows, sectionRow(p.Title))
		}
		for _, l := range p.Lines {
			out.rows = append(out.rows, m.wrapped(theme.Base, l)...)
		}
		for _, q := range p.Pairs {
			out.rows = append(out.rows, m.fact(theme.Base, q.Name, q.Says)...)
		}
		for _, r := range p.Table.Rows {
			var cells []string
			for i, c := range r {
				switch h := p.Table.Columns[i]; {
				case c == "":
				case h.Left:
					cells = append(cells, c)
				default:
					cells = append(cells, strings.TrimSpace(c+" "+h.Unit))
				}
			}
			out.rows = append(out.rows, m.wrapped(theme.Base, strings.Join(cells, ", "))...)
		}
	}
	out.rows = append(out.rows, blankRow())
	for _, l := range d.Foot {
		out.rows = append(out.rows, m.wrapped(theme.Dim, l)...)
	}
	return out
}
