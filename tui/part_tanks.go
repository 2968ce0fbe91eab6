package tui

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// columns are the widths of a tank's row.
type columns struct {
	name, bar, left, band, cover, here int
	words                              bool // "gal" and "sq ft" stand behind the figures
}

func tankColumns(w int) columns {
	const wide = 96
	c := columns{name: 20, left: 13, band: 7, cover: 7, here: 10}
	switch {
	case w >= wide:
		c = columns{name: 34, left: 17, band: 7, cover: 14, here: 10, words: true}
	case w < 76:
		c.name, c.left, c.band, c.cover = 12, 12, 6, 6
	}
	const marks = 6
	c.bar = w - marks - c.name - c.left - c.band - c.cover - c.here
	return c
}

// tanks draw a row for each compartment and each applicator's own tank. A row is a place to tap.
func (m *Model) tanks(r rect, s *scene) []line {
	p := m.book.Plumbing()
	c := tankColumns(r.w)
	var out []line
	for i := range p.Compartments {
		t := &p.Compartments[i]
		s.spots = append(s.spots, spot{rect{r.x, r.y + i, r.w, 1}, tapTarget{act: actTake, letter: t.Letter}})
		out = append(out, m.compartment(t, c))
	}
	for i := range p.Tanks {
		out = append(out, m.ownTank(&p.Tanks[i], c))
	}
	return out
}

func (m *Model) compartment(t *fluid.Compartment, c columns) line {
	up := m.book.Plumbing().LineUp
	set := m.book.RigCompartment(t.Letter)
	colour := ""
	name := m.book.MixIn(string(t.Letter))
	if set != nil {
		colour = set.Colour
		if name == "" {
			name = set.Name
		}
	}
	tok := theme.Compartment(t.Letter, colour)
	open, back := " ", " "
	weight := theme.Base
	if strings.IndexByte(string(up.Supply), t.Letter) >= 0 {
		open, weight = string(m.g.supply), theme.Strong
	}
	if up.Return == t.Letter {
		back = string(m.g.back)
	}
	note := ""
	switch {
	case t.Drawable() == 0:
		note = "empty"
	case m.got.lawn != "" && strings.IndexByte(string(m.got.fits), t.Letter) < 0:
		note = notHere
	}
	a := m.applicator()
	if a != nil && a.Tank > 0 { // it is not sprayed from here: what covers is the gun
		a = m.book.Applicator(check.FirstApplicator(m.book))
	}
	l := m.tankLine(&t.Tank, c, tok, note, a)
	l.left = append([]span{{weight, open + back + " "}, {tok, string(rune(t.Letter))}, {theme.Base, "  "}, {weight, m.padded(m.g.clean(name), c.name-1)}, {theme.Base, " "}}, l.left...)
	return l
}

func (m *Model) ownTank(t *fluid.ApplicatorTank, c columns) line {
	mark, weight := "  ", theme.Base
	if a := m.applicator(); a != nil && a.Name == t.Name {
		mark, weight = string(m.g.supply)+" ", theme.Strong
	}
	name := t.Name
	if from := m.origins(t.Liquid.From, int64(t.Liquid.Volume)); from != "" {
		name += ", holds " + from
	}
	note := ""
	if t.Liquid.Volume == 0 {
		note = "empty"
	}
	l := m.tankLine(&t.Tank, c, theme.Tank, note, m.book.Applicator(t.Name))
	l.left = append([]span{{weight, mark + "    "}, {weight, m.padded(m.g.clean(name), c.name-1)}, {theme.Base, " "}}, l.left...)
	return l
}

// tankLine is the part of a row that all tanks share: bar, gallons left, give or take, what that covers.
func (m *Model) tankLine(t *fluid.Tank, c columns, tok theme.Token, note string, a *core.Applicator) line {
	l := line{}
	if c.bar > 4 {
		full, rest := m.bar(t, c.bar-2)
		l.left = append(l.left, span{theme.Base, "["}, span{tok, full}, span{theme.Dim, rest}, span{theme.Base, "]"})
	}
	left, cover := glance(t.Liquid.Volume)+" of "+size(t.Capacity), ""
	if a != nil && t.Drawable() > 0 {
		cover = a.Delivery.AreaFor(t.Drawable()).Thousands()
	}
	if c.words {
		left += " gal"
		if cover != "" {
			cover += " sq ft"
		}
	}
	l.right = []span{
		{theme.Strong, m.ended(left, c.left)},
		{theme.Dim, m.ended(m.g.plusMinus()+bandWords(m.book.Band(t)), c.band)},
		{theme.Base, m.ended(cover, c.cover)},
		{theme.Refused, m.noteWord(note, c.here)},
	}
	if note != notHere {
		l.right[3].t = theme.Dim
	}
	return l
}

// notHere marks a compartment that may not go on the grass ahead.
const notHere = "not here"

func (m *Model) noteWord(note string, w int) string {
	if note == "" {
		return strings.Repeat(" ", w)
	}
	return m.padded(" "+note, w)
}

// ended fills text up to w cells so that it ends at the right.
func (m *Model) ended(s string, w int) string {
	s = m.g.fit(s, w)
	return strings.Repeat(" ", w-cells(s)) + s
}

// bar is how full a tank is; what is in it shows as at least one cell.
func (m *Model) bar(t *fluid.Tank, w int) (full, rest string) {
	n := 0
	if t.Capacity > 0 {
		n = int(measure.MulDivRound(int64(t.Liquid.Volume), int64(w), int64(t.Capacity)))
	}
	if n == 0 && t.Liquid.Volume > 0 {
		n = 1
	}
	n = min(max(n, 0), w)
	return strings.Repeat(string(m.g.full), n), strings.Repeat(string(m.g.empty), w-n)
}

// origins names where a liquid came from, largest first: "a", "a+b".
func (m *Model) origins(from fluid.Parts, total int64) string {
	const much = 20 // a twentieth is worth a letter
	seen := ""
	for _, want := range []bool{true, false} {
		for _, p := range from {
			o := m.originName(p.Key)
			if large := p.N*2 > total; large == want && p.N*much >= total && !strings.Contains(seen, o) {
				if seen != "" {
					seen += "+"
				}
				seen += o
			}
		}
	}
	return seen
}

// originName is an origin in words: its letter, or the mix that was put straight into an applicator.
func (m *Model) originName(key int32) string {
	if o := m.book.Origin(key); o.Letter == 0 && o.Mix != "" {
		return o.Mix
	}
	return string(m.originSign(key))
}

// originSign is the sign of an origin: its compartment's letter, or that of liquid from none.
func (m *Model) originSign(key int32) rune {
	if l := m.book.Origin(key).Letter; l != 0 {
		return rune(l)
	}
	return m.g.water
}

func (m *Model) originToken(key int32) theme.Token {
	l := m.book.Origin(key).Letter
	if l == 0 {
		return theme.Water
	}
	colour := ""
	if set := m.book.RigCompartment(l); set != nil {
		colour = set.Colour
	}
	return theme.Compartment(l, colour)
}
