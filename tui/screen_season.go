package tui

import (
	"fmt"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/past"
	"example.com/tintline/core/season"
	"example.com/tintline/tui/theme"
)

// seasonView is how the season is shown, and of which year; empty: what is due, of this year. LawnYear is that of the lawn's own page.
type seasonView struct{ by, year, lawnYear string }

// seasonPage says what is due and what went down in the year, arranged in several ways.
func seasonPage() *pageSpec {
	const p = pageSeason
	return &pageSpec{
		page: p, under: pageEvening, key: "s", title: "Season", words: "what is due, limits left, by lawn and product, plots",
		show: (*Model).showSeason, pick: (*Model).pickSeason, asks: (*Model).askSeason,
		enter: func(m *Model) tea.Cmd { m.seasonOf = seasonView{}; return nil },
		keys: []binding{
			pageKey(p, "right", "next view", "due, by lawn, by product, by grass, by round, plots", func(m *Model) tea.Cmd { return m.turnSeason(1) }, (*Model).everOpened),
			pageKey(p, "left", "view before", "the view before", func(m *Model) tea.Cmd { return m.turnSeason(-1) }, (*Model).everOpened),
			opening(pageKey(p, "l", "year", "another year: 2025", func(m *Model) tea.Cmd { return m.openSeasonYear() }, (*Model).everOpened)),
		},
	}
}

// seasonLawnPage is the season of one lawn.
func seasonLawnPage() *pageSpec {
	const p = pageSeasonLawn
	return &pageSpec{
		page: p, title: "Season of a lawn",
		show: (*Model).showSeasonLawn, asks: (*Model).askSeasonLawn,
		pick: func(m *Model, id string) tea.Cmd {
			if m.leadsOn(id) {
				return m.leadOn(id)
			}
			return nil
		},
		keys: []binding{
			opening(pageKey(p, "l", "round", "days from its last round to its next: 35; off takes the settings' again", (*Model).openRoundDays, func(m *Model) bool { return m.book.Lawn(m.subject.lawn) != nil && !m.busy() })),
			pageKey(p, "left", "year before", "the year before", func(m *Model) tea.Cmd { return m.seasonYear(-1) }, (*Model).everOpened),
			pageKey(p, "right", "year after", "the year after", func(m *Model) tea.Cmd { return m.seasonYear(1) }, func(m *Model) bool { return m.seasonOf.lawnYear != "" && m.seasonOf.lawnYear < m.seasonDate()[:4] }),
		},
	}
}

// seasonDate is the date as of which the season stands: that of the open day, else today.
func (m *Model) seasonDate() string {
	d := m.book.Day()
	if d.Open {
		return d.Date
	}
	return max(m.moment().Date(), d.Date)
}

func (m *Model) askSeason() tea.Cmd {
	if !m.everOpened() {
		return nil
	}
	year, at := m.seasonOf.year, m.seasonDate()
	return m.askPast(pageSeason, year+" "+at, func(b *core.Book, read past.Reader) (any, error) { return season.Of(b, read, year, at) })
}

func (m *Model) askSeasonLawn() tea.Cmd {
	year, at, lawn := m.seasonOf.lawnYear, m.seasonDate(), m.subject.lawn
	return m.askPast(pageSeasonLawn, year+" "+at+" "+lawn, func(b *core.Book, read past.Reader) (any, error) {
		return season.OfLawn(b, read, year, at, lawn)
	})
}

// seasonNow is what was read, or the sheet to be shown as long as there is none.
func (m *Model) seasonNow(p page) (*season.Season, *sheet) {
	if !m.everOpened() {
		return nil, &sheet{rows: m.wrapped(theme.Base, "No day was opened yet, so nothing is to be added up.")}
	}
	a := m.replies[p]
	if a.err != nil {
		what, do := sentences(a.err)
		return nil, &sheet{rows: append(m.wrapped(theme.Ask, what), m.wrapped(theme.Base, do)...)}
	}
	s, _ := a.answer.(*season.Season)
	if !a.done || s == nil {
		return nil, &sheet{rows: m.wrapped(theme.Base, "Reading the season.")}
	}
	return s, nil
}

// turnSeason goes on to another view, in a ring.
func (m *Model) turnSeason(step int) tea.Cmd {
	ways := season.Ways()
	at := 0
	for i, w := range ways {
		if w == m.seasonOf.by {
			at = i
		}
	}
	m.seasonOf.by = ways[(at+step+len(ways))%len(ways)]
	m.on[pageSeason] = placeOn{}
	return m.askSeason()
}

func (m *Model) seasonYear(step int) tea.Cmd {
	year := m.seasonOf.lawnYear
	if year == "" {
		year = m.seasonDate()[:4]
	}
	n, err := strconv.Atoi(year)
	if err != nil {
		return nil
	}
	m.seasonOf.lawnYear = fmt.Sprintf("%04d", n+step)
	m.on[pageSeasonLawn] = placeOn{}
	return m.askSeasonLawn()
}

func (m *Model) openSeasonYear() tea.Cmd {
	m.openLine(textLine{
		prompt: "season of", hint: "a year: 2025",
		read: func(m *Model, said string) ([]core.Fact, error) {
			said = strings.TrimSpace(said)
			if len(said) != len("2025") || strings.Trim(said, "0123456789") != "" {
				return nil, slip(fmt.Sprintf("%q is no year.", said), "Write it as in 2025.")
			}
			m.seasonOf.year = said
			m.on[pageSeason] = placeOn{}
			return nil, nil
		},
	})
	return nil
}

// pickSeason opens the season of a lawn, or the page of what stands in the row.
func (m *Model) pickSeason(id string) tea.Cmd {
	if lawn, ok := strings.CutPrefix(id, toLawn); ok {
		m.subject.lawn, m.seasonOf.lawnYear = lawn, m.seasonOf.year
		return m.goTo(pageSeasonLawn)
	}
	if m.leadsOn(id) {
		return m.leadOn(id)
	}
	return nil
}

// openSeasonOf opens the season of the lawn that the page shows.
func (m *Model) openSeasonOf() tea.Cmd {
	m.seasonOf.lawnYear = ""
	return m.goTo(pageSeasonLawn)
}

// openRoundDays asks for the days of the lawn's own round.
func (m *Model) openRoundDays() tea.Cmd {
	lawn := m.subject.lawn
	m.openLine(textLine{
		prompt: "round of " + lawn, hint: "days: 35; off: as the settings have it", tells: true,
		read: func(m *Model, said string) ([]core.Fact, error) {
			was := m.book.Lawn(lawn)
			if was == nil {
				return nil, slip("The book has no lawn "+lawn+".", "Choose one of the list.")
			}
			next := *was
			if next.RoundDays = (core.Maybe[float64]{}); strings.TrimSpace(said) != "off" {
				days, err := measure.ParseNumber(strings.TrimSuffix(strings.TrimSpace(said), " days"))
				if err != nil {
					return nil, slip(fmt.Sprintf("%q is no number of days.", said), "Write it as in 35, or off.")
				}
				next.RoundDays = core.Known(days)
			}
			return onlyFact(&next, nil)
		},
	})
	return nil
}
