// Breaks is a screen that breaks: a test looks at the terminal that it leaves. Its argument says where: "update" or
// "journal".
package main

import (
	"fmt"
	"os"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/tui"
	_ "example.com/tintline/tui/tone"
)

// broken is the screen with a fault in it.
type broken struct{ tui.Model }

func (b broken) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if k, ok := msg.(tea.KeyMsg); ok && k.String() == "x" {
		panic("a fault in the screen")
	}
	m, cmd := b.Model.Update(msg)
	return broken{m.(tui.Model)}, cmd
}

// noDisk is a journal with a fault in it.
type noDisk struct{}

func (noDisk) Append(string, []core.Entry) error { panic("a fault beside the screen") }

func main() {
	o := tui.Options{Book: core.NewBook(1), Journal: noDisk{}, Now: time.Now, NewID: func() string { return "one" }, Mouse: true}
	for _, path := range os.Args[2:] {
		if err := fill(o.Book, path); err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
	}
	var m tea.Model = tui.New(o)
	if os.Args[1] == "update" {
		m = broken{m.(tui.Model)}
	}
	end, err := tea.NewProgram(m, tui.ProgramOptions(o)...).Run()
	if own, ok := end.(tui.Model); ok && own.Trouble() != nil {
		err = own.Trouble()
	}
	if err != nil {
		fmt.Println("ended with:", err)
		os.Exit(7)
	}
}

// fill enters the lines of a file.
func fill(b *core.Book, path string) error {
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	at := core.At(time.Now())
	for _, s := range strings.Split(strings.TrimSpace(string(text)), "\n") {
		l, err := core.DecodeLine([]byte(s))
		if err != nil {
			return err
		}
		es, err := b.Prepare("set up", l.At.Or(at), l.Fact)
		if err != nil {
			return err
		}
		for _, e := range es {
			if err := b.Apply(e); err != nil {
				return err
			}
		}
	}
	return nil
}
