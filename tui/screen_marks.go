package tui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/setup"
	"example.com/tintline/tui/theme"
)

// marksPage shows the chart of one gauge: each mark can be logged as it stands, and the chart is filled here, mark by mark
// with a meter, or reckoned from the shape of the tank.
func marksPage() *pageSpec {
	const p = pageMarks
	return &pageSpec{
		page: p, title: "Marks of a gauge", show: (*Model).showMarks, pick: (*Model).pickMark,
		keys: []binding{
			opening(pageKey(p, "l", "type it", "type the gallons, or a mark between two others", func(m *Model) tea.Cmd {
				m.openReading(m.subject.tank[0])
				return nil
			}, (*Model).canGauge)),
			opening(pageKey(p, "n", "fill chart", "fill the chart while the tank is filled with a meter: at 50 gal the mark says 8", func(m *Model) tea.Cmd {
				m.openFill(m.subject.tank[0])
				return nil
			}, (*Model).canGauge)),
			opening(pageKey(p, "s", "by shape", "the chart by the shape of the tank: obround 27 x 44 x 60 in, mark every 4 in", func(m *Model) tea.Cmd {
				m.openShape(m.subject.tank[0])
				return nil
			}, (*Model).canGauge)),
			pageKey(p, "t", "tank", "plan of the tank, place of its gauge, what the marks are", func(m *Model) tea.Cmd {
				return m.openForm(setup.Gauge, m.subject.tank)
			}, (*Model).canGauge),
			pageKey(p, "x", "take off", "take the mark that is chosen off the chart", (*Model).askMarkOff, func(m *Model) bool {
				return m.canGauge() && m.chosen() != ""
			}),
		},
	}
}

// goToMarks opens the chart of a compartment at the mark that is nearest to what is booked.
func (m *Model) goToMarks(id string) tea.Cmd {
	set := m.book.RigCompartment(id[0])
	if set == nil {
		return nil
	}
	cmd := m.goTo(pageMarks)
	m.subject.tank = id
	m.on[pageMarks] = placeOn{chosen: set.NearestMark(m.book.Plumbing().Compartment(set.Letter).Liquid.Volume)}
	return cmd
}

func (m *Model) showMarks() sheet {
	set := m.book.RigCompartment(m.subject.tank[0])
	c := m.book.Plumbing().Compartment(m.subject.tank[0])
	if set == nil || c == nil {
		return sheet{rows: m.wrapped(theme.Base, "The rig has no such compartment any more.")}
	}
	out := sheet{about: []line{
		text(theme.Strong, fmt.Sprintf(" gauge of %c", set.Letter)),
		text(theme.Base, fmt.Sprintf(" booked %s gal, %s%s", c.Liquid.Volume.Text(), m.g.plusMinus(), bandWords(m.book.Band(&c.Tank)))),
	}}
	if r := m.book.Day().LastReading(set.Letter); r != nil {
		out.about = append(out.about, text(theme.Base, fmt.Sprintf(" last read %s gal at %s, %s off", r.Read.Text(), r.At.Clock(), offWords(r))))
	}
	if len(set.Marks) == 0 {
		out.rows = m.wrapped(theme.Base, "The gauge has no marks yet. Fill the empty tank with a meter and type the mark at each volume, or have the chart reckoned from the shape of the tank.")
		out.offer, out.small = "fill the chart with a meter", "s reckons it from the shape; each mark is logged at once"
		return out
	}
	out.rows = m.markRows(set)
	if id := m.chosenAmong(out.rows); id != "" {
		out.offer, out.small = "the gauge stands at mark "+id, "l types gallons, or a mark between two others"
	}
	return out
}

