package tui

import (
	"fmt"
	"sort"
	"strings"

	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

const wordWidth = 6

// says draws the verdict and, at the foot of the band, what became of the last key. They share their rows: the
// words of a stop are worth more than what was logged last, and less than what may be typed now.
func (m *Model) says(r rect, s *scene) []line {
	all := m.sayings()
	sure := 1 // what the verdict has in any case: two rows, and one for each stop
	for _, one := range all {
		if one.stop {
			sure++
		}
	}
	own := min(m.statusRows(r.w), r.h-min(max(sure, 2), r.h-1))
	asked := m.open || m.ask.open() && m.status.kind != saysNothing // it is about what must be answered now
	if wanted := wantedRows(all, m.g, r.w-wordWidth-1); wanted > r.h-own && !asked {
		own = min(own, max(r.h-wanted, m.statusLeast(r.h)))
	}
	out, more := m.verdict(all, r.w, r.h-own)
	if more >= 0 {
		s.spots = append(s.spots, spot{rect{r.x, r.y + more, r.w, 1}, tapTarget{act: actFindings}})
	}
	return append(out, m.statusLines(rect{r.x, r.y + r.h - own, r.w, own}, s)...)
}

// verdict says what stands in the way, heaviest first, or what comes next. Every stop has a line of its own as
// long as there are lines, and a name in the last ones otherwise; what is lighter is counted where the words of a
// stop have need of its line. more is the line that counts what is not said, -1 if all is.
func (m *Model) verdict(all []said, w, rows int) (out []line, more int) {
	room := w - wordWidth - 1
	kept, lighter := partedSaid(all)
	if wantedRows(kept, m.g, room)+len(lighter) <= rows || len(kept) == 0 {
		kept, lighter = all, nil
	}
	shown, own := len(kept), rows
	var rest []line
	if shown > rows {
		shown, rest = m.othersIn(kept, lighter, w, rows)
		own = rows - len(rest)
	}
	for i, n := range sharedRows(kept[:shown], m.g, room, own) {
		out = append(out, m.saying(kept[i], w, n)...)
	}
	more = -1
	if n := len(lighter); n > 0 && shown == len(kept) && len(out) > 0 {
		more = len(out) - 1
		out[more].right = m.moreSpans(fmt.Sprintf("+%d more", n))
	}
	if len(rest) > 0 {
		out = append(out, rest...)
		more = len(out) - 1
	}
	for len(out) < rows {
		out = append(out, line{})
	}
	return out, more
}

// partedSaid takes what is never merely counted.
func partedSaid(all []said) (kept, lighter []said) {
	for _, s := range all {
		if s.keeps {
			kept = append(kept, s)
		} else {
			lighter = append(lighter, s)
		}
	}
	return kept, lighter
}

// saying is one finding in so many lines: what to do, then the figures.
func (m *Model) saying(s said, w, rows int) []line {
	var out []line
	for i, l := range s.in(m.g, w-wordWidth-1, rows) {
		t, word := s.t, s.word
		if i > 0 {
			t, word = theme.Base, ""
		}
		out = append(out, line{left: []span{
			{theme.Base, " "}, {t, m.padded(word, wordWidth-1)}, {theme.Base, " "}, {theme.Strong, l.strong}, {theme.Base, l.weak},
		}})
	}
	return out
}

// sayings lists what the verdict has to say.
func (m *Model) sayings() []said {
	var out []said
	if m.got.err != nil {
		what, do := sentences(m.got.err)
		out = append(out, said{word: "NOTE", t: theme.Note, do: m.g.clean(do), says: m.g.clean(what), brief: "check"})
	}
	hold, held := m.onHold()
	if held {
		out = append(out, hold)
	}
	var stands, gone []said
	for _, f := range m.apart() {
		if held && f.Rule == ruleWeather {
			continue // the hold says it
		}
		s := m.finding(f)
		if f.Reason != "" {
			s.word, s.t, s.stop, s.keeps = "went", theme.Dim, false, false
			s.do = m.g.clean("on in spite of " + ruleWords(f))
			if f.Reason == saidYes {
				s.says = "" // it was read, and answered
			} else {
				s.do += m.g.clean(": " + f.Reason)
			}
			gone = append(gone, s)
			continue
		}
		stands = append(stands, s)
	}
	next := m.comesNext(len(stands) == 0)
	if held && len(m.got.next.Facts) == 0 {
		next = nil
	}
	if !m.got.visiting || m.got.report.Verdict < check.Ask { // on the road nothing stands in the way yet
		out = append(out, next...)
	}
	return onceToDo(append(append(out, stands...), gone...))
}

// onceToDo says what to do once: what is found of another product begins with its figures where the same is to be done.
func onceToDo(all []said) []said {
	for i := range all {
		for _, before := range all[:i] {
			if s := &all[i]; s.do == before.do && s.says != "" {
				s.do, s.says = s.says, ""
			}
		}
	}
	return all
}

// apart lists all that the check found by what it is about, heaviest first: no stop stands in the line of another.
func (m *Model) apart() []check.Finding {
	var out []check.Finding
	for i := range m.got.report.Findings {
		out = append(out, m.got.report.Findings[i].Apart()...)
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Weight > out[j].Weight })
	return out
}

