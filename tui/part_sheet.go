package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/tui/theme"
)

// stageSheet draws a page. Title, status and band stand where verdict, status and band stand on the cab screen, so
// that a thumb finds them again; the rows have what is below.
func (m *Model) stageSheet(s *scene) {
	top := m.rects[bandVerdict]
	own := min(m.statusRows(m.w), top.h-1)
	s.add(m.head())
	about := append([]line{m.titled(m.spec().title)}, m.sheet.about...)
	s.add(m.cutAfter(about, top.h-own)...)
	from := len(s.lines)
	if !m.readsOnly() {
		s.end(top.y + top.h - own)
		s.add(m.statusLines(rect{top.x, top.y + top.h - own, top.w, own}, s)...)
		act := m.rects[bandAct]
		s.add(m.bandLines(act, s)...)
		from = act.y + act.h
	}
	foot := m.pageFoot()
	if body := (rect{0, from, m.w, foot.y - from}); m.sheet.body != nil {
		s.add(m.sheet.body(body)...)
	} else {
		s.add(m.framed(body, s)...)
	}
	s.end(foot.y)
	s.add(m.foot(foot, s)...)
	s.end(m.h)
}

// leastRows is how many rows stay in sight above what is below them.
const leastRows = 4

// framed draws the rows between what stands over and under them. What is below has what the rows leave, and half of the
// room at least.
func (m *Model) framed(r rect, s *scene) []line {
	head := m.sheet.head[:min(len(m.sheet.head), max(r.h-leastRows, 0))]
	r.y, r.h = r.y+len(head), r.h-len(head)
	n := min(len(m.sheet.below), max(r.h-len(m.sheet.rows), r.h/2-r.h/16), max(r.h-leastRows, 0))
	rows := rect{r.x, r.y, r.w, r.h - n}
	out := append(append([]line(nil), head...), m.rowLines(rows, s)...)
	for len(out) < len(head)+rows.h {
		out = append(out, line{})
	}
	for i, b := range m.sheet.below[:n] {
		if i == n-1 && n < len(m.sheet.below) {
			b.line = text(theme.Dim, fmt.Sprintf("%d more, %s shows all", len(m.sheet.below)-i, m.sheet.more))
		}
		b.left = append([]span{{theme.Base, "  "}}, b.left...)
		out = append(out, b.line)
	}
	return out
}

// readsOnly tells whether there is nothing on the page but text: it has the whole height then. Where some rows have an
// offer and others have none, the page does not jump from row to row.
func (m *Model) readsOnly() bool {
	picks := m.spec().pick != nil && len(m.picks()) > 0
	return m.sheet.offer == "" && !picks && m.free() && !m.busy() && m.status.kind == saysNothing
}

// pageFoot is the place of a page's keys at the bottom. On a small screen the rows of the page are worth more than
// all keys.
func (m *Model) pageFoot() rect {
	const most, high = 4, 24
	_, n := place(m.pageKeys(), m.w)
	if m.h < high {
		n = min(n, leastFoot)
	}
	n = min(n, most)
	return rect{0, m.h - n, m.w, n}
}

func (m *Model) titled(title string) line {
	return line{left: []span{{theme.Base, " "}, {theme.Strong, m.g.clean(title)}}}
}

// rowLines draw the rows in sight; each that can be chosen is a place to tap.
func (m *Model) rowLines(r rect, s *scene) []line {
	rows, at := m.sheet.rows, &m.on[m.spec().page]
	if r.h <= 0 {
		return nil
	}
	at.rows = r.h
	m.inSight(at)
	chosen := m.chosen()
	at.top = max(min(at.top, len(rows)-r.h), 0)
	var out []line
	for i := at.top; i < len(rows) && len(out) < r.h; i++ {
		l := rows[i].line
		mark := span{theme.Base, "  "}
		if rows[i].id != "" {
			if rows[i].id == chosen {
				mark = span{theme.Strong, string(m.g.supply) + " "}
			}
			s.spots = append(s.spots, spot{rect{r.x, r.y + len(out), r.w, 1}, tapTarget{act: actRow, row: rows[i].id}})
		}
		l.left = append([]span{mark}, l.left...)
		out = append(out, l)
	}
	if more := len(rows) - at.top - len(out); more > 0 {
		m.moreRow(out, len(out)-1, fmt.Sprintf("%d more below", more+1), actPageDown, r, s)
	}
	if at.top > 0 && r.h > 2 {
		m.moreRow(out, 0, fmt.Sprintf("%d more above", at.top+1), actPageUp, r, s)
	}
	return out
}

