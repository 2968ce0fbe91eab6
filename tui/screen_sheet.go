package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/yard"
	"example.com/tintline/tui/theme"
)

// loadPage is the sheet of one load that is planned, in the order of doing.
func loadPage() *pageSpec {
	const p = pageLoad
	planned := func(m *Model) bool { return m.planned() != nil }
	mixed := func(m *Model) bool { return planned(m) && len(m.planned().Parts) > 1 }
	key := func(k, label, long string, open func(m *Model) textLine, on func(m *Model) bool) binding {
		return opening(pageKey(p, k, label, long, func(m *Model) tea.Cmd { m.openLine(open(m)); return nil }, on))
	}
	return &pageSpec{
		page: p, title: "One load", show: (*Model).showLoad, pick: (*Model).pickItem,
		keys: []binding{
			key("p", "place", "where it is mixed", (*Model).placeLine, func(m *Model) bool { return planned(m) && !m.itemDone(core.StepPlace) }),
			key("j", "jar", "what a jar of its products came to", (*Model).jarLine, mixed),
			key("n", "not to mix", "mark two of its products as not to be mixed, or take such a mark back", (*Model).pairLine, mixed),
			pageKey(p, "z", "no load", "take the plan back; nothing was loaded", func(m *Model) tea.Cmd {
				m.put(question{facts: []core.Fact{&core.LoadPlanned{Into: m.subject.tank}}, words: "take the plan for " + m.subject.tank + " back"})
				return nil
			}, planned),
		},
	}
}

// planned is the plan that the page of one load shows.
func (m *Model) planned() *core.LoadPlanned { return m.book.LoadPlan(m.subject.tank) }

// loadSheet is the sheet that the page shows; nil where no load is planned.
func (m *Model) loadSheet() *yard.LoadSheet {
	s, err := yard.SheetOf(m.book, core.At(m.at), m.subject.tank)
	if err != nil {
		return nil
	}
	return &s
}

// bookLoad is the id of the row that books a load, toItem begins that of an item.
const (
	bookLoad = "the load"
	toItem   = "item/"
)

// nextItem is the row of the line that comes after one; when all are done, the one that books the load.
func (m *Model) nextItem(after string) string {
	if s := m.loadSheet(); s != nil {
		if l := s.Next(after); l != nil {
			return toItem + l.Item
		}
	}
	return bookLoad
}

func (m *Model) itemDone(item string) bool {
	s := m.loadSheet()
	return s != nil && s.Line(item) != nil && s.Line(item).Done
}

func doneWords(s *yard.LoadSheet) string {
	done, all := s.DoneOf()
	return fmt.Sprintf("%d of %d done", done, all)
}

func (m *Model) showLoad() sheet {
	s := m.loadSheet()
	if s == nil {
		return sheet{rows: m.wrapped(theme.Base, "No load is planned for "+m.subject.tank+". Esc goes back to the tanks.")}
	}
	out := sheet{about: append(m.told(theme.Strong, planWords(&s.Plan)+" into "+s.Plan.Into), m.told(theme.Base, doneWords(s)+"; the ticks stay when the program is closed")...)}
	out.rows = m.loadStops(s)
	var picks []row
	for _, l := range s.Lines {
		picks = append(picks, row{id: toItem + l.Item})
	}
	chosen := m.chosenAmong(append(picks, row{id: bookLoad}))
	for _, l := range s.Lines {
		out.rows = append(out.rows, row{id: toItem + l.Item, line: m.sheetLine(l)})
		if toItem+l.Item == chosen {
			out.rows = append(out.rows, m.detailRows(l)...)
		}
		if words := s.MeterWords(); words != "" && l.Item == core.StepMeterAfter {
			out.rows = append(out.rows, m.meterRows(s, words)...)
		}
	}
	out.rows = append(out.rows, row{id: bookLoad, line: text(theme.Strong, m.g.clean("loaded: "+planWords(&s.Plan)+" into "+s.Plan.Into))})
	for _, f := range s.Findings {
		if f.Weight == check.Note {
			out.rows = append(out.rows, m.wrapped(theme.Note, "note: "+f.Says+" "+f.Do)...)
		}
	}
	m.offerItem(&out, s, chosen)
	return out
}

// loadStops are the stops and asks of the load. That a jar is asked for is a line of the sheet.
func (m *Model) loadStops(s *yard.LoadSheet) []row {
	var out []row
	for _, f := range s.Findings {
		switch {
		case f.Weight == check.Stop:
			out = append(out, m.wrapped(theme.Stop, "STOP "+f.Says+" "+f.Do)...)
		case f.Weight == check.Ask && f.About != yard.AsksJar:
			out = append(out, m.wrapped(theme.Ask, "ASK "+f.Says+" "+f.Do)...)
		}
	}
	return out
}