func (m *Model) finding(f check.Finding) said {
	s := said{do: m.g.clean(f.Do), says: m.g.clean(f.Says), brief: m.g.clean(ruleWords(f)), short: ruleShort(f)}
	if f.Weight == check.Stop && (f.Rule == ruleEnough || f.Rule == ruleLineUp && len(m.got.fits) == 0) {
		s.do = strings.TrimSuffix(s.do, ".") + m.loadKeys() + "."
	}
	if f.Ground != "" {
		s.says += " [" + f.GroundWords() + "]"
	}
	switch f.Weight {
	case check.Stop:
		s.word, s.t, s.stop, s.keeps = "STOP", theme.Stop, true, true
	case check.Ask:
		s.word, s.t, s.keeps = "ASK", theme.Ask, true
	default:
		s.word, s.t = "NOTE", theme.Note
	}
	return s
}

// comesNext is what is said where nothing stands in the way: what comes, how many checks found nothing, and
// once a day who decides.
func (m *Model) comesNext(nothing bool) []said {
	do := m.nextWords()
	if do == "" {
		return nil
	}
	quiet := ""
	if n := m.got.report.Quiet; n > 0 && m.got.err == nil {
		other := ""
		if !nothing {
			other = "other "
		}
		where := " stands below"
		if m.rects[bandUnchecked].h == 0 {
			where = ": " + m.shown(actFindings)
		}
		quiet = fmt.Sprintf("%d %schecks found nothing; what was not checked%s.", n, other, where)
	}
	out := []said{{word: "NEXT", t: theme.Next, do: do, says: quiet, keeps: true}}
	if at, _ := m.book.Day().Number(); at == 1 && quiet != "" {
		out = append(out, said{t: theme.Base, do: "The label and local rules decide."})
	}
	return out
}

// The rules whose stops a load cures.
const (
	ruleEnough = "enough"
	ruleLineUp = "line_up"
)

// loadKeys says which keys lead to the page on which loads are planned.
func (m *Model) loadKeys() string {
	return fmt.Sprintf(" (%s %s loads)", m.shown(actMenu), m.specOf(pageLoads).key)
}

// nextWords is what comes, as a thing to do; the band says what is then logged.
func (m *Model) nextWords() string {
	r, p := m.got.report, m.got.next
	lawn := m.g.clean(m.got.lawn)
	switch p.Act {
	case check.ActOpenDay:
		return "Open the day."
	case check.ActArrived:
		from := "no mix for it is aboard" + m.loadKeys() + "."
		if len(m.got.fits) > 0 {
			from = fmt.Sprintf("from %c.", m.got.fits[0])
		}
		if a := m.applicator(); a != nil && !a.Sprays() {
			from = "with " + m.g.clean(a.Name) + "."
		}
		return fmt.Sprintf("Drive to %s: %s, %s", lawn, laysWords(r.Plan), from)
	case check.ActSpray:
		does := "Spray"
		if r.Plan.Amount.Known {
			does = "Spray and spread"
		}
		words := fmt.Sprintf("%s %s on %s with %s", does, laysWords(r.Plan), joined(r.Plan.Zones), r.Plan.With)
		if r.Plan.From != 0 {
			words += fmt.Sprintf(", from %c", r.Plan.From)
		}
		return m.g.clean(words + ".")
	case check.ActSpread:
		if !r.Plan.Amount.Known {
			return sentence(m.g.clean(p.Words))
		}
		return m.g.clean(fmt.Sprintf("Spread %s on %s with %s.", laysWords(r.Plan), joined(r.Plan.Zones), r.Plan.With))
	case check.ActLeave:
		if len(m.got.rest) > 0 {
			return m.g.clean(restWords(m.got.rest)) + " is left at " + lawn + ": leave it, or carry it over."
		}
		return "All zones of " + lawn + " are logged: leave." + m.thenWords()
	case check.ActCloseDay:
		return "All visits are done: read the gauges, then close the day."
	case check.ActNone:
		return sentence(m.g.clean(p.Why))
	}
	return sentence(m.g.clean(p.Words))
}

// thenWords looks ahead to the visit after this one.
func (m *Model) thenWords() string {
	list := m.ahead()
	if len(list) == 0 {
		return ""
	}
	words := " Then " + list[0].name
	if list[0].from != "" {
		words += ", " + list[0].from
	}
	return words + "."
}

// ruleDose is the rule whose findings say how strong the liquid is.
const ruleDose = "dose"

// ruleWeather is the rule whose one finding is the hold, while the day is on hold.
const ruleWeather = "weather"

// strength is how strong what leaves the nozzle is where that is not as meant, in short; shorter still without the
// label's share, and at last left to the verdict.
func (m *Model) strength(short int) string {
	best := 0.0
	words := ""
	for _, f := range m.got.report.Findings {
		if f.Rule != ruleDose || f.Dry || !f.Multiple.Known || f.Multiple.V <= best {
			continue
		}
		best, words = f.Multiple.V, ""
		if f.TimesMix.Known {
			words = measure.Multiple(f.TimesMix.V) + m.g.times() + " mix"
		}
		if p := m.book.Product(f.Product); p != nil && p.Label.HasRateHigh && (short < 2 || words == "") {
			words = strings.TrimSpace(words + " " + measure.Multiple(best) + m.g.times() + " label")
		}
	}
	if short > 2 {
		return ""
	}
	return words
}
