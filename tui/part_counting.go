package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/tui/theme"
)

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
	switch w := t.plan.Way(); {
	case w != nil && w.RunS > 0:
		s.offer, s.small = fmt.Sprintf("start: pump on, gun shut, %s s", wholeWords(w.RunS)), "the bell rings when the return is to be turned"
	case !t.flow.Known:
		s.offer, s.small = "type the gallons that were pushed", "the flow of the gun is not in the book, so there is no count-down"
	case t.plan.Tint == core.BetweenAlike:
		s.offer, s.small = fmt.Sprintf("start: the count-down begins in %s s", wholeWords(m.startDelay())), "the bell rings at the start and when it is clean; no tint is to be seen"
	default:
		s.offer = fmt.Sprintf("start: the count-down begins in %s s", wholeWords(m.startDelay()))
		s.small = "the bell rings at the start, as the new liquid comes, and when it is clean"
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

// showSweep counts down while the bypass washes the cell.
func (m *Model) showSweep() sheet {
	t := &m.turn
	left := m.sweepLeft()
	head := fmt.Sprintf("gun shut, pump on: supply %c, return still %c", t.to, m.book.Plumbing().LineUp.Return)
	if left <= 0 {
		head = fmt.Sprintf("turn the return to %c now, then Enter", t.to)
	}
	return sheet{
		about: m.counted(theme.Strong, head, ""),
		offer: fmt.Sprintf("the return is turned to %c: log it", t.to), small: "then the hose is pushed out",
		body: m.bigBody(placed(wholeWords(left), wholeWords(t.plan.Way().RunS)), fmt.Sprintf("s until you turn the return to %c", t.to)),
	}
}

// showRunning is the count-down, in figures that are read from the lid: seconds to the tint, then seconds to clean. The
// second keeps its place when the first is through.
func (m *Model) showRunning() sheet {
	t := &m.turn
	p := m.progress()
	s := sheet{offer: "stop: the trigger is let go", small: m.tintHint()}
	big, unit, head, more, mood := "", "", "", "", theme.Strong
	switch {
	case t.phase == phaseDelay:
		big, unit, head = wholeWords(t.began.Sub(m.at).Seconds()), "s until you pull the trigger", "nozzle in the lid, above the liquid"
		s.offer, s.small = "start now", ""
	case p.Stage == check.StageClean:
		big, unit, head = "CLEAN", "let go of the trigger", "clean enough for the lawn ahead"
		more = check.LittleText(p.Left) + " of the old liquid is left"
	default:
		big, unit = m.twoFigures(p)
		head = "into " + m.place(p)
		if p.Turn > 0 {
			head += fmt.Sprintf(", for %s s more", wholeWords(p.TurnS))
		}
		if p.Stage == check.StageArriving {
			head += "   the new liquid comes, not clean yet"
		}
		more = p.ToGo.Text() + " gal to go   stopped now, " + check.LittleText(p.Left) + " of the old liquid is left"
	}
	if p.Late && t.told() == 0 && t.phase == phaseRunning {
		mood = theme.Stop
		s.small = "No tint seen? z: the valves are not where the book says. Seen: t."
		if t.plan.Tint == core.TowardsClear {
			s.small = "No colour gone? z: the valves are not where the book says. Gone: t."
		}
	}
	s.about = m.counted(mood, head, more)
	s.body = m.bigBody(big, unit)
	return s
}

// twoFigures are the seconds until the new liquid comes and until it is clean.
func (m *Model) twoFigures(p check.Progress) (big, unit string) {
	until := m.fitting(m.w-len(" s until colour fades, "), "s until clean, "+m.turn.plan.Margins, "s until clean")
	big = placed(wholeWords(p.ToGoS), wholeWords(m.turn.plan.AdvisedS.V))
	if m.turn.plan.Tint == core.BetweenAlike {
		return big, until + ", no tint tells them apart"
	}
	comes := ""
	if p.ArrivesS > 0 {
		comes, until = wholeWords(p.ArrivesS), "s until "+m.comes()+", "+until
	}
	return placed(comes, wholeWords(m.turn.plan.ArrivesS.V)) + "  " + big, until
}

// tintHint says what the key of the tint means now.
func (m *Model) tintHint() string {
	c, n := m.turn.plan, m.turn.told()
	switch {
	case c.Tint == core.BetweenAlike:
		return "no tint tells them apart: go by gallons"
	case n >= tints:
		return ""
	case c.Tint == core.TowardsClear:
		return [tints]string{"t when the colour begins to fade", "t when half of it is gone", "t when the last of it is gone"}[n]
	}
	return [tints]string{"t when the tint comes", "t when half of the colour is there", "t when all of it is there"}[n]
}

// counted stands over the big figures: what goes on, the line as it would stand now, and more.
func (m *Model) counted(mood theme.Token, head, more string) []line {
	out := []line{{left: []span{{theme.Base, " "}, {mood, head}}}, m.pipe(m.w)}
	if more != "" {
		out = append(out, text(theme.Base, " "+more))
	}
	return out
}

// bigBody fills a page with figures that are read from the lid.
func (m *Model) bigBody(big, unit string) func(r rect) []line {
	return func(r rect) []line {
		var out []line
		for _, l := range m.bigLines(big, r.w-2, r.h-1) {
			out = append(out, line{left: []span{{theme.Base, " "}, {theme.Strong, l}}})
		}
		return append(out, text(theme.Strong, " "+unit))
	}
}

func (m *Model) startDelay() float64 { return m.book.Setting(core.StartDelayS) }
