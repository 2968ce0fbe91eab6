package main

import (
	"errors"
	"io"
	"os"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/term"
	"github.com/muesli/termenv"

	"example.com/tintline/core"
	"example.com/tintline/store"
	"example.com/tintline/tui"
)

// cabOptions are what the cab screen is opened with.
type cabOptions struct {
	path   string
	now    func() time.Time
	colour string // auto, none, 16, 256 or full
	mouse  bool
	stdin  io.Reader
	stdout io.Writer
	adding *progress
	getenv func(string) string

	passing bool // the book goes when the screen does
}

// cab opens the screen on the operator's book.
func (a *app) cab() error {
	path, err := a.bookPath()
	if err != nil {
		return err
	}
	return runCab(a.cabOptions(path, a.cabClock()))
}

func (a *app) cabOptions(path string, now func() time.Time) cabOptions {
	return cabOptions{
		path: path, now: now, colour: a.flags.colour, mouse: !a.flags.noMouse,
		stdin: a.stdin, stdout: a.stdout, adding: a.adding(), getenv: a.getenv,
	}
}

// cabClock is the clock of the screen. A time given by hand is where it begins; it runs on from there, because
// ages and held keys are measured by it.
func (a *app) cabClock() func() time.Time {
	if a.at.Known {
		return a.runningFrom(a.at.V.Time())
	}
	return a.now
}

// runCab runs the screen until the operator leaves it.
func runCab(o cabOptions) error {
	if err := onTerminal(o); err != nil {
		return err
	}
	if o.getenv("ACCESSIBLE") != "" && needsSetup(o.path) {
		return &failure{what: "The book has no rig yet.", do: "Set it up with tintline setup, which asks in plain lines.", code: exitCannot}
	}
	k, err := openOrNew(o.path, o.adding)
	if err != nil {
		return err
	}
	if k.stale() {
		k.keepBeside(k.book.LastClose())
	}
	k.attendant.now = o.now
	keep := &keeper{b: k.attendant, passing: o.passing}
	options := tui.Options{
		Book: k.book, Journal: screenJournal{k}, Reader: screenJournal{k}, Keeper: keep, Bell: bell(o.stdout), Now: o.now, NewID: newID,
		Renderer: renderer(o), Theme: themeName(o), Fixed: noColours(o), Mouse: o.mouse, Suspend: shellBehind(), ASCII: !utf8Locale(o.getenv),
		Demo: k.file() != nil && k.file().Meta().BookID == demoID,
	}
	if k.file() != nil {
		options.Warning = k.file().Warning()
	}
	options.Warning = strings.TrimSpace(options.Warning + " " + strings.Join(k.attendant.says(), " "))
	p := tea.NewProgram(tui.New(options), append(tui.ProgramOptions(options), tea.WithInput(keys(o.stdin)), tea.WithOutput(o.stdout))...)
	stop := onHangUp(p)
	end, err := p.Run()
	stop()
	if m, ok := end.(tui.Model); ok && m.Trouble() != nil {
		err = m.Trouble()
	}
	if errors.Is(err, tea.ErrInterrupted) {
		err = nil
	}
	if errors.Is(err, tea.ErrProgramKilled) {
		err = &failure{
			what: "The screen broke down: " + err.Error() + ".",
			do:   "Start it again: all that it showed as booked is in the book.", code: exitCannot, err: err,
		}
	}
	if err == nil {
		_, err = keep.Daily() // what is still due: the day may have been closed and left in one go
	}
	return errors.Join(err, k.Close())
}

// onTerminal refuses to draw where nobody can see it.
func onTerminal(o cabOptions) error {
	in, okIn := o.stdin.(*os.File)
	out, okOut := o.stdout.(*os.File)
	if !okIn || !okOut || !term.IsTerminal(in.Fd()) || !term.IsTerminal(out.Fd()) {
		return &failure{what: "The screen needs a terminal to draw on.", do: "Run it in one, or ask by command; see tintline --help.", code: exitCannot}
	}
	if o.getenv("TERM") == "dumb" {
		do := "Ask by command instead: tintline status, check, tally, enter."
		if needsSetup(o.path) {
			do = "Set the book up with tintline setup, which asks in plain lines; then ask by command: tintline status, check, tally, enter."
		}
		return &failure{what: "This terminal (TERM=dumb) cannot draw a screen.", do: do, code: exitCannot}
	}
	return nil
}

// openOrNew opens the book; where there is none yet, and neither a copy nor the lines of one, the first action makes it.
func openOrNew(path string, p *progress) (*keptBook, error) {
	k, err := openBookWith(path, false, p)
	if errors.Is(err, store.ErrMissing) {
		_, copied := copyBack(path)
		if _, lines := linesBack(path, true); !copied && !lines {
			return newBook(path), nil
		}
	}
	return k, err
}

// screenJournal is a kept book whose errors the screen can show.
type screenJournal struct{ *keptBook }

// told is an error in two sentences.
type told struct{ *failure }

// Sentences are what is wrong and what to do.
func (t told) Sentences() (what, do string) { return t.what, t.do }

// Append keeps the entries of one action.
func (j screenJournal) Append(action string, entries []core.Entry) error {
	if err := j.keptBook.Append(action, entries); err != nil {
		return told{explain(err)}
	}
	j.keepClosedBy(entries)
	return nil
}

// bell rings the terminal's bell. One byte is written whole, between two frames.
func bell(w io.Writer) func() {
	return func() { _, _ = w.Write([]byte{7}) }
}

// renderer draws in the colours asked for. The terminal itself is never asked: one that does not answer would
// hold up the start. Without colour, attributes such as bold stay.
func renderer(o cabOptions) *lipgloss.Renderer {
	r := lipgloss.NewRenderer(o.stdout)
	r.SetColorProfile(profile(o))
	r.SetHasDarkBackground(themeName(o) != "sun")
	return r
}

func profile(o cabOptions) termenv.Profile {
	name := o.getenv("TERM")
	switch c := o.colour; {
	case c == "full", c == "auto" && (o.getenv("COLORTERM") == "truecolor" || o.getenv("COLORTERM") == "24bit"):
		return termenv.TrueColor
	case c == "256", c == "auto" && strings.Contains(name, "256color"):
		return termenv.ANSI256
	}
	return termenv.ANSI
}

// themeName is plain where there are no colours, else what TINTLINE_THEME says: night or sun.
func themeName(o cabOptions) string {
	if noColours(o) {
		return "plain"
	}
	switch t := o.getenv("TINTLINE_THEME"); t {
	case "sun", "plain":
		return t
	}
	return "night"
}

// noColours tells whether the operator asked for none, or the terminal is one that has none; the book's theme does not
// change that.
func noColours(o cabOptions) bool {
	if o.colour != "auto" {
		return o.colour == "none"
	}
	name := o.getenv("TERM")
	return o.getenv("NO_COLOR") != "" || strings.HasPrefix(name, "vt") || strings.HasSuffix(name, "-m") || strings.HasSuffix(name, "-mono")
}

// utf8Locale tells whether the terminal is set up for more than ASCII; an unset locale is taken for one.
func utf8Locale(getenv func(string) string) bool {
	for _, v := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if s := strings.ToLower(getenv(v)); s != "" {
			return strings.Contains(s, "utf-8") || strings.Contains(s, "utf8")
		}
	}
	return true
}
