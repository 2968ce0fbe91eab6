package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/grid"
	"example.com/tintline/core/label"
	labelsheet "example.com/tintline/core/sheet"
	"example.com/tintline/tui/theme"
)

// limitWidth is that of the names before what a label entry says, on a screen that has room for it.
const (
	limitWidth = 20
	leastFacts = 60 // the width of such a screen
)

func (m *Model) factWidth() int {
	if m.w < leastFacts {
		return labelWidth
	}
	return limitWidth
}

// fact is a fact behind its name. On a narrow screen the name stands before it in the same words.
func (m *Model) fact(t theme.Token, name, words string) []row {
	if m.w < leastFacts {
		var out []row
		for i, l := range m.g.wrap(m.g.clean(name+": "+words), m.w-tableMarks-1) {
			if i > 0 {
				l = " " + l
			}
			out = append(out, row{line: text(t, l)})
		}
		return out
	}
	var out []row
	indent := limitWidth
	if name = m.g.clean(name); cells(name) >= limitWidth { // it has a line of its own
		out, name, indent = append(out, row{line: text(theme.Dim, m.g.fit(name, m.w-tableMarks))}), "", 4
	}
	for i, l := range m.g.wrap(m.g.clean(words), m.w-indent-tableMarks) {
		if i > 0 {
			name = ""
		}
		out = append(out, row{line: line{left: []span{{theme.Dim, m.padded(name, indent)}, {t, l}}}})
	}
	return out
}

// labelRows are all that a product's label entry says: what it holds, its limits, each with its value, none on the label, or
// blank, and what else is known of it.
func (m *Model) labelRows(p *core.Product) []row {
	e := p.Label
	var out []row
	for i, a := range e.Actives {
		name := "actives"
		if i > 0 {
			name = ""
		}
		out = append(out, m.fact(theme.Strong, name, grid.ActiveWords(e, a))...)
	}
	if len(e.Actives) == 0 {
		out = append(out, m.fact(theme.Note, "actives", blankWords)...)
	}
	grasses := grassList(e.Grasses)
	if grasses == "" {
		grasses = "blank: it lists no grass, so every lawn is a stop"
	}
	out = append(out, m.fact(theme.Base, "grasses", grasses)...)
	for _, l := range labelsheet.Lines(p) {
		t := theme.Base
		if l.Blank {
			t = theme.Note
		}
		out = append(out, m.fact(t, l.Words, l.Says)...)
	}
	return out
}

// productGrid is the small table of a product's page: all grasses down, the product and its actives across, and the
// label's rates for each grass.
func (m *Model) productGrid(p *core.Product) []row {
	const ratesWidth = 34
	g := grid.OfProduct(m.book, p.ProductName, m.moment())
	l := m.lookAt(g, 0)
	out := []row{blankRow(), sectionRow("on which grass: product, then its actives"), {line: text(theme.Dim, m.g.fit("Enter on a grass shows why", m.w-tableMarks))}}
	for _, h := range m.gridHead(g, l) {
		h.left[0].s = strings.TrimPrefix(h.left[0].s, "  ")
		out = append(out, row{line: h})
	}
	room := m.w - tableMarks - l.name - (l.to-l.from)*cellWidth
	for i, r := range m.gridRows(g, l, cellAt{}) {
		r.now = true
		if room > ratesWidth && p.Label.Lists(g.Rows[i].Grass.Name) {
			low, high := p.Label.RatesFor(g.Rows[i].Grass.Name)
			r.left = append(r.left, span{theme.Base, " " + m.g.fit(grid.RangeWords(p.Label, low, high), room-1)})
		}
		out = append(out, r)
	}
	return out
}

// referenceRates are those of the reference for a product's actives beside those of its label entry.
func (m *Model) referenceRates(p *core.Product) []row {
	list := grid.RatesBeside(p)
	if len(list) == 0 {
		return nil
	}
	out := []row{blankRow(), sectionRow("rates of its actives: this label entry, then the reference")}
	out = append(out, m.wrapped(theme.Dim, "The reference's are no limits of this label.")...)
	for _, t := range list {
		out = append(out, m.fact(theme.Base, t.About, t.Words)...)
	}
	return out
}

// versions lists the label entries of a product, the one in force first, each with what it has otherwise than the one
// before.
func (m *Model) versions(product string) []row {
	key, _ := m.book.ProductKey(product)
	h := m.book.Products()[key]
	out := []row{blankRow(), sectionRow("versions of the label entry")}
	for i := len(h.Versions) - 1; i >= 0; i-- {
		name := fmt.Sprintf("version %d", i+1)
		when := h.Entered[i].Date() + " " + h.Entered[i].Clock()
		words := "as first entered"
		if i > 0 {
			words = "the same again"
			if c := labelsheet.Changes(&h.Versions[i-1], &h.Versions[i]); len(c) > 0 {
				words = strings.Join(c, "; ")
			}
		}
		if i == len(h.Versions)-1 {
			when += ", in force"
		}
		out = append(out, m.fact(theme.Base, name, when+": "+words)...)
	}
	return out
}

func grassList(grasses []string) string {
	var out []string
	for _, g := range grasses {
		out = append(out, label.GrassWords(g))
	}
	return strings.Join(out, ", ")
}
