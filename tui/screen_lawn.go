package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/say"
	"example.com/tintline/tui/theme"
)

// The rows of the page of a lawn.
const (
	rowZone = "zone/"
	rowOpen = "lawn/"
)

// lawnPage shows a lawn: its zones, how to get in, what was laid, what was written down, and its history.
func lawnPage() *pageSpec {
	const p = pageLawn
	onLawn := func(m *Model) bool { return m.book.Lawn(m.subject.lawn) != nil && !m.busy() }
	return &pageSpec{
		page: p, key: "l", title: "Lawn", words: "zones, gate and dog, notes, what was laid, history",
		enter: (*Model).enterLawn, show: (*Model).showLawn, pick: (*Model).pickLawn,
		keys: append([]binding{
			opening(pageKey(p, "i", "note", "write a note on this lawn", (*Model).openNote, onLawn)),
			opening(pageKey(p, "n", "new lawn", "set up another lawn", (*Model).formLawn, func(m *Model) bool { return !m.busy() })),
			opening(pageKey(p, "z", "add zone", "set up another zone of this lawn", func(m *Model) tea.Cmd { return m.formZone(m.subject.lawn) }, onLawn)),
			pageKey(p, "v", "put in", "put this lawn in today, behind the visits planned", (*Model).putInLawn, func(m *Model) bool {
				v := m.book.Day().Visiting()
				return onLawn(m) && m.book.Day().Open && !m.isPlanned(m.subject.lawn) && (v == nil || v.Lawn != m.subject.lawn)
			}),
			pageKey(p, "y", "season", "what went down this year, limits left, due next", (*Model).openSeasonOf, onLawn),
			pageKey(p, "o", "all lawns", "list all lawns", func(m *Model) tea.Cmd { return m.turnToLawn("") }, onLawn),
		}, lawnKeys()...),
	}
}

// goToLawn opens the page of a lawn.
func (m *Model) goToLawn(lawn string) tea.Cmd {
	m.goTo(pageLawn)
	return m.turnToLawn(lawn)
}

// enterLawn shows the lawn that the day is at.
func (m *Model) enterLawn() tea.Cmd { return m.turnToLawn(m.got.lawn) }

func (m *Model) turnToLawn(lawn string) tea.Cmd {
	m.subject.lawn = lawn
	m.on[pageLawn] = placeOn{}
	return tea.Batch(m.pullLawn(entriesAPage), m.pullYears(lawn, ""))
}

func (m *Model) pullLawn(n int) tea.Cmd {
	lawn := m.subject.lawn
	return m.pull(rowOpen+lawn, func(r Reader) ([]core.Entry, error) { return r.OfLawn(lawn, n) })
}

func (m *Model) showLawn() sheet {
	l := m.book.Lawn(m.subject.lawn)
	if l == nil {
		return m.showLawns()
	}
	s := sheet{about: m.lawnAbout(l)}
	s.rows = append(s.rows, m.zoneRows(l)...)
	for _, f := range lawnFields {
		s.rows = append(s.rows, m.fieldRow(l, f))
	}
	s.rows = append(s.rows, m.cautionRows(l.LawnName)...)
	s.rows = append(s.rows, m.laidRows(l)...)
	s.rows = append(s.rows, m.noteRows(l)...)
	s.rows = append(s.rows, m.mayRows(l)...)
	s.rows = append(s.rows, m.yearRows(l)...)
	s.rows = append(s.rows, m.pastRows(l.LawnName, "")...)
	s.rows = append(s.rows, m.historyRows(l)...)
	s.offer, s.small = m.lawnOffer(m.chosenAmong(s.rows))
	return s
}

// showLawns lists all lawns.
func (m *Model) showLawns() sheet {
	s := sheet{about: []line{text(theme.Base, " all lawns of the book")}}
	for _, l := range m.book.Lawns() {
		s.rows = append(s.rows, row{id: rowOpen + l.LawnName, now: true, line: m.lawnLine(l)})
	}
	if len(s.rows) == 0 {
		s.rows = m.wrapped(theme.Base, "The book has no lawn yet.")
		return s
	}
	s.offer = "open the page of " + strings.TrimPrefix(m.chosenAmong(s.rows), rowOpen)
	return s
}

// lawnLine is a lawn in one row of a list.
func (m *Model) lawnLine(l *core.Lawn) line {
	name, grass := 22, 24
	switch {
	case m.w < 60:
		name, grass = 15, 12
	case m.w < 76:
		name, grass = 18, 16
	}
	return line{left: []span{
		m.cell(theme.Strong, l.LawnName, name), m.cell(theme.Base, grassWords(l.Zones), grass),
		m.cellRight(theme.Base, l.Area().Text(), 7),
		{theme.Base, m.g.clean(hazardWords(l.Zones))},
	}}
}

func (m *Model) lawnAbout(l *core.Lawn) []line {
	who := l.LawnName
	for _, s := range []string{l.Customer, l.Address, l.Phone} {
		if s != "" && s != l.LawnName {
			who += "   " + s
		}
	}
	what := fmt.Sprintf("%s sq ft   %s", l.Area().Text(), m.fromWords(l.LawnName))
	d := m.book.Day()
	for i := range d.Visits {
		if d.Open && d.Visits[i].Lawn == l.LawnName {
			what += fmt.Sprintf("   visit %d: %s", i+1, stateWords(&d.Visits[i]))
		}
	}
	return []line{text(theme.Strong, " "+m.g.clean(who)), text(theme.Base, " "+m.g.clean(what))}
}

