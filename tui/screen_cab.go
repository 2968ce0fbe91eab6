package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core/check"
	"example.com/tintline/tui/theme"
)

// stageCab is the one screen of the day: what a glance needs.
func (m *Model) stageCab(s *scene) {
	parts := [bands]func(r rect) []line{
		bandHead:      func(rect) []line { return []line{m.head()} },
		bandVerdict:   func(r rect) []line { return m.verdict(r.w, r.h) },
		bandAct:       func(r rect) []line { return m.bandLines(r, s) },
		bandStatus:    func(r rect) []line { return m.statusLines(r, s) },
		bandGap1:      m.ruled,
		bandVisit:     func(r rect) []line { return []line{m.visit(r.w)} },
		bandTanks:     func(r rect) []line { return m.tanks(r, s) },
		bandGap2:      m.ruled,
		bandPipe:      func(r rect) []line { return []line{m.pipe(r.w)} },
		bandChange:    func(r rect) []line { return []line{m.change(r.w)} },
		bandGap3:      m.ruled,
		bandWeather:   func(rect) []line { return []line{m.weather()} },
		bandLast:      func(rect) []line { return []line{m.last()} },
		bandNext:      func(r rect) []line { return m.nextVisits(r.w, r.h) },
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
	add := func(t theme.Token, s string) { l.left = append(l.left, span{t, s}) }
	add(theme.Head, " "+m.at.Format("Mon 2 Jan  15:04"))
	d := m.book.Day()
	switch {
	case m.book.Rig() == nil:
	case !d.Open:
		add(theme.Head, "   no day open")
	default:
		n, of := d.Number()
		add(theme.Head, fmt.Sprintf("   visit %d of %d   %s", n, of, m.g.clean(d.Operator)))
		if d.Date != m.at.Format("2006-01-02") {
			add(theme.Demo, "  day "+d.Date+" is still open ")
		}
	}
	if m.demo {
		l.right = []span{{theme.Demo, " DEMO BOOK "}}
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
	case p.Act == check.ActConfirm:
		return m.offerAnswer()
	case p.Act == check.ActCloseDay:
		return offer{act: actYes, words: p.Words, small: sentence(p.Why), t: theme.ActStop}
	case p.Act == check.ActNone:
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
		for _, l := range m.book.Rig().LineUps {
			if string(l.Supply) == string(p.LineUp.Supply) && l.Return == p.LineUp.Return && len(l.Valves) > 0 {
				return "valves: " + valveWords(l.Valves)
			}
		}
	case check.ActPushBack:
		return m.pushSmall()
	case check.ActOpenDay:
		if p.Why != "" {
			return sentence(p.Why)
		}
		return "n, h and the others work once the day is open"
	case check.ActSpray:
		if s := m.got.report.Plan.Seconds; s.Known {
			return wholeWords(s.V) + " s at the gun's flow; l logs another amount"
		}
		return "l logs another amount"
	case check.ActArrived:
		return "k skips it"
	case check.ActWeather:
		if m.book.Weather() != nil {
			return "j if it is unchanged"
		}
		return "wind, from, temperature"
	}
	return ""
}

// pushSmall is how long each leg of a push-back takes.
func (m *Model) pushSmall() string {
	c, a := m.got.change, m.applicator()
	if c == nil || a == nil || !a.Flow.Known {
		return "do not stop at the first tint"
	}
	words := ""
	for i, l := range c.Legs {
		if i > 0 {
			words += ", then "
		}
		words += fmt.Sprintf("%s s into %c", wholeWords(a.Flow.V.Seconds(l.Volume)), l.Into)
	}
	return words + "; do not stop at the first tint"
}

// offerLine is the band while a line of text is open.
func (m *Model) offerLine() offer {
	small := m.line.extra
	if small == "" {
		small = "Esc leaves it."
		if m.line.fresh {
			small = "What you type takes the place of what stands there. " + small
		}
	}
	const before = 9 // edge and key
	prompt := m.g.fit(m.g.clean(m.line.prompt), m.w*2/3-before) + ": "
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

// bandLines draw the offer over the whole width: one row with the act, and a free one above and below where
// there is room, so that a thumb finds it.
func (m *Model) bandLines(r rect, s *scene) []line {
	o := m.offer()
	if o.act != actNone {
		s.spots = append(s.spots, spot{r, tapTarget{act: o.act}})
	}
	edge := span{o.t, string(m.g.edge) + " "}
	act := line{fill: o.t, left: []span{edge}}
	const keyWidth = 7
	act.left = append(act.left, span{o.t, m.padded(m.shown(o.act), keyWidth)})
	if o.spans != nil {
		act.left = append(act.left, o.spans...)
	} else {
		act.left = append(act.left, span{o.t, m.g.clean(o.words)})
	}
	small := line{fill: o.t, left: []span{edge, {o.t, m.padded("", keyWidth)}, {o.t, m.g.clean(o.small)}}}
	switch r.h {
	case 1:
		const wide = 100
		if r.w >= wide {
			act.right = []span{{o.t, m.g.clean(o.small) + " "}}
		}
		return []line{act}
	case 2:
		return []line{act, small}
	}
	rule := span{o.t, strings.Repeat(string(m.g.rule), r.w-1)}
	return []line{{left: []span{{o.t, string(m.g.edge)}, rule}}, act, small}
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
