package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/setup"
	"example.com/tintline/tui/theme"
)

// learnedCell says what the timed changeovers have shown of pump and manifold.
func (m *Model) learnedCell() []row {
	l := m.book.Learned("")
	if l.Cell == 0 {
		return nil
	}
	words := fmt.Sprintf("pump, manifold, shared pipe: %s gal, %s%s", l.Cell.Text(), m.g.plusMinus(), l.CellSD.Text())
	if l.FromRig {
		words += ", as entered: no changeover was timed yet"
	} else {
		words += ", by changeovers that were timed"
	}
	return m.below(words)
}

// learnedHose says what they have shown of a hose, and from how many.
func (m *Model) learnedHose(name string) []row {
	l := m.book.Learned(name)
	words := fmt.Sprintf("holds %s gal, %s%s, ", l.Hose.Text(), m.g.plusMinus(), l.HoseSD.Text())
	switch {
	case l.FromRig:
		words += "as entered: no changeover was timed yet"
	case l.N == 1:
		words += "by 1 changeover that was timed"
	default:
		words += fmt.Sprintf("by %d changeovers that were timed", l.N)
	}
	if l.Odd > 0 {
		words += fmt.Sprintf("; %d lay too far off to be learned from", l.Odd)
	}
	return m.below(words)
}

// below are words under a part.
func (m *Model) below(words string) []row {
	const indent = 5
	var out []row
	for _, l := range m.g.wrap(m.g.clean(words), m.w-tableMarks-indent) {
		out = append(out, row{line: text(theme.Dim, strings.Repeat(" ", indent)+l)})
	}
	return out
}

// nextHose is the hose after the one that an applicator hangs on; empty where the rig has one only.
func (m *Model) nextHose(applicator string) string {
	a := m.book.Applicator(applicator)
	if a == nil || a.Hose == "" || len(m.book.Rig().Hoses) < 2 {
		return ""
	}
	all := m.book.Rig().Hoses
	for i, h := range all {
		if h.Name == a.Hose {
			return all[(i+1)%len(all)].Name
		}
	}
	return all[0].Name
}

func (m *Model) canHangOnPage() bool {
	return !m.busy() && m.nextHose(m.applicatorChosen()) != ""
}

func (m *Model) hangOnPage() tea.Cmd {
	on := m.applicatorChosen()
	return m.enter(&core.Fitted{Applicator: on, Hose: m.nextHose(on)})
}

// goToPressure opens the page of pressure for the applicator that is chosen.
func (m *Model) goToPressure() tea.Cmd {
	on := m.applicatorChosen()
	cmd := m.goTo(pagePressure)
	if on != "" {
		m.subject.applicator = on
	}
	return cmd
}

// plumbingRow is the row that opens the form of pump, bypass and the pipes between the compartments.
func (m *Model) plumbingRow() []row {
	if _, ok := setup.For("plumbing", "", m.book); !ok {
		return nil
	}
	return []row{{id: "plumbing/", line: line{left: []span{m.cell(theme.Strong, "plumbing", rigName), {theme.Base, "pump flow and pressure, shared pipe, dead legs"}}}}}
}
