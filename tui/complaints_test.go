package tui

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/mattn/go-runewidth"
)

// What users of screens in terminals complain of, and what the libraries trap one into, each with the tests that hold it
// off here:
//
//	flicker; whole screens repainted; blinking                 TestTickChangesFewLines TestNothingBlinks TestCountsFiveFramesASecond
//	garbled after a resize or at the start; a size of 0x0      TestResizeStorm TestEverySizeIsSquare
//	the top line is gone                                       TestEverySizeForEveryRig TestEverySizeIsSquare
//	too small, and nothing says so                             TestTooSmallTakesNoKeyButQuit
//	five seconds before anything shows                         TestSilentTerminal
//	wrong colours, or none because CI is set                   TestColoursAskedFor TestColoursOnTheTerminal
//	NO_COLOR loses what was marked                             TestColoursOnTheTerminal TestPlainTellsApartByAttributes
//	CLICOLOR_FORCE and COLORTERM overrule what was asked for   TestProfiles TestColoursAskedFor
//	not to be read on a light background or in the sun         TestContrast TestContrastOfSixteen
//	meaning by colour alone                                    TestNothingDependsOnColour TestThemes
//	signs and borders out of line                              TestGlyphsAreOneCell TestCleanTextHasTheWidthItSays
//	two cells where a locale is East Asian                     TestEastAsianLocaleChangesNothing
//	signs that the terminal does not have                      TestASCIIIsASCII TestSignsOfTheLocale TestNoLocaleNoSigns
//	names from outside that break the screen                   TestNamesFromOutsideCannotBreakTheScreen
//	keys lost that were pressed fast; glued keys               TestKeysThroughTheParser
//	torn arrows and touches act as letters                     TestKeysThroughTheParser TestKeys
//	the mouse takes the selection away                         TestNoMouse
//	a touch does nothing: no release, no motion mode 1003      TestTaps TestModesNeverSet
//	a touch counts twice                                       TestSecondTapSoonIsDropped
//	places too small for a finger                              TestBandIsAThumbHigh TestSpotsAreDisjoint
//	floods of motion                                           TestMotionIsDropped TestViewIsQuick TestViewAllocates
//	one wrong key destroys                                     TestStrike TestClosingTheDayNeedsAnAnswer TestEnterDoesNotAnswer
//	a key that is held down confirms                           TestHeldYesAnswersNothingUnseen TestHeldEnterIsOnePress
//	a bounce counts twice                                      TestBouncingEnterIsOnePress
//	a paste types commands                                     TestNoiseLogsNothing TestKeysThroughTheParser
//	no way for who cannot see a screen                         TestDumbTerminal
//	keys that work and are shown nowhere                       TestKeys TestHelpListsEveryKey TestReadmeListsTheKeys
//	the shell is broken after a crash                          TestTerminalAfterPanic TestTerminalIsAsItWas TestReadmeTellsOfReset
//	suspended, the mouse is gone for good                      TestSuspendAndResume TestResumeTurnsTheMouseOnAgain
//	suspended, nothing brings it back                          TestNoShellNoSuspend
//	the terminal was closed, and what was entered is gone      TestTerminalClosed TestKilledBetweenKeys
//	focus reports taken for keys                               TestFocusMeansNothing TestModesNeverSet
//	a timer that stands still while the machine sleeps         TestStrayTicksAreDropped
//	a panic beside the screen leaves no word                   TestPanicInTheJournalEndsInOrder TestTerminalAfterPanic
//	signals that end it halfway                                TestTerminalIsAsItWas TestTerminalClosed
//	two commands race                                          TestSlowDisk TestBookChangesAfterTheDisk
//	a paste key that runs a program                            TestPasteKeyRunsNothing TestAFormRunsNoProgram
//	an error taken for a message                               TestErrorsAreNoMessages
//	zones and second stacks by the back door                   TestHouse TestNoSecondStack
//
// This one holds that the tests exist.
func TestComplaintsHaveTheirTests(t *testing.T) {
	known := map[string]bool{}
	fset := token.NewFileSet()
	var table string
	for _, dir := range []string{".", "theme", "../cmd/tintline", "../cmd/endtoend"} {
		files, err := filepath.Glob(filepath.Join(dir, "*_test.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range files {
			f, err := parser.ParseFile(fset, name, nil, parser.ParseComments)
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range f.Decls {
				if d, ok := d.(*ast.FuncDecl); ok {
					known[d.Name.Name] = true
					if d.Name.Name == t.Name() {
						table = d.Doc.Text()
					}
				}
			}
		}
	}
	rows := 0
	for _, l := range strings.Split(table, "\n") {
		complaint, tests, row := strings.Cut(l, "  Test")
		if !row {
			continue
		}
		rows++
		for _, name := range strings.Fields("Test" + tests) {
			if !known[name] {
				t.Errorf("%q: there is no %s", strings.TrimSpace(complaint), name)
			}
		}
	}
	if rows < 35 {
		t.Errorf("the table has %d rows", rows)
	}
}

// differing counts the lines in which two screens differ.
func differing(a, b string) int {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	n := max(len(x), len(y)) - min(len(x), len(y))
	for i := range min(len(x), len(y)) {
		if x[i] != y[i] {
			n++
		}
	}
	return n
}

// TestTickChangesFewLines: a terminal redraws whole lines, so a minute that passes changes the clock's line and those
// that tell an age, and nothing else is drawn anew.
func TestTickChangesFewLines(t *testing.T) {
	const most = 3
	for _, s := range situations {
		c := s.cab(t)
		was := c.screen()
		c.wait(time.Second).send(ticked{c.model().tickTurn})
		if n := differing(was, c.screen()); n > 0 && !clockRuns(s.name) {
			t.Errorf("%s: a second that passes changes %d lines", s.name, n)
		}
		c.wait(time.Minute).send(ticked{c.model().tickTurn})
		if n := differing(was, c.screen()); n > most && !clockRuns(s.name) {
			t.Errorf("%s: a minute that passes changes %d lines\n%s\n%s", s.name, n, was, c.screen())
		}
	}
}

// TestNothingBlinks: an open line asks for no timer.
func TestNothingBlinks(t *testing.T) {
	c := climbIn(t, morning).press("enter")
	for _, k := range []string{"l", "p", "o", "i", "k"} {
		m, cmd := c.wait(time.Second).m.Update(stroke(k))
		if cmd != nil || !m.(Model).open {
			t.Errorf("%q: a command %v, open %v", k, cmd != nil, m.(Model).open)
		}
		m, cmd = m.Update(stroke("1"))
		if cmd != nil {
			t.Errorf("a letter in the line of %q asks for a command", k)
		}
		c.m, _ = m.Update(stroke("esc"))
	}
}

// TestEastAsianLocaleChangesNothing: where box lines and arrows are two cells for a library, we still draw by our own
// widths.
func TestEastAsianLocaleChangesNothing(t *testing.T) {
	was := runewidth.DefaultCondition.EastAsianWidth
	defer func() { runewidth.DefaultCondition.EastAsianWidth = was }()
	for _, name := range []string{"stop_with_two_stops", "stop_reason_line", "line_is_wrong"} {
		runewidth.DefaultCondition.EastAsianWidth = false
		narrow := situation(t, name).screen()
		runewidth.DefaultCondition.EastAsianWidth = true
		if wide := situation(t, name).screen(); wide != narrow {
			t.Errorf("%s differs:\n%s\n%s", name, narrow, wide)
		}
	}
}

// TestMotionIsDropped: what a mouse sends besides presses never reaches the model.
func TestMotionIsDropped(t *testing.T) {
	c := climbIn(t, morning)
	for _, e := range []tea.MouseMsg{
		{Action: tea.MouseActionMotion, Button: tea.MouseButtonNone},
		{Action: tea.MouseActionMotion, Button: tea.MouseButtonLeft},
		{Action: tea.MouseActionRelease, Button: tea.MouseButtonLeft},
		{Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown},
		{Action: tea.MouseActionPress, Button: tea.MouseButtonRight},
	} {
		e.X, e.Y = 30, 7
		if got := filter(c.m, e); got != nil {
			t.Errorf("%+v passes as %+v", e, got)
		}
	}
}

// TestBandIsAThumbHigh: the place that does what Enter does is three rows high from 80x24 on, whatever the rig, except
// where its tanks take the rows; nowhere is it less than half the screen wide.
func TestBandIsAThumbHigh(t *testing.T) {
	for _, one := range []struct{ w, h, rows int }{{40, 16, 1}, {60, 20, 1}, {80, 24, 2}, {80, 25, 3}, {120, 40, 3}} {
		c := climbIn(t, morning).size(one.w, one.h)
		found := false
		for _, s := range c.model().scene.spots {
			if s.act == actDo && s.h >= one.rows && s.w >= max(8, one.w/2) {
				found = true
			}
		}
		if !found {
			t.Errorf("%dx%d: no place for Enter of %d rows:\n%s", one.w, one.h, one.rows, c.screen())
		}
	}
}

// TestHeldEnterIsOnePress leans on Enter: a keyboard repeats it after a while, and what follows what it did must not be
// logged as done too. Two presses in a row still are two.
func TestHeldEnterIsOnePress(t *testing.T) {
	type timed struct {
		at  time.Time
		msg tea.Msg
	}
	for _, delay := range []time.Duration{200 * time.Millisecond, 250 * time.Millisecond, 500 * time.Millisecond, 660 * time.Millisecond} {
		c := climbIn(t, morning)
		var due []timed
		m := c.model()
		m.after = func(d time.Duration, msg tea.Msg) tea.Cmd { due = append(due, timed{c.at.Add(d), msg}); return nil }
		c.m = m
		pass := func(d time.Duration) {
			for end := c.at.Add(d); c.at.Before(end); {
				c.wait(time.Millisecond)
				for i := 0; i < len(due); i++ {
					if !due[i].at.After(c.at) {
						msg := due[i].msg
						due = append(due[:i], due[i+1:]...)
						c.send(msg)
						i--
					}
				}
			}
		}
		c.send(stroke("enter"))
		pass(delay)
		for range 60 {
			c.send(stroke("enter"))
			pass(33 * time.Millisecond)
		}
		pass(2 * time.Second)
		if got := c.facts(); got != "visit_begun" {
			t.Errorf("held, with a first repeat after %v: %s", delay, got)
		}
		c.send(stroke("enter")) // let go, and pressed again, twice in a row
		pass(300 * time.Millisecond)
		c.send(stroke("enter"))
		pass(300 * time.Millisecond)
		if got := c.facts(); got != "visit_begun sprayed visit_done" {
			t.Errorf("two presses after that: %s", got)
		}
		c.send(stroke("enter")) // another key in between: the operator has gone on
		pass(100 * time.Millisecond)
		c.send(stroke("?"), stroke("esc"))
		pass(300 * time.Millisecond)
		if got := c.facts(); got != "visit_begun sprayed visit_done" {
			t.Errorf("an Enter that waited was done behind another key: %s", got)
		}
	}
}

func TestFocusMeansNothing(t *testing.T) {
	c := climbIn(t, atAlder)
	was := c.screen()
	for _, msg := range []tea.Msg{tea.FocusMsg{}, tea.BlurMsg{}} {
		m, cmd := c.m.Update(msg)
		if cmd != nil || m.View() != was {
			t.Errorf("%T changes something", msg)
		}
	}
}

// TestStrayTicksAreDropped: a tick of a turn before asks for no other one, or there would be more and more of them.
func TestStrayTicksAreDropped(t *testing.T) {
	c := climbIn(t, morning)
	m := c.model()
	asked := 0
	m.after = func(time.Duration, tea.Msg) tea.Cmd { asked++; return nil }
	next, _ := m.Update(ticked{m.tickTurn})
	if asked != 1 {
		t.Fatalf("a tick asked for %d", asked)
	}
	for range 5 {
		next, _ = next.Update(ticked{m.tickTurn})
	}
	if asked != 1 {
		t.Errorf("stray ticks asked for %d more", asked-1)
	}
}

// TestPasteKeyRunsNothing: the library's own key for pasting would run a program of the system.
func TestPasteKeyRunsNothing(t *testing.T) {
	c := climbIn(t, morning).press("enter", "l")
	m, cmd := c.m.Update(tea.KeyMsg{Type: tea.KeyCtrlV})
	if cmd != nil || m.(Model).line.in.Value() != "" {
		t.Errorf("ctrl+v asks for a command (%v) or types %q", cmd != nil, m.(Model).line.in.Value())
	}
}

// TestErrorsAreNoMessages: a message type that is an interface would match any error.
func TestErrorsAreNoMessages(t *testing.T) {
	c := climbIn(t, atAlder)
	was := c.screen()
	m, cmd := c.m.Update(errors.New("from elsewhere"))
	if cmd != nil || m.View() != was || m.(Model).Trouble() != nil {
		t.Error("an error that came as a message was taken for one of ours")
	}
}

// TestNoSecondStack: one set of terminal libraries, and none that keeps places to tap of its own.
func TestNoSecondStack(t *testing.T) {
	mod, err := os.ReadFile("../go.mod")
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{"charm.land/", "bubblezone", "bubbletea/v2", "lipgloss/v2"} {
		if strings.Contains(string(mod), path) {
			t.Errorf("go.mod names %s", path)
		}
	}
}

func TestReadmeTellsOfReset(t *testing.T) {
	text, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, word := range []string{"`reset`", "NO_COLOR", "--no-mouse", "hold shift"} {
		if !strings.Contains(string(text), word) {
			t.Errorf("README.md does not tell of %s", word)
		}
	}
}

// clockRuns tells whether a count-down or a stop watch runs in a situation.
func clockRuns(name string) bool {
	switch name {
	case "calibrate_run", "calibrate_catching", "calibrate_stop":
		return true
	}
	return strings.HasPrefix(name, "change_")
}
