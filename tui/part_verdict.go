package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// said is one thing that the verdict says: a word for its weight, what to do, then the figures.
type said struct {
	word  string
	t     theme.Token
	do    string
	says  string
	brief string // its short name, where several stand in one line
	stop  bool
}

const wordWidth = 6

// verdict says what stands in the way, heaviest first, or what comes next. Every stop has a line of its own as
// long as there are lines, and a name in the last one otherwise; only what is lighter is counted instead.
func (m *Model) verdict(w, rows int) []line {
	all := m.sayings()
	shown := len(all)
	if shown > rows {
		shown = rows - 1
	}
	var out []line
	spare := rows - len(all)
	for i := 0; i < shown; i++ {
		lines, used := m.saying(all[i], w, max(spare, 0))
		spare -= used
		out = append(out, lines...)
	}
	if shown < len(all) {
		out = append(out, m.others(all[shown:]))
	}
	for len(out) < rows {
		out = append(out, line{})
	}
	return out
}

// saying is one finding in one line, or in up to extra lines more: what to do, then the figures, wrapped.
func (m *Model) saying(s said, w, extra int) (out []line, used int) {
	room := w - wordWidth - 1
	head := func(t theme.Token, words string) line {
		return line{left: []span{{theme.Base, " "}, {s.t, m.padded(s.word, wordWidth-1)}, {theme.Base, " "}, {t, words}}}
	}
	if extra == 0 {
		return []line{head(theme.Strong, m.g.fit(join(s.do, s.says), room))}, 0
	}
	lines := m.g.wrap(s.do, room)
	first := len(lines)
	lines = append(lines, m.g.wrap(s.says, room)...)
	if len(lines) > extra+1 {
		lines[extra] = m.g.fit(strings.Join(lines[extra:], " "), room)
		lines = lines[:extra+1]
	}
	out = []line{head(theme.Strong, lines[0])}
	for i, l := range lines[1:] {
		t := theme.Base
		if i+1 < first {
			t = theme.Strong
		}
		out = append(out, line{left: []span{{theme.Base, strings.Repeat(" ", wordWidth+1)}, {t, l}}})
	}
	return out, len(lines) - 1
}

func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "  " + b
}

// others is the last line where not all fits: stops by their names, the rest by their number.
func (m *Model) others(rest []said) line {
	stops, more := "", 0
	for _, s := range rest {
		if s.stop {
			if stops != "" {
				stops += "; "
			}
			stops += s.brief
		} else {
			more++
		}
	}
	l := line{left: []span{{theme.Base, " "}}}
	if stops != "" {
		l.left = append(l.left, span{theme.Stop, "STOP "}, span{theme.Strong, " also " + stops + " "})
	}
	if more > 0 {
		words := fmt.Sprintf("and %d more", more)
		l.right = []span{{theme.Dim, words + " "}}
	}
	return l
}

// sayings lists what the verdict has to say.
func (m *Model) sayings() []said {
	var out []said
	if m.got.err != nil {
		what, do := sentences(m.got.err)
		out = append(out, said{word: "NOTE", t: theme.Note, do: m.g.clean(do), says: m.g.clean(what), brief: "check"})
	}
	var stands, gone []said
	for _, f := range m.got.report.Findings {
		s := m.finding(f)
		if f.Reason != "" {
			s.word, s.t, s.stop = "went", theme.Dim, false
			s.do = m.g.clean("on in spite of " + ruleWords(f) + ": " + f.Reason)
			gone = append(gone, s)
			continue
		}
		stands = append(stands, s)
	}
	next := m.comesNext(len(stands) == 0)
	switch {
	case !m.got.visiting: // on the road nothing stands in the way yet
		out = append(append(out, next...), stands...)
	case m.got.report.Verdict < check.Ask:
		out = append(append(out, stands...), next...)
	default:
		out = append(out, stands...)
	}
	return append(out, gone...)
}

func (m *Model) finding(f check.Finding) said {
	s := said{do: m.g.clean(f.Do), says: m.g.clean(f.Says), brief: m.g.clean(ruleWords(f))}
	if f.Ground != "" {
		s.says += " [" + groundWords(f.Ground) + "]"
	}
	switch f.Weight {
	case check.Stop:
		s.word, s.t, s.stop = "STOP", theme.Stop, true
	case check.Ask:
		s.word, s.t = "ASK", theme.Ask
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
		quiet = fmt.Sprintf("%d %schecks found nothing; what was not checked stands below.", n, other)
	}
	out := []said{{word: "NEXT", t: theme.Next, do: do, says: quiet}}
	if at, _ := m.book.Day().Number(); at == 1 && quiet != "" {
		out = append(out, said{t: theme.Base, do: "The label and local rules decide."})
	}
	return out
}

// nextWords is what comes, as a thing to do; the band says what is then logged.
func (m *Model) nextWords() string {
	r, p := m.got.report, m.got.next
	lawn := m.g.clean(m.got.lawn)
	switch p.Act {
	case check.ActOpenDay:
		return "Open the day."
	case check.ActArrived:
		from := "no compartment here holds a mix for it."
		if len(m.got.fits) > 0 {
			from = fmt.Sprintf("from %c.", m.got.fits[0])
		}
		return fmt.Sprintf("Drive to %s: %s gal, %s", lawn, r.Plan.Volume.Text(), from)
	case check.ActSpray:
		words := fmt.Sprintf("Spray %s gal on %s with %s", r.Plan.Volume.Text(), joined(r.Plan.Zones), r.Plan.With)
		if r.Plan.From != 0 {
			words += fmt.Sprintf(", from %c", r.Plan.From)
		}
		return m.g.clean(words + ".")
	case check.ActLeave:
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

// strength is how strong what leaves the nozzle is where that is not as meant, in short.
func (m *Model) strength() string {
	best := 0.0
	words := ""
	for _, f := range m.got.report.Findings {
		if f.Rule == ruleDose && f.Multiple.Known && f.Multiple.V > best {
			best = f.Multiple.V
			words = measure.Multiple(best) + m.g.times() + " mix"
			if f.ShareOfLabel.Known {
				words += " " + measure.Multiple(f.ShareOfLabel.V) + m.g.times() + " label"
			}
		}
	}
	return words
}
