package tui

import (
	"fmt"
	"strconv"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/say"
	"example.com/tintline/tui/theme"
)

// oldEntries is how far back the page of the journal is turned.
type oldEntries struct {
	before uint64 // the entries before this number; 0: the last ones
}

// entriesAPage is how many entries the page of the journal holds.
const entriesAPage = 100

// The rows of the journal that are no entries.
const (
	rowOlder = "older"
	rowNewer = "newer"
)

// journalPage lists the entries, newest first.
func journalPage() *pageSpec {
	struckable := func(m *Model) bool { w, ok := m.written(m.chosenEntry()); return ok && w.StruckBy == 0 && !m.busy() }
	rightable := func(m *Model) bool {
		w, ok := m.written(m.chosenEntry())
		return ok && !m.busy() && m.corrects(w)
	}
	return &pageSpec{
		page: pageJournal, key: "j", title: "Journal", words: "all that was logged; strike, put right; copies: k",
		enter: func(m *Model) tea.Cmd {
			m.old = oldEntries{}
			return m.pullOlder()
		},
		show: (*Model).showJournal,
		pick: (*Model).pickEntry,
		keys: []binding{
			pageKey(pageJournal, "u", "strike", "strike the entry that is chosen", (*Model).putStrikeOf, struckable),
			opening(pageKey(pageJournal, "o", "put right", "type what the entry should have said", (*Model).openRight, rightable)),
			pageKey(pageJournal, "k", "copies", "the book's file, its copies, reading it through", func(m *Model) tea.Cmd { return m.goTo(pageBook) }, nil),
		},
	}
}

// chosenEntry is the number of the entry chosen, 0 if none is.
func (m *Model) chosenEntry() uint64 { return entryOf(m.chosen()) }

func entryOf(id string) uint64 {
	n, err := strconv.ParseUint(id, 10, 64)
	if err != nil {
		return 0
	}
	return n
}

// written is an entry since the last close.
func (m *Model) written(seq uint64) (core.Written, bool) {
	for _, w := range m.book.Written() {
		if w.Seq == seq {
			return w, true
		}
	}
	return core.Written{}, false
}

// logged is an entry of the page with the one that struck it.
type logged struct {
	core.Entry
	struckBy uint64
}

// entriesInSight lists the entries of the page, newest first: those that the book keeps, then those that were read.
func (m *Model) entriesInSight() []logged {
	var out []logged
	add := func(e core.Entry, struckBy uint64) {
		if len(out) < entriesAPage && (m.old.before == 0 || e.Seq < m.old.before) {
			out = append(out, logged{e, struckBy})
		}
	}
	own := m.book.Written()
	for i := len(own) - 1; i >= 0; i-- {
		add(own[i].Entry, own[i].StruckBy)
	}
	if m.pulled.what == m.olderName() {
		marks := core.StruckIn(m.pulled.entries)
		for _, e := range m.pulled.entries {
			if len(own) == 0 || e.Seq < own[0].Seq {
				add(e, marks[e.Seq])
			}
		}
	}
	return out
}

func (m *Model) olderName() string { return fmt.Sprintf("journal before %d", m.old.before) }

// pullOlder reads what the page lacks: entries before the last close. What may have struck them lies between them and
// the close after them, so it is read as well.
func (m *Model) pullOlder() tea.Cmd {
	before := m.old.before
	return m.pull(m.olderName(), func(r Reader) ([]core.Entry, error) {
		out, err := r.Last(before, entriesAPage)
		if before == 0 {
			return out, err
		}
		for from := before; err == nil; from += entriesAPage {
			var newer []core.Entry
			newer, err = r.Last(from+entriesAPage, entriesAPage)
			for i := len(newer) - 1; i >= 0; i-- {
				if newer[i].Seq < from {
					continue
				}
				if _, closed := newer[i].What.(*core.DayClosed); closed {
					return out, err
				}
				out = append([]core.Entry{newer[i]}, out...)
			}
			if len(newer) == 0 || newer[0].Seq < from+entriesAPage-1 { // the end of the journal
				return out, err
			}
		}
		return out, err
	})
}

func (m *Model) showJournal() sheet {
	list := m.entriesInSight()
	going := m.goesToo()
	s := sheet{about: []line{m.journalAbout(list)}}
	if m.old.before != 0 {
		s.rows = append(s.rows, row{id: rowNewer, now: true, line: text(theme.Base, "newer entries")})
	}
	date := m.at.Format("2006-01-02")
	for _, e := range list {
		if d := e.At.Date(); d != date {
			date = d
			s.rows = append(s.rows, sectionRow(e.At.Time().Format("Mon 2 Jan 2006")))
		}
		s.rows = append(s.rows, m.entryRow(e, going))
	}
	if len(list) > 0 && list[len(list)-1].Seq > 1 {
		s.rows = append(s.rows, row{id: rowOlder, now: true, line: text(theme.Base, "older entries")})
	}
	m.journalOffer(&s)
	return s
}

