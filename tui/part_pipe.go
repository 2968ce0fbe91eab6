package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// stretch is a length of pipe and what most of it came from. The key counts only where there is liquid.
type stretch struct {
	volume measure.Volume
	key    int32
	air    bool
}

// pipe draws the plumbing from the valves to the nozzle to scale: cell, then hose, a letter a column. Words give way
// before the drawing does; the letter at the nozzle never does.
func (m *Model) pipe(w int) line {
	p := m.book.Plumbing()
	a := m.sprayer()
	hose := ""
	if a != nil {
		hose = a.Hose
	}
	h := p.Hose(hose)
	if h == nil {
		return m.ownOnly(a)
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
		l.right = append([]span{{theme.Dim, " " + sign + " "}}, m.nozzle(h, a, short)...)
		if columns = w - spanCells(l.left) - spanCells(l.right) - brackets - 1; columns >= leastDrawn {
			break
		}
	}
	columns = max(columns, brackets)
	inCell := 0
	if total := p.Cell.Size + h.Size; total > 0 && p.Cell.Size > 0 {
		inCell = max(int(measure.MulDivRound(int64(columns), int64(p.Cell.Size), int64(total))), 1)
	}
	l.left = append(l.left, span{theme.Dim, "["})
	l.left = append(l.left, m.drawStretches(cellStretches(&p.Cell), inCell)...)
	l.left = append(l.left, span{theme.Dim, "]"})
	l.left = append(l.left, m.drawStretches(hoseStretches(h), columns-inCell)...)
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
	if s := m.strength(short); s != "" {
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

// cellStretches share the cell out by origin: it is one mixture, so the order says nothing.
func cellStretches(c *fluid.Cell) []stretch {
	var out []stretch
	for _, p := range c.Liquid.From {
		out = append(out, stretch{volume: measure.Volume(p.N), key: p.Key})
	}
	if void := c.Size - c.Liquid.Volume; void > 0 {
		out = append(out, stretch{volume: void, air: true})
	}
	return out
}

func hoseStretches(h *fluid.Hose) []stretch {
	var out []stretch
	for _, p := range h.FromPumpEnd() {
		for _, f := range p.From {
			out = append(out, stretch{volume: measure.Volume(f.N), key: f.Key})
		}
		if p.Air > 0 {
			out = append(out, stretch{volume: p.Air, air: true})
		}
	}
	return out
}

// drawStretches draws n columns, each with the sign of what most of it holds.
func (m *Model) drawStretches(all []stretch, n int) []span {
	var total measure.Volume
	for _, s := range all {
		total += s.volume
	}
	if total == 0 || n <= 0 {
		return nil
	}
	var out []span
	add := func(t theme.Token, r rune) {
		if last := len(out) - 1; last >= 0 && out[last].t == t && strings.HasSuffix(out[last].s, string(r)) {
			out[last].s += string(r)
			return
		}
		out = append(out, span{t, string(r)})
	}
	at, i := measure.Volume(0), 0 // at: where all[i] begins
	for c := 0; c < n; c++ {
		from := measure.Volume(measure.MulDiv(int64(total), int64(c), int64(n)))
		to := measure.Volume(measure.MulDiv(int64(total), int64(c+1), int64(n)))
		most, best := measure.Volume(-1), stretch{}
		sum := map[int32]measure.Volume{}
		for j, begin := i, at; j < len(all) && begin < to; j++ {
			end := begin + all[j].volume
			if part := min(end, to) - max(begin, from); part > 0 {
				k := all[j].key
				if all[j].air {
					k = airKey
				}
				sum[k] += part
				if sum[k] > most {
					most, best = sum[k], all[j]
				}
			}
			if end <= to {
				i, at = j+1, end
			}
			begin = end
		}
		if best.air {
			add(theme.Dim, m.g.air)
		} else {
			add(m.originToken(best.key), m.originSign(best.key))
		}
	}
	return out
}

// airKey stands for air among the keys of origins.
const airKey int32 = -1

// change says what it takes until the nozzle gives what is lined up, clean enough for the lawn ahead. When it is
// clean is what counts: the rest stands there if it has room.
func (m *Model) change(w int) line {
	const label = " change "
	l := line{left: []span{{theme.Dim, label}}}
	if t := m.book.Tint(); t != nil {
		l.right = []span{{theme.Strong, "  " + tintWords(t) + " "}}
	}
	room := w - len(label) - spanCells(l.right) - 1
	c := m.got.change
	if c == nil {
		l.left = append(l.left, span{theme.Base, m.noChange(room)})
		return l
	}
	figure := func(name string, v measure.Volume, s core.Maybe[float64], band string) string {
		words := name + " "
		if s.Known {
			words += wholeWords(s.V) + " s "
		}
		return words + v.Text() + band + " gal"
	}
	arrives, half := figure("arrives", c.Arrives, c.ArrivesS, ""), figure("half", c.Half, c.HalfS, "")
	clean := figure("clean", c.Clean, c.CleanS, " "+m.g.plusMinus()+c.Band.Text())
	decides := ""
	if c.DecidedBy != "" {
		decides = "   " + m.g.clean(c.DecidedBy) + " decides"
	}
	for _, f := range [][2]string{
		{arrives + "   " + half + "   ", decides},
		{arrives + "   " + half + "   ", ""},
		{arrives + "  " + half + "  ", ""},
		{arrives + "  ", ""},
		{"", ""},
	} {
		if cells(f[0])+cells(clean)+cells(f[1]) <= room || f[0] == "" {
			l.left = append(l.left, span{theme.Base, f[0]}, span{theme.Strong, clean}, span{theme.Dim, f[1]})
			break
		}
	}
	return l
}

// noChange says why there is nothing to push out. Where what is lined up is itself the matter, it must not read as if
// all were well.
func (m *Model) noChange(w int) string {
	a := m.applicator()
	up := m.book.Plumbing().LineUp
	switch {
	case a != nil && !a.Sprays():
		return m.g.clean(a.Name) + " spreads dry product: the hose is no matter of it"
	case m.ownTankOf(a) != nil:
		return m.g.clean(a.Name) + " sprays from its own tank"
	case m.got.visiting && len(m.got.left) == 0:
		return m.fitting(w, "seen for the next lawn when you leave this one", "for the next lawn: leave first")
	case m.got.lawn == "" || m.got.err != nil:
		return "no lawn ahead to change for"
	case len(up.Supply) != 1:
		return m.fitting(w, "not one compartment feeds the pump", "no one supply is open")
	}
	for _, f := range m.got.report.Findings {
		if f.Weight >= check.Ask && f.Reason == "" && f.Part == check.PartCompartment {
			return m.fitting(
				w, fmt.Sprintf("a push does not help: the %s is about %c itself", f.Weight, up.Supply[0]),
				fmt.Sprintf("no help: the %s is about %c", f.Weight, up.Supply[0]),
			)
		}
	}
	return fmt.Sprintf("the nozzle gives %c, as lined up", up.Supply[0])
}

// fitting is the first text that fits, else the last one.
func (m *Model) fitting(w int, texts ...string) string {
	for _, s := range texts[:len(texts)-1] {
		if cells(s) <= w {
			return s
		}
	}
	return texts[len(texts)-1]
}

func tintWords(t *core.TintSeen) string {
	if t.Seconds.Known {
		return "tint seen at " + wholeWords(t.Seconds.V) + " s"
	}
	return "tint seen at " + t.Volume.V.Text() + " gal"
}
