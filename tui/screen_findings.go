package tui

import (
	"fmt"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core/check"
	"example.com/tintline/tui/theme"
)

// rowFinding is the row of a finding, with its place in the report.
const rowFinding = "finding/"

// findingsPage shows all that the check found, whole, and what it did not look at.
func findingsPage() *pageSpec {
	return &pageSpec{
		page: pageFindings, title: "Findings",
		enter: func(m *Model) tea.Cmd { m.on[pageFindings] = placeOn{}; return nil },
		show:  (*Model).showFindings, pick: (*Model).pickFinding,
		keys: []binding{
			opening(pageKey(pageFindings, "y", "answer", "answer the finding chosen: yes to an ask, a reason for a stop", func(m *Model) tea.Cmd {
				f, ok := m.findingChosen()
				if !ok || m.hasty() {
					return nil
				}
				return m.answerTo(f)
			}, func(m *Model) bool { f, ok := m.findingChosen(); return ok && m.answerable(&f) })),
		},
	}
}

func (m *Model) showFindings() sheet {
	r := &m.got.report
	s := sheet{about: []line{text(theme.Base, " "+m.findingsAbout(r))}}
	for i := range r.Findings {
		s.rows = append(s.rows, m.findingRows(i, &r.Findings[i])...)
	}
	if m.got.err != nil {
		what, do := sentences(m.got.err)
		s.rows = append(s.rows, m.wrapped(theme.Ask, join(do, what))...)
	}
	s.rows = append(s.rows, sectionRow("not checked"))
	for _, n := range r.NotChecked {
		s.rows = append(s.rows, m.wrapped(theme.Base, m.g.clean(n))...)
	}
	if len(r.NotChecked) == 0 {
		s.rows = append(s.rows, m.wrapped(theme.Base, "No limit is blank of what was asked.")...)
	}
	s.rows = append(s.rows, blankRow())
	s.rows = append(s.rows, m.wrapped(theme.Base, "The label and local rules decide.")...)
	s.offer, s.small = m.findingOffer(m.chosenAmong(s.rows))
	return s
}

func (m *Model) findingsAbout(r *check.Report) string {
	if m.got.lawn == "" {
		return "there is no lawn ahead: nothing was asked"
	}
	at := "ahead"
	if m.got.visiting {
		at = "here"
	}
	found := m.g.clean(fmt.Sprintf("%s: %d found, %d checks found nothing", at, len(r.Findings), r.Quiet))
	return m.fitting(m.w-1, m.g.clean(m.got.lawn)+", "+found, found)
}

// findingRows are a finding with all that was merged into it: what to do, then what it says and on what that rests.
func (m *Model) findingRows(i int, f *check.Finding) []row {
	var out []row
	doBefore, groundBefore := "", ""
	for j, one := range f.All() {
		one.Rule = f.Rule
		s := m.finding(one)
		if one.Reason != "" {
			s.word, s.t = "went", theme.Dim
		}
		head := ruleWords(one)
		if len(one.Products) > 1 {
			head = ruleWords(check.Finding{Rule: one.Rule}) + ", " + strings.Join(one.Products, ", ")
		}
		if len(one.Zones) > 0 {
			head += ": " + joined(one.Zones)
		}
		lines := []row{m.worded(s.word, s.t, theme.Strong, head)}
		if j > 0 {
			lines[0] = m.worded("also", theme.Dim, theme.Strong, strings.ToLower(s.word)+", "+head)
		} else {
			lines[0].id = fmt.Sprint(rowFinding, i)
		}
		for _, say := range []struct {
			t     theme.Token
			words string
		}{
			{theme.Strong, unlessSame(s.do, &doBefore)},
			{theme.Base, m.g.clean(one.Says)},
			{theme.Base, one.FigureWords()},
			{theme.Dim, prefixed("ground: ", unlessSame(m.g.clean(one.SourceWords()), &groundBefore))},
			{theme.Ask, prefixed("gone on with, because: ", m.g.clean(one.Reason+unlawfulWith(&one)))},
		} {
			for _, l := range m.g.wrap(say.words, m.w-wordWidth-4) {
				lines = append(lines, m.worded("", theme.Base, say.t, l))
			}
		}
		out = append(out, lines...)
	}
	return append(out, blankRow())
}

func (m *Model) worded(word string, t, of theme.Token, words string) row {
	head := span{theme.Base, m.padded("", wordWidth)}
	if word != "" {
		head = span{t, m.padded(word, wordWidth-1)}
		return row{line: line{left: []span{head, {theme.Base, " "}, {of, m.g.fit(m.g.clean(words), m.w-wordWidth-4)}}}}
	}
	return row{line: line{left: []span{head, {of, words}}}}
}

// unlessSame is words that were not just said.
func unlessSame(words string, before *string) string {
	if words == *before {
		return ""
	}
	*before = words
	return words
}

func prefixed(before, words string) string {
	if words == "" {
		return ""
	}
	return before + words
}

// unlawfulWith is what goes with a reason, where there is one.
func unlawfulWith(f *check.Finding) string {
	if f.Reason == "" {
		return ""
	}
	return prefixed(". ", f.Unlawful())
}

// findingChosen is the finding whose row is chosen.
func (m *Model) findingChosen() (check.Finding, bool) { return m.findingOf(m.chosen()) }

func (m *Model) findingOf(id string) (check.Finding, bool) {
	n, ok := strings.CutPrefix(id, rowFinding)
	i, err := strconv.Atoi(n)
	if !ok || err != nil || i >= len(m.got.report.Findings) {
		return check.Finding{}, false
	}
	return m.got.report.Findings[i], true
}

// answerable tells whether a finding can be answered now: it stands, and the visit has begun.
func (m *Model) answerable(f *check.Finding) bool {
	return m.got.visiting && m.book.Day().Hold == nil && !m.busy() && f.Weight >= check.Ask && f.Reason == ""
}

func (m *Model) findingOffer(id string) (offer, small string) {
	f, ok := m.findingOf(id)
	switch {
	case !ok || f.Weight < check.Ask || f.Reason != "":
		return "", ""
	case m.book.Day().Hold != nil:
		return "", "The day is on hold: go on with it first."
	case !m.got.visiting:
		return "", "It is answered at the lawn, once you have arrived."
	case f.Weight == check.Stop:
		return "go on in spite of the stop: asks for a reason", f.Unlawful()
	}
	return "yes, go on: " + ruleWords(f), "asks once more: y answers"
}

// pickFinding is Enter: for a stop it asks for a reason, for an ask it asks once more, because no Enter answers one.
func (m *Model) pickFinding(id string) tea.Cmd {
	f, ok := m.findingOf(id)
	switch {
	case !ok || !m.answerable(&f):
		return nil
	case f.Weight == check.Stop:
		m.openReason(f)
	default:
		m.put(question{facts: check.GoOn(f, m.got.lawn, saidYes), words: "yes, go on: " + ruleWords(f)})
		m.status = status{kind: saysStop, what: f.Says}
	}
	return nil
}
