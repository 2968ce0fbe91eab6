package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core/say"
	"example.com/tintline/tui/theme"
)

// mostStatus is how many rows the status takes at most.
const mostStatus = 2

// statusRows is how many rows the status has something for.
func (m *Model) statusRows(w int) int {
	switch {
	case m.open:
		return m.typeRows(w)
	case m.writing:
		return 1
	case m.status.kind == saysNothing && m.spec() != nil: // what was logged last is no matter of a page
		return 0
	case m.status.kind == saysNothing:
		return min(len(m.got.last), 1)
	}
	return min(len(m.statusText(w, mostStatus)), mostStatus)
}

// statusLeast is how many of so many rows it must have: what was logged last gives way to the words of a stop, what
// became of the last key does not, nor the valves that are to be set now.
func (m *Model) statusLeast(rows int) int {
	const roomy = 5
	switch {
	case m.status.kind == saysBooked && m.status.do != "" && !m.writing && rows >= roomy:
		return mostStatus
	case m.writing || m.status.kind != saysNothing:
		return 1
	}
	return 0
}

// statusLines say what became of the last key, or what was logged last; with a line open, what may be typed.
func (m *Model) statusLines(r rect, s *scene) []line {
	switch {
	case r.h == 0:
		return nil
	case m.open:
		return m.lineHelp(r, s)
	case m.writing:
		return m.writingLines(r)
	case m.status.kind == saysNothing:
		return []line{m.last(r.w)}
	}
	t := theme.Base
	switch m.status.kind {
	case saysBooked:
		t = theme.Booked
	case saysChosen:
		t = theme.Strong
	case saysRefused:
		t = theme.Refused
	case saysStop:
		t = theme.Ask
	case saysNothing:
	}
	out := make([]line, r.h)
	for i, l := range m.statusText(r.w, r.h) {
		if l != "" {
			out[i] = line{left: []span{{theme.Base, " "}, {t, l}}}
		}
	}
	return out
}

// statusText is the status in at most so many rows: what happened, then what to do. In one row what to do goes
// before what happened, because the act can be seen elsewhere.
func (m *Model) statusText(w, rows int) []string {
	head := ""
	switch m.status.kind {
	case saysBooked:
		head = "booked "
	case saysRefused:
		head = "NOT BOOKED: "
	case saysNothing, saysChosen, saysStop:
	}
	room := w - 2
	what, do := head+m.g.clean(m.status.what), m.g.clean(m.status.do)
	end := ""
	if do != "" && !strings.HasSuffix(what, ".") {
		end = "."
	}
	whole := m.g.wrap(join(what+end, do), room)
	switch {
	case len(whole) == 1:
		return whole
	case rows == 1 && m.status.kind == saysBooked && do != "":
		_, figures, _ := strings.Cut(do, ": ")
		tight := strings.Join(strings.Fields(figures), " ")
		return []string{m.g.fitWords(m.fitting(room, "booked. "+do, do, "booked. "+tight, tight), room)}
	case m.status.kind == saysBooked && do != "":
		return []string{m.g.fitWords(what, room), m.g.fitWords(do, room)}
	case len(whole) > rows:
		whole[rows-1] = m.g.fitWords(strings.Join(whole[rows-1:], " "), room)
		whole = whole[:rows]
	}
	return whole
}

// writingLines stand until the disk has reported; keys still work meanwhile.
func (m *Model) writingLines(r rect) []line {
	out := make([]line, r.h)
	out[0].left = []span{{theme.Base, " "}, {theme.Waiting, "writing " + m.g.clean(m.onItsWay)}}
	if n := len(m.queue); n > 0 {
		out[0].right = []span{{theme.Waiting, fmt.Sprintf(" %d more wait", n)}, {theme.Base, " "}}
	}
	return out
}

