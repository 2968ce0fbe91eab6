package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/tally"
	"example.com/tintline/tui/theme"
)

// tallyPage shows the sums of the open day, or of the last one, in the rows of the printed tally.
func tallyPage() *pageSpec {
	return &pageSpec{
		page: pageTally, key: "t", title: "Tally of the day", words: "gallons and area by compartment, mix, product, lawn",
		show: (*Model).showTally, pick: (*Model).pickTally,
	}
}

// tallyTitles name the sections.
var tallyTitles = map[string]string{
	tally.Compartments: "by compartment", tally.Mixes: "by mix", tally.Products: "by product", tally.Lawns: "by lawn",
	tally.Tanks: "applicators' own tanks", tally.Hoppers: "hoppers and spreaders",
}

// tallyTable marks a row that is the title of a table.
const tallyTable = "table/"

func (m *Model) showTally() sheet {
	d := m.book.Day()
	if d.Date == "" {
		return sheet{rows: m.wrapped(theme.Base, "No day was opened yet, so nothing is to be added up.")}
	}
	t := tally.Close(m.book, core.Known(core.At(m.at)))
	state := "The day is still open; the figures stand as of now."
	if !d.Open {
		state = "The day is closed."
	}
	sums := t.Line()
	if cells(sums) > m.w-2 {
		sums = strings.ReplaceAll(sums, "   ", ", ")
	}
	out := sheet{about: append(m.told(theme.Strong, sums), m.told(theme.Base, state)...)}
	for _, s := range t.Sections() {
		out.rows = append(out.rows, m.tallySection(s)...)
	}
	out.rows = append(out.rows, blankRow())
	out.rows = append(out.rows, m.wrapped(theme.Dim, "Another day: tintline tally --date "+d.Date+"; several: --from D --to D")...)
	id := m.chosenAmong(out.rows)
	if of, title := m.tallyTitle(id); title {
		out.offer = "fold the table " + tallyTitles[of]
		if m.folded[of] {
			out.offer = "show the table " + tallyTitles[of]
		}
	}
	return out
}

// tallySection is a table below its title. Each row can be chosen, so that one can go down the page row by row.
func (m *Model) tallySection(s tally.Section) []row {
	sign, words := "- ", tallyTitles[s.Of]
	if m.folded[s.Of] {
		sign, words = "+ ", words+fmt.Sprintf(", %d rows", len(s.Rows))
	}
	out := []row{{id: tallyTable + s.Of, now: true, line: line{left: []span{{theme.Key, sign}, {theme.Strong, words}}}}}
	if m.folded[s.Of] {
		return out
	}
	lines, _ := m.tabled(s.Head, s.Rows)
	for i, l := range lines {
		out = append(out, row{id: fmt.Sprint(s.Of, "/", i), line: l})
	}
	return out
}

func (m *Model) tallyTitle(id string) (of string, yes bool) {
	if len(id) <= len(tallyTable) || id[:len(tallyTable)] != tallyTable {
		return "", false
	}
	return id[len(tallyTable):], true
}

// pickTally folds a table, or shows it again. The list is made anew: models before this one keep theirs.
func (m *Model) pickTally(id string) tea.Cmd {
	of, title := m.tallyTitle(id)
	if !title {
		return nil
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