// markRows are the marks as they stand on the gauge, each with how far a reading there may be off.
func (m *Model) markRows(set *core.RigCompartment) []row {
	const mark, figure, off = 12, 8, 7
	rows := []row{heading(m.cell(theme.Dim, "mark"+unitBehind(set), mark), m.cellRight(theme.Dim, "gal", figure),
		m.cellRight(theme.Dim, m.g.plusMinus()+"read", off), m.cellRight(theme.Dim, m.g.plusMinus()+"slope", off))}
	unknown := false
	for i := len(set.Marks) - 1; i >= 0; i-- {
		k := set.Marks[i]
		read, slope := m.book.MarkBand(set.Letter, k.Mark)
		unknown = unknown || !slope.Known
		rows = append(rows, row{id: k.Mark, line: line{left: []span{
			m.cell(theme.Strong, k.Mark, mark), m.cellRight(theme.Base, k.Volume.Text(), figure),
			m.cellRight(theme.Base, offBy(read), off), m.cellRight(theme.Base, offBy(slope), off),
		}}})
	}
	words := fmt.Sprintf("Read: to %s of the distance between two marks. Slope: %s per cent under the truck. Both are settings; gallons, standard uncertainty.",
		measure.Multiple(m.book.Setting(core.GaugeReadShare)), measure.Multiple(m.book.Setting(core.GaugeSlopePct)))
	if unknown {
		words += " The slope counts once the plan of the tank and the place of its gauge are in the rig."
	}
	return append(rows, m.wrapped(theme.Dim, words)...)
}

func unitBehind(set *core.RigCompartment) string {
	if set.MarkUnit == "" {
		return ""
	}
	return ", " + set.MarkUnit
}

func offBy(v core.Maybe[measure.Volume]) string {
	if !v.Known {
		return "?"
	}
	return v.V.Text()
}

// pickMark logs the mark that is chosen and goes back to the list; without a chart it begins one.
func (m *Model) pickMark(id string) tea.Cmd {
	switch {
	case !m.canGauge():
		return nil
	case id == "":
		m.openFill(m.subject.tank[0])
		return nil
	}
	f := &core.GaugeRead{Compartment: m.subject.tank[0], Mark: id}
	m.goBack()
	return m.bookTyped([]core.Fact{f}, false)
}

func (m *Model) askMarkOff() tea.Cmd {
	f := &core.Marked{Compartment: m.subject.tank[0], Mark: m.chosen()}
	m.put(question{facts: []core.Fact{f}, words: fmt.Sprintf("take mark %s off the chart of %c", f.Mark, f.Compartment)})
	return nil
}

// openFill asks for the mark at the first volume that the chart lacks.
func (m *Model) openFill(l byte) {
	if next := m.fillLine(l, 0, ""); next != nil {
		m.openLine(*next)
		return
	}
	m.status = status{kind: saysStop, what: "The chart has a mark at each volume of the plan.", do: "Take a mark off to read it again, or type one with its gallons by a line."}
}

// nextWord leaves a volume out.
const nextWord = "next"

// fillLine asks for the mark at the next volume above one; nil where the tank is full. Each answer is logged at once.
func (m *Model) fillLine(l byte, above measure.Volume, said string) *textLine {
	set := m.book.RigCompartment(l)
	if set == nil {
		return nil
	}
	at, more := setup.NextFill(set, above)
	if !more {
		return nil
	}
	return &textLine{
		prompt: fmt.Sprintf("at %s gal the mark of %c says", size(at), l),
		hint:   join(said, "Type the mark; 8 at 55 gal for another volume; "+nextWord+" leaves it out."),
		then: func(m *Model, said string) (*textLine, error) {
			if said != nextWord {
				return nil, nil
			}
			next := m.fillLine(l, at, "")
			if next == nil {
				return nil, slip("This was the last volume: the tank is full.", "Type its mark, or press Esc.")
			}
			return next, nil
		},
		read: func(_ *Model, said string) ([]core.Fact, error) { return onlyFact(readMarked(l, at, said)) },
		again: func(m *Model, logged []core.Fact) *textLine {
			f, ok := logged[0].(*core.Marked)
			if !ok {
				return nil
			}
			return m.fillLine(l, f.Volume.V, m.filledWords(f))
		},
	}
}

// filledWords say what was logged, and what it takes the place of: a mark that was read twice is a slip, or a better reading.
func (m *Model) filledWords(f *core.Marked) string {
	words := fmt.Sprintf("Mark %s: %s gal", f.Mark, f.Volume.V.Text())
	for _, k := range m.book.RigCompartment(f.Compartment).Marks { // as it was before
		if k.Mark == f.Mark && k.Volume != f.Volume.V {
			words += ", no longer " + k.Volume.Text() + " gal"
		}
	}
	return words + "."
}
