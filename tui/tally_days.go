package tui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/core/tally"
	"example.com/tintline/tui/theme"
)

// tallyDays are the days of which the page of the tally is; none: the book's own day.
type tallyDays struct {
	from, to string
	all      bool // no bounds
	beside   int  // the day opened before, or behind, from
}

// spanTally is what they came to.
type spanTally struct {
	sum tally.Tally
	any bool   // a day was opened in that time
	end string // there is none before this day, or behind it; empty: not asked, or there is
}

func (m *Model) everOpened() bool { return m.book.Day().Date != "" }

// askTally reads the days beside the screen; the book's own day needs no reading.
func (m *Model) askTally() tea.Cmd {
	of := m.tallied
	if (of == tallyDays{}) {
		return nil
	}
	now := core.Known(core.At(m.at))
	return m.askPast(pageTally, fmt.Sprint(of), func(b *core.Book, read past.Reader) (any, error) {
		from, to := of.from, of.to
		if of.beside != 0 {
			day, err := past.Beside(b, read, from, of.beside < 0)
			if err != nil {
				return nil, err
			}
			end := ""
			if day == "" {
				day, end = from, from
			}
			sum, any, err := past.Sums(b, read, day, day, now)
			return spanTally{sum, any, end}, err
		}
		sum, any, err := past.Sums(b, read, from, to, now)
		return spanTally{sum: sum, any: any}, err
	})
}

// tallyNow is the tally that the page shows and a line on it, or the sheet to be shown as long as there is none.
func (m *Model) tallyNow() (t tally.Tally, state string, wait *sheet) {
	d := m.book.Day()
	if (m.tallied == tallyDays{}) {
		if !d.Open {
			state = "The day is closed."
		} else {
			state = "The day is still open; the figures stand as of now."
		}
		return tally.Close(m.book, core.Known(core.At(m.at))), state, nil
	}
	a := m.replies[pageTally]
	got, _ := a.answer.(spanTally)
	switch {
	case a.err != nil:
		what, do := sentences(a.err)
		return t, "", &sheet{rows: append(m.wrapped(theme.Ask, what), m.wrapped(theme.Base, do)...)}
	case !a.done:
		return t, "", &sheet{rows: m.wrapped(theme.Base, "Reading the days.")}
	case !got.any:
		return t, "", &sheet{rows: m.wrapped(theme.Base, "No day was opened from "+m.tallied.from+" to "+m.tallied.to+"; the last one is "+d.Date+".")}
	}
	state = "As it stands in the book now."
	switch {
	case got.end != "" && m.tallied.beside < 0:
		state = "No day was opened before " + got.end + "."
	case got.end != "":
		state = "No day was opened after " + got.end + "."
	}
	if got.sum.To == d.Date && d.Open {
		state = "The last of these days is still open."
	}
	return got.sum, state, nil
}

// tallyBeside goes to the day opened before the one shown, or behind it; from the last one behind it is the book's own day.
func (m *Model) tallyBeside(before bool) tea.Cmd {
	from, to := m.book.Day().Date, m.book.Day().Date
	if (m.tallied != tallyDays{}) {
		from, to = m.tallied.from, m.tallied.to
		if got, ok := m.replies[pageTally].answer.(spanTally); ok && got.any {
			from, to = got.sum.From, got.sum.To
		}
	}
	if before {
		m.tallied = tallyDays{from: from, beside: -1}
	} else {
		m.tallied = tallyDays{from: to, beside: 1}
	}
	return m.askTally()
}

// openTallyDays asks for which days.
func (m *Model) openTallyDays() tea.Cmd {
	m.openLine(textLine{
		prompt: "tally of", hint: "5/26, 5/1 5/15, may, 2026, week, month, year, all",
		read: func(m *Model, said string) ([]core.Fact, error) {
			from, to, err := tally.ReadDates(said, m.book.Day().Date)
			if err == nil {
				m.tallied = tallyDays{from: from, to: to, all: from == ""}
			}
			return nil, err
		},
	})
	return nil
}
