package tui

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// pipe draws the plumbing from the valves to the nozzle to scale: cell, then hose, a letter a column. Words give way
// before the drawing does; the letter at the nozzle never does. While a push-back is timed it is drawn as it moves.
func (m *Model) pipe(w int) line {
	a := m.sprayer()
	hose := ""
	if a != nil {
		hose = a.Hose
	}
	now := check.LineNow(m.book, hose)
	if moving := m.turn.line; moving.Hose != nil && now.Hose != nil && moving.Hose.Name == now.Hose.Name {
		now = moving
	}
	h := now.Hose
	if h == nil {
		return m.ownOnly(a)
	}
	several := ""
	if len(m.book.Plumbing().Hoses) > 1 {
		several = m.g.clean(h.Name) + " "
	}
	const brackets, leastDrawn = 2, 12
	sign := string(m.g.supply)
	l := line{fill: theme.Base}
	columns := 0
	for short := 0; short <= mostShort; short++ {
		pump := sign + " pump "
		if short > 0 {
			pump = sign + " "
		}
		l.left = []span{{theme.Strong, " " + m.supplyWords(short > 0) + " "}, {theme.Dim, pump}}
		if short < mostShort {
			l.left = append(l.left, span{theme.Dim, several})
		}
		l.right = append([]span{{theme.Dim, " " + sign + " "}}, m.nozzle(h, a, short)...)
		if columns = w - spanCells(l.left) - spanCells(l.right) - brackets - 1; columns >= leastDrawn {
			break
		}
	}
	columns = max(columns, brackets)
	inCell := 0
	if total := now.Cell.Size + h.Size; total > 0 && now.Cell.Size > 0 {
		inCell = max(int(measure.MulDivRound(int64(columns), int64(now.Cell.Size), int64(total))), 1)
	}
	l.left = append(l.left, span{theme.Dim, "["})
	l.left = append(l.left, m.drawStretches(cellStretches(&now.Cell), nil, inCell)...)
	l.left = append(l.left, span{theme.Dim, "]"})
	l.left = append(l.left, m.drawStretches(hoseStretches(h), now.Runs(), columns-inCell)...)
	return l
}

func spanCells(list []span) int {
	n := 0
	for _, s := range list {
		n += cells(s.s)
	}
	return n
}

// ownOnly is the pipe of a rig without a hose, or of an applicator that hangs on none.
func (m *Model) ownOnly(a *core.Applicator) line {
	if a == nil || m.book.Plumbing().Tank(a.Name) == nil {
		return text(theme.Dim, " no hose")
	}
	l := text(theme.Dim, " no hose: its own tank")
	l.right = append(m.nozzle(nil, a, 1), span{theme.Base, " "})
	return l
}

// supplyWords say what feeds the pump and where the return goes, if that is another place.
func (m *Model) supplyWords(short bool) string {
	up := m.book.Plumbing().LineUp
	words, back := "none", "return "
	if short {
		words, back = "-", string(m.g.back)
	}
	if len(up.Supply) > 0 {
		words = strings.Join(strings.Split(string(up.Supply), ""), "+")
	}
	switch {
	case up.Return == 0 && len(up.Supply) > 0:
		words += " no return"
	case up.Return != 0 && string(up.Supply) != string(up.Return):
		words += " " + back + string(rune(up.Return))
	}
	return words
}

// mostShort is the shortest form of what stands around the pipe.
const mostShort = 4

// nozzle is what leaves next, in a letter that cannot be missed, and how strong it is where that is not as meant. The
// shorter it has to be, the more goes: 1 the word, 2 the share of the label, 3 the strength, 4 most of the name.
func (m *Model) nozzle(h *fluid.Hose, a *core.Applicator, short int) []span {
	const shortName = 6
	name, gives := "nozzle", " gives "
	if short > 0 {
		gives = " "
	}
	if a != nil {
		name = m.g.clean(a.Name)
	}
	if short >= mostShort {
		name = m.g.fit(name, shortName)
	}
	var out []span
	letter := ""
	switch t := m.ownTankOf(a); {
	case t != nil:
		if letter = m.origins(t.Liquid.From, int64(t.Liquid.Volume)); letter == "" {
			letter = "empty"
		}
		if h != nil {
			out = append(out, span{theme.Dim, m.g.clean(h.Name)}, span{theme.Base, "  "})
		}
	case len(h.Charge) > 0 && h.Charge[0].Air > 0:
		letter = "air"
	default:
		for _, p := range h.Charge {
			if p.Volume > 0 {
				letter = m.origins(p.From, int64(p.Volume))
				break
			}
		}
	}
	const longest = 12 // a mix put straight into a tank goes by its name
	out = append(out, span{theme.Strong, name + gives}, span{theme.Nozzle, " " + m.g.fit(strings.ToUpper(m.g.clean(letter)), longest) + " "})
	if s := m.strength(short); s != "" && m.turn.line.Hose == nil {
		out = append(out, span{theme.Strong, " " + s})
	}
	return out
}

// ownTankOf is the tank of an applicator, nil if it has none.
func (m *Model) ownTankOf(a *core.Applicator) *fluid.ApplicatorTank {
	if a == nil {
		return nil
	}
	return m.book.Plumbing().Tank(a.Name)
}