func (m *Model) zoneRows(l *core.Lawn) []row {
	name, grass := 12, 20
	if m.w < 60 {
		name, grass = 8, 13
	}
	var out []row
	owed := map[string]measure.Area{}
	if o := m.book.OwedAt(l.LawnName); o != nil {
		for _, z := range o.Zones {
			owed[z.Zone] = z.Area
		}
	}
	for _, z := range l.Zones {
		words := strings.Join(z.Hazards, ", ")
		if words != "" {
			words = "! " + words + "  "
		}
		if a := owed[z.Name]; a > 0 {
			words += "owed: " + a.Text() + " sq ft"
		}
		out = append(out, row{id: rowZone + z.Name, line: line{left: []span{
			m.cell(theme.Strong, z.Name, name), m.cell(theme.Base, label.GrassWords(z.Grass), grass),
			m.cellRight(theme.Base, z.Area.Text()+" sq ft", 12),
			{theme.Base, " " + m.g.clean(words)},
		}}})
		out = append(out, m.zoneMore(z)...)
	}
	return out
}

// laidRows say what was put down there today.
func (m *Model) laidRows(l *core.Lawn) []row {
	var out []row
	for _, d := range m.book.Day().Laid {
		if d.Lawn != l.LawnName {
			continue
		}
		var products []string
		for _, p := range d.Holds {
			e := m.book.ProductByKey(p.Key)
			products = append(products, e.ProductName+" "+measure.Amount{Kind: e.Label.Form, N: p.N}.Text())
		}
		amount := d.Volume.Text() + " gal"
		if d.Dry {
			amount = "dry"
		}
		out = append(out, row{line: line{left: []span{
			m.cell(theme.Dim, d.At.Clock(), 5), m.cell(theme.Base, d.Zone, 12), m.cellRight(theme.Strong, amount, 9),
			{theme.Base, m.g.clean("on " + d.Area.Text() + " sq ft by " + d.Applicator + ": " + strings.Join(products, ", "))},
		}}})
	}
	if len(out) == 0 {
		return nil
	}
	return append([]row{blankRow(), sectionRow("laid on " + m.book.Day().Date)}, out...)
}

// noteRows are the notes, newest first.
func (m *Model) noteRows(l *core.Lawn) []row {
	notes := m.book.Notes(l.LawnName)
	if len(notes) == 0 {
		return nil
	}
	out := []row{blankRow(), sectionRow("notes")}
	for i := len(notes) - 1; i >= 0; i-- {
		for j, s := range m.g.wrap(m.g.clean(notes[i].Text), m.w-16) {
			date := notes[i].Date
			if j > 0 {
				date = ""
			}
			out = append(out, row{line: line{left: []span{m.cell(theme.Dim, date, 10), {theme.Base, s}}}})
		}
	}
	return out
}

// historyRows are the entries about a lawn, newest first: those since the last close, then those that were read.
func (m *Model) historyRows(l *core.Lawn) []row {
	list := m.historyOf(l.LawnName)
	out := []row{blankRow(), sectionRow("history")}
	for _, e := range list {
		f, t, words := e.What, theme.Base, ""
		if s, ok := f.(*core.Struck); ok {
			f, words = s.Instead, "put right: "
		}
		if e.struckBy != 0 {
			t, words = theme.Dim, "struck: "+words
		}
		out = append(out, row{id: fmt.Sprint(e.Seq), now: true, line: line{left: []span{
			m.cell(theme.Dim, e.At.Date(), 10), m.cell(theme.Dim, e.At.Clock(), 5), {t, m.g.clean(words + say.Fact(f))},
		}}})
	}
	switch {
	case m.pulled.what != rowOpen+l.LawnName: // a lawn that was just set up
	case m.pulled.err != nil:
		what, _ := sentences(m.pulled.err)
		out = append(out, m.wrapped(theme.Ask, what)...)
	case !m.pulled.done:
		out = append(out, row{line: text(theme.Dim, "reading")})
	case len(m.pulled.entries) > 0 && len(m.pulled.entries)%entriesAPage == 0:
		out = append(out, row{id: rowOlder, now: true, line: text(theme.Base, "older entries")})
	}
	return out
}

func (m *Model) historyOf(lawn string) []logged {
	var out []logged
	about := func(f core.Fact) bool {
		if s, ok := f.(*core.Struck); ok {
			f = s.Instead
		}
		return f != nil && core.LawnOf(f) == lawn
	}
	own := m.book.Written()
	for i := len(own) - 1; i >= 0; i-- {
		if about(own[i].What) {
			out = append(out, logged{own[i].Entry, own[i].StruckBy})
		}
	}
	if m.pulled.what != rowOpen+lawn {
		return out
	}
	marks := core.StruckIn(m.pulled.entries)
	for _, e := range m.pulled.entries {
		if about(e.What) && (len(own) == 0 || e.Seq < own[0].Seq) {
			out = append(out, logged{e, marks[e.Seq]})
		}
	}
	return out
}
