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
	s.rows = append(s.rows, m.changeRows()...)
	s.rows = append(s.rows, m.findingRows()...)
	switch {
	case t.plan == nil && m.isLinedUp(t.to):
		s.small = "The nozzle gives it now, as clean as the lawn ahead asks."
	case m.isLinedUp(t.to):
		s.offer, s.small = "go to the tank lid", "the valves stand on it already"
	case t.plan == nil:
		s.offer, s.small = fmt.Sprintf("turn supply and return to %c", t.to), m.valvesFor(t.to)
	default:
		s.offer, s.small = fmt.Sprintf("turn supply and return to %c, then to the tank lid", t.to), m.valvesFor(t.to)
	}
	return s
}

func (m *Model) valvesFor(l byte) string {
	for _, u := range m.book.Rig().LineUps {
		if string(u.Supply) == string(l) && u.Return == l && len(u.Valves) > 0 {
			return "valves: " + valveWords(u.Valves)
		}
	}
	return "set the valves so"
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

// findingRows are the verdict, finding by finding.
func (m *Model) findingRows() []row {
	if m.turn.err != nil {
		return nil
	}
	out := []row{blankRow()}
	if len(m.turn.report.Findings) == 0 {
		return append(out, m.wrapped(theme.Base, fmt.Sprintf("%d checks would find nothing; the label and local rules decide.", m.turn.report.Quiet))...)
	}
	for _, f := range m.turn.report.Findings {
		said := m.finding(f)
		lines := m.g.wrap(join(said.do, said.says), m.w-wordWidth-4)
		for i, l := range lines {
			head := span{theme.Base, m.padded("", wordWidth)}
			if i == 0 {
				head = span{said.t, m.padded(said.word, wordWidth)}
			}
			out = append(out, row{line: line{left: []span{head, {theme.Base, " " + l}}}})
		}
	}
	return out
}

// showReady is what to do at the lid, before the trigger is pulled.
func (m *Model) showReady() sheet {
	t := &m.turn
	s := sheet{about: []line{text(theme.Strong, fmt.Sprintf(" to %c   %s", t.to, m.valvesFor(t.to)))}}
	if t.plan == nil {
		s.rows = m.wrapped(theme.Base, "The nozzle gives it now, as clean as the lawn ahead asks.")
		return s
	}
	for i, words := range []string{
		"Eyewear and gloves on, as the label asks (usual care).",
		"Open the lid. Hold the nozzle inside the lid, above the liquid: never in it.",
		"The hose holds what came before. " + m.legsWords(),
		"Do not stop at the first tint: the old mix still comes.",
	} {
		lines := m.wrapped(theme.Base, fmt.Sprintf("%d  %s", i+1, words))
		s.rows = append(s.rows, lines...)
	}
	s.rows = append(s.rows, m.changeRows()...)
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

func (m *Model) legsWords() string {
	if len(m.turn.plan.Legs) == 0 {
		return "No compartment can take it: push it into a can that you log."
	}
	return "Push " + m.pushWords(m.turn.plan.PushBack) + "."
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
		unit, head = "s and gal to go until clean", fmt.Sprintf("into %c", p.Into)
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
