package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/yard"
	"example.com/tintline/tui/theme"
)

// mixingTitles are the pages of the tank lid: a question each, its letter in the list, and what the page is called.
var mixingTitles = []struct {
	page             page
	kind, key, title string
}{
	{pageMixLoad, "load", "l", "Load"},
	{pageMixTopUp, "topup", "t", "Top up"},
	{pageMixDilute, "dilute", "i", "Dilute or strengthen"},
	{pageMixStretch, "stretch", "r", "Stretch"},
	{pageMixBlend, "blend", "n", "Blend"},
	{pageMixJug, "jug", "j", "Split a jug"},
	{pageMixUseUp, "use-up", "u", "Use up a left-over"},
	{pageMixTint, "tint", "k", "Tint"},
	{pageMixRinse, "rinse", "w", "Rinse"},
}

// mixingPages make one page for each question.
func mixingPages() []*pageSpec {
	var out []*pageSpec
	for _, t := range mixingTitles {
		out = append(out, mixingPage(t.page, t.kind, t.key, t.title))
	}
	return out
}

func mixingPage(p page, kind, key, title string) *pageSpec {
	q := yard.Find(kind)
	spec := &pageSpec{
		page: p, key: key, under: pageMorning, title: title, words: q.Words,
		show: func(m *Model) sheet { return m.showMixing(p, q) },
		pick: func(m *Model, id string) tea.Cmd { return m.pickMixing(p, q, id) },
	}
	for l := byte('a'); l <= 'f'; l++ {
		spec.keys = append(spec.keys, pageKey(p, string(l), "", "", func(m *Model) tea.Cmd {
			m.askMixing(p, func(a *yard.Ask) { *a = a.Lettered(kind, l) })
			return nil
		}, func(m *Model) bool { return m.isCompartment(l) }))
	}
	long := func(words string) string {
		if p != mixingTitles[0].page {
			return "" // help says it once, at the first of these pages
		}
		return words
	}
	spec.keys = append(spec.keys,
		opening(pageKey(p, "x", "change", long("change a figure by one line of text, here and on the pages down to the rinse"), func(m *Model) tea.Cmd { m.openLine(m.mixingLine(p, q)); return nil }, (*Model).hasRig)),
		pageKey(p, "h", "next", long("the next applicator"), func(m *Model) tea.Cmd {
			m.askMixing(p, func(a *yard.Ask) { *a = yard.NextFor(m.book, *a, m.mixing.got) })
			return nil
		}, (*Model).mixingFor),
		pageKey(p, "z", "as likely", long("what was typed is forgotten; as the book has it"), func(m *Model) tea.Cmd {
			delete(m.mixing.asked, p)
			return nil
		}, func(m *Model) bool { return m.mixing.asked[p] != yard.Ask{} }),
	)
	return spec
}

// mixingFor tells whether the answer is for an applicator.
func (m *Model) mixingFor() bool { return m.hasRig() && m.mixing.err == nil && m.mixing.got.ForOne() }

func (m *Model) hasRig() bool { return m.book.Rig() != nil }

// mixings are what was said on the pages of the tank lid, and the last answer.
type mixings struct {
	asked map[page]yard.Ask
	of    mixingKey
	got   yard.Answer
	err   error
}

// mixingKey is what an answer rests on.
type mixingKey struct {
	page page
	seq  uint64
	hour int64
	ask  yard.Ask
}

// mixingAnswer asks once for what the page shows; it is asked anew when the book, the hour or the question changes.
func (m *Model) mixingAnswer(p page, q *yard.Question) (yard.Answer, error) {
	const hour = 3600
	key := mixingKey{p, m.book.Seq(), m.at.Unix() / hour, m.mixing.asked[p]}
	if m.mixing.of != key || m.mixing.of == (mixingKey{}) {
		ask := key.ask
		ask.At = core.At(m.at)
		m.mixing.of = key
		m.mixing.got, m.mixing.err = q.Ask(m.book, ask)
	}
	return m.mixing.got, m.mixing.err
}

// askMixing changes what is asked on a page.
func (m *Model) askMixing(p page, change func(*yard.Ask)) {
	if m.mixing.asked == nil {
		m.mixing.asked = map[page]yard.Ask{}
	}
	a := m.mixing.asked[p]
	change(&a)
	m.mixing.asked[p] = a
}

// mixingLine changes a figure.
func (m *Model) mixingLine(p page, q *yard.Question) textLine {
	return textLine{
		prompt: m.specOf(p).title + ", changed", hint: yard.Offered(q.Kind),
		read: func(m *Model, said string) ([]core.Fact, error) {
			a, err := yard.Read(m.book, q.Kind, m.mixing.asked[p], said)
			if err != nil {
				return nil, err
			}
			at := a
			at.At = core.At(m.at)
			if _, err := q.Ask(m.book, at); err != nil {
				return nil, err // the line stays open with what was typed
			}
			m.askMixing(p, func(to *yard.Ask) { *to = a })
			return nil, nil
		},
	}
}

// The ids of the rows of these pages.
const (
	mixingPlan   = "plan"
	mixingList   = "list"
	mixingChange = "change"
	mixingDone   = "done"
)

