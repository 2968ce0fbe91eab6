package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core/check"
	"example.com/tintline/tui/theme"
)

// showLook is the dry run: what turning there would do. Nothing is logged by it.
func (m *Model) showLook() sheet {
	t := &m.turn
	s := sheet{about: []line{text(theme.Dim, " a letter looks at another compartment; nothing is logged by looking")}}
	if t.look.Instead != "" && t.err == nil {
		s.about = []line{text(theme.Base, fmt.Sprintf(" no lawn ahead: judged at %s, which asks for most", m.g.clean(t.look.Instead)))}
	}
	if t.to == 0 {
		s.rows = m.wrapped(theme.Base, "No compartment alone feeds the pump. Press the letter of the one to turn to.")
		return s
	}
	s.about = append([]line{text(theme.Strong, fmt.Sprintf(" if you turned supply and return to %c: %s", t.to, m.g.clean(m.book.MixIn(string(t.to)))))}, s.about...)
	if t.err != nil {
		what, do := sentences(t.err)
		s.rows = append(m.wrapped(theme.Strong, what), m.wrapped(theme.Base, do)...)
	}
	if t.err == nil {
		s.about = append(s.about[:1:1], append([]line{m.verdictWords()}, s.about[1:]...)...)
		s.rows = append(s.rows, m.changeRows()...)
		s.rows = append(s.rows, m.judgedRows()...)
		s.rows = append(s.rows, m.placeRows()...)
		if t.look.Pushed != nil && !t.look.ByStrength {
			s.rows = append(s.rows, m.reportRows("after the push:", t.look.Pushed)...)
		}
		if t.look.Cannot != nil {
			what, do := sentences(t.look.Cannot)
			s.rows = append(append(s.rows, m.wrapped(theme.Strong, what)...), m.wrapped(theme.Base, do)...)
		}
	}
	switch {
	case t.plan == nil && m.isLinedUp(t.to):
		s.small = "The nozzle gives it now, as clean as the lawn ahead asks."
	case m.isLinedUp(t.to):
		s.offer, s.small = "go to the tank lid", "the valves stand on it already"
	case t.plan == nil:
		s.offer, s.small = fmt.Sprintf("turn supply and return to %c", t.to), m.valvesFor()
	default:
		s.offer, s.small = fmt.Sprintf("turn supply and return to %c, then to the tank lid", t.to), m.valvesFor()
	}
	return s
}

// valvesFor names the valves to set, and counts those that stand right already.
func (m *Model) valvesFor() string {
	words := ""
	for _, v := range m.turn.look.Set {
		if words != "" {
			words += "   "
		}
		words += "valve " + v.Valve + " " + v.To
	}
	if words == "" {
		return "set the valves so"
	}
	if n := len(m.turn.look.Stay); n > 0 {
		words += fmt.Sprintf("   (%d stay)", n)
	}
	return words
}

// changeRows are the figures of the changeover, where it goes and what that costs.
func (m *Model) changeRows() []row {
	c := m.turn.plan
	if c == nil {
		return nil
	}
	out := m.figureRows(c)
	if o := c.Overflow; o != nil {
		out = append(out, m.wrapped(theme.Stop, fmt.Sprintf("%c has room for %s gal: %s gal would go in, and %s gal would run over.", o.Letter, o.Room.Text(), o.Gets.Text(), o.Over.Text()))...)
	}
	if c.PushBack > 0 {
		out = append(out, m.hanging("push   ", m.pushWords(c.PushBack)+".")...)
	}
	return append(out, m.wayRows(c)...)
}

// reportRows are a verdict, finding by finding.
func (m *Model) reportRows(when string, r *check.Report) []row {
	out := []row{{line: text(theme.Dim, when)}}
	if len(r.Findings) == 0 {
		return append(out, m.wrapped(theme.Base, fmt.Sprintf("%d checks would find nothing; the label and local rules decide.", r.Quiet))...)
	}
	for _, f := range r.Findings {
		said := m.finding(f)
		for i, l := range m.g.wrap(join(said.do, said.says), m.w-wordWidth-4) {
			head := span{theme.Base, m.padded("", wordWidth)}
			if i == 0 {
				head = span{said.t, m.padded(said.word, wordWidth)}
			}
			out = append(out, row{line: line{left: []span{head, {theme.Base, " " + l}}}})
		}
	}
	return out
}

// verdictWords say in one line what the verdict would be.
func (m *Model) verdictWords() line {
	t := &m.turn
	l := line{left: []span{{theme.Base, " "}}}
	say := func(r *check.Report, when string) {
		word, tok := "nothing found", theme.Base
		if len(r.Findings) > 0 {
			said := m.finding(r.Findings[0])
			word, tok = strings.TrimSpace(said.word), said.t
		}
		l.left = append(l.left, span{tok, word}, span{theme.Base, when})
	}
	if t.look.ByStrength {
		return text(theme.Base, " no lawn to judge by: by strength alone")
	}
	say(&t.look.Report, " if the trigger is pulled then")
	if t.look.Pushed != nil {
		l.left = append(l.left, span{theme.Base, ";  "})
		say(t.look.Pushed, " after the push")
	}
	return l
}

// judgedRows are the verdict of the trigger pulled then, and on which lawn: the one ahead, or one that stands for the route.
func (m *Model) judgedRows() []row {
	t := &m.turn
	switch {
	case t.look.ByStrength:
		return m.wrapped(theme.Base, "No lawn stands in the book that this is for: clean is judged by strength alone, no verdict.")
	case t.look.Instead != "":
		return m.reportRows("the trigger pulled then at "+m.g.clean(t.look.Instead)+":", &t.look.Report)
	}
	return m.reportRows("the trigger pulled then:", &t.look.Report)
}
