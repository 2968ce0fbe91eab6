package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core/yard"
	"example.com/tintline/tui/theme"
)

// taughtPage shows what the readings of gauges have shown of each applicator, and of what stands in the compartments.
func taughtPage() *pageSpec {
	const p = pageTaught
	return &pageSpec{
		page: p, key: "g", under: pageMorning, title: "What the gauge teaches", words: "by how much more or less goes down than you think",
		show: (*Model).showTaught,
		pick: func(m *Model, _ string) tea.Cmd { return m.goTo(pageGauge) },
		keys: []binding{pageKey(p, "o", "catch test", "a catch test of the applicator chosen", (*Model).testTaught, func(m *Model) bool { return m.chosen() != "" })},
	}
}

// testTaught goes to a catch test of the applicator chosen; one that was begun and not logged stays.
func (m *Model) testTaught() tea.Cmd {
	if !m.testing() || (m.test.watch == watchOff && !m.hasMeasured()) {
		m.beginTest(m.chosen())
	}
	return m.goTo(pageCalibrate)
}

func (m *Model) showTaught() sheet {
	t := yard.Taught(m.book)
	if len(t.Applicators) == 0 {
		return sheet{rows: m.wrapped(theme.Base, "The rig has no applicator that sprays and has a delivery rate.")}
	}
	out := sheet{about: m.told(theme.Base, yard.GiveOrTake), offer: "the gauges, to log a reading", small: "read one after some lawns that were booked by area"}
	for i := range t.Applicators {
		out.rows = append(out.rows, m.taughtRows(&t.Applicators[i])...)
	}
	if len(t.Tanks) > 0 {
		out.rows = append(out.rows, sectionRow("what is left, put right by that"))
		for _, e := range t.Tanks {
			out.rows = append(out.rows, m.wrapped(theme.Base, e.Says())...)
		}
	}
	if len(t.Readings) > 0 {
		if len(t.Tanks) > 0 {
			out.rows = append(out.rows, blankRow())
		}
		out.rows = append(out.rows, sectionRow("readings of the day, the last one first"))
		for i := len(t.Readings) - 1; i >= 0; i-- {
			out.rows = append(out.rows, m.wrapped(theme.Base, yard.ReadingSays(t.Readings[i]))...)
		}
	}
	if len(t.Tanks)+len(t.Readings) > 0 {
		out.rows = append(out.rows, blankRow())
	}
	out.rows = append(out.rows, sectionRow("how that was reckoned"))
	for i := range t.Applicators {
		for n, s := range t.Applicators[i].Steps {
			name := ""
			if n == 0 {
				name = t.Applicators[i].Applicator
			}
			out.rows = append(out.rows, m.behind("", span{theme.Dim, name}, taughtLabel, theme.Dim, s.Says)...)
		}
	}
	return out
}

const taughtLabel = 12 // cells of the name of an applicator

// taughtRows are an applicator: the sentence, what it means, whether a catch test would settle it.
func (m *Model) taughtRows(t *yard.TaughtOf) []row {
	strong := theme.Base
	if t.Verdict == yard.TaughtPast {
		strong = theme.Strong
	}
	rows := m.behind(t.Applicator, span{theme.Strong, t.Applicator}, taughtLabel, strong, t.Says)
	for _, s := range append(t.Means[:len(t.Means):len(t.Means)], t.Test) {
		rows = append(rows, m.behind("", span{theme.Base, ""}, taughtLabel, theme.Base, s)...)
	}
	return append(rows, blankRow())
}

// taughtOfGauges are rows below the gauges: what they have taught of each applicator of which enough is known.
func (m *Model) taughtOfGauges() []row {
	var out []row
	if m.book.Rig() == nil {
		return nil
	}
	for _, a := range m.book.Rig().Applicators {
		if t, ok := m.book.Taught(a.Name); ok && t.Enough {
			out = append(out, m.wrapped(theme.Base, a.Name+": "+yard.TaughtSays(m.book, a.Name))...)
		}
	}
	if len(out) > 0 {
		out = append([]row{blankRow()}, out...)
	}
	return out
}

// isTaught tells whether gauges have taught anything yet.
func (m *Model) isTaught() bool {
	if m.book.Rig() == nil {
		return false
	}
	for _, a := range m.book.Rig().Applicators {
		if _, ok := m.book.Taught(a.Name); ok {
			return true
		}
	}
	return false
}

// expectedWords is what a compartment is expected to hold where more is known than what is booked; empty where it is not.
func (m *Model) expectedWords(letter byte) string {
	c := m.book.Plumbing().Compartment(letter)
	if c == nil {
		return ""
	}
	v, sd, ok := m.book.Expected(c)
	if !ok {
		return ""
	}
	return v.Text() + " gal expected, " + m.g.plusMinus() + bandWords(sd) + ", by what the gauges taught"
}
