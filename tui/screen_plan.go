package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/yard"
	"example.com/tintline/tui/theme"
)

// planning is the plan of the day that the page shows.
type planning struct {
	turn  int    // of the search that is waited for, or that gave the plan
	seq   uint64 // the book's last entry when it was asked for
	ask   *yard.DayQuestion
	plan  *yard.DayPlan // nil: it is not there yet
	err   error
	order string // which of both orders is shown
	taken uint64 // the book's last entry when it is accepted; 0: it was not
	pins  []yard.DayPin
	moved bool // a pin was set since it was asked for
}

// dayFound is what a search found.
type dayFound struct {
	turn   int
	choice batch.DayChoice
	err    error
}

// planPage shows the plan of the day: what is wrong, what to load, the order of the visits.
func planPage() *pageSpec {
	const p = pagePlan
	return &pageSpec{
		page: p, under: pageMorning, key: "p", title: "Plan of the day", words: "what to load, in which order, what it takes",
		enter: (*Model).planDay, show: (*Model).showPlan, pick: func(m *Model, _ string) tea.Cmd { return m.acceptPlan() },
		keys: []binding{
			pageKey(p, "o", "other order", "the order given, or the one that was found", func(m *Model) tea.Cmd {
				if m.planning.order == core.OrderGiven {
					m.planning.order = core.OrderBest
				} else {
					m.planning.order = core.OrderGiven
				}
				m.on[pagePlan] = placeOn{text: true}
				return nil
			}, func(m *Model) bool { return m.planning.plan != nil && m.planning.plan.Better }),
			opening(pageKey(p, "n", "pin", "hold a visit to its place, or to a time of the day: 418 Alder Court; 418 Alder Court 9:00 11:30; the same name alone frees it", func(m *Model) tea.Cmd {
				m.openLine(m.pinLine())
				return nil
			}, func(m *Model) bool { return !m.busy() })),
			pageKey(p, "r", "plan anew", "plan from what the book says now", (*Model).planDay, func(m *Model) bool { return !m.busy() }),
		},
	}
}

// planDay gathers what is to be planned, and searches beside the screen.
func (m *Model) planDay() tea.Cmd {
	turn := m.planning.turn + 1
	m.planning = planning{turn: turn, seq: m.book.Seq(), order: core.OrderGiven, pins: m.planning.pins}
	m.on[pagePlan] = placeOn{text: true}
	ask, err := yard.AskDay(m.book, yard.DayAsk{At: core.At(m.at), Pins: m.planning.pins})
	if m.planning.err = err; err != nil {
		return nil
	}
	m.planning.ask = ask
	return guarded(func() tea.Msg {
		choice, err := ask.Search()
		return dayFound{turn, choice, err}
	})
}

// dayArrived keeps what was found, if it is still waited for.
func (m *Model) dayArrived(found dayFound) {
	if found.turn != m.planning.turn || m.planning.ask == nil {
		return
	}
	if m.planning.err = found.err; found.err != nil {
		return
	}
	plan := m.planning.ask.Answer(&found.choice)
	m.planning.plan = &plan
}

func (m *Model) showPlan() sheet {
	w := &m.planning
	switch {
	case w.err != nil:
		what, do := sentences(w.err)
		return sheet{rows: append(m.wrapped(theme.Stop, what), m.wrapped(theme.Base, do)...)}
	case w.plan == nil:
		return sheet{rows: m.wrapped(theme.Base, "The plan is being worked out ...")}
	}
	var out sheet
	for _, l := range w.plan.Lines(w.order) {
		if l.Kind == yard.LineSum {
			out.about = append(out.about, m.told(theme.Strong, l.Says)...)
			continue
		}
		out.rows = append(out.rows, m.planRows(l)...)
	}
	switch {
	case m.planIsIn():
		out.offer, out.small = "plan anew", "this plan is accepted; its loads stand under g o"
		if len(m.book.LoadPlans()) == 0 {
			out.small = "this plan is accepted; nothing has to be loaded for it"
		}
	case w.moved:
		out.offer, out.small = "plan anew", "a pin was set or taken away"
	case w.seq != m.book.Seq():
		out.offer, out.small = "plan anew", "the book has changed since"
	default:
		out.offer = "accept the order given"
		out.small = "keeps the plan, and plans its loads (g o)"
		if w.plan.Better {
			out.small += "; o shows the other order"
		}
		if w.order == core.OrderBest {
			out.offer = "accept the order found"
		}
	}
	return out
}

// planRows are a line of the plan on the screen.
func (m *Model) planRows(l yard.DayLine) []row {
	t, indent := theme.Base, ""
	switch l.Kind {
	case yard.LineWrong:
		t = theme.Stop
		l.Says = "STOP " + l.Says
	case yard.LineAsk:
		t = theme.Ask
		l.Says = "ASK " + l.Says
	case yard.LineNote:
		l.Says = "note: " + l.Says
	case yard.LineStop, yard.LineLoad:
		t = theme.Strong
	case yard.LineHead:
		return []row{sectionRow(m.g.clean(l.Says))}
	case yard.LineMark:
		t, indent = theme.Next, "   "
	case yard.LineMore:
		indent = "    "
	case yard.LineWork:
		t, indent = theme.Dim, " "
	}
	var out []row
	for i, s := range m.g.wrap(m.g.clean(l.Says), m.w-4-len(indent)-2) {
		if i > 0 {
			s = "  " + s
		}
		out = append(out, row{line: text(t, indent+s)})
	}
	return out
}

// planIsIn tells whether the plan that is shown was accepted, and nothing was entered after it.
func (m *Model) planIsIn() bool { return m.planning.accepted(m.book) }

func (w *planning) accepted(b *core.Book) bool {
	p := b.Planned()
	return p != nil && w.plan != nil && w.taken == b.Seq()
}

// acceptPlan is Enter: it keeps the plan as it is shown, or plans anew where the book has changed since.
func (m *Model) acceptPlan() tea.Cmd {
	w := &m.planning
	if m.busy() {
		return nil
	}
	if w.plan == nil || w.moved || w.seq != m.book.Seq() {
		return m.planDay()
	}
	facts := w.plan.Accept(m.book, w.order)
	w.taken = w.seq + uint64(len(facts))
	return m.enter(facts...)
}

// pinLine asks which visit is held, and plans anew.
func (m *Model) pinLine() textLine {
	return textLine{
		prompt: "pin, or free", hint: "a lawn: it keeps its place; or 418 Alder Court 9:00 11:30",
		read: func(m *Model, said string) ([]core.Fact, error) {
			pin, err := yard.ReadPin(m.book, said)
			if err != nil {
				return nil, err
			}
			m.planning.pins, m.planning.moved = yard.Pin(m.planning.pins, pin), true
			return nil, nil
		},
	}
}