func (m *Model) sheetLine(l yard.SheetLine) line {
	const amount = 12
	box, t := "[ ] ", theme.Strong
	if l.Done {
		box, t = "[x] ", theme.Base
	}
	out := line{left: []span{{theme.Key, box}}}
	if l.Amount.N != 0 {
		out.left = append(out.left, m.cellRight(t, l.Amount.Text(), amount))
	}
	out.left = append(out.left, span{t, m.g.clean(l.Says)})
	return out
}

// meterRows say what the water meter gave against the water of the load.
func (m *Model) meterRows(s *yard.LoadSheet, words string) []row {
	if s.MeterWrong {
		return m.wrapped(theme.Ask, words)
	}
	return m.wrapped(theme.Base, words)
}

// detailRows are what is to be heeded at the line chosen, below it.
func (m *Model) detailRows(l yard.SheetLine) []row {
	const indent = 6
	var out []row
	put := func(s string) {
		for _, w := range m.g.wrap(m.g.clean(s), m.w-4-indent) {
			out = append(out, row{line: text(theme.Dim, strings.Repeat(" ", indent)+w)})
		}
	}
	if cells(l.Says) > m.w-tableMarks-indent {
		put(l.Says)
	}
	for _, d := range l.Details {
		put(d.Says + " [" + d.Source + "]")
	}
	return out
}

// offerItem says what Enter does with the row chosen.
func (m *Model) offerItem(out *sheet, s *yard.LoadSheet, chosen string) {
	item, yes := strings.CutPrefix(chosen, toItem)
	l := s.Line(item)
	switch {
	case !yes || l == nil:
		out.offer = "loaded: " + s.Plan.Volume.Text() + " gal into " + s.Plan.Into
		switch {
		case s.Verdict == check.Stop:
			out.offer, out.small = "loaded in spite of the stop: "+s.Plan.Volume.Text()+" gal into "+s.Plan.Into, "it asks first"
		case s.Next("") != nil:
			out.offer, out.small = "loaded all the same: "+s.Plan.Volume.Text()+" gal into "+s.Plan.Into, doneWords(s)+"; it asks first"
		}
	case l.Done:
		out.offer = core.ItemWords(item) + " is not done after all"
	case l.Asks == yard.AsksJar:
		out.offer, out.small = "what the jar came to", "or go on without one"
	case l.Asks == yard.AsksMeter:
		out.offer = "type what the water meter shows"
	case l.Asks == yard.AsksPlace && m.lastPlace() != "":
		out.offer, out.small = "mixed at "+m.lastPlace()+", as last time", "p for another place"
	case l.Asks == yard.AsksPlace:
		out.offer = "say where it is mixed"
	default:
		out.offer = core.ItemWords(item) + ": done"
	}
}

func (m *Model) lastPlace() string {
	place, _ := m.book.LastFill()
	return place
}

// pickItem does the line chosen, takes it back, or books the load.
func (m *Model) pickItem(id string) tea.Cmd {
	s := m.loadSheet()
	if s == nil || m.busy() {
		return nil
	}
	item, yes := strings.CutPrefix(id, toItem)
	if !yes {
		return m.pickLoaded(s)
	}
	l := s.Line(item)
	if l == nil {
		return nil
	}
	f := &core.Ticked{List: core.LoadList(s.Plan.Into), Item: item}
	switch {
	case l.Done:
		f.Undo = "yes"
		return m.enter(f)
	case l.Asks == yard.AsksJar:
		m.openLine(m.jarLine())
		return nil
	case l.Asks == yard.AsksMeter:
		m.openLine(m.meterLine(s, item))
		return nil
	case l.Asks == yard.AsksPlace:
		if f.Place = m.lastPlace(); f.Place == "" {
			m.openLine(m.placeLine())
			return nil
		}
	}
	m.chooseRow(pageLoad, m.nextItem(item))
	return m.enter(f)
}

// pickLoaded books the load; it asks where a stop stands, or not all is done.
func (m *Model) pickLoaded(s *yard.LoadSheet) tea.Cmd {
	load := yard.Booked(m.book, &s.Plan)
	switch {
	case s.Verdict == check.Stop:
		for _, f := range s.Findings {
			if f.Weight == check.Stop {
				m.put(question{facts: []core.Fact{load}, words: "loaded in spite of the stop: " + planWords(&s.Plan), typed: true})
				m.status = status{kind: saysStop, what: f.Says, do: f.Do}
				return nil
			}
		}
	case s.Next("") != nil:
		m.put(question{facts: []core.Fact{load}, words: "loaded all the same, with " + doneWords(s)})
		return nil
	}
	m.goBack()
	return m.enter(load)
}
