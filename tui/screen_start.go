package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core/setup"
	"example.com/tintline/tui/theme"
)

// startPage is what a book without a rig shows.
func startPage() *pageSpec {
	return &pageSpec{
		page: pageStart, title: "This book is empty.",
		show: func(m *Model) sheet {
			rows := []row{
				{id: "forms", now: true, line: text(theme.Strong, "Set up rig, product, lawn and load")},
				blankRow(),
			}
			for _, s := range [][2]string{
				{"To look around in a demo:", "tintline demo"},
				{"To set it up from files:", "tintline template rig"},
				{"", "tintline import rig FILE"},
				{"To make it from a journal:", "tintline replay FILE"},
			} {
				const words, wide = 26, 60
				if m.w >= wide {
					rows = append(rows, row{line: line{left: []span{m.cell(theme.Base, s[0], words), {theme.Base, s[1]}}}})
					continue
				}
				if s[0] != "" {
					rows = append(rows, row{line: text(theme.Dim, s[0])})
				}
				rows = append(rows, row{line: text(theme.Base, "  "+s[1])})
			}
			return sheet{
				about: []line{text(theme.Base, " The day on this screen begins once there are a rig, a mix and a lawn.")},
				rows:  rows, offer: "set it up here, in forms", small: "what was typed is kept when you leave with Esc",
			}
		},
		pick: func(m *Model, _ string) tea.Cmd { return m.openForm(setup.Rig, "") },
	}
}
