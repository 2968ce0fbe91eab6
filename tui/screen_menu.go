package tui

import (
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
				if s.key != "" {
					longest = max(longest, cells(s.title))
				}
			}
			for _, s := range m.specs {
				if s.key != "" {
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

// menuKeys are the letters that open pages from the list.
func menuKeys(specs []*pageSpec) []binding {
	out := []binding{sunKey(pageMenu)}
	for _, s := range specs {
		if s.key != "" {
			b := hidden(pageKey(pageMenu, s.key, "", "", func(m *Model) tea.Cmd { return m.goTo(s.page) }, nil))
			b.line = s.types
			out = append(out, b)
		}
	}
	return out
}
