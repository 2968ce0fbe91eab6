package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/notice"
	"example.com/tintline/tui/theme"
)

// noticesPage lists what is owed of notices and signs first, then the signs that stand, the re-entry clocks and the neighbours.
func noticesPage() *pageSpec {
	const p = pageNotices
	return &pageSpec{
		page: p, under: pageEvening, key: "n", title: "Notices and signs", words: "what is owed, signs that stand, who is to be told",
		show: (*Model).showNotices, pick: (*Model).pickNotice,
		keys: []binding{
			pageKey(p, "x", "no answer", "log a call that nobody answered", func(m *Model) tea.Cmd { return m.enter(m.owedChosen().Failed...) }, func(m *Model) bool {
				o := m.owedChosen()
				return o != nil && len(o.Failed) > 0 && !m.busy()
			}),
			opening(pageKey(p, "l", "otherwise", "log a contact made in another way: text; phone failed", (*Model).openContact, func(m *Model) bool {
				_, ok := m.contactChosen()
				return ok && !m.busy()
			})),
			opening(pageKey(p, "o", "neighbour", "enter somebody who is to be told before the lawn is treated", (*Model).openNeighbour, func(m *Model) bool {
				return m.noticeLawn() != "" && !m.busy()
			})),
			pageKey(p, "i", "sign", "log that the signs of this lawn were put up", func(m *Model) tea.Cmd { return m.enter(notice.PutUp(m.book, m.noticeLawn())) }, func(m *Model) bool {
				l := m.noticeLawn()
				return l != "" && !m.busy() && !m.signStands(l)
			}),
			pageKey(p, "v", "notice", "the notice for the customer of this lawn, whole", func(m *Model) tea.Cmd { return m.goToNotice(m.noticeLawn()) }, func(m *Model) bool {
				return m.noticeLawn() != ""
			}),
		},
	}
}

// noticeID names a row of the page: what it is, the lawn, and what else tells it from others.
func noticeID(kind, lawn, more string) string { return strings.Join([]string{kind, lawn, more}, "|") }

const (
	rowToDo      = "owed"
	rowSign      = "sign"
	rowClock     = "clock"
	rowNeighbour = "neighbour"
)

func owedID(o *notice.Owed) string { return noticeID(rowToDo, o.Lawn, o.Kind+o.Date+o.Who) }

// noticeChosen is what the row chosen is and of which lawn.
func (m *Model) noticeChosen() (kind, lawn, more string) {
	part := strings.SplitN(m.chosenAmong(m.sheet.rows), "|", 3)
	if len(part) < 3 {
		return "", "", ""
	}
	return part[0], part[1], part[2]
}

// noticeLawn is the lawn of the row chosen, else the one visited now or next.
func (m *Model) noticeLawn() string {
	if _, lawn, _ := m.noticeChosen(); lawn != "" {
		return lawn
	}
	return m.got.lawn
}

func (m *Model) signStands(lawn string) bool {
	for _, g := range m.book.AllSigns() {
		if g.Lawn == lawn && g.Down.Zero() {
			return true
		}
	}
	return false
}

func (m *Model) owedChosen() *notice.Owed {
	id := m.chosenAmong(m.sheet.rows)
	list := notice.List(m.book, m.moment())
	for i := range list {
		if owedID(&list[i]) == id {
			return &list[i]
		}
	}
	return nil
}

func (m *Model) showNotices() sheet {
	o := notice.Look(m.book, m.moment())
	var out sheet
	if s := notice.Short(o.Owed); s != "" {
		out.about = m.told(theme.Ask, s)
	} else {
		out.about = m.told(theme.Base, "Nothing is owed that the book knows of. "+m.noticeRules())
	}
	for i := range o.Owed {
		out.rows = append(out.rows, m.noticeRow(&o.Owed[i]))
	}
	out.rows = append(out.rows, m.signRows(&o)...)
	out.rows = append(out.rows, m.clockRows(&o)...)
	out.rows = append(out.rows, m.neighbourRows(&o)...)
	id := m.chosenAmong(out.rows)
	kind, _, _ := strings.Cut(id, "|")
	switch kind {
	case rowToDo:
		out.offer = "log it as done"
	case rowSign:
		out.offer = "log the signs as taken down"
	case rowClock, rowNeighbour:
		out.offer = "the notice for this lawn"
	}
	for i := range o.Clocks {
		if c := &o.Clocks[i]; noticeID(rowClock, c.Lawn, "") == id {
			out.below = m.clockBelow(c)
		}
	}
	for i := range o.Owed {
		if w := &o.Owed[i]; owedID(w) == id {
			out.below = append(m.wrapped(theme.Base, w.Says), m.wrapped(theme.Dim, "By: "+strings.ReplaceAll(w.Source, "_", " "))...)
		}
	}
	return out
}

// noticeRules says whether rules are held against the day.
func (m *Model) noticeRules() string {
	if state, set := m.book.SettingText(core.State); set && state != "none" {
		return "Rules of " + state + " as they were read."
	}
	return "No state is set (settings: state)."
}

func (m *Model) noticeRow(o *notice.Owed) row {
	l := line{left: []span{{theme.Strong, m.g.clean(o.Do)}}}
	if w := o.Window(); w != "" && o.Kind == notice.KindNeighbour && !o.To.Zero() {
		l.left = append(l.left, span{theme.Ask, "  until " + o.To.Clock() + dayOf(o.To, m.moment())})
	}
	return row{id: owedID(o), line: l}
}

