package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/upkeep"
	"example.com/tintline/tui/theme"
)

// stageCab is the one screen of the day: what a glance needs.
func (m *Model) stageCab(s *scene) {
	parts := [bands]func(r rect) []line{
		bandHead:      func(rect) []line { return []line{m.head()} },
		bandVerdict:   func(r rect) []line { return m.says(r, s) },
		bandAct:       func(r rect) []line { return m.bandLines(r, s) },
		bandGap1:      m.ruled,
		bandVisit:     func(r rect) []line { return []line{m.visit(r.w)} },
		bandTanks:     func(r rect) []line { return m.tanks(r, s) },
		bandGap2:      m.ruled,
		bandPipe:      func(r rect) []line { return []line{m.pipe(r.w)} },
		bandChange:    func(r rect) []line { return []line{m.change(r.w)} },
		bandGap3:      m.ruled,
		bandWeather:   func(r rect) []line { return []line{m.weather(r.w)} },
		bandNext:      func(r rect) []line { return m.nextVisits(r.w, r.h) },
		bandMixes:     func(r rect) []line { return m.mixes(r.w, r.h) },
		bandGap4:      m.ruled,
		bandUnchecked: func(r rect) []line { return m.unchecked(r.w, r.h) },
		bandFoot:      func(r rect) []line { return m.foot(r, s) },
	}
	for b, part := range parts {
		r := m.rects[b]
		if part != nil && r.h > 0 {
			s.add(part(r)...)
		}
		s.end(r.y + r.h)
	}
}

// head is the line that every page begins with.
func (m *Model) head() line {
	l := line{fill: theme.Head}
	d := m.book.Day()
	late := ""
	if d.Open && d.Date != m.at.Format("2006-01-02") {
		late = " day " + d.Date + " is still open "
	}
	if m.demo {
		l.right = []span{{theme.Demo, m.fitting(m.w*2/11, " DEMO BOOK ", " DEMO ")}}
	}
	room := m.w - spanCells(l.right)
	date, clock := " "+m.at.Format("Mon 2 Jan"), m.at.Format("15:04")
	visit, who := "", ""
	switch {
	case m.book.Rig() == nil:
	case !d.Open:
		visit = "no day open"
	default:
		n, of := d.Number()
		visit, who = fmt.Sprintf("visit %d of %d", n, of), m.g.clean(d.Operator)
	}
	for _, f := range []struct{ date, gap, who string }{{date, "   ", who}, {date, "  ", who}, {date, "  ", ""}, {"", "  ", ""}} {
		words := f.date + gapped("  ", clock)
		if f.date == "" {
			words = " " + clock
		}
		words += gapped(f.gap, visit) + gapped(f.gap, f.who)
		if n := cells(words) + cells(gapped("  ", late)); n <= room || f.date == "" {
			l.left = []span{{theme.Head, words}}
			break
		}
	}
	if late != "" {
		l.left = append(l.left, span{theme.Head, "  "}, span{theme.Demo, late})
	}
	return l
}

func (m *Model) ruled(r rect) []line {
	return []line{text(theme.Rule, strings.Repeat(string(m.g.rule), r.w))}
}

// offer is what the band says: the act that its key does, in words, and a smaller line.
type offer struct {
	act          act
	words, small string
	t            theme.Token
	spans        []span // in the place of words
}

func (m *Model) offer() offer {
	p := m.got.next
	switch {
	case m.form != nil:
		return m.offerForm()
	case m.open:
		return m.offerLine()
	case m.ask.open():
		return offer{act: actYes, words: m.ask.words, small: "Esc leaves it as it is.", t: theme.ActStop}
	case m.quitting:
		return offer{words: "ending as soon as what waits is written", t: theme.ActOff}
	case m.busy():
		return offer{words: "wait: the disk is writing", t: theme.ActOff}
	case m.spec() != nil:
		return m.offerRow()
	}
	o := m.offerNext()
	if len(p.Else) > 0 {
		key := actHold
		if p.Act == check.ActLeave {
			key = actRest
		}
		o.small = join(m.shown(key)+": "+p.ElseWords+".", o.small)
	}
	return o
}

