package tui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/yard"
	"example.com/tintline/tui/theme"
)

// trueUpPage shows what the last reading of a gauge says went on the lawns, and books it.
func trueUpPage() *pageSpec {
	const p = pageTrueUp
	return &pageSpec{
		page: p, under: pageMorning, key: "v", title: "True up", words: "the lawns by what a gauge reading showed",
		show: (*Model).showTrueUp, pick: func(m *Model, _ string) tea.Cmd { return m.acceptTrueUp() },
		keys: append(letterKeysTo(p, func(m *Model, l byte) tea.Cmd { m.trued.tank = string(l); return nil }, (*Model).isCompartment),
			pageKey(p, "i", "by gallons too", "put right what was logged by gallons or by gauge too", func(m *Model) tea.Cmd {
				m.trued.all = !m.trued.all
				return nil
			}, nil)),
	}
}

// trued is what the page is about.
type trued struct {
	tank string // empty: that of the last reading
	all  bool   // also what was logged by gallons or by gauge
}

// letterKeysTo do something with the letter of a compartment.
func letterKeysTo(p page, do func(m *Model, l byte) tea.Cmd, on func(m *Model, letter byte) bool) []binding {
	var out []binding
	for l := byte('a'); l <= 'f'; l++ {
		out = append(out, pageKey(p, string(l), "", "", func(m *Model) tea.Cmd { return do(m, l) }, func(m *Model) bool { return on(m, l) }))
	}
	return out
}

func (m *Model) trueUp() (yard.TrueUp, error) {
	tank := m.trued.tank
	if shown := m.book.Day().Shown; tank == "" && len(shown) > 0 {
		tank = string(shown[len(shown)-1].Letter)
	}
	if p := m.book.Plumbing(); tank == "" && len(p.Compartments) > 0 {
		tank = string(p.Compartments[0].Letter)
	}
	if m.trued.all {
		return yard.TrueUpOf(m.book, tank, core.ByGallons, core.ByGauge)
	}
	return yard.TrueUpOf(m.book, tank)
}

func (m *Model) showTrueUp() sheet {
	t, err := m.trueUp()
	if err != nil {
		what, do := sentences(err)
		return sheet{rows: append(m.wrapped(theme.Base, what), m.wrapped(theme.Dim, do)...)}
	}
	out := sheet{about: m.told(theme.Strong, "Gauge of "+t.Tank+" at "+t.Shown.At.Clock()+": "+t.Shown.Words()+".")}
	if t.Why != "" {
		out.rows = append(m.wrapped(theme.Base, t.Why), m.wrapped(theme.Dim, t.Do)...)
	} else {
		out.offer, out.small = "put the lawns right", "gallons and products; the tank has the reading"
	}
	for _, f := range t.Findings {
		out.rows = append(out.rows, m.wrapped(theme.Stop, "STOP "+f.Says)...)
	}
	lawn := max(m.w/3, 18)
	if len(t.Lawns) > 0 {
		out.rows = append(out.rows, heading(m.cell(theme.Dim, "lawn", lawn), m.cellRight(theme.Dim, "logged", 8), m.cellRight(theme.Dim, "gauge", 8)))
	}
	for i := range t.Lawns {
		l := &t.Lawns[i]
		out.rows = append(out.rows, row{line: line{left: []span{
			m.cell(theme.Strong, m.g.clean(l.Lawn+", "+l.Zone), lawn), m.cellRight(theme.Base, l.Logged.Text(), 8), m.cellRight(theme.Strong, l.Now.Text(), 8),
		}}})
		for _, d := range l.Doses {
			how := theme.Base
			if d.Crosses {
				how = theme.Stop
			}
			out.rows = append(out.rows, m.wrapped(how, "  "+m.g.clean(d.Words()))...)
		}
	}
	out.rows = append(out.rows, sectionRow("working"))
	for _, s := range t.Steps {
		out.rows = append(out.rows, m.wrapped(theme.Dim, m.g.clean(s.Says))...)
	}
	return out
}

// acceptTrueUp books it; what crosses a limit is asked about.
func (m *Model) acceptTrueUp() tea.Cmd {
	t, err := m.trueUp()
	if err != nil || t.Fact == nil || m.busy() {
		return nil
	}
	if n := len(t.Findings); n > 0 {
		m.put(question{facts: []core.Fact{t.Fact}, words: fmt.Sprintf("book it: %s", t.Findings[0].Says)})
		return nil
	}
	return m.enter(t.Fact)
}

// trueUpWords point to the page where a reading shows more than it may be off.
func (m *Model) trueUpWords(letter byte) string {
	t, err := m.book.TrueUp(string(letter))
	if err != nil || len(t.Lines) == 0 {
		return ""
	}
	return "True up the lawns: g y v."
}
