package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/tui/theme"
)

// keyPlace is where a key stands in the footer.
type keyPlace struct {
	x, row, w int
	b         binding
}

const (
	leftLabel = "take from"
	between   = 2 // cells between two keys
)

// cabKeys lists the keys that have a fixed place in the footer of the cab screen.
func (m *Model) cabKeys() []binding {
	var out []binding
	for _, b := range m.keys {
		switch b.act {
		case actBack, actSend, actPick, actUp, actDown, actPageUp, actPageDown, actRun:
			continue
		}
		if b.act == actQuit && len(b.Keys()) == 1 {
			continue
		}
		if b.act == actTake && m.book.Plumbing().Compartment(b.letter) == nil {
			continue
		}
		out = append(out, b)
	}
	return out
}

// pageKeys lists the keys of a line, a question or a page: those that work.
func (m *Model) pageKeys() []binding {
	var out []binding
	for _, b := range m.keys {
		if b.Enabled() && !b.unlisted {
			out = append(out, b)
		}
	}
	return out
}

// place shares the keys out over lines of w cells. Keys keep their places whether they work or not, so that a
// glove finds them again.
func place(list []binding, w int) (out []keyPlace, rows int) {
	x, row := 1, 0
	label := false
	for _, b := range list {
		if b.side == rightHand && !label && len(out) > 0 && out[len(out)-1].b.side == leftHand {
			x += len(leftLabel) + between
			label = true
		}
		n := keyCells(b)
		if x+n > w-1 {
			x, row = 1, row+1
		}
		out = append(out, keyPlace{x, row, n, b})
		x += n + between
	}
	return out, row + 1
}

func keyCells(b binding) int {
	h := b.Help()
	if h.Desc == "" {
		return cells(h.Key)
	}
	return cells(h.Key) + 1 + cells(h.Desc)
}

func (m *Model) footRows() int {
	_, rows := place(m.cabKeys(), max(m.w, leastWidth))
	return rows
}

// foot draws the keys that work now, each at its place, which is also a place to tap.
func (m *Model) foot(r rect, s *scene) []line {
	list := m.cabKeys()
	if m.open || m.ask.open() || m.spec() != nil || m.page == pageTrouble {
		list = m.pageKeys()
	}
	places, _ := place(list, r.w)
	out := make([]line, r.h)
	x := make([]int, r.h)
	for _, p := range places {
		if p.row >= r.h || !p.b.Enabled() {
			continue
		}
		out[p.row].left = append(out[p.row].left, m.keySpans(p, p.x-x[p.row])...)
		x[p.row] = p.x + p.w
		if p.b.act == actTake && m.lastLetter(places, p) {
			out[p.row].left = append(out[p.row].left, span{theme.Dim, strings.Repeat(" ", between) + leftLabel})
			x[p.row] += between + len(leftLabel)
		}
		s.spots = append(s.spots, spot{rect{r.x + p.x - 1, r.y + p.row, p.w + between, 1}, p.b.target()})
	}
	if last := r.h - 1; m.open && len(out[last].left) == 0 && m.rects[bandAct].h == 1 {
		out[last] = text(theme.Strong, " "+m.line.extra) // the band has no room for it
	}
	return out
}

func (m *Model) lastLetter(all []keyPlace, p keyPlace) bool {
	last := byte(0)
	for _, q := range all {
		if q.b.act == actTake {
			last = q.b.letter
		}
	}
	return p.b.letter == last
}

func (m *Model) keySpans(p keyPlace, gap int) []span {
	h := p.b.Help()
	out := []span{{theme.Base, strings.Repeat(" ", max(gap, 0))}, {theme.Key, h.Key}}
	if h.Desc != "" {
		out = append(out, span{theme.Base, " " + h.Desc})
	}
	return out
}

// statusLines say what became of the last key; with a line open, what may be typed.
func (m *Model) statusLines(r rect, s *scene) []line {
	if m.open {
		return m.lineHelp(r, s)
	}
	if m.writing {
		return m.writingLines(r)
	}
	t, head := theme.Base, ""
	switch m.status.kind {
	case saysBooked:
		t, head = theme.Booked, "booked "
	case saysChosen:
		t = theme.Strong
	case saysRefused:
		t, head = theme.Refused, "NOT BOOKED: "
	case saysStop:
		t, head = theme.Ask, ""
	case saysNothing:
		return make([]line, r.h)
	}
	what := head + m.g.clean(m.status.what)
	room := r.w - 2
	do := m.g.clean(m.status.do)
	lines := m.g.wrap(join(what, do), room)
	if len(lines) > r.h || (t == theme.Booked && do != "") {
		lines = []string{m.g.fit(what, room), m.g.fit(do, room)}
	}
	return statusRows(r.h, t, lines)
}

// writingLines stand until the disk has reported; keys still work meanwhile.
func (m *Model) writingLines(r rect) []line {
	lines := []string{m.g.fit("writing "+m.g.clean(m.onItsWay), r.w-2)}
	if n := len(m.queue); n > 0 {
		lines = append(lines, fmt.Sprintf("%d more wait", n))
	}
	return statusRows(r.h, theme.Waiting, lines)
}

func statusRows(rows int, t theme.Token, lines []string) []line {
	out := make([]line, rows)
	for i := range out {
		if i < len(lines) && lines[i] != "" {
			out[i] = line{left: []span{{theme.Base, " "}, {t, lines[i]}}}
		}
	}
	return out
}

// lineHelp says what is wrong with what was typed, or what may be typed; numbered answers can be tapped.
func (m *Model) lineHelp(r rect, s *scene) []line {
	out := make([]line, r.h)
	row, x := 0, 1
	put := func(t theme.Token, words string, target *tapTarget) {
		n := cells(words)
		if x > 1 && x+n > r.w-1 {
			row, x = row+1, 1
		}
		if row >= r.h {
			return
		}
		words = m.g.fit(words, r.w-1-x)
		gap := 3
		if x == 1 {
			gap = 1
		}
		out[row].left = append(out[row].left, span{theme.Base, strings.Repeat(" ", gap)}, span{t, words})
		if target != nil {
			s.spots = append(s.spots, spot{rect{r.x + x, r.y + row, cells(words), 1}, *target})
		}
		x += cells(words) + 3
	}
	if m.line.wrong != "" {
		for _, l := range m.g.wrap(m.g.clean(m.line.wrong), r.w-2) {
			if row < r.h {
				out[row].left = []span{{theme.Base, " "}, {theme.Refused, l}}
				row++
			}
		}
		if row < r.h && len(m.line.choices) == 0 {
			put(theme.Dim, m.line.hint, nil)
		}
	}
	for i, c := range m.line.choices {
		put(theme.Strong, fmt.Sprintf("%d %s", i+1, c), &tapTarget{act: actChoose, letter: byte(i)})
	}
	if m.line.wrong == "" || len(m.line.choices) > 0 {
		put(theme.Dim, m.line.hint, nil)
	}
	return out
}
