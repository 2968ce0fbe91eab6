package tui

import (
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

	leastLabelled = 60 // narrower, the letters stand without their label
)

// cabKeys lists the keys that have a fixed place in the footer of the cab screen.
func (m *Model) cabKeys() []binding {
	var out []binding
	for _, b := range m.keys {
		switch b.act {
		case actBack, actSend, actAgain, actPick, actUp, actDown, actPageUp, actPageDown, actRun:
			continue
		}
		if b.unlisted || b.inForm() || b.act == actQuit && len(b.Keys()) == 1 {
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
	if out, rows = laid(list, w, 0); !labelled(list, w, rows) {
		return out, rows
	}
	return laid(list, w, len(leftLabel)+between)
}

// labelled tells whether the letters have their label: not on a narrow screen, nor where it would cost a line.
func labelled(list []binding, w, rows int) bool {
	_, with := laid(list, w, len(leftLabel)+between)
	return w >= leastLabelled && with == rows
}

// laid is place with so many cells for the label behind the letters.
func laid(list []binding, w, label int) (out []keyPlace, rows int) {
	x, row := 1, 0
	for _, b := range list {
		if b.side == rightHand && len(out) > 0 && out[len(out)-1].b.side == leftHand {
			x += label
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

// foremost are the keys that stand on the screen before all others, in the order of their worth.
var foremost = []act{
	actDo, actSend, actAgain, actPick, actFormNext, actFormTick, actFormLeft, actFormRight, actBack, actFormRest, actFormLog, actFormBefore, actYes, actNext, actSkip, actRun, actHelp, actMenu, actQuit, actLog, actPush, actStrike, actWeather,
}

// worth is how early a key is given a place; the less the earlier.
func worth(b binding) int {
	if b.act == actTake {
		return -1
	}
	for i, a := range foremost {
		if a == b.act {
			return i
		}
	}
	return len(foremost)
}

// placeIn places the keys that have room on so many lines, those of most worth first. The others stand on the page
// of keys.
func placeIn(list []binding, w, rows int) []keyPlace {
	if out, n := place(list, w); n <= rows {
		return out
	}
	var kept []binding
	for value := -1; value <= len(foremost); value++ {
		for i, b := range list {
			if worth(b) != value {
				continue
			}
			tried := inserted(list, kept, i)
			if _, n := place(tried, w); n <= rows {
				kept = tried
			}
		}
	}
	out, _ := place(kept, w)
	return out
}

// inserted adds list[i] to the kept ones, in the order of the list.
func inserted(list, kept []binding, i int) []binding {
	var out []binding
	k := 0
	for j, b := range list {
		had := k < len(kept) && kept[k].same(b)
		if had {
			k++
		}
		if had || j == i {
			out = append(out, b)
		}
	}
	return out
}

// same tells whether two bindings are one key.
func (b binding) same(o binding) bool {
	return b.target() == o.target() && b.Help().Key == o.Help().Key
}

func keyCells(b binding) int {
	h := b.Help()
	if h.Desc == "" {
		return cells(h.Key)
	}
	return cells(h.Key) + 1 + cells(h.Desc)
}

// footRows is how many lines all keys of the cab screen take.
func (m *Model) footRows() int {
	_, rows := place(m.cabKeys(), max(m.w, leastWidth))
	return rows
}

// foot draws the keys that work now, each at its place, which is also a place to tap. Where there are more rows than
// lines of keys, each key is so many rows tall.
func (m *Model) foot(r rect, s *scene) []line {
	list, rows := m.cabKeys(), max(min(m.needs.foot, r.h), 1)
	switch {
	case m.form != nil || m.spec() != nil || m.page == pageTrouble:
		list, rows = m.pageKeys(), r.h
	case m.open || m.ask.open():
		list = m.pageKeys()
	}
	tall := max(r.h/rows, 1)
	places := placeIn(list, r.w, rows)
	label := leftLabelled(places)
	out := make([]line, r.h)
	x := make([]int, r.h)
	for _, p := range places {
		if !p.b.Enabled() {
			continue
		}
		row := p.row*tall + tall/2
		out[row].left = append(out[row].left, m.keySpans(p, p.x-x[row])...)
		x[row] = p.x + p.w
		if label && p.b.act == actTake && m.lastLetter(places, p) {
			out[row].left = append(out[row].left, span{theme.Dim, strings.Repeat(" ", between) + leftLabel})
			x[row] += between + len(leftLabel)
		}
		s.spots = append(s.spots, spot{rect{r.x + p.x - 1, r.y + p.row*tall, p.w + between, tall}, p.b.target()})
	}
	if last := r.h - 1; m.open && len(out[last].left) == 0 && m.rects[bandAct].h == 1 {
		out[last] = text(theme.Strong, " "+m.g.fit(m.line.extra, r.w-1)) // the band has no room for it
	}
	return out
}

// leftLabelled tells whether there is room for the label between the letters and the keys of the right hand.
func leftLabelled(all []keyPlace) bool {
	for i := 1; i < len(all); i++ {
		if before := all[i-1]; before.b.side == leftHand && all[i].b.side == rightHand {
			return all[i].row == before.row && all[i].x-before.x-before.w > len(leftLabel)
		}
	}
	return false
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