func (m *Model) showMixing(p page, q *yard.Question) sheet {
	a, err := m.mixingAnswer(p, q)
	if err != nil {
		what, do := sentences(err)
		out := sheet{rows: append(m.wrapped(theme.Stop, what), m.wrapped(theme.Strong, do)...)}
		if m.hasRig() {
			out.rows = append([]row{m.mixingRow(mixingChange, "say it otherwise")}, out.rows...)
			out.offer, out.small = "say it otherwise", yard.Offered(q.Kind)
		}
		return out
	}
	out := sheet{about: m.told(theme.Strong, a.About)}
	switch {
	case a.Plan != nil && yard.Planned(m.book, a.Plan):
		out.rows = append(out.rows, m.mixingRow(mixingList, "planned: the list of what goes into "+a.Plan.Into))
	case a.Plan != nil:
		out.rows = append(out.rows, m.mixingRow(mixingPlan, "plan it: "+a.Plan.Volume.Text()+" gal into "+a.Plan.Into+" as a list to tick"))
	}
	out.rows = append(out.rows, m.mixingRow(mixingChange, "change a figure"))
	if a.Done != nil {
		out.rows = append(out.rows, m.mixingRow(mixingDone, "log that it was run over: "+a.About))
	}
	out.rows = append(out.rows, m.mixingRows(a)...)
	m.offerMixing(&out, a, q)
	return out
}

func (m *Model) mixingRow(id, words string) row {
	return row{id: id, now: id != mixingPlan && id != mixingDone, line: text(theme.Next, m.g.clean(words))}
}

// mixingRows are what is answered, what is found, and how it was worked out.
func (m *Model) mixingRows(a yard.Answer) []row {
	var out []row
	if !a.Possible {
		out = append(out, m.behind("", span{theme.Stop, "no"}, weightCells, theme.Stop, a.Why)...)
		out = append(out, m.behind("", span{theme.Stop, ""}, weightCells, theme.Strong, a.Do)...)
	}
	for _, s := range a.Says {
		out = append(out, m.wrapped(theme.Strong, s)...)
	}
	out = append(out, m.foundRows(a, func(w check.Weight) bool { return w >= check.Ask })...)
	out = append(out, sectionRow("working"))
	for _, s := range a.Steps {
		out = append(out, m.wrapped(theme.Base, s.Says)...)
	}
	out = append(out, m.foundRows(a, func(w check.Weight) bool { return w < check.Ask })...)
	return append(out, m.wrapped(theme.Dim, "The label and local rules decide.")...)
}

// foundRows are the findings of some weights: what has to be answered stands above the working, what is only to be known below.
func (m *Model) foundRows(a yard.Answer, of func(check.Weight) bool) []row {
	var out []row
	for _, f := range a.Findings {
		if !of(f.Weight) {
			continue
		}
		t := weightToken(f.Weight)
		out = append(out, m.behind("", span{t, weightWord(f.Weight)}, weightCells, theme.Base, f.Says)...)
		if f.Do != "" {
			out = append(out, m.behind("", span{t, ""}, weightCells, theme.Strong, f.Do)...)
		}
		if f.Source != "" {
			out = append(out, m.behind("", span{t, ""}, weightCells, theme.Dim, f.Source)...)
		}
	}
	return out
}

// weightCells is the width of the word of a weight.
const weightCells = 5

func weightWord(w check.Weight) string {
	return map[check.Weight]string{check.Stop: "STOP", check.Ask: "ASK", check.Note: "NOTE"}[w]
}

// offerMixing says what Enter does with the row chosen.
func (m *Model) offerMixing(out *sheet, a yard.Answer, q *yard.Question) {
	switch m.chosenAmong(out.rows) {
	case mixingPlan:
		out.offer, out.small = "plan "+a.Plan.Volume.Text()+" gal into "+a.Plan.Into, "it becomes a list to tick"
		if m.book.LoadPlan(a.Plan.Into) != nil {
			out.small = "it takes the place of the load that is planned for " + a.Plan.Into
		}
	case mixingList:
		out.offer, out.small = "the list of what goes into "+a.Plan.Into, m.inWords(m.book.LoadPlan(a.Plan.Into))
	case mixingDone:
		out.offer, out.small = "log that it was run over", "it asks first; a pump or the valves have done it before"
	default:
		out.offer, out.small = "change a figure", yard.Offered(q.Kind)
	}
}

// pickMixing plans the load, opens its list, or changes a figure.
func (m *Model) pickMixing(p page, q *yard.Question, id string) tea.Cmd {
	a, err := m.mixingAnswer(p, q)
	switch {
	case !m.hasRig():
		return nil
	case err != nil || id == mixingChange:
		m.openLine(m.mixingLine(p, q))
		return nil
	case id == mixingDone && a.Done != nil && !m.busy():
		m.put(question{facts: []core.Fact{a.Done}, words: a.About})
		return nil
	case a.Plan == nil || m.busy():
		return nil
	case id == mixingList:
		cmd := m.goTo(pageLoad)
		m.subject.tank = a.Plan.Into
		m.on[pageLoad] = placeOn{chosen: m.nextItem("")}
		return cmd
	}
	return m.bookTyped([]core.Fact{a.Plan}, false)
}