// moreRow says that there is more that way, in the place of a row; a tap goes there.
func (m *Model) moreRow(out []line, i int, words string, to act, r rect, s *scene) {
	out[i] = text(theme.Dim, "  "+words)
	s.spots = append(withoutRow(s.spots, r.y+i), spot{rect{r.x, r.y + i, r.w, 1}, tapTarget{act: to}})
}

func withoutRow(spots []spot, y int) []spot {
	var out []spot
	for _, p := range spots {
		if p.act != actRow || p.y != y {
			out = append(out, p)
		}
	}
	return out
}

// words are rows of text that are wrapped to the width.
func (m *Model) wrapped(t theme.Token, s string) []row {
	var out []row
	for _, l := range m.g.wrap(m.g.clean(s), m.w-4) {
		out = append(out, row{line: text(t, l)})
	}
	return out
}

// cutAfter is as much of lines as n rows hold; where the words of the last one would go on, it says so.
func (m *Model) cutAfter(lines []line, n int) []line {
	if len(lines) <= n || n < 1 {
		return lines[:min(len(lines), max(n, 0))]
	}
	out := append([]line(nil), lines[:n]...)
	last := &out[n-1]
	spans := append([]span(nil), last.left...)
	const wrapped = 14 // a line that has more room than a long word was not wrapped
	if k := len(spans) - 1; k >= 0 && len(last.right) == 0 && spanCells(spans) > m.w-wrapped {
		room := m.w - 1 - spanCells(spans[:k])
		words := m.g.fit(spans[k].s, room)
		for cells(words) >= room && strings.Contains(strings.TrimSpace(words), " ") {
			words = words[:strings.LastIndexByte(words, ' ')]
		}
		spans[k].s = words + string(m.g.cut)
	}
	last.left = spans
	return out
}

// told are lines below a page's title that are wrapped to the width.
func (m *Model) told(t theme.Token, s string) []line {
	var out []line
	if s = m.g.clean(s); cells(s) <= m.w-2 {
		return []line{text(t, " "+s)} // as it stands: wrapping closes its gaps
	}
	for _, l := range m.g.wrap(s, m.w-2) {
		out = append(out, text(t, " "+l))
	}
	return out
}

// noted are words behind the word of a note, in as many lines as they take, each below the one before.
func (m *Model) noted(words string) []line {
	const word = " NOTE  "
	var out []line
	for i, l := range m.g.wrap(m.g.clean(words), m.w-1-len(word)) {
		lead := word
		if i > 0 {
			lead = strings.Repeat(" ", len(word))
		}
		out = append(out, text(theme.Note, lead+l))
	}
	return out
}

// cell is a piece of a row of a given width, with a space behind.
func (m *Model) cell(t theme.Token, s string, w int) span {
	return span{t, m.padded(m.g.clean(s), w) + " "}
}

// cellRight is a figure that ends at the right of its width.
func (m *Model) cellRight(t theme.Token, s string, w int) span {
	return span{t, m.ended(m.g.clean(s), w) + " "}
}

// heading is a row of column heads.
func heading(spans ...span) row {
	for i := range spans {
		spans[i].t = theme.Dim
	}
	return row{line: line{left: spans}}
}

// blank is an empty row.
func blankRow() row { return row{} }

// sectionRow is a short title between rows.
func sectionRow(s string) row { return row{line: text(theme.Strong, strings.TrimSpace(s))} }
