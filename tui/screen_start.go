package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/tui/theme"
)

// startPage is what a book without a rig shows.
func startPage() *pageSpec {
	return &pageSpec{
		page: pageStart, title: "This book has no rig yet.",
		show: func(m *Model) sheet {
			var rows []row
			for _, s := range []string{
				"To look around in a book with invented data:   tintline demo",
				"To enter a rig, mixes and lawns from a file:   tintline enter FILE",
				"To make this book from a journal:              tintline replay FILE",
			} {
				rows = append(rows, row{line: text(theme.Base, s)})
			}
			return sheet{about: []line{text(theme.Base, " The day on this screen begins once there are a rig and a lawn.")}, rows: rows}
		},
		pick: func(*Model, string) tea.Cmd { return nil },
	}
}
