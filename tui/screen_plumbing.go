package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/tui/theme"
)

// The ids of the rows of the plumbing. A compartment's row goes by its letter.
const (
	ranOn     = "ran/on"
	ranOff    = "ran/off"
	strainers = "strainers"
)

// plumbingPage shows what stands where in the pipes, what the valves do as they stand, and takes what was done there.
func plumbingPage() *pageSpec {
	const p = pagePlumbing
	spec := &pageSpec{
		page: p, key: "i", title: "Plumbing", words: "what hose, pump and return line hold now; what valves do",
		show: (*Model).showPlumbing, pick: (*Model).pickPlumbing, keys: letterKeys(p, (*Model).isCompartment),
	}
	hasRig := func(m *Model) bool { return m.book.Rig() != nil }
	line := func(k, label, long string, run func(m *Model)) binding {
		return opening(pageKey(p, k, label, long, func(m *Model) tea.Cmd { run(m); return nil }, hasRig))
	}
	spec.keys = append(
		spec.keys,
		line("r", "it ran", "the valves stood as they do, gun shut, for so long: on 45 s; off 10 min", func(m *Model) { m.openRan(core.PumpOn) }),
		line("o", "run out", "a compartment emptied, a hose drained or blown out, and where to: pail; b; 5 gal pail", func(m *Model) { m.openRunOut(m.placeChosen()) }),
		line("p", "push", "pushed through the hose into a pail or a compartment: 2.6 pail; 62 s b", (*Model).openPushOut),
		line("i", "rinse", "rinsed a compartment: 5 gal; 5 gal to pail", func(m *Model) { m.openRinse(m.tankChosen()) }),
		line("t", "strainers", "strainers opened and cleaned", (*Model).openStrainers),
		pageKey(p, "u", "line-ups", "", func(m *Model) tea.Cmd { return m.goTo(pageLineUp) }, nil),
		pageKey(p, "g", "pressure", "", func(m *Model) tea.Cmd { return m.goTo(pagePressure) }, hasRig),
	)
	return spec
}

func (m *Model) showPlumbing() sheet {
	if m.book.Rig() == nil {
		return sheet{rows: m.wrapped(theme.Base, "The book has no rig yet.")}
	}
	out := sheet{about: m.told(theme.Strong, "valves  "+lineUpWords(m.book.Plumbing().LineUp))}
	if f, found := check.LineUpNow(m.book); found { // what they do comes first then
		said := m.finding(f)
		out.about = append(out.about, m.told(said.t, said.word+"  "+said.do)...)
		out.rows = m.behind("", span{said.t, said.word}, pipeLabel, theme.Base, said.says)
		out.rows = append(append(out.rows, m.ranRows()...), m.hoseRows()...)
	} else {
		out.rows = append(m.hoseRows(), m.ranRows()...)
	}
	out.rows = append(out.rows, m.standingRows()...)
	out.rows = append(out.rows, m.driedRows()...)
	out.offer, out.small = m.plumbingOffer(m.chosenAmong(out.rows))
	return out
}

// behind are rows of words behind a label, in as many lines as they take; the first can be chosen.
func (m *Model) behind(id string, head span, w int, t theme.Token, words string) []row {
	w = min(w, m.w/4)
	lines := m.g.wrap(m.g.clean(words), m.w-tableMarks-w-1)
	if len(lines) == 0 {
		lines = []string{""}
	}
	out := []row{{id: id, line: line{left: []span{m.cell(head.t, head.s, w), {t, lines[0]}}}}}
	for _, l := range lines[1:] {
		out = append(out, row{line: line{left: []span{m.cell(t, "", w), {t, l}}}})
	}
	return out
}

const pipeLabel = 14

