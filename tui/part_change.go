package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// showLook is the dry run: what turning there would do. Nothing is logged by it.
func (m *Model) showLook() sheet {
	t := &m.turn
	s := sheet{about: []line{text(theme.Dim, " a letter looks at another compartment; nothing is logged by looking")}}
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
		s.rows = append(s.rows, m.changeRows()...)
		s.rows = append(s.rows, m.reportRows("the trigger pulled then:", &t.look.Report)...)
		s.rows = append(s.rows, m.placeRows()...)
		if t.look.Pushed != nil {
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

// changeRows are the figures of the changeover.
func (m *Model) changeRows() []row {
	c := m.turn.plan
	if c == nil {
		return nil
	}
	out := m.wrapped(theme.Base, "New liquid comes after "+m.gone(c.Arrives.Text(), c.ArrivesS.V, c.ArrivesS.Known)+
		", half of it after "+m.gone(c.Half.Text(), c.HalfS.V, c.HalfS.Known)+
		", clean after "+m.gone(c.Clean.Text(), c.CleanS.V, c.CleanS.Known)+", "+m.g.plusMinus()+c.Band.Text()+" gal. "+c.DecidedBy+" decides.")
	if len(c.Legs) > 0 {
		out = append(out, m.wrapped(theme.Strong, "Push "+m.pushWords(c.PushBack)+".")...)
	}
	return out
}

func (m *Model) gone(gal string, s float64, known bool) string {
	if !known {
		return gal + " gal"
	}
	return gal + " gal (" + wholeWords(s) + " s)"
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

// placeRows say what the push-back does to the compartments that take it.
func (m *Model) placeRows() []row {
	var out []row
	for _, a := range m.turn.look.Places {
		words := fmt.Sprintf("%c %s: gets %s gal, then %s gal", a.Letter, a.Mix, a.Gets.Text(), a.After.Text())
		for _, f := range a.Foreign {
			from := "water"
			if f.From != 0 {
				from = "of " + string(rune(f.From))
			}
			words += fmt.Sprintf(", %s gal %s in it", f.Volume.Text(), from)
		}
		if len(a.Loses) > 0 {
			words += "; no longer for " + joined(a.Loses)
		}
		out = append(out, m.wrapped(theme.Base, words+".")...)
	}
	return out
}

// showReady is what to do at the lid, before the trigger is pulled.
func (m *Model) showReady() sheet {
	t := &m.turn
	s := sheet{about: []line{text(theme.Strong, fmt.Sprintf(" to %c: %s", t.to, m.g.clean(t.look.Mix)))}}
	if t.plan == nil {
		s.rows = m.wrapped(theme.Base, "The nozzle gives it now, as clean as the lawn ahead asks.")
		return s
	}
	for i, step := range t.steps {
		s.rows = append(s.rows, m.hanging(fmt.Sprintf("%d  ", i+1), step.Text)...)
	}
	s.offer = fmt.Sprintf("start: the count-down begins in %s s", wholeWords(m.startDelay()))
	s.small = "the bell rings at the start, as the new liquid comes, and when it is clean"
	if !t.flow.Known {
		s.offer, s.small = "type the gallons that were pushed", "the flow of the gun is not in the book, so there is no count-down"
	}
	return s
}

// placed keeps the place of a figure that gets shorter, so that those behind it do not move.
func placed(now, first string) string {
	return strings.Repeat("_", max(cells(first)-cells(now), 0)) + now
}

// hanging is wrapped text whose lines stand below the first one's words.
func (m *Model) hanging(head, words string) []row {
	var out []row
	for i, l := range m.g.wrap(m.g.clean(words), m.w-4-cells(head)) {
		if i > 0 {
			head = strings.Repeat(" ", cells(head))
		}
		out = append(out, row{line: line{left: []span{{theme.Strong, head}, {theme.Base, l}}}})
	}
	return out
}

// showRunning is the count-down, in figures that are read from the lid.
func (m *Model) showRunning() sheet {
	t := &m.turn
	p := m.progress()
	s := sheet{offer: "stop: the trigger is let go", small: "t when the tint comes"}
	big, unit, head, mood := "", "", "", theme.Strong
	switch {
	case t.phase == phaseDelay:
		big, unit, head = wholeWords(t.began.Sub(m.at).Seconds()), "s until you pull the trigger", "nozzle in the lid, above the liquid"
		s.offer, s.small = "start now", ""
	case p.Stage == check.StageClean:
		big, unit, head = "CLEAN", "let go of the trigger", "clean enough for the lawn ahead"
		s.small = ""
	default:
		big = placed(wholeWords(p.ToGoS), wholeWords(t.flow.V.Seconds(t.plan.PushBack))) + " " + measure.Multiple(p.ToGo.Gallons())
		unit, head = "s and gal to go until clean", "into "+check.Leg{Into: p.Into, To: p.To}.Place()
		if p.Turn > 0 {
			head += fmt.Sprintf(", for %s s more", wholeWords(p.TurnS))
		}
		if p.Stage == check.StageArriving {
			head += "   the new liquid comes, not clean yet"
		}
	}
	if p.Late && !t.tint.Known && t.phase == phaseRunning {
		mood = theme.Stop
		s.small = "No tint seen? z: the valves are not where the book says. Seen: t."
	}
	s.about = []line{{left: []span{{theme.Base, " "}, {mood, head}}}}
	s.body = func(r rect) []line {
		var out []line
		for _, l := range m.bigLines(big, r.w-2, r.h-1) {
			out = append(out, line{left: []span{{theme.Base, " "}, {theme.Strong, l}}})
		}
		return append(out, text(theme.Strong, " "+unit))
	}
	return s
}

func (m *Model) startDelay() float64 { return m.book.Setting(core.StartDelayS) }
