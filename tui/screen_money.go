package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/past"
	"example.com/tintline/core/tally"
	"example.com/tintline/tui/theme"
)

// moneyAsked is which days the page of money is about, and by what it lists them; nothing: the book's own day.
type moneyAsked struct {
	from, to string
	way      int // of tally.MoneyWays
}

// moneyPage shows what days earned and cost.
func moneyPage() *pageSpec {
	const p = pageMoney
	turn := func(by int) func(m *Model) tea.Cmd {
		return func(m *Model) tea.Cmd {
			n := len(tally.MoneyWays)
			m.money.way = (m.money.way + by + n) % n
			return m.askMoney()
		}
	}
	return &pageSpec{
		page: p, under: pageEvening, key: "i", title: "Money", words: "what days, customers and the rig earned and cost",
		show: (*Model).showMoney, asks: (*Model).askMoney,
		enter: func(m *Model) tea.Cmd { m.money = moneyAsked{}; return nil },
		keys: []binding{
			opening(pageKey(p, "l", "other days", "of which days: 5/26, week, may, 2026, all", (*Model).openMoneyDays, (*Model).everOpened)),
			pageKey(p, "left", "by", "by the way before", turn(-1), (*Model).everOpened),
			pageKey(p, "right", "by", "by the next way: "+strings.Join(tally.MoneyWays, ", "), turn(1), (*Model).everOpened),
			opening(pageKey(p, "i", "paid", "money that went out: fuel 62.40; repair 120", (*Model).openPaid, func(m *Model) bool { return !m.busy() })),
		},
	}
}

// askMoney adds up beside the screen.
func (m *Model) askMoney() tea.Cmd {
	of := m.money
	if of.from == "" && of.to == "" {
		of.from, of.to = m.book.Day().Date, m.book.Day().Date
	}
	now := core.Known(core.At(m.at))
	return m.askPast(pageMoney, fmt.Sprint(of), func(b *core.Book, read past.Reader) (any, error) {
		since := of.from
		if len(since) > 4 {
			since = since[:4] + "-01-01" // rounds are counted from the first of the year
		}
		list, err := past.Earned(b, read, since, of.to, now)
		if err != nil {
			return nil, err
		}
		sum := tally.AddMoney(b, list, tally.MoneyWays[of.way], of.from, of.to)
		return sum.Document(b, "Money").TextIn(max(m.w-tableMarks, 40)), nil
	})
}

func (m *Model) showMoney() sheet {
	if !m.everOpened() {
		return sheet{rows: m.wrapped(theme.Base, "No day was opened yet, so nothing was earned.")}
	}
	a := m.replies[pageMoney]
	text, _ := a.answer.(string)
	switch {
	case a.err != nil:
		what, do := sentences(a.err)
		return sheet{rows: append(m.wrapped(theme.Ask, what), m.wrapped(theme.Base, do)...)}
	case !a.done:
		return sheet{rows: m.wrapped(theme.Base, "Adding up.")}
	}
	days := m.book.Day().Date
	if m.money.from != "" {
		days = m.money.from + " to " + m.money.to
	}
	out := sheet{about: m.told(theme.Base, days+", by "+tally.MoneyWays[m.money.way])}
	for i, l := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		if i == 0 { // the title stands above
			continue
		}
		out.rows = append(out.rows, row{id: fmt.Sprint("line/", i), line: textLineOf(m, l)})
	}
	return out
}

func textLineOf(m *Model, s string) line {
	return text(theme.Base, m.g.fit(m.g.clean(s), m.w-tableMarks))
}

func (m *Model) openMoneyDays() tea.Cmd {
	m.openLine(textLine{
		prompt: "money of", hint: "5/26, 5/1 5/15, may, 2026, week, month, year, all",
		read: func(m *Model, said string) ([]core.Fact, error) {
			from, to, err := tally.ReadDates(said, m.book.Day().Date)
			if err == nil {
				if from == "" {
					from, to = "0001-01-01", m.book.Day().Date
				}
				m.money.from, m.money.to = from, to
			}
			return nil, err
		},
	})
	return nil
}

// openPaid asks what was paid, and for what.
func (m *Model) openPaid() tea.Cmd {
	m.openLine(textLine{
		prompt: "paid", hint: "for what, and how much: " + strings.Join(core.PaidKinds, ", ") + "; fuel 62.40", tells: true,
		read: func(_ *Model, said string) ([]core.Fact, error) { return onlyFact(readPaid(said)) },
	})
	return nil
}

func readPaid(said string) (core.Fact, error) {
	words := strings.Fields(said)
	if len(words) < 2 {
		return nil, slip("It is not said for what, or how much.", "Type fuel 62.40.")
	}
	v, err := measure.ReadMoney(words[1], "usd")
	if err != nil {
		return nil, err
	}
	return &core.Paid{What: words[0], Amount: core.Known(v), Note: strings.Join(words[2:], " ")}, nil
}
