package tui

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// coming is a visit that lies ahead.
type coming struct {
	number                   int
	name, grass, from, notes string
	area                     measure.Area
}

// aheadList keeps the visits ahead as long as the answers they come from hold.
type aheadList struct {
	key  answersKey
	list []coming
}

// ahead lists the visits after the one that the screen is about.
func (m *Model) ahead() []coming {
	if m.ahd.key == m.got.key {
		return m.ahd.list
	}
	var out []coming
	subject := !m.got.visiting // the first planned one is the subject then
	for i, v := range m.book.Day().Visits {
		if v.State != core.Planned || !m.book.Day().Open {
			continue
		}
		if subject {
			subject = false
			continue
		}
		l := m.book.Lawn(v.Lawn)
		if l == nil {
			continue
		}
		c := coming{number: i + 1, name: m.g.clean(l.LawnName), grass: m.g.clean(grassWords(l.Zones)), area: l.Area(), notes: m.g.clean(hazardWords(l.Zones))}
		c.from = "no mix" // none in the tank that fits
		if fits := check.Fits(m.book, v.Lawn); len(fits) > 0 {
			c.from = fmt.Sprintf("from %c", fits[0])
		}
		out = append(out, c)
	}
	m.ahd.key, m.ahd.list = m.got.key, out
	return out
}

// nextColumns are the widths of what is said about a visit to come.
type nextColumns struct{ label, name, grass, notes int }

// nextColumns takes as much for each column as the visits shown need; where that is too much, grass gives way
// first, then the name, and at last what is to be minded there.
func (m *Model) nextColumns(list []coming, w int) nextColumns {
	const narrow, wideLabel, number, area, from = 60, 9, 4, 9, 7
	c := nextColumns{label: len(" next")}
	if w >= narrow {
		c.label = wideLabel
	}
	for _, v := range list {
		c.name, c.grass = max(c.name, cells(v.name)+1), max(c.grass, cells(v.grass)+1)
		if v.notes != "" {
			c.notes = max(c.notes, cells(v.notes)+len("! "))
		}
	}
	over := c.name + c.grass + c.notes - (w - c.label - number - area - from)
	for _, give := range []struct {
		from  *int
		least int
	}{{&c.grass, 13}, {&c.name, 16}, {&c.grass, 0}, {&c.notes, 0}, {&c.name, 0}} {
		if n := min(over, max(*give.from-give.least, 0)); n > 0 {
			*give.from -= n
			over -= n
		}
	}
	const useful = 6 // fewer cells say nothing
	if c.grass < useful {
		c.grass = 0
	}
	return c
}

// nextVisits list the visits to come; the last row says how many there are besides.
func (m *Model) nextVisits(w, rows int) []line {
	list := m.ahead()
	c := m.nextColumns(list[:min(rows, len(list))], w)
	var out []line
	for i := 0; i < rows; i++ {
		label := ""
		if i == 0 {
			label = " next"
		}
		if rest := len(list) - rows; i == rows-1 && rest > 0 {
			more := fmt.Sprintf(" +%d more", rest)
			if i == 0 {
				more = fmt.Sprintf(" next +%d", rest)
			}
			if cells(more) < c.label {
				label = more
			}
		}
		l := line{left: []span{{theme.Dim, m.padded(label, c.label)}}}
		switch {
		case i < len(list):
			v := list[i]
			l.left = append(
				l.left,
				span{theme.Base, m.ended(fmt.Sprint(v.number), 2) + "  "}, span{theme.Base, m.column(v.name, c.name)},
				span{theme.Base, m.column(v.grass, c.grass)}, span{theme.Base, m.ended(v.area.Text(), 7) + "  "},
				span{theme.Strong, v.from + " "},
			)
			if v.notes != "" && c.notes > 0 {
				l.left = append(l.left, span{theme.Base, m.g.fit("! "+v.notes, c.notes)})
			}
		case i == 0:
			l.left = append(l.left, span{theme.Base, "no other visit today"})
		}
		out = append(out, l)
	}
	return out
}

// column fills text up to w cells, the last of which stays blank.
func (m *Model) column(s string, w int) string {
	if w <= 1 {
		return ""
	}
	return m.padded(m.g.fit(s, w-1), w)
}