// offerNext is what the check proposes.
func (m *Model) offerNext() offer {
	p := m.got.next
	switch p.Act {
	case check.ActConfirm:
		return m.offerAnswer()
	case check.ActHold:
		return m.offerHold()
	case check.ActCloseDay:
		return offer{act: actDo, words: p.Words, small: "gauges, meters, what stays overnight; step by step", t: theme.Act}
	case check.ActNone:
		return offer{words: p.Words, small: sentence(p.Why), t: theme.ActOff}
	}
	return offer{act: actDo, words: p.Words, small: m.offerSmall(), t: theme.Act}
}

// offerRow is what Enter does on a page.
func (m *Model) offerRow() offer {
	if !m.canPick() {
		return offer{act: actBack, words: "back", small: m.sheet.small, t: theme.ActOff}
	}
	return offer{act: actPick, words: m.sheet.offer, small: m.sheet.small, t: theme.Act}
}

func (m *Model) offerAnswer() offer {
	f, found := m.toAnswer()
	switch {
	case !found:
		return offer{words: m.got.next.Words, small: sentence(m.got.next.Why), t: theme.ActOff}
	case f.Weight == check.Stop:
		return offer{act: actYes, words: "go on in spite of the stop: asks for a reason", small: "Enter does nothing here.", t: theme.ActStop}
	}
	return offer{act: actYes, words: "yes, go on: " + ruleWords(f), small: "Enter does nothing here.", t: theme.ActStop}
}

// offerSmall is what helps to do the act: the valves to set, the seconds to push.
func (m *Model) offerSmall() string {
	p := m.got.next
	switch p.Act {
	case check.ActLineUp:
		if l := m.book.LineUpOf(p.LineUp.Supply, p.LineUp.Return); l != nil && len(l.Valves) > 0 {
			return "valves: " + valveWords(l.Valves)
		}
	case check.ActPushBack:
		return m.pushSmall()
	case check.ActOpenDay:
		if p.Why != "" {
			return sentence(p.Why)
		}
		if due := upkeep.Short(m.book, core.At(m.at)); due != "" {
			return m.g.clean(due) + fmt.Sprintf(" (%s n u)", m.shown(actMenu))
		}
		if due := check.CalibrationDue(m.book, core.At(m.at)); len(due) > 0 {
			return m.g.clean(due[0]) + m.dueKeys()
		}
		return "n, h and the others work once the day is open"
	case check.ActSpray:
		if s := m.got.report.Plan.Seconds; s.Known {
			return wholeWords(s.V) + " s at the gun's flow; l logs another amount"
		}
		return "l logs another amount"
	case check.ActLeave:
		if len(m.got.rest) > 0 {
			return m.shown(actRest) + " carries it over"
		}
	case check.ActSpread:
		if len(p.Facts) == 0 {
			return "Enter asks how much"
		}
		return "l logs another weight"
	case check.ActArrived:
		return "k skips it"
	case check.ActGrowth:
		return "Enter asks: 1 to 6, then Enter"
	case check.ActWeather:
		switch {
		case p.Unchanged:
			key := m.shown(actSame)
			if m.rects[bandAct].h == 1 { // beside what Enter does, where the line of keys has no room for it
				return key + ": same"
			}
			return key + " if it is unchanged"
		case m.book.Weather() != nil:
			return "type it with the wind: 6 SW 64 6h high 88 forecast NAME 6:10"
		}
		return "wind, from, temperature"
	}
	return ""
}

// pushSmall is how long each leg of a push-back takes.
func (m *Model) pushSmall() string {
	c, a := m.got.change, m.applicator()
	if c == nil || a == nil || !a.Flow.Known {
		return m.notAtTint(c)
	}
	words, seconds := "", check.LegSeconds(c.Legs, c.Air, a.Flow.V)
	for i, l := range c.Legs {
		if i > 0 {
			words += ", then "
		}
		words += fmt.Sprintf("%s s into %s", wholeWords(seconds[i]), l.Place())
	}
	return words + "; " + m.notAtTint(c)
}

