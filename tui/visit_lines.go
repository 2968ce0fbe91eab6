package tui

import (
	"strconv"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/say"
)

// skipCauses are the usual ones.
var skipCauses = []string{"gate", "dog", "wet", "wind", "refused"}

// carryCauses are why something is kept for another day.
var carryCauses = []string{"no time", "wet", "wind", "gate"}

// askSkip asks why a lawn is skipped.
func (m *Model) askSkip(lawn string) {
	m.openLine(textLine{
		prompt: "skip " + lawn + " because", choices: skipCauses,
		hint: "or type why",
		read: func(_ *Model, said string) ([]core.Fact, error) {
			if blank(said) {
				return nil, slip("Nothing is typed.", "Type a figure from 1 to 5, or why.")
			}
			return onlyFact(&core.VisitSkipped{Lawn: lawn, Reason: said}, nil)
		},
	})
}

func (m *Model) openSkipOf() tea.Cmd {
	m.askSkip(m.visitOf(m.chosen()).Lawn)
	return nil
}

// openKind asks as what the operator has come, or for a visit that is on as what he had come.
func (m *Model) openKind() tea.Cmd {
	v := *m.visitOf(m.chosen())
	var words []string
	for _, k := range core.VisitKinds {
		words = append(words, say.VisitKind(k))
	}
	kind := func(said string) (core.VisitBegun, error) {
		for i, w := range words {
			if strings.EqualFold(strings.TrimSpace(said), w) {
				return core.VisitBegun{Lawn: v.Lawn, Type: core.VisitKinds[i]}, nil
			}
		}
		return core.VisitBegun{}, slip("That is no kind of visit.", "Type a figure from 1 to 5.")
	}
	m.openLine(textLine{
		prompt: "arrived at " + v.Lawn + " as", choices: words,
		then: func(m *Model, said string) (*textLine, error) {
			f, err := kind(said)
			if err != nil || f.Type != core.CallBack {
				return nil, err
			}
			return m.causeLine(&v, f), nil
		},
		read: func(m *Model, said string) ([]core.Fact, error) {
			f, err := kind(said)
			return onlyFact(m.begin(&v, f), err)
		},
	})
	return nil
}

// causeLine asks what a call-back is about.
func (m *Model) causeLine(v *core.Visit, f core.VisitBegun) *textLine {
	return &textLine{
		prompt: "call-back at " + v.Lawn + " for", choices: []string{"weeds are back", "a part was missed", "brown spots"},
		hint: "or type what the customer called about",
		read: func(m *Model, said string) ([]core.Fact, error) {
			c := f
			c.Cause = said
			return onlyFact(m.begin(v, c), nil)
		},
	}
}

// openArrived asks when the operator came.
func (m *Model) openArrived() tea.Cmd {
	v := *m.visitOf(m.chosen())
	f := core.VisitBegun{Lawn: v.Lawn, Type: v.Kind, Cause: v.Cause}
	m.openLine(textLine{
		prompt: "arrived at " + v.Lawn + " at", hint: "9:35, the time of the clock in the cab",
		read: func(m *Model, said string) ([]core.Fact, error) {
			c := f
			if c.Arrived = strings.TrimSpace(said); c.Arrived == "" {
				return nil, slip("Nothing is typed.", "Type when you came: 9:35.")
			}
			return onlyFact(m.begin(&v, c), nil)
		},
	})
	return nil
}

// begin is the fact that a visit is begun so; for one that is on, that puts right how it was begun.
func (m *Model) begin(v *core.Visit, f core.VisitBegun) core.Fact {
	if v.State != core.Begun {
		return &f
	}
	all := m.book.Written()
	for i := len(all) - 1; i >= 0; i-- {
		was, ok := all[i].Stands.(*core.VisitBegun)
		if !ok || was.Lawn != v.Lawn {
			continue
		}
		if f.Arrived == "" {
			f.Arrived = was.Arrived
		}
		return &core.Struck{Of: int64(all[i].Seq), Reason: "put right", Instead: &f}
	}
	return &f
}

