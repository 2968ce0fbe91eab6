package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/core/tally"
	"example.com/tintline/tui/theme"
)

// recordsAsked is which records the page lists: those of some days, of a lawn or of a product. Nothing: of the book's own day.
type recordsAsked struct {
	days          tallyDays
	lawn, product string
}

// mostRecords is how many rows the page lists; the newest are kept.
const mostRecords = 2000

// someRecords are the records that were found, newest day first.
type someRecords struct {
	list []tally.Record
	more int    // that are left out
	day  string // of a question for the day beside another
}

// recordsPage lists the application record, a row for each product on each zone in each visit.
func recordsPage() *pageSpec {
	const p = pageRecords
	return &pageSpec{
		page: p, under: pageEvening, key: "r", title: "Records", words: "what an inspector asks for; what is missing",
		show: (*Model).showRecords, asks: (*Model).askRecords,
		enter: func(m *Model) tea.Cmd { m.recordsOf = recordsAsked{}; return nil },
		pick: func(m *Model, id string) tea.Cmd {
			m.subject.record = id
			return m.goTo(pageRecord)
		},
		keys: []binding{
			opening(pageKey(p, "l", "find", "other days, a lawn or a product: 5/26; may; alder; warm 2025", (*Model).openRecordsOf, (*Model).everOpened)),
			pageKey(p, "left", "day before", "the day before", func(m *Model) tea.Cmd { return m.recordsBeside(-1) }, (*Model).everOpened),
			pageKey(p, "right", "day behind", "the day behind", func(m *Model) tea.Cmd { return m.recordsBeside(1) }, func(m *Model) bool { return m.recordsOf != recordsAsked{} }),
			opening(pageKey(p, "i", "fill", "fill a field for the whole day: supervisor none", func(m *Model) tea.Cmd { return m.openRecorded(core.Recorded{}) }, (*Model).canFill)),
		},
	}
}

func (m *Model) canFill() bool { return m.book.Day().Open && !m.busy() }

// askRecords reads them beside the screen; those of the book's own day need no reading.
func (m *Model) askRecords() tea.Cmd {
	of := m.recordsOf
	if (of == recordsAsked{}) {
		return nil
	}
	return m.askPast(pageRecords, fmt.Sprint(of), func(b *core.Book, read past.Reader) (any, error) {
		q := past.Query{Lawn: of.lawn, Product: of.product, From: of.days.from, To: of.days.to}
		out := someRecords{}
		if of.days.beside != 0 {
			day, err := past.Beside(b, read, of.days.from, of.days.beside < 0)
			if err != nil {
				return nil, err
			}
			if day == "" {
				day = of.days.from
			}
			q.From, q.To, out.day = day, day, day
		}
		list, err := past.Records(b, read, q)
		if n := len(list) - mostRecords; n > 0 {
			list, out.more = list[n:], n
		}
		out.list = list
		return out, err
	})
}

// recordsNow are the records that the page lists; done is false as long as they are read.
func (m *Model) recordsNow() (some someRecords, done bool, err error) {
	if (m.recordsOf == recordsAsked{}) {
		return someRecords{list: tally.RecordsOf(m.book)}, true, nil
	}
	a := m.replies[pageRecords]
	some, _ = a.answer.(someRecords)
	return some, a.done, a.err
}

func (m *Model) showRecords() sheet {
	if !m.everOpened() {
		return sheet{rows: m.wrapped(theme.Base, "No day was opened yet, so nothing is on record.")}
	}
	some, done, err := m.recordsNow()
	switch {
	case err != nil:
		what, do := sentences(err)
		return sheet{rows: append(m.wrapped(theme.Ask, what), m.wrapped(theme.Base, do)...)}
	case !done:
		return sheet{rows: m.wrapped(theme.Base, "Reading the records.")}
	}
	out := sheet{about: m.told(theme.Base, m.recordsWords(some)), offer: "open the record that is chosen"}
	if len(some.list) == 0 {
		out.offer = ""
		out.rows = m.wrapped(theme.Base, "Nothing was laid there in that time.")
		return out
	}
	day := ""
	for i := len(some.list) - 1; i >= 0; i-- {
		from := i // days newest first, within a day as they were laid
		for from > 0 && some.list[from-1].Date == some.list[i].Date {
			from--
		}
		for j := from; j <= i; j++ {
			r := &some.list[j]
			if r.Date != day {
				day = r.Date
				out.rows = append(out.rows, sectionRow(day))
			}
			out.rows = append(out.rows, m.recordRow(r))
		}
		i = from
	}
	if some.more > 0 {
		out.rows = append(out.rows, m.wrapped(theme.Dim, fmt.Sprintf("%d older ones are left out; name days, a lawn or a product: l", some.more))...)
	}
	return out
}

