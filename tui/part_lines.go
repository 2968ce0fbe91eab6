package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/say"
	"example.com/tintline/tui/theme"
)

// visit is the lawn that all of the screen is about.
func (m *Model) visit(w int) line {
	const wide, narrow = 100, 76
	l := m.book.Lawn(m.got.lawn)
	if l == nil {
		words := " all visits are done"
		if !m.book.Day().Open {
			words = fmt.Sprintf(" no day yet; %d lawns in the book", len(m.book.Lawns()))
			if d := m.book.Day(); d.Date != "" {
				words = " last day " + d.Date + ", " + m.g.clean(d.Operator)
			}
		}
		return text(theme.Strong, words)
	}
	where := " to "
	if m.got.visiting {
		where = " at "
	}
	zones := l.ZoneNames()
	if len(m.got.left) > 0 {
		zones = m.got.left
	}
	about := "   " + m.g.clean(joined(zones))
	if h := hazardWords(l.Zones); h != "" {
		about += "   ! " + m.g.clean(h)
	}
	out := line{left: []span{
		{theme.Dim, where}, {theme.Strong, m.g.clean(l.LawnName) + "   " + m.g.clean(grassWords(l.Zones))}, {theme.Base, about},
	}}
	plan := m.got.report.Plan
	if plan.Area == 0 {
		out.right = []span{{theme.Base, "  " + l.Area().Text() + " sq ft "}}
		return out
	}
	area := "  " + plan.Area.Text() + " sq ft"
	switch a := m.applicator(); {
	case w < narrow:
		area = ""
	case w >= wide && a != nil:
		area += "  " + m.g.clean(a.Name) + " " + rateWords(a)
	}
	out.right = []span{{theme.Base, area}, {theme.Strong, "  " + plan.Volume.Text() + " gal "}}
	return out
}

func (m *Model) weather() line {
	w := m.book.Weather()
	if w == nil {
		return line{left: []span{{theme.Dim, " weather "}, {theme.Strong, "not looked at yet today"}}}
	}
	words := ""
	add := func(s string) {
		if words != "" {
			words += "   "
		}
		words += s
	}
	switch {
	case w.Wind.Known:
		add(strings.TrimSpace("wind " + w.Wind.V.Text() + " " + w.WindFrom))
	case w.WindFrom != "":
		add("wind from " + w.WindFrom)
	}
	for _, f := range []struct {
		v            core.Maybe[float64]
		before, unit string
	}{{w.Temp, "", " F"}, {w.Humidity, "humidity ", "%"}, {w.RainFree, "rain in ", " h"}} {
		if f.v.Known {
			add(f.before + wholeWords(f.v.V) + f.unit)
		}
	}
	return line{
		left:  []span{{theme.Dim, " weather "}, {theme.Strong, words}},
		right: []span{{theme.Base, "  looked " + w.At.Clock() + ", " + ageWords(w.At, m.at) + " "}},
	}
}

// last is the last thing logged.
func (m *Model) last() line {
	if len(m.got.last) == 0 {
		return line{left: []span{{theme.Dim, " last    "}, {theme.Base, "nothing that can be struck"}}}
	}
	words := ""
	for i, e := range m.got.last {
		if i > 0 {
			words += "; "
		}
		words += say.Fact(e.What)
	}
	return line{
		left:  []span{{theme.Dim, " last    "}, {theme.Base, m.got.last[0].At.Clock() + "  " + m.g.clean(words)}},
		right: []span{{theme.Base, " "}, {theme.Key, m.shown(actStrike)}, {theme.Dim, " strikes it "}},
	}
}

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
		c.from = "none fits"
		if fits := check.Fits(m.book, v.Lawn); len(fits) > 0 {
			c.from = fmt.Sprintf("from %c", fits[0])
		}
		out = append(out, c)
	}
	m.ahd.key, m.ahd.list = m.got.key, out
	return out
}

func (m *Model) nextVisits(w, rows int) []line {
	list := m.ahead()
	name, grass := 18, 20
	if w >= 100 {
		name, grass = 26, 30
	} else if w < 76 {
		name, grass = 16, 14
	}
	var out []line
	for i := 0; i < rows; i++ {
		label := ""
		if i == 0 {
			label = " next"
		}
		if rest := len(list) - rows; i == rows-1 && rest > 0 {
			label = m.padded(label, 5) + fmt.Sprintf(" +%d", rest)
		}
		l := line{left: []span{{theme.Dim, m.padded(label, 9)}}}
		switch {
		case i < len(list):
			c := list[i]
			l.left = append(
				l.left,
				span{theme.Base, m.ended(fmt.Sprint(c.number), 2) + "  "}, span{theme.Base, m.padded(c.name, name) + " "},
				span{theme.Base, m.padded(c.grass, grass)}, span{theme.Base, m.ended(c.area.Text(), 7) + "  "},
				span{theme.Strong, m.padded(c.from, 10)},
			)
			if c.notes != "" {
				l.left = append(l.left, span{theme.Base, "! " + c.notes})
			}
		case i == 0:
			l.left = append(l.left, span{theme.Base, "no other visit today"})
		}
		out = append(out, l)
	}
	return out
}

// unchecked names what the verdict does not rest on.
func (m *Model) unchecked(w, rows int) []line {
	words := "nothing was asked: there is no lawn ahead"
	if m.got.visiting && len(m.got.left) == 0 {
		words = "nothing more to ask here: every zone is logged"
	}
	if list := m.got.report.NotChecked; len(list) > 0 {
		words = m.g.clean(strings.Join(list, "; "))
	}
	const label = " not checked "
	wrapped := m.g.wrap(words, w-len(label)-1)
	if len(wrapped) > rows {
		wrapped[rows-1] = m.g.fit(strings.Join(wrapped[rows-1:], " "), w-len(label)-1)
		wrapped = wrapped[:rows]
	}
	var out []line
	for i, s := range wrapped {
		head := label
		if i > 0 {
			head = strings.Repeat(" ", len(label))
		}
		out = append(out, line{left: []span{{theme.Dim, head}, {theme.Base, s}}})
	}
	return out
}