// openRest asks why what is left of the lawn is kept for another day.
func (m *Model) openRest() {
	m.openLine(textLine{
		prompt: "carry over " + restWords(m.got.rest) + " because", choices: carryCauses, hint: "or type why",
		read: func(m *Model, said string) ([]core.Fact, error) {
			if blank(said) {
				return nil, slip("Nothing is typed.", "Type a figure, or why.")
			}
			return check.LeaveRest(m.book, strings.TrimSpace(said)), nil
		},
	})
}

// restWords is what is left of a lawn: "4,000 sq ft of back".
func restWords(rest []core.ZoneRest) string {
	var out []string
	for _, z := range rest {
		out = append(out, z.Area.Text()+" sq ft of "+z.Zone)
	}
	return joined(out)
}

// openCarry asks why a visit, or what is left of the one that is on, is kept for another day.
func (m *Model) openCarry() tea.Cmd {
	v := *m.visitOf(m.chosen())
	hint := "or type why; a date behind it says for when: wet 2026-06-02"
	if v.State == core.Begun {
		hint = "or why; zones first limit it: back wet; a date behind: wet 2026-06-02"
	}
	m.openLine(textLine{
		prompt: "carry " + v.Lawn + " over because", choices: carryCauses, hint: hint,
		read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(m.readCarry(&v, said)) },
	})
	return nil
}

// readCarry reads zones of the visit that is on, if any are named, then a reason, then a date.
func (m *Model) readCarry(v *core.Visit, said string) (core.Fact, error) {
	f := &core.CarriedOver{Lawn: v.Lawn, Reason: strings.TrimSpace(said)}
	if v.State == core.Begun {
		zones, rest := readZones(said, m.book.Lawn(v.Lawn).ZoneNames())
		for _, z := range m.book.RestAt(v) {
			if len(zones) > 0 && hasWord(zones, z.Zone) {
				f.Zones = append(f.Zones, z)
			}
		}
		if len(zones) > 0 && len(f.Zones) == 0 {
			return nil, slip("Nothing is left to do on "+joined(zones)+".", "Name a zone that is not done, or none.")
		}
		f.Reason = rest
	}
	if i := strings.LastIndexByte(f.Reason, ' '); i > 0 {
		if _, err := time.Parse(time.DateOnly, f.Reason[i+1:]); err == nil {
			f.Until, f.Reason = f.Reason[i+1:], strings.TrimRight(f.Reason[:i], " ,")
		}
	}
	if n, err := strconv.Atoi(f.Reason); err == nil && n >= 1 && n <= len(carryCauses) {
		f.Reason = carryCauses[n-1]
	}
	if f.Reason == "" {
		return nil, slip("Nothing is typed.", "Type a figure from 1 to 4, or why.")
	}
	return f, nil
}

func hasWord(list []string, s string) bool {
	for _, w := range list {
		if w == s {
			return true
		}
	}
	return false
}

// openPutIn looks for a lawn and puts it in behind the visit chosen.
func (m *Model) openPutIn() tea.Cmd {
	behind := m.plannedVisit()
	l := lookup{prompt: "put in today", lawns: true, offer: "put in ", take: func(m *Model, _, lawn string) tea.Cmd {
		return m.enter(m.book.Day().PutIn(lawn, behind))
	}}
	if behind != "" {
		l.prompt = "put in behind " + behind
	}
	return m.search(l)
}

func (m *Model) canMoveVisit(earlier bool) bool {
	lawn := m.plannedVisit()
	return lawn != "" && !m.busy() && m.book.Day().Moved(lawn, earlier) != nil
}

func (m *Model) moveVisit(earlier bool) tea.Cmd {
	return m.enter(m.book.Day().Moved(m.plannedVisit(), earlier))
}

// takeOutVisit asks first: a visit that is taken out is not owed.
func (m *Model) takeOutVisit() tea.Cmd {
	lawn := m.plannedVisit()
	m.put(question{facts: []core.Fact{m.book.Day().TakenOut(lawn)}, words: "take " + lawn + " out of the day; it is not carried over"})
	return nil
}

func (m *Model) openLawnOfVisit() tea.Cmd { return m.goToLawn(m.lawnOfRow(m.chosen())) }
