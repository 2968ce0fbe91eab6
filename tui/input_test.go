package tui

import (
	"io"
	"strings"
	"sync"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// wired runs the model in a real program and writes bytes into its terminal: one write is one read, so glued
// and torn keys are exact. It returns the model as it was in the end.
func wired(t *testing.T, c *cab, writes ...string) *cab {
	t.Helper()
	in, out := io.Pipe()
	m := c.model()
	seen := make(chan string, 64)
	p := tea.NewProgram(watched{m, seen}, tea.WithInput(in), tea.WithOutput(io.Discard), tea.WithoutRenderer(),
		tea.WithoutSignalHandler(), tea.WithFilter(func(w tea.Model, msg tea.Msg) tea.Msg { return filter(w.(watched).Model, msg) }))
	var wg sync.WaitGroup
	wg.Add(1)
	go func() {
		defer wg.Done()
		end, err := p.Run()
		if err != nil {
			t.Error(err)
			return
		}
		c.m = end.(watched).Model
	}()
	p.Send(tea.WindowSizeMsg{Width: 80, Height: 24})
	for _, w := range writes {
		if w == pause {
			p.Send(moveClock{func() { c.at = c.at.Add(time.Second) }})
			continue
		}
		if _, err := out.Write([]byte(w)); err != nil {
			t.Fatal(err)
		}
		// a marker of our own through the same reader: when it is seen, all before it has been dealt with
		if _, err := out.Write([]byte("\x1b[I")); err != nil {
			t.Fatal(err)
		}
		<-seen
	}
	p.Send(endNow{})
	wg.Wait()
	_ = out.Close()
	return c
}

const pause = "a second passes"

type (
	moveClock struct{ f func() }
	endNow    struct{}
)

// watched tells when the focus report that follows each write has come through.
type watched struct {
	Model
	seen chan string
}

func (w watched) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.FocusMsg:
		w.seen <- ""
		return w, nil
	case moveClock:
		msg.f()
		return w, nil
	case endNow:
		return w.pass(endAsked{})
	}
	return w.pass(msg)
}

func (w watched) pass(msg tea.Msg) (tea.Model, tea.Cmd) {
	m, cmd := w.Model.Update(msg)
	return watched{m.(Model), w.seen}, cmd
}

func TestKeysThroughTheParser(t *testing.T) {
	for _, one := range []struct {
		name   string
		writes []string
		facts  string
		open   bool
		value  string
	}{
		{name: "two keys in one read", writes: []string{"ab"}, facts: "lined_up lined_up"},
		{name: "glued with one that is not bound", writes: []string{"am"}},
		{name: "a long run is noise", writes: []string{"abcabc"}},
		{name: "a line's key glued to its text", writes: []string{"p2.5 a"}, open: true, value: "2.5 a"},
		{name: "Enter on the heels of a dropped run", writes: []string{"abcabc", "\r"}},
		{name: "Enter later than that", writes: []string{"abcabc", pause, "\r"}, facts: "sprayed"},
		{name: "the letters of Enter are not Enter", writes: []string{"enter"}},
		{name: "the letters of Esc in a line", writes: []string{"l", pause, "esc"}, open: true, value: "esc"},
		{name: "letters of enter in a line", writes: []string{"l", pause, "enter"}, open: true, value: "enter"},
		{name: "torn arrow", writes: []string{"\x1b", "[A"}},
		{name: "torn arrow after the bracket", writes: []string{"\x1b[", "A"}},
		{name: "torn touch", writes: []string{"\x1b[", "<0;5;9", "m"}},
		{name: "torn touch whose tail looks like keys", writes: []string{"\x1b[<0;5;", "9a"}},
		{name: "tail of a function key", writes: []string{"\x1bO", "b"}},
		{name: "Esc with a letter behind it", writes: []string{"\x1ba"}},
		{name: "late answer of the terminal", writes: []string{"11;rgb:1111/2222/3333"}},
		{name: "a key after the swallow", writes: []string{"\x1b[", pause, "a"}, facts: "lined_up"},
		{name: "paste on the cab", writes: []string{"\x1b[200~abcy\x1b[201~"}},
		{name: "paste into a line", writes: []string{"l", pause, "\x1b[200~11.5 gal\x1b[201~"}, open: true, value: "11.5 gal"},
		{name: "paste of two lines", writes: []string{"l", pause, "\x1b[200~11.5\nrm\x1b[201~"}, open: true},
		{name: "glued figures in a line", writes: []string{"l", pause, "11", ".5"}, open: true, value: "11.5"},
		{name: "torn touch in a line", writes: []string{"l", pause, "7", "\x1b[", "<0;5;9m"}, open: true, value: "7"},
		{name: "capitals and digits", writes: []string{"M", pause, "m", pause, "A", pause, "1"}},
		{name: "Enter twice in one read", writes: []string{"\r\r"}, facts: "sprayed"},
		{name: "a release is no tap", writes: []string{"\x1b[<0;5;6m"}},
		{name: "a tap on the band", writes: []string{"\x1b[<0;5;7M"}, facts: "sprayed"},
		{name: "a bounce of a tap", writes: []string{"\x1b[<0;5;7M", "\x1b[<0;5;7M"}, facts: "sprayed"},
		{name: "the wheel and motion", writes: []string{"\x1b[<64;5;7M", "\x1b[<32;5;7M", "\x1b[<35;5;7M"}},
	} {
		t.Run(one.name, func(t *testing.T) {
			c := climbIn(t, morning).press("enter")
			c.disk.entries = nil
			c.wait(time.Minute)
			wired(t, c, one.writes...)
			m := c.model()
			if got := c.facts(); got != one.facts {
				t.Errorf("logged %q, not %q", got, one.facts)
			}
			if m.open != one.open || m.line.in.Value() != one.value {
				t.Errorf("line open %v with %q", m.open, m.line.in.Value())
			}
		})
	}
}

func TestTaps(t *testing.T) {
	c := climbIn(t, morning)
	row := func(words string) int {
		for i, l := range strings.Split(c.screen(), "\n") {
			if strings.Contains(l, words) {
				return i
			}
		}
		t.Fatalf("no row says %q:\n%s", words, c.screen())
		return 0
	}
	c.tapAt(30, row("arrived at 77 Fir Lane")).sees("booked", "sprayed 7.80 gal on all")
	c.tapAt(30, row("bermuda, zoysia")).sees("Set the valves: 1 open")
	c.tapAt(3, row("bermuda, zoysia")).sees("Supply and return are on a already.")
	y := row("k skip")
	x := strings.Index(strings.Split(c.screen(), "\n")[y], "k skip")
	c.tapAt(x, y).sees("skip 77 Fir Lane because")
	y = row("2 dog")
	x = strings.Index(strings.Split(c.screen(), "\n")[y], "2 dog")
	c.tapAt(x, y).tapAt(30, row("because")).sees("skipped 77 Fir Lane: dog")
	c.tapAt(40, 0).tapAt(79, 23).tapAt(200, 200)
}

func TestSecondTapSoonIsDropped(t *testing.T) {
	c := climbIn(t, morning).press("enter")
	tap := tea.MouseMsg{X: 30, Y: 6, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft}
	c.wait(time.Second).send(tap)
	for range 5 {
		c.wait(250 * time.Millisecond).send(tap)
	}
	if got := c.facts(); got != "visit_begun sprayed" {
		t.Errorf("logged: %s", got)
	}
}
