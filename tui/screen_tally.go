package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core/tally"
	"example.com/tintline/tui/theme"
)

// tallyPage shows the sums of the open day, of the last one or of others, in the rows of the printed tally.
func tallyPage() *pageSpec {
	const p = pageTally
	return &pageSpec{
		page: p, under: pageEvening, key: "t", title: "Tally", words: "gallons and area, of today or of any days",
		show: (*Model).showTally, pick: (*Model).pickTally, asks: (*Model).askTally,
		enter: func(m *Model) tea.Cmd { m.tallied = tallyDays{}; return nil },
		keys: []binding{
			opening(pageKey(p, "l", "other days", "the tally of another day, or of several: 5/26, 5/1 5/15, may, 2026, week, all", (*Model).openTallyDays, (*Model).everOpened)),
			pageKey(p, "left", "day before", "the day before", func(m *Model) tea.Cmd { return m.tallyBeside(true) }, (*Model).everOpened),
			pageKey(p, "right", "day behind", "the day behind", func(m *Model) tea.Cmd { return m.tallyBeside(false) }, func(m *Model) bool { return m.tallied != tallyDays{} }),
		},
	}
}

// tallyTable marks a row that is the title of a table.
const tallyTable = "table/"

func (m *Model) showTally() sheet {
	d := m.book.Day()
	if d.Date == "" {
		return sheet{rows: m.wrapped(theme.Base, "No day was opened yet, so nothing is to be added up.")}
	}
	t, state, wait := m.tallyNow()
	if wait != nil {
		return *wait
	}
	sums := t.Line()
	if cells(sums) > m.w-2 {
		sums = strings.ReplaceAll(sums, "   ", ", ")
	}
	out := sheet{about: append(m.told(theme.Strong, sums), m.told(theme.Base, state)...)}
	for _, s := range t.Sections() {
		out.rows = append(out.rows, m.tallySection(s)...)
	}
	id := m.chosenAmong(out.rows)
	of, title := strings.CutPrefix(id, tallyTable)
	switch {
	case title && m.folded[of]:
		out.offer = "show the table " + tally.TitleOf(of)
	case title:
		out.offer = "fold the table " + tally.TitleOf(of)
	case m.leadsOn(id):
		out.offer = "open " + id[strings.Index(id, "/")+1:]
	}
	return out
}

// tallySection is a table below its title. Each row can be chosen, so that one can go down the page row by row.
func (m *Model) tallySection(s tally.Section) []row {
	sign, words := "- ", tally.TitleOf(s.Of)
	if m.folded[s.Of] {
		sign, words = "+ ", words+fmt.Sprintf(", %d rows", len(s.Rows))
	}
	out := []row{{id: tallyTable + s.Of, now: true, line: line{left: []span{{theme.Key, sign}, {theme.Strong, words}}}}}
	if m.folded[s.Of] {
		return out
	}
	lines, turned := m.tabled(s.Head, s.Rows)
	for i, l := range lines {
		r := row{id: fmt.Sprint(s.Of, "/", i), line: l}
		if i > 0 && !turned {
			if id := tallyLeads[s.Of] + s.Rows[i-1][0]; m.leadsOn(id) {
				r.id, r.now = id, true
			}
		}
		out = append(out, r)
	}
	return out
}

// tallyLeads say to which page the rows of a table lead.
var tallyLeads = map[string]string{tally.Mixes: toMix, tally.Products: toProduct, tally.Lawns: toLawn}

// leadsOn tells whether a row leads to the page of something that the book knows.
func (m *Model) leadsOn(id string) bool {
	kind, name, _ := strings.Cut(id, "/")
	switch kind + "/" {
	case toMix:
		return m.book.Mix(name) != nil
	case toProduct:
		return m.book.Product(name) != nil
	case toLawn:
		return m.book.Lawn(name) != nil
	}
	return false
}

// leadOn opens the page that a row leads to.
func (m *Model) leadOn(id string) tea.Cmd {
	kind, name, _ := strings.Cut(id, "/")
	switch kind + "/" {
	case toMix:
		return m.openMix(name)
	case toProduct:
		return m.openProduct(name)
	case toLawn:
		return m.goToLawn(name)
	}
	return nil
}

// pickTally folds a table, or shows it again, or opens the page that a row leads to. The list is made anew: models before this one keep theirs.
func (m *Model) pickTally(id string) tea.Cmd {
	of, title := strings.CutPrefix(id, tallyTable)
	if !title {
		return m.leadOn(id)
	}
	folded := map[string]bool{of: !m.folded[of]}
	for k, v := range m.folded {
		if k != of {
			folded[k] = v
		}
	}
	m.folded = folded
	return nil
}
