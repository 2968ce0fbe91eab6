package tui

import (
	"strings"

	"example.com/tintline/core"
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

// pipe draws the plumbing from the valves to the nozzle to scale: cell, then hose, a letter a column.
func (m *Model) pipe(w int) line {
	p := m.book.Plumbing()
	a := m.applicator()
	hose := ""
	if a != nil {
		hose = a.Hose
	}
	h := p.Hose(hose)
	if h == nil {
		return text(theme.Dim, " no hose")
	}
	l := line{fill: theme.Base}
	l.left = append(l.left, span{theme.Strong, " " + m.supplyWords() + " "}, span{theme.Dim, string(m.g.supply) + " pump "})
	l.right = append([]span{{theme.Dim, " " + string(m.g.supply) + " "}}, m.nozzle(h, a)...)
	used := 0
	for _, s := range append(l.left, l.right...) {
		used += cells(s.s)
	}
	const brackets = 2
	columns := max(w-used-brackets-1, brackets)
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

func (m *Model) supplyWords() string {
	up := m.book.Plumbing().LineUp
	words := "none"
	if len(up.Supply) > 0 {
		words = strings.Join(strings.Split(string(up.Supply), ""), "+")
	}
	switch {
	case up.Return == 0 && len(up.Supply) > 0:
		words += " no return"
	case up.Return != 0 && string(up.Supply) != string(up.Return):
		words += " return " + string(rune(up.Return))
	}
	return words
}

// nozzle is what leaves next, in a letter that cannot be missed, and how strong it is where that is not as meant.
func (m *Model) nozzle(h *fluid.Hose, a *core.Applicator) []span {
	name := "nozzle"
	if a != nil {
		name = a.Name
		if t := m.book.Plumbing().Tank(a.Name); t != nil {
			from := m.origins(t.Liquid.From, int64(t.Liquid.Volume))
			if from == "" {
				from = "empty"
			}
			out := []span{{theme.Dim, "reel   "}, {theme.Strong, m.g.clean(name) + " gives "}, {theme.Nozzle, " " + strings.ToUpper(m.g.clean(from)) + " "}}
			return m.withStrength(out)
		}
	}
	out := []span{{theme.Strong, m.g.clean(name) + " gives "}}
	if len(h.Charge) > 0 && h.Charge[0].Air > 0 {
		return append(out, span{theme.Nozzle, " AIR "})
	}
	for _, p := range h.Charge {
		if p.Volume == 0 {
			continue
		}
		from := m.origins(p.From, int64(p.Volume))
		out = append(out, span{theme.Nozzle, " " + strings.ToUpper(from) + " "})
		break
	}
	return m.withStrength(out)
}

func (m *Model) withStrength(out []span) []span {
	if s := m.strength(); s != "" {
		out = append(out, span{theme.Strong, " " + s})
	}
	return out
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

// change says what it takes until the nozzle gives what is lined up, clean enough for the lawn ahead.
func (m *Model) change(w int) line {
	const wide, middle = 96, 76
	l := line{left: []span{{theme.Dim, " change "}}}
	c := m.got.change
	if t := m.book.Tint(); t != nil {
		l.right = []span{{theme.Strong, tintWords(t) + " "}}
	}
	if c == nil {
		l.left = append(l.left, span{theme.Base, m.noChange()})
		return l
	}
	figure := func(name string, v measure.Volume, s core.Maybe[float64], band string) string {
		words := name + " "
		if s.Known {
			words += wholeWords(s.V) + " s "
		}
		return words + v.Text() + band + " gal"
	}
	gap := "   "
	words := figure("arrives", c.Arrives, c.ArrivesS, "")
	if w >= middle {
		words += gap + figure("half", c.Half, c.HalfS, "")
	}
	l.left = append(l.left, span{theme.Base, words + gap}, span{theme.Strong, figure("clean", c.Clean, c.CleanS, " "+m.g.plusMinus()+c.Band.Text())})
	if w >= wide {
		if c.DecidedBy != "" {
			l.left = append(l.left, span{theme.Dim, gap + m.g.clean(c.DecidedBy) + " decides"})
		}
	}
	return l
}

func (m *Model) noChange() string {
	a := m.applicator()
	switch {
	case a != nil && m.book.Plumbing().Tank(a.Name) != nil:
		return m.g.clean(a.Name) + " sprays from its own tank"
	case m.got.visiting && len(m.got.left) == 0:
		return "seen for the next lawn when you leave this one"
	case m.got.lawn == "" || m.got.err != nil:
		return "no lawn ahead to change for"
	case len(m.book.Plumbing().LineUp.Supply) != 1:
		return "not one compartment feeds the pump"
	}
	return "none: the nozzle gives what is lined up"
}

func tintWords(t *core.TintSeen) string {
	if t.Seconds.Known {
		return "tint seen at " + wholeWords(t.Seconds.V) + " s"
	}
	return "tint seen at " + t.Volume.V.Text() + " gal"
}