func (m *Model) recordsWords(some someRecords) string {
	missing := 0
	for i := range some.list {
		if len(tally.MissingFor(m.book, &some.list[i])) > 0 {
			missing++
		}
	}
	words := fmt.Sprintf("%d rows", len(some.list))
	if len(some.list) == 1 {
		words = "1 row"
	}
	state, set := m.book.SettingText(core.State)
	switch {
	case !set:
		return words + "; no state is set, so none is held against a rule (settings: state)."
	case missing == 0:
		return words + "; of none a field is missing that the rule of " + state + " asks for, as it was read."
	}
	return fmt.Sprintf("%s; of %d a field is missing that the rule of %s asks for: i fills it for the whole day.", words, missing, state)
}

// recordID names a record among those listed.
func recordID(r *tally.Record) string {
	return strings.Join([]string{r.Date, fmt.Sprint(r.Seq), r.Lawn, r.Zone, r.Product}, "|")
}

func (m *Model) recordRow(r *tally.Record) row {
	wide := m.w - tableMarks - 8
	amount := r.Amount.Text()
	if r.Trace != "" {
		amount = "a trace"
	}
	left := []span{
		m.cell(theme.Dim, r.Arrived, 6),
		m.cell(theme.Strong, r.Lawn, wide*3/10),
		m.cell(theme.Base, " "+r.Zone, wide/8),
		m.cell(theme.Base, " "+r.Product, wide*3/10),
		m.cellRight(theme.Base, amount, wide/6),
	}
	if n := len(tally.MissingFor(m.book, r)); n > 0 {
		left = append(left, span{theme.Ask, fmt.Sprintf(" -%d", n)})
	}
	return row{id: recordID(r), now: true, line: line{left: left}}
}

// openRecordsOf asks which records are meant: days, a lawn or a product.
func (m *Model) openRecordsOf() tea.Cmd {
	m.openLine(textLine{
		prompt: "records of", hint: "5/26; may; 2025; a lawn or a product by some letters; both",
		read: func(m *Model, said string) ([]core.Fact, error) {
			of, err := readRecordsOf(m.book, said)
			if err == nil {
				m.recordsOf = of
			}
			return nil, err
		},
	})
	return nil
}

// readRecordsOf takes the words that are days as days, and what is left as letters of a lawn or a product.
func readRecordsOf(b *core.Book, said string) (recordsAsked, error) {
	var days, name []string
	for _, w := range strings.Fields(said) {
		if _, _, err := tally.ReadDates(w, b.Day().Date); err == nil {
			days = append(days, w)
		} else {
			name = append(name, w)
		}
	}
	of := recordsAsked{}
	if len(days) > 0 {
		from, to, err := tally.ReadDates(strings.Join(days, " "), b.Day().Date)
		if err != nil {
			return of, err
		}
		of.days = tallyDays{from: from, to: to, all: from == ""}
	}
	if len(name) == 0 {
		if len(days) == 0 {
			_, _, err := tally.ReadDates(said, b.Day().Date)
			return of, err
		}
		return of, nil
	}
	letters := strings.ToLower(strings.Join(name, " "))
	for _, l := range b.Lawns() {
		if strings.Contains(strings.ToLower(l.LawnName), letters) || strings.Contains(strings.ToLower(l.Customer), letters) {
			of.lawn = l.LawnName
			break
		}
	}
	if of.lawn == "" {
		for i := range b.Products() {
			if strings.Contains(strings.ToLower(b.Products()[i].Name), letters) {
				of.product = b.Products()[i].Name
				break
			}
		}
	}
	if of.lawn == "" && of.product == "" {
		return of, slip(fmt.Sprintf("No lawn, customer or product has %q in its name.", letters), "Type other letters, or a day: 5/26, may, 2025.")
	}
	if len(days) == 0 {
		of.days.all = true
	}
	return of, nil
}

func (m *Model) recordsBeside(step int) tea.Cmd {
	at := m.book.Day().Date
	if (m.recordsOf != recordsAsked{}) {
		some, _, _ := m.recordsNow()
		switch {
		case some.day != "":
			at = some.day
		case step < 0 && m.recordsOf.days.from != "":
			at = m.recordsOf.days.from
		case m.recordsOf.days.to != "":
			at = m.recordsOf.days.to
		}
	}
	m.recordsOf = recordsAsked{days: tallyDays{from: at, beside: step}}
	return m.askRecords()
}