// hoseRows are hoses, mixing cell and return line with what they hold. Of a hose what leaves the nozzle next comes first.
func (m *Model) hoseRows() []row {
	p := m.book.Plumbing()
	var out []row
	for i := range p.Hoses {
		h := &p.Hoses[i]
		id := string(fluid.HosePlace(h.Name))
		stretches := check.StretchesOf(m.book, h.Name)
		for n, s := range stretches {
			name := ""
			switch {
			case n == 0 && len(stretches) > 1:
				name = h.Name + ", next"
			case n == 0:
				name = h.Name
			}
			out = append(out, m.behind(id, span{theme.Strong, name}, pipeLabel, theme.Base, m.stretchWords(&s)+m.sinceWords(s.Since.V, s.Since.Known))...)
			id = ""
		}
	}
	cell := check.StretchIn(m.book, p.Cell.Liquid)
	out = append(out, m.behind(string(fluid.CellPlace), span{theme.Strong, "pump, manifold"}, pipeLabel, theme.Base, m.stretchWords(&cell)+m.sinceWords(m.book.CellMovedAt()))...)
	if p.Return.Size > 0 {
		back := check.StretchIn(m.book, p.Return.Liquid)
		out = append(out, m.behind(string(fluid.ReturnPlace), span{theme.Strong, "return line"}, pipeLabel, theme.Base, m.stretchWords(&back))...)
	}
	return out
}

// sinceWords say since when something stands there, with the date where that was another day.
func (m *Model) sinceWords(at core.Moment, known bool) string {
	switch {
	case !known:
		return ""
	case at.Date() != core.At(m.at).Date():
		return ", since " + at.Date() + " " + at.Clock()
	}
	return ", since " + at.Clock()
}

// stretchWords are what a stretch holds: "1.41 gal of a, bermuda, zoysia", "0.31 gal: b 2 to 98%, a 2 to 98%".
func (m *Model) stretchWords(s *check.Stretch) string {
	switch {
	case s.Volume == 0 && s.Air > 0:
		return s.Air.Text() + " gal of air"
	case s.Volume == 0:
		return "nothing"
	}
	words := s.Volume.Text() + " gal"
	if !s.Mixed() {
		return words + " of " + fromWords(&s.Of[0])
	}
	for i := range s.Of {
		sep := ", "
		if i == 0 {
			sep = ": "
		}
		words += sep + s.Of[i].Percent() + " " + shortFrom(&s.Of[i])
	}
	return words
}

// fromWords name a liquid by its compartment and its mix.
func fromWords(o *check.StretchOf) string {
	if o.Letter != 0 && o.Mix != "" {
		return string(rune(o.Letter)) + ", " + o.Mix
	}
	return shortFrom(o)
}

func shortFrom(o *check.StretchOf) string {
	switch {
	case o.Letter != 0:
		return string(rune(o.Letter))
	case o.Mix != "":
		return o.Mix
	}
	return waterWord
}

// ranRows say what one minute does with the valves as they stand.
func (m *Model) ranRows() []row {
	words := "one minute, the gun shut"
	if !m.book.Rig().PumpFlow.Known {
		words += "; the pump by the setting bypass_flow_gpm"
	}
	out := []row{sectionRow(words)}
	for _, r := range []struct{ id, name, pump string }{{ranOn, "pump on", core.PumpOn}, {ranOff, "pump off", core.PumpOff}} {
		out = append(out, m.behind(r.id, span{theme.Strong, r.name}, pipeLabel, theme.Base, m.minuteWords(r.pump))...)
	}
	return out
}

func (m *Model) minuteWords(pump string) string {
	const minute = 60.0
	es, err := m.book.Prepare("", core.At(m.at), &core.Ran{Seconds: core.Known(minute), Pump: pump})
	if err != nil {
		what, _ := sentences(err)
		return what
	}
	f, ok := es[0].What.(*core.Ran)
	if !ok || len(f.Drawn)+len(f.Levelled) == 0 {
		return "nothing moves"
	}
	return m.movedWords(f) + m.overWords(f)
}

// movedWords are what moves, and where it goes.
func (m *Model) movedWords(f *core.Ran) string {
	var out []string
	back := m.book.Plumbing().LineUp.Return
	for _, d := range f.Drawn {
		words := fmt.Sprintf("%s gal of %c ", d.Volume.Text(), d.From)
		switch back {
		case d.From:
			words += "go round"
		case 0:
			words += "leave by the bypass"
		default:
			words += fmt.Sprintf("run into %c through the return", back)
		}
		out = append(out, words)
	}
	for _, l := range f.Levelled {
		out = append(out, fmt.Sprintf("%s gal run from %c to %c by their levels", l.Volume.Text(), l.From, l.To))
	}
	return strings.Join(out, "; ")
}

// overWords say what runs over.
func (m *Model) overWords(f *core.Ran) string {
	into, over, after := m.book.RanOver(f)
	if over == 0 {
		return ""
	}
	return fmt.Sprintf("; %c is full after %s s: %s gal run over", into, wholeWords(after), over.Text())
}
