package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/say"
	"example.com/tintline/tui/theme"
)

// The rows of the page of visits.
const (
	rowVisit = "visit/"
	rowOwed  = "owed/"
)

// visitsPage lists the visits of the day in their order, and what is owed from earlier days.
func visitsPage() *pageSpec {
	const p = pageVisits
	spec := &pageSpec{
		page: p, key: "v", title: "Visits of the day", words: "the order; put in, move, carry over, skip; what is owed",
		enter: (*Model).enterVisits, show: (*Model).showVisits, pick: (*Model).pickVisit,
	}
	spec.keys = []binding{
		opening(pageKey(p, "i", "put in", "look for a lawn and put it in behind the one that is chosen", (*Model).openPutIn, func(m *Model) bool { return m.book.Day().Open && !m.busy() })),
		opening(pageKey(p, "k", "kind", "arrived there as: round, call-back, first visit, spot, look only", (*Model).openKind, (*Model).visitAhead)),
		opening(pageKey(p, "t", "came at", "arrived there earlier than now: 9:35", (*Model).openArrived, (*Model).visitAhead)),
		opening(pageKey(p, "s", "skip", "skip the visit that is chosen and say why", (*Model).openSkipOf, (*Model).visitAhead)),
		opening(pageKey(p, "o", "carry over", "keep it for another day and say why", (*Model).openCarry, (*Model).visitAhead)),
		pageKey(p, "u", "earlier", "move the planned visit up", func(m *Model) tea.Cmd { return m.moveVisit(true) }, func(m *Model) bool { return m.canMoveVisit(true) }),
		pageKey(p, "n", "later", "move the planned visit down", func(m *Model) tea.Cmd { return m.moveVisit(false) }, func(m *Model) bool { return m.canMoveVisit(false) }),
		pageKey(p, "x", "take out", "take the planned visit out of the day", (*Model).takeOutVisit, func(m *Model) bool { return m.plannedVisit() != "" && !m.busy() }),
		pageKey(p, "l", "lawn", "the page of the lawn", (*Model).openLawnOfVisit, func(m *Model) bool { return m.lawnOfRow(m.chosen()) != "" }),
	}
	return spec
}

// visitOf is the visit that a row stands for, nil if it stands for none.
func (m *Model) visitOf(id string) *core.Visit {
	d := m.book.Day()
	for i := range d.Visits {
		if m.visitRowID(i) == id {
			return &d.Visits[i]
		}
	}
	return nil
}

// visitRowID names the row of a visit by its lawn, and by how many there are before at the same one: so it stays
// chosen when it is moved, begun or left.
func (m *Model) visitRowID(i int) string {
	all, before := m.book.Day().Visits, 0
	for j := range all[:i] {
		if all[j].Lawn == all[i].Lawn {
			before++
		}
	}
	return fmt.Sprint(rowVisit, before, "/", all[i].Lawn)
}

// enterVisits chooses the visit that is on, else the one to come.
func (m *Model) enterVisits() tea.Cmd {
	m.on[pageVisits] = placeOn{}
	d := m.book.Day()
	if at, of := d.Number(); of > 0 && d.Open {
		m.on[pageVisits].chosen = m.visitRowID(at - 1)
	}
	return nil
}

// lawnOfRow is the lawn that a row is about.
func (m *Model) lawnOfRow(id string) string {
	if v := m.visitOf(id); v != nil {
		return v.Lawn
	}
	lawn, _ := strings.CutPrefix(id, rowOwed)
	if m.book.Lawn(lawn) == nil {
		return ""
	}
	return lawn
}

// plannedVisit is the lawn of the visit chosen if that is still to come; empty if not.
func (m *Model) plannedVisit() string {
	if v := m.visitOf(m.chosen()); v != nil && v.State == core.Planned && m.book.Day().Open {
		return v.Lawn
	}
	return ""
}

// visitAhead tells whether the visit chosen is planned, or on.
func (m *Model) visitAhead() bool {
	v := m.visitOf(m.chosen())
	return v != nil && (v.State == core.Planned || v.State == core.Begun) && m.book.Day().Open && !m.busy()
}

func (m *Model) showVisits() sheet {
	d := m.book.Day()
	s := sheet{about: m.visitsAbout()}
	for i := range d.Visits {
		s.rows = append(s.rows, m.visitRow(i, &d.Visits[i]))
	}
	if owed := m.book.Owed(); len(owed) > 0 {
		s.rows = append(s.rows, blankRow(), sectionRow("still owed"))
		for i := range owed {
			s.rows = append(s.rows, m.owedRow(&owed[i]))
		}
	}
	if len(s.rows) == 0 {
		s.rows = m.wrapped(theme.Base, "No visit is planned. Open the day on the cab screen, or look for a lawn and put it in.")
	}
	id := m.chosenAmong(s.rows)
	s.about = append(s.about, m.chosenAbout(id))
	s.offer, s.small = m.visitOffer(id)
	return s
}

// visitsAbout says how far the day is.
func (m *Model) visitsAbout() []line {
	d := m.book.Day()
	if d.Date == "" {
		return []line{text(theme.Base, " no day was opened yet")}
	}
	n := map[string]int{}
	for _, v := range d.Visits {
		n[v.State]++
	}
	words := fmt.Sprintf(" %d done, %d skipped, %d to come", n[core.Done], n[core.Skipped], n[core.Planned])
	if !d.Open {
		words += "; " + d.Date + " is closed"
	}
	out := []line{text(theme.Base, words)}
	if h := d.Hold; h != nil {
		out = append(out, text(theme.Ask, fmt.Sprintf(" ON HOLD for %s since %s", m.g.clean(h.Cause), h.Since.Clock())))
	}
	return out
}

