package tui

import (
	"errors"
	"fmt"
	"io"
	"os"
	"reflect"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"example.com/tintline/core"
)

// cab is a driver in the words of the screen: press, type, tap, and see. It runs the commands that the model
// returns in order and in this goroutine: no sleep, no race, the same screen every time.
type cab struct {
	t    testing.TB
	m    tea.Model
	at   time.Time
	disk *disk
	held []tea.Cmd // commands that wait for the disk, while it is slow
	slow bool
	quit bool
	opts Options
	old  []core.Entry // what was written before the screen was opened
}

// Last and OfLawn read the entries as the command does.
func (c *cab) Last(before uint64, n int) ([]core.Entry, error) {
	return c.newest(n, func(e core.Entry) bool { return before == 0 || e.Seq < before })
}

func (c *cab) OfLawn(lawn string, n int) ([]core.Entry, error) {
	return c.newest(n, func(e core.Entry) bool {
		for _, k := range e.Keys {
			if string(k) == string(core.LawnKey(lawn)) {
				return true
			}
		}
		return false
	})
}

func (c *cab) newest(n int, which func(core.Entry) bool) ([]core.Entry, error) {
	all := append(append([]core.Entry(nil), c.old...), c.disk.entries...)
	var out []core.Entry
	for i := len(all) - 1; i >= 0 && len(out) < n; i-- {
		if which(all[i]) {
			out = append(out, all[i])
		}
	}
	return out, c.disk.err
}

// disk is a journal in memory.
type disk struct {
	entries []core.Entry
	err     error
	panics  bool
}

func (d *disk) Append(_ string, e []core.Entry) error {
	if d.panics {
		panic("the card is gone")
	}
	if d.err != nil {
		return d.err
	}
	d.entries = append(d.entries, e...)
	return nil
}

var errDisk = errors.New("the disk is full")

var startTime = time.Date(2026, 5, 28, 9, 42, 0, 0, time.FixedZone("", -5*3600))

// enterLines enters lines as if typed.
func enterLines(t testing.TB, b *core.Book, at time.Time, lines string) (entered []core.Entry) {
	t.Helper()
	for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
		l, err := core.DecodeLine([]byte(s))
		if err != nil {
			t.Fatalf("%s\n%v", s, err)
		}
		es, err := b.Prepare(fmt.Sprint("line", b.Seq()), l.At.Or(core.At(at)), l.Fact)
		if err != nil {
			t.Fatalf("%s\n%v", s, err)
		}
		for _, e := range es {
			if err := b.Apply(e); err != nil {
				t.Fatal(err)
			}
		}
		entered = append(entered, es...)
	}
	return entered
}