func (m *Model) journalAbout(list []logged) line {
	words := " nothing is logged yet"
	switch {
	case m.pulled.err != nil:
		what, _ := sentences(m.pulled.err)
		return text(theme.Ask, " "+m.g.clean(what))
	case len(list) > 0:
		words = fmt.Sprintf(" %d to %d, newest first; a struck one stays in the journal", list[0].Seq, list[len(list)-1].Seq)
	case !m.pulled.done:
		words = " reading"
	}
	return text(theme.Dim, words)
}

// entryRow is one entry in one line.
func (m *Model) entryRow(e logged, going []int64) row {
	t := theme.Base
	const six = 6 // digits, as far as there is room
	l := line{left: []span{m.cellRight(theme.Dim, strconv.FormatUint(e.Seq, 10), min(six, m.w/10)), m.cell(theme.Dim, e.At.Clock(), 5)}}
	switch {
	case e.struckBy != 0:
		t = theme.Dim
		l.left = append(l.left, span{theme.Base, fmt.Sprintf("struck by %d: ", e.struckBy)})
	case has(going, int64(e.Seq)):
		t = theme.Strong
		l.left = append(l.left, span{theme.Ask, "would go: "})
	}
	l.left = append(l.left, span{t, m.g.clean(say.Fact(e.What))})
	return row{id: strconv.FormatUint(e.Seq, 10), now: true, line: l}
}

func has(list []int64, n int64) bool {
	for _, m := range list {
		if m == n {
			return true
		}
	}
	return false
}

// goesToo lists the entries that a strike which is asked about would take out.
func (m *Model) goesToo() []int64 {
	for _, f := range m.ask.facts {
		if s, ok := f.(*core.Struck); ok {
			return append([]int64{s.Of}, s.Also...)
		}
	}
	return nil
}

// journalOffer says what Enter does with the row chosen.
func (m *Model) journalOffer(s *sheet) {
	switch id := m.chosenAmong(s.rows); id {
	case "":
	case rowOlder, rowNewer:
		s.offer, s.small = "turn to the "+id+" entries", "Esc goes back"
	default:
		s.offer, s.small = "show entry "+id+" whole", "u strikes it"
		switch w, ok := m.written(entryOf(id)); {
		case !ok:
			s.small = "Written before the last close: only an amendment of its record changes it (records, o)."
		case w.StruckBy != 0:
			s.small = fmt.Sprintf("struck by entry %d", w.StruckBy)
		case m.corrects(w):
			s.small += ", o puts it right"
		}
	}
}

// pickEntry opens the entry chosen, or turns to older and newer ones.
func (m *Model) pickEntry(id string) tea.Cmd {
	list := m.entriesInSight()
	switch id {
	case rowOlder:
		if len(list) > 0 {
			m.old.before = list[len(list)-1].Seq
		}
		m.on[pageJournal] = placeOn{}
		return m.pullOlder()
	case rowNewer:
		m.old.before += entriesAPage
		if m.old.before > m.book.Seq() {
			m.old.before = 0
		}
		m.on[pageJournal] = placeOn{}
		return m.pullOlder()
	}
	for _, e := range list {
		if strconv.FormatUint(e.Seq, 10) == id {
			m.looked = looked{e}
			return m.goTo(pageEntry)
		}
	}
	return nil
}

// putStrikeOf asks whether the entry chosen is to be struck, with those that would fall short without it.
func (m *Model) putStrikeOf() tea.Cmd {
	w, ok := m.written(m.chosenEntry())
	if !ok {
		return nil
	}
	f, err := m.book.WithLater(&core.Struck{Of: int64(w.Seq), Reason: "slip"}, core.At(m.at))
	if err != nil {
		what, do := sentences(err)
		m.status = status{kind: saysStop, what: what, do: do}
		return nil
	}
	words := fmt.Sprintf("strike %d: %s", w.Seq, say.Fact(w.What))
	if n := len(f.Also); n > 0 {
		words = fmt.Sprintf("strike %d and %d later ones that need it", w.Seq, n)
	}
	m.put(question{facts: []core.Fact{f}, words: words})
	return nil
}