// visitColumns are the widths of name, state, grass, area and compartment; 0: there is no room for it.
func (m *Model) visitColumns() (name, state, grass, area, from int) {
	switch {
	case m.w >= 110:
		return 26, 18, 26, 7, 24
	case m.w >= 76:
		return 17, 14, 15, 7, 9
	case m.w >= 60:
		return 16, 13, 0, 7, 9
	}
	return 14, 11, 0, 0, 9
}

func (m *Model) visitRow(i int, v *core.Visit) row {
	name, state, grass, area, from := m.visitColumns()
	t := theme.Base
	switch v.State {
	case core.Begun:
		t = theme.Strong
	case core.Done, core.Skipped:
		t = theme.Dim
	}
	l := line{left: []span{m.cellRight(t, fmt.Sprint(i+1), 2), m.cell(t, v.Lawn, name), m.cell(t, stateWords(v), state)}}
	lawn := m.book.Lawn(v.Lawn)
	if lawn == nil {
		return row{id: m.visitRowID(i), line: l}
	}
	if grass > 0 {
		l.left = append(l.left, m.cell(t, grassWords(lawn.Zones), grass))
	}
	if area > 0 {
		l.left = append(l.left, m.cellRight(t, lawn.Area().Text(), area))
	}
	if v.State == core.Done || v.State == core.Skipped {
		l.left = append(l.left, span{theme.Dim, m.g.clean(visitKindWords(v))})
		return row{id: m.visitRowID(i), line: l}
	}
	l.left = append(l.left, m.cell(theme.Strong, m.fromWords(v.Lawn), from))
	if notes := hazardWords(lawn.Zones); notes != "" {
		l.left = append(l.left, span{theme.Base, "! " + m.g.clean(notes)})
	}
	return row{id: m.visitRowID(i), line: l}
}

// visitKindWords say what a visit was for, if it was no ordinary one.
func visitKindWords(v *core.Visit) string {
	if v.Kind == "" || v.Kind == core.Round {
		return ""
	}
	return strings.TrimSuffix(say.VisitKind(v.Kind)+": "+v.Cause, ": ")
}

// chosenAbout says of the lawn chosen what has no room in its row.
func (m *Model) chosenAbout(id string) line {
	l := m.book.Lawn(m.lawnOfRow(id))
	if l == nil {
		return line{}
	}
	words := l.LawnName
	add := func(before, s string) {
		if s != "" {
			words += "   " + before + s
		}
	}
	if v := m.visitOf(id); v != nil {
		add("", visitKindWords(v))
	}
	add("! ", hazardWords(l.Zones))
	add("gate: ", l.Gate)
	add("dog: ", l.Dog)
	add("", l.Notes)
	return text(theme.Dim, " "+m.g.clean(words))
}

// fromWords name the compartment that fits a lawn, and where there is room its mix.
func (m *Model) fromWords(lawn string) string {
	fits := check.Fits(m.book, lawn)
	if len(fits) == 0 {
		return "none fits"
	}
	words := fmt.Sprintf("from %c", fits[0])
	if mix := m.book.MixIn(string(fits[:1])); mix != "" && m.w >= 110 {
		words += "  " + mix
	}
	return words
}

func stateWords(v *core.Visit) string {
	switch v.State {
	case core.Begun:
		return "now, " + v.Begun.Clock()
	case core.Done:
		return "done " + v.Ended.Clock()
	case core.Skipped:
		if strings.HasPrefix(v.Reason, "carried over") {
			return "carried over"
		}
		return "skipped: " + v.Reason
	}
	return "planned"
}

func (m *Model) owedRow(o *core.Owed) row {
	name, _, _, _, from := m.visitColumns()
	var zones []string
	for _, z := range o.Zones {
		zones = append(zones, z.Zone+" "+z.Area.Text())
	}
	words := joined(zones) + " sq ft, " + o.Reason + ", since " + o.Since
	if o.Until != "" {
		words += ", for " + o.Until
	}
	return row{id: rowOwed + o.Lawn, line: line{left: []span{
		m.cell(theme.Base, "", 2), m.cell(theme.Base, o.Lawn, name), m.cell(theme.Strong, m.fromWords(o.Lawn), from), {theme.Base, m.g.clean(words)},
	}}}
}

// visitOffer is what Enter does with a row.
func (m *Model) visitOffer(id string) (offer, small string) {
	d := m.book.Day()
	lawn := m.lawnOfRow(id)
	v := m.visitOf(id)
	switch {
	case lawn == "" || !d.Open:
		return "", ""
	case v == nil && m.isPlanned(lawn):
		return "open the page of " + lawn, "it is planned today already"
	case v == nil:
		return "put " + lawn + " in today", "at the end of the visits planned; move it from there"
	case v.State == core.Begun:
		return "leave " + lawn, "what is left of it can be carried over first"
	case v.State == core.Planned:
		return "arrived at " + lawn, "a round; k for another kind, t if you came earlier"
	}
	return "open the page of " + lawn, ""
}

func (m *Model) isPlanned(lawn string) bool {
	for _, v := range m.book.Day().Next() {
		if v.Lawn == lawn {
			return true
		}
	}
	return false
}

// pickVisit arrives, leaves, or puts in.
func (m *Model) pickVisit(id string) tea.Cmd {
	lawn, v := m.lawnOfRow(id), m.visitOf(id)
	switch {
	case lawn == "" || m.busy():
		return nil
	case v == nil && !m.isPlanned(lawn):
		return m.enter(m.book.Day().PutIn(lawn, ""))
	case v != nil && v.State == core.Begun:
		return m.enter(&core.VisitDone{Lawn: lawn})
	case v != nil && v.State == core.Planned:
		return m.enter(&core.VisitBegun{Lawn: lawn})
	}
	return m.goToLawn(lawn)
}
