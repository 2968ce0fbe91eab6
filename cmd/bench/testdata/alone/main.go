// Alone is a program with the screen's and the file's libraries and nothing else: a counter. With a size it is what a
// stripped binary is measured against, on a terminal what a key is measured against.
package main

import (
	"fmt"
	"os"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"go.etcd.io/bbolt"

	_ "example.com/tintline/tui/tone"
)

type counter int

func (c counter) Init() tea.Cmd { return nil }

func (c counter) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if k, ok := msg.(tea.KeyMsg); ok {
		if k.String() == "ctrl+c" {
			return c, tea.Quit
		}
		return c + 1, nil
	}
	return c, nil
}

// View is a screen of text of which a key changes one line.
func (c counter) View() string {
	return strings.Repeat("a line of text that stays as it is, whatever key is pressed on this screen\n", 20) + fmt.Sprint(int(c))
}

func main() {
	if len(os.Args) > 1 { // a file keeps the store in the binary
		db, err := bbolt.Open(os.Args[1], 0o600, nil)
		if err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
		defer db.Close()
	}
	if _, err := tea.NewProgram(counter(0), tea.WithAltScreen()).Run(); err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
}