// truck is the set-up that the tests share: a rig of three compartments and a ride-on, mixes and lawns.
func truck(t testing.TB) string {
	t.Helper()
	s, err := os.ReadFile("testdata/truck.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	return string(s)
}

// climbIn opens the screen at 80x24 on a book with the truck's set-up and the lines given.
func climbIn(t testing.TB, lines string, change ...func(*Options)) *cab {
	t.Helper()
	c := &cab{t: t, at: startTime, disk: &disk{}}
	b := core.NewBook(1)
	if lines != noBook {
		c.old = enterLines(t, b, c.at.Add(-20*time.Minute), truck(t))
		if lines != "" {
			c.old = append(c.old, enterLines(t, b, c.at.Add(-20*time.Minute), lines)...)
		}
	}
	n := 0
	c.opts = Options{
		Book: b, Journal: c.disk, Reader: c, Now: func() time.Time { return c.at }, Mouse: true, Renderer: colours(termenv.Ascii),
		NewID: func() string { n++; return fmt.Sprint("act", n) },
	}
	for _, f := range change {
		f(&c.opts)
	}
	m := New(c.opts)
	m.after = func(time.Duration, tea.Msg) tea.Cmd { return nil }
	c.m = m
	c.size(80, 24)
	return c
}

const noBook = "none"

func colours(p termenv.Profile) *lipgloss.Renderer {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(p)
	r.SetHasDarkBackground(true)
	return r
}

func (c *cab) book() *core.Book { return c.opts.Book }

func (c *cab) model() Model { return c.m.(Model) }

// send gives the model a message and runs what comes of it.
func (c *cab) send(msgs ...tea.Msg) *cab {
	c.t.Helper()
	for steps := 0; len(msgs) > 0; steps++ {
		if steps > 10_000 {
			c.t.Fatal("the model never comes to rest")
		}
		msg := filter(c.m, msgs[0])
		msgs = msgs[1:]
		if _, quit := msg.(tea.QuitMsg); quit {
			c.quit = true
			return c
		}
		if v := reflect.ValueOf(msg); v.IsValid() && v.Kind() == reflect.Slice && v.Type().Elem() == reflect.TypeFor[tea.Cmd]() {
			var out []tea.Msg // a Batch, or a Sequence, whose type is not exported
			for i := range v.Len() {
				out = append(out, c.run(v.Index(i).Interface().(tea.Cmd))...)
			}
			msgs = append(out, msgs...)
			continue
		}
		var cmd tea.Cmd
		c.m, cmd = c.m.Update(msg)
		c.square()
		msgs = append(c.run(cmd), msgs...)
	}
	return c
}

func (c *cab) run(cmd tea.Cmd) []tea.Msg {
	switch {
	case cmd == nil:
		return nil
	case c.slow:
		c.held = append(c.held, cmd)
		return nil
	}
	if msg := cmd(); msg != nil {
		return []tea.Msg{msg}
	}
	return nil
}

// catchUp lets the slow disk finish what it was given.
func (c *cab) catchUp() *cab {
	c.t.Helper()
	held := c.held
	c.held = nil
	for _, cmd := range held {
		c.send(cmd())
	}
	return c
}

func (c *cab) size(w, h int) *cab { return c.send(tea.WindowSizeMsg{Width: w, Height: h}) }

func (c *cab) wait(d time.Duration) *cab { c.at = c.at.Add(d); return c }

// press presses keys one after the other, a second apart.
func (c *cab) press(keys ...string) *cab {
	c.t.Helper()
	for _, k := range keys {
		c.wait(time.Second).send(stroke(k))
	}
	return c
}

func stroke(k string) tea.KeyMsg {
	switch k {
	case "enter":
		return tea.KeyMsg{Type: tea.KeyEnter}
	case "up":
		return tea.KeyMsg{Type: tea.KeyUp}
	case "down":
		return tea.KeyMsg{Type: tea.KeyDown}
	case "pgup":
		return tea.KeyMsg{Type: tea.KeyPgUp}
	case "pgdown":
		return tea.KeyMsg{Type: tea.KeyPgDown}
	case "backspace":
		return tea.KeyMsg{Type: tea.KeyBackspace}
	case "esc":
		return tea.KeyMsg{Type: tea.KeyEsc}
	case "left":
		return tea.KeyMsg{Type: tea.KeyLeft}
	case "right":
		return tea.KeyMsg{Type: tea.KeyRight}
	case "ctrl+c":
		return tea.KeyMsg{Type: tea.KeyCtrlC}
	case "ctrl+s":
		return tea.KeyMsg{Type: tea.KeyCtrlS}
	case "ctrl+u":
		return tea.KeyMsg{Type: tea.KeyCtrlU}
	case " ":
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
}

// typed types a text letter by letter.
func (c *cab) typed(s string) *cab {
	c.t.Helper()
	for _, r := range s {
		c.wait(time.Second).send(stroke(string(r)))
	}
	return c
}

// type_ types a text letter by letter and enters it.
func (c *cab) type_(s string) *cab {
	c.t.Helper()
	for _, r := range s {
		c.send(stroke(string(r)))
	}
	return c.press("enter")
}

// sure answers yes where what was typed is asked about.
func (c *cab) sure() *cab {
	c.t.Helper()
	if strings.Contains(c.screen(), "book it: ") {
		c.press("y")
	}
	return c
}

// tapAt taps a place on the screen.
func (c *cab) tapAt(x, y int) *cab {
	return c.wait(time.Second).send(tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
}

func (c *cab) screen() string { return c.m.View() }

// sees and seesNot look for words on the screen.
func (c *cab) sees(words ...string) *cab {
	c.t.Helper()
	for _, w := range words {
		if !strings.Contains(c.screen(), w) {
			c.t.Fatalf("the screen does not say %q:\n%s", w, c.screen())
		}
	}
	return c
}

func (c *cab) seesNot(words ...string) *cab {
	c.t.Helper()
	for _, w := range words {
		if strings.Contains(c.screen(), w) {
			c.t.Fatalf("the screen says %q:\n%s", w, c.screen())
		}
	}
	return c
}

// square checks that the screen has exactly as many lines and cells as it should, and never says that all is well.
func (c *cab) square() {
	c.t.Helper()
	m := c.model()
	if m.w <= 0 || m.h <= 0 {
		if m.View() != "" {
			c.t.Fatal("something is drawn on no screen")
		}
		return
	}
	lines := strings.Split(c.screen(), "\n")
	if len(lines) != m.h {
		c.t.Fatalf("%d lines on a screen of %d", len(lines), m.h)
	}
	for i, l := range lines {
		if w := lipgloss.Width(l); w != m.w {
			c.t.Fatalf("line %d is %d cells wide, not %d: %q", i+1, w, m.w, l)
		}
	}
	if strings.Contains(strings.ToLower(c.screen()), "safe") {
		c.t.Fatalf("the screen says \"safe\":\n%s", c.screen())
	}
}

// facts lists the names of what was logged by the screen.
func (c *cab) facts() string {
	var out []string
	for _, e := range c.disk.entries {
		out = append(out, e.What.Name())
	}
	return strings.Join(out, " ")
}
