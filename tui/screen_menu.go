package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/tui/theme"
)

// menuPage lists the pages, each with a key of its own. None of these keys is a to f: those mean compartments.
func menuPage() *pageSpec { return &pageSpec{page: pageMenu, title: "All pages"} }

// morningPage lists what is worked out in the yard and at the tank lid.
func morningPage() *pageSpec {
	return &pageSpec{page: pageMorning, key: "y", title: "Mix and plan", words: "the day's plan, loads, top-ups, calibration, stock"}
}

// eveningPage lists what is on record, and what the day, the customer and the rig earned.
func eveningPage() *pageSpec {
	return &pageSpec{page: pageEvening, key: "n", title: "Close and records", words: "the day's end: tally, records, notices, money, upkeep"}
}

// lists makes pages of those that only lead on: a row for each page that stands under them.
func lists(specs []*pageSpec) []*pageSpec {
	for _, s := range specs {
		if s.page != pageMenu && s.page != pageMorning && s.page != pageEvening {
			continue
		}
		s.show = func(m *Model) sheet { return m.showList(s) }
		s.pick = func(m *Model, id string) tea.Cmd {
			if to := m.leadsTo(s, id); to != nil {
				return m.goTo(to.page)
			}
			return nil
		}
		s.keys = listKeys(s, specs)
	}
	return specs
}

func (m *Model) showList(of *pageSpec) sheet {
	var rows []row
	longest := 0
	for _, s := range m.specs {
		if s.rowIn(of) {
			longest = max(longest, cells(s.title))
		}
	}
	for _, s := range m.specs {
		if s.rowIn(of) {
			rows = append(rows, row{id: s.key, now: true, line: line{left: []span{
				{theme.Key, s.key}, {theme.Strong, " " + m.padded(s.title, longest)}, {theme.Base, " " + s.words},
			}}})
		}
	}
	return sheet{rows: rows, offer: "open the page that is chosen", small: "or press its letter; Esc goes back"}
}

// leadsTo is the page that a letter opens from a list.
func (m *Model) leadsTo(of *pageSpec, key string) *pageSpec {
	for _, s := range m.specs {
		if s.standsIn(of) && s.key == key {
			return s
		}
	}
	return nil
}

// standsIn tells whether a page is opened from a list, by its letter.
func (s *pageSpec) standsIn(of *pageSpec) bool {
	under := s.under
	if under == 0 {
		under = pageMenu
	}
	return s.key != "" && under == of.page
}

// rowIn tells whether a page has a row in a list. The search and the settings stand among the keys below it: at 80x24
// there is a row for each other page.
func (s *pageSpec) rowIn(of *pageSpec) bool {
	return s.standsIn(of) && s.page != pageFind && s.page != pageSettings
}

// listKeys are the letters that open pages from a list.
func listKeys(of *pageSpec, specs []*pageSpec) []binding {
	var out []binding
	if of.page == pageMenu {
		light := sunKey(of.page)
		light.SetHelp(light.Help().Key, "light") // the row of keys has no room for more
		out = append(out, light)
	}
	for _, s := range specs {
		if s.standsIn(of) {
			b := pageKey(of.page, s.key, "", "", func(m *Model) tea.Cmd { return m.goTo(s.page) }, nil)
			b.line, b.unlisted = s.types, s.rowIn(of)
			if !s.rowIn(of) {
				b.SetHelp(s.key, strings.ToLower(s.title))
			}
			out = append(out, b)
		}
	}
	return out
}
