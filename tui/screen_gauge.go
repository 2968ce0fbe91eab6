package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// gaugePage shows what is booked in each compartment beside what its gauge said last.
func gaugePage() *pageSpec {
	const p = pageGauge
	return &pageSpec{
		page: p, key: "g", title: "Gauges", words: "booked and read, compartment by compartment; log a reading",
		show: (*Model).showGauges, pick: (*Model).pickGauge,
		keys: append(letterKeys(p, (*Model).isCompartment), pageKey(p, "n", "chart", "the chart of a gauge: fill it with a meter, or have it reckoned from the shape", func(m *Model) tea.Cmd {
			return m.goToMarks(m.chosen())
		}, func(m *Model) bool { return m.chosen() != "" }),
			pageKey(p, "t", "teaches", "what the gauges teach of each applicator", func(m *Model) tea.Cmd { return m.goTo(pageTaught) }, (*Model).isTaught)),
	}
}

// letterKeys choose the row of a compartment.
func letterKeys(p page, on func(m *Model, letter byte) bool) []binding {
	var out []binding
	for l := byte('a'); l <= 'f'; l++ {
		out = append(out, pageKey(p, string(l), "", "", func(m *Model) tea.Cmd { m.chooseRow(p, string(l)); return nil }, func(m *Model) bool { return on(m, l) }))
	}
	return out
}

func (m *Model) isCompartment(letter byte) bool { return m.book.Plumbing().Compartment(letter) != nil }

func (m *Model) canGauge() bool { return m.book.Rig() != nil && !m.busy() }

func (m *Model) showGauges() sheet {
	const wide, figures = 76, 20 // cells of the letter and of two figures
	name := m.w / 4
	if m.w < wide {
		name = m.w - tableMarks - figures
	}
	out := sheet{about: m.told(theme.Base, "A reading corrects what is booked; the difference goes to the unexplained.")}
	head := []span{{theme.Dim, "   "}, m.cell(theme.Dim, "holds", name), m.cellRight(theme.Dim, "booked", 8), m.cellRight(theme.Dim, m.g.plusMinus(), 6)}
	if m.w >= wide {
		head = append(head, m.cellRight(theme.Dim, "read", 8), m.cellRight(theme.Dim, "off", 7))
	}
	out.rows = append(out.rows, heading(head...))
	p := m.book.Plumbing()
	for i := range p.Compartments {
		out.rows = append(out.rows, m.gaugeRows(&p.Compartments[i], name, m.w >= wide)...)
	}
	out.rows = append(out.rows, m.taughtOfGauges()...)
	if id := m.chosenAmong(out.rows); id != "" {
		out.offer = "log what the gauge of " + id + " reads"
		if len(m.book.RigCompartment(id[0]).Marks) > 0 {
			out.offer, out.small = "the marks of "+id, "choose the mark, or type gallons"
		}
	}
	return out
}

// gaugeRows are a compartment, and the last reading below it where the row has no room for it.
func (m *Model) gaugeRows(c *fluid.Compartment, name int, wide bool) []row {
	l := string(c.Letter)
	set := m.book.RigCompartment(c.Letter)
	mix := m.book.MixIn(l)
	if mix == "" {
		mix = set.Name
	}
	out := line{left: []span{
		{theme.Compartment(c.Letter, set.Colour), l},
		{theme.Base, "  "},
		m.cell(theme.Strong, mix, name),
		m.cellRight(theme.Strong, c.Liquid.Volume.Text(), 8), m.cellRight(theme.Base, m.g.plusMinus()+bandWords(m.book.Band(&c.Tank)), 6),
	}}
	under := ""
	if r := m.book.Day().LastReading(c.Letter); r != nil {
		if wide {
			out.left = append(out.left, m.cellRight(theme.Strong, r.Read.Text(), 8), m.cellRight(theme.Base, offWords(r), 7), span{theme.Dim, " " + r.At.Clock()})
		} else {
			under = fmt.Sprintf("read %s gal at %s, %s off", r.Read.Text(), r.At.Clock(), offWords(r))
		}
	} else if wide {
		out.left = append(out.left, m.cellRight(theme.Dim, "not today", 16))
	} else {
		under = "not read today"
	}
	rows := []row{{id: l, line: out, now: len(set.Marks) > 0}}
	if under != "" {
		rows = append(rows, row{line: text(theme.Dim, "   "+under)})
	}
	if words := m.expectedWords(c.Letter); words != "" {
		rows = append(rows, row{line: text(theme.Base, m.g.fit("   "+words, m.w-tableMarks))})
	}
	if len(set.Marks) > 0 {
		rows = append(rows, row{line: text(theme.Dim, m.g.fit("   marks "+m.g.clean(markWords(set)), m.w-tableMarks))})
	}
	return rows
}

// offWords say how far the book was off.
func offWords(r *core.Reading) string {
	if r.Off() > 0 {
		return "+" + r.Off().Text()
	}
	return r.Off().Text()
}

// markWords is the chart in one line: "1 at 25.0, 2 at 50.0".
func markWords(set *core.RigCompartment) string {
	var out []string
	for _, k := range set.Marks {
		out = append(out, k.Mark+" at "+size(k.Volume))
	}
	return strings.Join(out, ", ")
}

func (m *Model) pickGauge(id string) tea.Cmd {
	set := m.book.RigCompartment(id[0])
	if set == nil || !m.canGauge() {
		return nil
	}
	if len(set.Marks) == 0 {
		m.openReading(set.Letter)
		return nil
	}
	return m.goToMarks(id)
}

// openReading asks for the reading of one compartment.
func (m *Model) openReading(l byte) {
	hint := "gallons"
	if set := m.book.RigCompartment(l); set != nil {
		hint = "gallons, 0 to " + size(set.Capacity)
		if n := len(set.Marks); n > 0 {
			hint = fmt.Sprintf("gallons as %s gal, a mark as mark %s; it has %s to %s", size(set.Marks[n-1].Volume), set.Marks[0].Mark, set.Marks[0].Mark, set.Marks[n-1].Mark)
		}
	}
	m.openLine(textLine{
		prompt: fmt.Sprintf("gauge of %c reads", l), hint: hint,
		read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(m.readReading(l, said)) },
	})
}

// readReading reads gallons, or a mark of the chart. A bare figure that could be either is asked for again.
func (m *Model) readReading(l byte, said string) (core.Fact, error) {
	rest := strings.TrimSpace(said)
	f := &core.GaugeRead{Compartment: l}
	if mark, ok := cutWord(rest, "mark"); ok {
		f.Mark = mark
		return f, nil
	}
	set := m.book.RigCompartment(l)
	onChart := false
	if set != nil {
		_, wrong := set.VolumeAt(rest)
		onChart = wrong == nil
	}
	_, figure := measure.ReadFigure(rest)
	switch {
	case onChart && figure:
		return nil, slip(fmt.Sprintf("%s can be gallons or a mark of the gauge of %c.", rest, l), fmt.Sprintf("Type %s gal, or mark %s.", rest, rest))
	case onChart:
		f.Mark = rest
		return f, nil
	}
	v, err := measure.ReadVolume(rest, "gal")
	f.Volume = core.Known(v)
	return f, err
}
