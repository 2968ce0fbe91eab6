package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/tui/theme"
)

// columns are the widths of a tank's row.
type columns struct {
	name, bar, left, band, cover, here int
	words                              bool // "gal" and "sq ft" stand behind the figures
}

// tankMarks are the cells before a tank's name: what it is open to, its letter, and the blanks between.
const tankMarks = 6

func tankColumns(w int) columns {
	c := columns{name: 20, left: 13, band: 7, cover: 7, here: 10}
	switch {
	case w >= 96:
		c = columns{name: 34, left: 17, band: 7, cover: 14, here: 10, words: true}
	case w >= 76:
	case w >= 60:
		c = columns{name: 12, left: 12, band: 6, cover: 6, here: 10}
	case w >= 50:
		c = columns{name: 12, left: 12, cover: 6, here: 9}
	default:
		c = columns{name: 8, left: 11, here: 9}
	}
	c.bar = w - tankMarks - c.name - c.left - c.band - c.cover - c.here
	return c
}

// tank is a row of the tanks: a compartment, an applicator's own tank or its hopper.
type tank struct {
	compartment *fluid.Compartment
	own         *fluid.ApplicatorTank
	hopper      *fluid.Hopper
	inUse       bool // liquid leaves it now, or comes back
}

// tankRows lists all tanks in the order of the rig.
func (m *Model) tankRows() []tank {
	p := m.book.Plumbing()
	var out []tank
	for i := range p.Compartments {
		t := &p.Compartments[i]
		used := strings.IndexByte(string(p.LineUp.Supply), t.Letter) >= 0 || p.LineUp.Return == t.Letter
		out = append(out, tank{compartment: t, inUse: used})
	}
	a := m.applicator()
	for i := range p.Tanks {
		t := &p.Tanks[i]
		out = append(out, tank{own: t, inUse: a != nil && a.Name == t.Name})
	}
	for i := range p.Hoppers {
		h := &p.Hoppers[i]
		out = append(out, tank{hopper: h, inUse: a != nil && a.Name == h.Name})
	}
	return out
}

// tanks draw a row for each compartment and each applicator's own tank. A row is a place to tap. With more tanks than
// rows, those in use come first, then those that stand first; the last row says how much the others hold.
func (m *Model) tanks(r rect, s *scene) []line {
	c := tankColumns(r.w)
	shown, others := m.tankRows(), []tank(nil)
	if len(shown) > r.h {
		shown, others = parted(shown, r.h-1)
	}
	out := make([]line, 0, r.h)
	for i, t := range shown {
		switch {
		case t.own != nil:
			out = append(out, m.ownTank(t.own, c))
			continue
		case t.hopper != nil:
			out = append(out, m.hopperRow(t.hopper, c))
			continue
		}
		s.spots = append(s.spots, spot{rect{r.x, r.y + i, r.w, 1}, tapTarget{act: actTake, letter: t.compartment.Letter}})
		out = append(out, m.compartment(t.compartment, c))
	}
	if len(others) > 0 {
		out = append(out, m.otherTanks(others, r.w))
	}
	return out
}

// parted takes so many tanks, in their order: those in use in any case.
func parted(all []tank, rows int) (shown, others []tank) {
	used := 0
	for _, t := range all {
		if t.inUse {
			used++
		}
	}
	free := max(rows-used, 0)
	for _, t := range all {
		switch {
		case t.inUse && len(shown) < rows:
			shown = append(shown, t)
		case !t.inUse && free > 0:
			shown, free = append(shown, t), free-1
		default:
			others = append(others, t)
		}
	}
	return shown, others
}

// otherTanks is one row for the tanks that have none of their own.
func (m *Model) otherTanks(list []tank, w int) line {
	l := line{left: []span{{theme.Dim, m.padded(fmt.Sprintf(" +%d", len(list)), tankMarks-2)}}}
	room := w - tankMarks + 2
	for _, t := range list {
		left, name, tok := "", "", theme.Tank
		switch {
		case t.own != nil:
			left, name = glance(t.own.Liquid.Volume), m.g.clean(t.own.Name)
		case t.hopper != nil:
			left, name = poundsWords(t.hopper.Mass())+" lb", m.g.clean(t.hopper.Name)
		default:
			left, name, tok = glance(t.compartment.Liquid.Volume), string(rune(t.compartment.Letter)), m.letterToken(t.compartment.Letter)
		}
		figure := " " + left + "  "
		if room -= cells(name) + cells(figure); room < 0 {
			break
		}
		l.left = append(l.left, span{tok, name}, span{theme.Base, figure})
	}
	return l
}

// letterToken is the colour of a compartment's liquid.
func (m *Model) letterToken(letter byte) theme.Token {
	colour := ""
	if set := m.book.RigCompartment(letter); set != nil {
		colour = set.Colour
	}
	return theme.Compartment(letter, colour)
}

func (m *Model) compartment(t *fluid.Compartment, c columns) line {
	up := m.book.Plumbing().LineUp
	name := m.book.MixIn(string(t.Letter))
	if set := m.book.RigCompartment(t.Letter); set != nil && name == "" {
		name = set.Name
	}
	tok := m.letterToken(t.Letter)
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
	if a != nil && (a.Tank > 0 || !a.Sprays()) { // it is not sprayed from here: what covers is the gun
		a = m.book.Applicator(check.FirstApplicator(m.book))
	}
	l := m.tankLine(&t.Tank, c, tok, note, a)
	l.left = append([]span{{weight, open + back + " "}, {tok, string(rune(t.Letter))}, {theme.Base, "  "}, {weight, m.column(m.g.clean(name), c.name)}}, l.left...)
	return l
}

func (m *Model) ownTank(t *fluid.ApplicatorTank, c columns) line {
	mark, weight := "  ", theme.Base
	if a := m.applicator(); a != nil && a.Name == t.Name {
		mark, weight = string(m.g.supply)+" ", theme.Strong
	}
	name := m.g.clean(t.Name)
	blanks, room := "    ", c.name
	if cells(name) >= room { // no letter stands before it
		blanks, room = " ", room+len(blanks)-1
	}
	if from := m.origins(t.Liquid.From, int64(t.Liquid.Volume)); from != "" && cells(name)+len(": ") < room {
		name += ": " + m.g.clean(from)
	}
	note := ""
	if t.Liquid.Volume == 0 {
		note = "empty"
	}
	l := m.tankLine(&t.Tank, c, theme.Tank, note, m.book.Applicator(t.Name))
	l.left = append([]span{{weight, mark + blanks}, {weight, m.column(name, room)}}, l.left...)
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
	l.right = []span{{theme.Strong, m.ended(left, c.left)}}
	if c.band > 0 {
		l.right = append(l.right, span{theme.Dim, m.ended(m.g.plusMinus()+bandWords(m.book.Band(t)), c.band)})
	}
	if c.cover > 0 {
		l.right = append(l.right, span{theme.Base, m.ended(cover, c.cover)})
	}
	weight := theme.Dim
	if note == notHere {
		weight = theme.Refused
	}
	l.right = append(l.right, span{weight, m.noteWord(note, c.here)})
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
	n := share(int64(t.Liquid.Volume), int64(t.Capacity), w)
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
	return m.letterToken(l)
}
