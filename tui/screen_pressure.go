package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/setup"
	"example.com/tintline/tui/theme"
)

// pressurePage shows what a hose takes of the pump's pressure, what another one would, and what lies on the shoulder.
func pressurePage() *pageSpec {
	const p = pagePressure
	return &pageSpec{
		page: p, title: "Pressure and weight of the hose",
		show: (*Model).showPressure, pick: func(m *Model, _ string) tea.Cmd { m.openPair(); return nil },
		keys: []binding{
			pageKey(p, "h", "next", "the next applicator that draws through a hose", (*Model).nextOnHose, func(m *Model) bool { return len(m.onHoses()) > 1 }),
			pageKey(p, "w", "weight", "outside diameter and weight of the hose", (*Model).openReel, func(m *Model) bool { return len(m.onHoses()) > 0 && !m.busy() }),
			pageKey(p, "r", "rig", "", func(m *Model) tea.Cmd { return m.goTo(pageRig) }, func(m *Model) bool { return m.book.Rig() != nil }),
		},
	}
}

// onHoses are the applicators that draw through a hose.
func (m *Model) onHoses() []string {
	var out []string
	if m.book.Rig() == nil {
		return nil
	}
	for _, a := range m.book.Rig().Applicators {
		if _, ok := check.PressureOf(m.book, a.Name); ok && a.Sprays() {
			out = append(out, a.Name)
		}
	}
	return out
}

// pressed is the applicator that the page is about.
func (m *Model) pressed() string {
	for _, n := range m.onHoses() {
		if n == m.subject.applicator {
			return n
		}
	}
	return m.onHose()
}

func (m *Model) nextOnHose() tea.Cmd {
	all, now := m.onHoses(), m.pressed()
	for i, n := range all {
		if n == now {
			m.subject.applicator = all[(i+1)%len(all)]
			break
		}
	}
	return nil
}

func (m *Model) showPressure() sheet {
	const label = 16
	name := m.pressed()
	p, ok := check.PressureOf(m.book, name)
	if !ok {
		return sheet{rows: m.wrapped(theme.Base, "No applicator of the rig draws through a hose.")}
	}
	about := "hose " + p.Hose + ", " + name
	if p.Flow.Known {
		about += " at " + p.Flow.V.Text()
	}
	out := sheet{
		about: m.told(theme.Strong, about),
		offer: "a pair of pressures measured on hose " + p.Hose, small: "the flow, a gauge at the pump, a gauge at the gun: 2.5 gpm 110 60",
	}
	kind := ""
	for _, r := range check.PressureRows(m.book, name) {
		if title := pressureTitles[r.Kind]; r.Kind != kind && title != "" {
			out.rows = append(out.rows, sectionRow(title))
		}
		kind = r.Kind
		t := theme.Base
		if r.Bad {
			t = theme.Stop
		}
		words := r.Text
		if r.Bad && r.Kind != check.RowPump {
			words += ": more than the pump gives"
		}
		out.rows = append(out.rows, m.behind("", span{theme.Strong, r.Label}, label, t, words)...)
		if r.Source != "" {
			out.rows = append(out.rows, m.behind("", span{theme.Strong, ""}, label, theme.Dim, r.Source)...)
		}
	}
	return out
}

// pressureTitles stand before the first row of a kind.
var pressureTitles = map[string]string{
	check.RowBore: "the same length in another bore", check.RowLength: "the same bore in another length", check.RowBlank: "what is not in the book",
}

// openPair asks for the two pressures that were read at a flow.
func (m *Model) openPair() {
	p, ok := check.PressureOf(m.book, m.pressed())
	if !ok || m.busy() {
		return
	}
	m.openLine(textLine{
		prompt: "measured on hose " + p.Hose, hint: setup.PairAllowed,
		read: func(m *Model, said string) ([]core.Fact, error) {
			r, err := setup.ReadPair(m.book, p.Hose, said)
			return onlyFact(r, err)
		},
	})
}

func (m *Model) openReel() tea.Cmd {
	p, _ := check.PressureOf(m.book, m.pressed())
	return m.openForm(setup.Reel, p.Hose)
}
