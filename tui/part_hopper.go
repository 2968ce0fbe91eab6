package tui

import (
	"strings"

	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// hopperRow is the row of a hopper among the tanks: what is in it, how full it is, the pounds left, what they cover.
func (m *Model) hopperRow(h *fluid.Hopper, c columns) line {
	mark, weight := "  ", theme.Base
	if a := m.applicator(); a != nil && a.Name == h.Name && m.only != check.OnlySpray {
		mark, weight = string(m.g.supply)+" ", theme.Strong
	}
	name := m.g.clean(h.Name)
	var holds []string
	for _, q := range h.Holds {
		holds = append(holds, m.book.ProductByKey(q.Key).ProductName)
	}
	if len(holds) > 0 {
		name += ": " + m.g.clean(joined(holds))
	}
	blanks, room := "    ", c.name
	if cells(name) >= room { // no letter stands before it
		blanks, room = " ", room+len(blanks)-1
	}
	note := ""
	switch {
	case h.Mass() == 0:
		note = "empty"
	case m.got.lawn != "" && !check.HopperFits(m.book, h.Name, m.got.lawn):
		note = notHere
	}
	l := line{left: []span{{weight, mark + blanks}, {weight, m.column(name, room)}}}
	if c.bar > 4 {
		full := share(int64(h.Mass()), int64(h.Capacity), c.bar-2)
		l.left = append(
			l.left, span{theme.Base, "["}, span{theme.Tank, strings.Repeat(string(m.g.full), full)},
			span{theme.Dim, strings.Repeat(string(m.g.empty), c.bar-2-full)}, span{theme.Base, "]"},
		)
	}
	left, cover := poundsWords(h.Mass())+" of "+poundsWords(h.Capacity), ""
	if area, known := m.book.HopperCovers(h.Name); known {
		cover = area.Thousands()
	}
	if c.words || c.left >= len("100 of 120 lb") {
		left += " lb"
	}
	if c.words && cover != "" {
		cover += " sq ft"
	}
	l.right = []span{{theme.Strong, m.ended(left, c.left)}}
	if c.band > 0 {
		l.right = append(l.right, span{theme.Dim, strings.Repeat(" ", c.band)})
	}
	if c.cover > 0 {
		l.right = append(l.right, span{theme.Base, m.ended(cover, c.cover)})
	}
	t := theme.Dim
	if note == notHere {
		t = theme.Refused
	}
	l.right = append(l.right, span{t, m.noteWord(note, c.here)})
	return l
}

// share is how many of w cells a part of a whole fills; what is not nothing fills at least one.
func share(part, whole int64, w int) int {
	n := 0
	if whole > 0 {
		n = int(measure.MulDivRound(part, int64(w), whole))
	}
	if n == 0 && part > 0 {
		n = 1
	}
	return min(max(n, 0), w)
}

// poundsWords are pounds for the eye: whole ones from 20 up, without the unit.
func poundsWords(m measure.Mass) string {
	if m >= 20*measure.Pound {
		return wholeWords(m.Pounds())
	}
	return strings.TrimSuffix(measure.Multiple(m.Pounds()), ".0")
}
