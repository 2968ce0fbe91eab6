package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/tui/theme"
)

// menuPage lists the pages, each with a key of its own. None of these keys is a to f: those mean compartments.
func menuPage() *pageSpec {
	return &pageSpec{
		page: pageMenu, title: "All pages",
		show: func(m *Model) sheet {
			var rows []row
			longest := 0
			for _, s := range m.specs {
				if inMenu(s) {
					longest = max(longest, cells(s.title))
				}
			}
			for _, s := range m.specs {
				if inMenu(s) {
					rows = append(rows, row{id: s.key, now: true, line: line{left: []span{
						{theme.Key, s.key}, {theme.Strong, " " + m.padded(s.title, longest)}, {theme.Base, " " + s.words},
					}}})
				}
			}
			return sheet{rows: rows, offer: "open the page that is chosen", small: "or press its letter; Esc goes back"}
		},
		pick: func(m *Model, id string) tea.Cmd {
			for _, s := range m.specs {
				if s.key == id {
					return m.goTo(s.page)
				}
			}
			return nil
		},
	}
}

// inMenu tells whether a page has a row in the list. The search and the settings stand among the keys below it: at 80x24
// there is a row for each other page.
func inMenu(s *pageSpec) bool {
	return s.key != "" && s.page != pageFind && s.page != pageSettings
}

// menuKeys are the letters that open pages from the list.
func menuKeys(specs []*pageSpec) []binding {
	light := sunKey(pageMenu)
	light.SetHelp(light.Help().Key, "light") // the row of keys has no room for more
	out := []binding{light}
	for _, s := range specs {
		if s.key != "" {
			b := pageKey(pageMenu, s.key, "", "", func(m *Model) tea.Cmd { return m.goTo(s.page) }, nil)
			b.line, b.unlisted = s.types, inMenu(s)
			if !inMenu(s) {
				b.SetHelp(s.key, strings.ToLower(s.title))
			}
			out = append(out, b)
		}
	}
	return out
}