// dayOf is the date of a moment where it is not today's.
func dayOf(of, now core.Moment) string {
	if of.Date() == now.Date() {
		return ""
	}
	return " " + of.Date()[5:]
}

func (m *Model) signRows(o *notice.Overview) []row {
	if len(o.Signs) == 0 {
		return nil
	}
	out := []row{blankRow(), sectionRow("Signs that stand")}
	for i, g := range o.Signs {
		until := "no time is set"
		if !g.Due.Zero() {
			until = "until " + g.Due.Clock() + dayOf(g.Due, m.moment())
		}
		out = append(out, row{id: noticeID(rowSign, g.Lawn, fmt.Sprint(i)), line: line{left: []span{
			m.cell(theme.Strong, g.Lawn, m.w/2), {theme.Base, fmt.Sprintf("%2d  up %s%s  %s", g.Count, g.Up.Clock(), dayOf(g.Up, m.moment()), until)},
		}}})
	}
	return out
}

func (m *Model) clockRows(o *notice.Overview) []row {
	if len(o.Clocks) == 0 {
		return nil
	}
	out := []row{blankRow(), sectionRow("Going back onto the lawn, by the label entries")}
	for i := range o.Clocks {
		c := &o.Clocks[i]
		out = append(out, row{id: noticeID(rowClock, c.Lawn, ""), now: true, line: line{left: []span{
			m.cell(theme.Strong, c.Lawn, m.w/2), {theme.Base, m.g.clean(c.Left(m.moment()))},
		}}})
	}
	return out
}

// clockBelow are the words of the label entries, and what has none.
func (m *Model) clockBelow(c *notice.Clock) []row {
	var out []row
	for _, w := range c.Words {
		out = append(out, m.wrapped(theme.Base, w)...)
	}
	for _, p := range c.Blank {
		out = append(out, m.wrapped(theme.Ask, p+": not entered, the label in hand decides")...)
	}
	return out
}

func (m *Model) neighbourRows(o *notice.Overview) []row {
	if len(o.Neighbours) == 0 {
		return nil
	}
	out := []row{blankRow(), sectionRow("Neighbours to be told")}
	for i := range o.Neighbours {
		n := &o.Neighbours[i]
		says := n.Phone
		if w := n.Ahead(); w != "" {
			says += "  " + w
		}
		if n.Until != "" {
			says += "  to " + n.Until
		}
		out = append(out, row{id: noticeID(rowNeighbour, n.Lawn, n.NeighbourName), now: true, line: line{left: []span{
			m.cell(theme.Strong, n.Lawn, m.w/4), m.cell(theme.Base, " "+n.NeighbourName, m.w/4), {theme.Base, " " + m.g.clean(strings.TrimSpace(says))},
		}}})
	}
	return out
}

// pickNotice logs what is owed, or shows the notice of the lawn.
func (m *Model) pickNotice(id string) tea.Cmd {
	kind, rest, _ := strings.Cut(id, "|")
	lawn, _, _ := strings.Cut(rest, "|")
	switch {
	case kind == rowClock || kind == rowNeighbour:
		return m.goToNotice(lawn)
	case m.busy():
		return nil
	case kind == rowSign:
		return m.enter(&core.Signed{Lawn: lawn, What: core.SignsDown})
	}
	if o := m.owedChosen(); o != nil {
		return m.enter(o.Done...)
	}
	return nil
}

// contactChosen is the contact that the row chosen is about, without how it was made.
func (m *Model) contactChosen() (core.Told, bool) {
	kind, lawn, more := m.noticeChosen()
	switch {
	case kind == rowNeighbour:
		return core.Told{Lawn: lawn, Whom: core.ToldNeighbour, Person: more, For: m.book.Day().Date}, m.book.Day().Date != ""
	case kind == rowClock:
		return core.Told{Lawn: lawn, Whom: core.ToldCustomer, For: m.book.Day().Date}, true
	}
	if o := m.owedChosen(); o != nil && len(o.Done) > 0 {
		if f, told := o.Done[0].(*core.Told); told {
			return *f, true
		}
	}
	return core.Told{}, false
}

func (m *Model) openContact() tea.Cmd {
	about, ok := m.contactChosen()
	if !ok {
		return nil
	}
	who := about.Person
	if who == "" {
		who = "customer of " + about.Lawn
	}
	m.openLine(textLine{
		prompt: who, hint: notice.ContactHint, tells: true,
		read: func(_ *Model, said string) ([]core.Fact, error) {
			f, err := notice.ReadContact(about, said)
			if err != nil {
				return nil, err
			}
			return onlyFact(f, nil)
		},
	})
	return nil
}

func (m *Model) openNeighbour() tea.Cmd {
	lawn := m.noticeLawn()
	m.openLine(textLine{
		prompt: "to tell before " + lawn, hint: "name, phone, 40 ft, 12 to 72 h, until 2026-12-31, register, note", tells: true,
		read: func(m *Model, said string) ([]core.Fact, error) {
			f, err := notice.ReadNeighbour(m.book, lawn, said)
			if err != nil {
				return nil, err
			}
			return onlyFact(f, nil)
		},
	})
	return nil
}

func (m *Model) goToNotice(lawn string) tea.Cmd {
	m.subject.lawn = lawn
	return m.goTo(pageNotice)
}