func (m *Model) notAtTint(c *check.Changeover) string {
	if c != nil && c.Tint == core.BetweenAlike {
		return "no tint tells them apart: go by gallons"
	}
	if c != nil && c.Tint == core.TowardsClear {
		return "do not stop as the colour fades"
	}
	return "do not stop at the first tint"
}

// offerLine is the band while a line of text is open.
func (m *Model) offerLine() offer {
	small := m.line.extra
	if small == "" {
		small = "Esc leaves it."
		if m.follows() && m.sheet.offer != "" {
			small = m.sheet.offer
		}
		if m.line.fresh {
			small = "What you type takes the place of what stands there. " + small
		}
	}
	const before, field = 9, 24 // edge and key; what is left for the answer
	prompt := m.g.clean(m.line.prompt)
	prompt = m.g.fit(prompt, max(m.w-before-field, (m.w-before)/2)) + ": "
	runes := []rune(m.line.in.Value())
	pos := min(max(m.line.in.Position(), 0), len(runes))
	from := 0 // a long text moves to the left, so that the cursor stays in sight
	for room := m.w - before - cells(prompt) - 2; cells(m.g.clean(string(runes[from:pos]))) > room; {
		from++
	}
	spans := []span{{theme.Act, prompt}, {theme.Field, m.g.clean(string(runes[from:pos]))}}
	if pos < len(runes) {
		spans = append(spans, span{theme.Cursor, m.g.clean(string(runes[pos]))}, span{theme.Field, m.g.clean(string(runes[pos+1:]))})
	} else {
		spans = append(spans, span{theme.Cursor, string(m.g.caret)})
	}
	return offer{act: actSend, spans: spans, small: small, t: theme.Act}
}

// bandLines draw the offer over the whole width, with a free row above it where there is room, so that a thumb finds
// it. The act has as many rows as it takes, then comes the smaller line.
func (m *Model) bandLines(r rect, s *scene) []line {
	o := m.offer()
	if o.act != actNone {
		s.spots = append(s.spots, spot{r, tapTarget{act: o.act}})
	}
	keyWidth := 7
	if r.w < leastLabelled {
		keyWidth = max(cells(m.shown(o.act))+1, 2)
	}
	edge := span{o.t, string(m.g.edge) + " "}
	room := r.w - spanCells([]span{edge}) - keyWidth
	row := func(key string, words ...span) line {
		return line{fill: o.t, left: append([]span{edge, {o.t, m.padded(key, keyWidth)}}, words...)}
	}
	var out []line
	words := m.g.wrap(m.g.clean(o.words), room)
	switch {
	case o.spans != nil:
		out = append(out, row(m.shown(o.act), o.spans...))
	case len(words) == 0:
		out = append(out, row(m.shown(o.act)))
	default:
		if len(words) > r.h {
			words[r.h-1] = m.g.fit(strings.Join(words[r.h-1:], " "), room)
			words = words[:r.h]
		}
		key := m.shown(o.act)
		for _, w := range words {
			out = append(out, row(key, span{o.t, w}))
			key = ""
		}
	}
	small := m.g.clean(o.small)
	if len(out) < r.h {
		lines := m.g.wrap(small, room)
		if most := r.h - len(out); len(lines) > most {
			lines[most-1] = m.g.fitWords(strings.Join(lines[most-1:], " "), room)
			lines = lines[:most]
		}
		for _, l := range append(lines, "")[:max(len(lines), 1)] {
			out = append(out, row("", span{o.t, l}))
		}
	} else if used := spanCells(out[0].left); r.h == 1 && used+cells(small)+3 <= r.w && small != "" {
		out[0].right = []span{{o.t, small + " "}}
	}
	for len(out) < r.h {
		rule := span{o.t, strings.Repeat(string(m.g.rule), r.w-1)}
		out = append([]line{{left: []span{{o.t, string(m.g.edge)}, rule}}}, out...)
	}
	return out
}

// padded fills text up to w cells.
func (m *Model) padded(s string, w int) string {
	s = m.g.fit(s, w)
	return s + strings.Repeat(" ", w-cells(s))
}

// shown is how the key of an act is written.
func (m *Model) shown(a act) string {
	for _, b := range m.keys {
		if b.act == a && a != actNone {
			return b.Help().Key
		}
	}
	return ""
}