// last is the last thing logged.
func (m *Model) last(w int) line {
	const label = " last "
	if len(m.got.last) == 0 {
		return line{}
	}
	words := ""
	for i, e := range m.got.last {
		if i > 0 {
			words += "; "
		}
		words += say.Fact(e.What)
	}
	words = m.got.last[0].At.Clock() + "  " + m.g.clean(words)
	out := line{left: []span{{theme.Dim, label}, {theme.Base, words}}}
	right := []span{{theme.Base, "  "}, {theme.Key, m.shown(actStrike)}, {theme.Dim, " strikes it "}}
	n := cells(label) + cells(words)
	for _, s := range right {
		n += cells(s.s)
	}
	if n <= w {
		out.right = right
	}
	return out
}

// item is one piece of what helps to type: words, and a place to tap if it is an answer.
type item struct {
	t      theme.Token
	words  string
	target *tapTarget
	row, x int
}

// helpItems are the answers that have a number and what else may be typed.
func (m *Model) helpItems(w int) []item {
	var out []item
	for i, c := range m.line.choices {
		out = append(out, item{t: theme.Strong, words: fmt.Sprintf("%d %s", i+1, m.g.clean(c)), target: &tapTarget{act: actChoose, letter: byte(i)}})
	}
	t, words := theme.Dim, m.line.hint
	if m.line.told != "" {
		t, words = theme.Strong, m.line.told
	}
	for _, hint := range m.g.wrap(m.g.clean(words), w-2) {
		out = append(out, item{t: t, words: hint})
	}
	return out
}

// spread gives items their places in rows of w cells, none of them wider than most, and tells how many rows that
// takes.
func (m *Model) spread(list []item, w, most int) (rows int) {
	const between = 3
	row, x := 0, 1
	for i := range list {
		it := &list[i]
		it.words = m.g.fit(it.words, min(most, w-2))
		n := cells(it.words)
		if x > 1 && x+n > w-1 {
			row, x = row+1, 1
		}
		it.row, it.x = row, x
		x += n + between
	}
	if len(list) == 0 {
		return 0
	}
	return row + 1
}

// typeRows is how many rows lineHelp has something for.
func (m *Model) typeRows(w int) int {
	if m.line.wrong != "" {
		return mostStatus
	}
	return min(m.spread(m.helpItems(w), w, w), mostStatus)
}

// lineHelp says what is wrong with what was typed, or what may be typed; numbered answers can be tapped. Where there
// is little room the answers are shortened, so that each has its place.
func (m *Model) lineHelp(r rect, s *scene) []line {
	const shortest = 8
	out := make([]line, r.h)
	top := 0
	if m.line.wrong != "" {
		wrong := m.g.wrap(m.g.clean(m.line.wrong), r.w-2)
		most := r.h
		if len(m.line.choices) > 0 {
			most = max(r.h-1, 1)
		}
		if len(wrong) > most {
			wrong[most-1] = m.g.fitWords(strings.Join(wrong[most-1:], " "), r.w-2)
			wrong = wrong[:most]
		}
		for _, l := range wrong {
			out[top].left = []span{{theme.Base, " "}, {theme.Refused, l}}
			top++
		}
	}
	list := m.helpItems(r.w)
	for most := r.w; m.spread(list, r.w, most) > r.h-top && most > shortest; most-- {
		if n := len(list); n > max(len(m.line.choices), 1) {
			list = list[:n-1] // hints go first
			most++
		}
	}
	x := 0
	for i, it := range list {
		if i > 0 && it.row != list[i-1].row {
			x = 0
		}
		row := it.row + top
		if row >= r.h {
			break
		}
		out[row].left = append(out[row].left, span{theme.Base, strings.Repeat(" ", it.x-x)}, span{it.t, it.words})
		x = it.x + cells(it.words)
		if it.target != nil {
			s.spots = append(s.spots, spot{rect{r.x + it.x, r.y + row, cells(it.words), 1}, *it.target})
		}
	}
	return out
}
