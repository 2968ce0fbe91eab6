package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/grid"
	"example.com/tintline/core/label"
	"example.com/tintline/tui/theme"
)

// rowMay leads from a zone of a lawn's page to its row in the table of grasses.
const rowMay = "may/"

// zoneMore is what is known of a zone besides its area: how it grows and since when, its cultivar, what lies beside it.
func (m *Model) zoneMore(z core.Zone) []row {
	words := grid.GrowthWords(z)
	if z.Cultivar != "" {
		words += "; cultivar " + z.Cultivar
	}
	for _, s := range z.Sites {
		words += "; " + siteWords(s)
	}
	t := theme.Base
	if z.Growth == "" {
		t = theme.Note
	}
	if why := check.GrowthAsked(m.book, z, m.moment()); why != "" {
		t, words = theme.Ask, words+"; to be asked: "+why
	}
	var out []row
	for _, l := range m.g.wrap(m.g.clean(words), m.w-tableMarks-2) {
		out = append(out, row{line: text(t, "  "+l)})
	}
	return out
}

func siteWords(s core.Site) string {
	words := label.SiteWords(s.Kind)
	if s.Feet.Known {
		words += fmt.Sprintf(" %g ft off", s.Feet.V)
	}
	if s.Date != "" {
		words += " on " + s.Date
	}
	return words
}

// mayRows are the small table of a lawn's page: what of the loads may go on its zones.
func (m *Model) mayRows(l *core.Lawn) []row {
	g := grid.OfLawn(m.book, l.LawnName, m.moment())
	out := []row{blankRow(), sectionRow("what may go on it")}
	if g.Of == grid.OfReference {
		return append(out, m.wrapped(theme.Dim, "The book has no product yet.")...)
	}
	look := m.lookAt(g, 0)
	for _, h := range m.gridHead(g, look) {
		h.left[0].s = strings.TrimPrefix(h.left[0].s, "  ")
		out = append(out, row{line: h})
	}
	for i, r := range m.gridRows(g, look, cellAt{}) {
		r.id, r.now = rowMay+g.Rows[i].Zone.Name, true
		out = append(out, r)
	}
	if more := len(g.Columns) - look.to; more > 0 {
		out = append(out, m.wrapped(theme.Dim, fmt.Sprintf("%d more beside these; Enter on a zone opens the whole table", more))...)
	}
	return out
}

// openMay opens the table of grasses at a zone of the lawn.
func (m *Model) openMay(zone string) tea.Cmd {
	cmd := m.goTo(pageGrasses)
	m.chooseRow(pageGrasses, rowOfZone+zone)
	return cmd
}

// yearRows are what went on each zone this year, against what the labels allow.
func (m *Model) yearRows(l *core.Lawn) []row {
	date := m.moment().Date()
	if d := m.book.Day(); d.Open {
		date = d.Date
	}
	out := []row{blankRow(), sectionRow("this year, as of " + date)}
	var fed []string // grasses that had nitrogen
	years := m.yearsOf(l, date)
	for i := 0; i < len(l.Zones); {
		told, n := years[i], i+1
		for n < len(l.Zones) && sameTold(told, years[n]) {
			n++
		}
		var names []string
		for _, z := range l.Zones[i:n] {
			names = append(names, z.Name)
		}
		out = append(out, row{line: text(theme.Strong, m.g.fit(m.g.clean(joined(names)), m.w-tableMarks))})
		for _, t := range told {
			out = append(out, m.fact(theme.Base, t.About, t.Words)...)
			if t.About == core.OfNitrogen && !hasID(fed, l.Zones[i].Grass) {
				fed = append(fed, l.Zones[i].Grass)
			}
		}
		i = n
	}
	for _, grass := range fed {
		out = append(out, m.fact(theme.Base, "reference", grid.NitrogenRange(m.book, grass))...)
	}
	return out
}

// toldYears are what was told of the zones of a lawn, kept while the book says the same: a key that only moves on the page
// adds nothing up.
type toldYears struct {
	lawn, date string
	digest     core.Digest
	zones      [][]grid.Told
}

func (m *Model) yearsOf(l *core.Lawn, date string) [][]grid.Told {
	if y := &m.years; y.zones != nil && y.lawn == l.LawnName && y.date == date && y.digest == m.book.Digest() {
		return y.zones
	}
	zones := make([][]grid.Told, 0, len(l.Zones))
	for _, z := range l.Zones {
		zones = append(zones, grid.Year(m.book, l.LawnName, z, date))
	}
	m.years = toldYears{l.LawnName, date, m.book.Digest(), zones}
	return zones
}

// sameTold tells whether two zones had the same, so that it is said once.
func sameTold(a, b []grid.Told) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
