package tui

import (
	"io"
	"time"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/tui/theme"
)

// Journal keeps entries; it is implemented by the command. Append returns after the entries are durable.
type Journal interface {
	Append(action string, entries []core.Entry) error
}

// Options is all that the screen is given.
type Options struct {
	Book     *core.Book
	Journal  Journal
	Reader   Reader // nil: no page can show what is older than the book keeps
	Keeper   Keeper // nil: nobody looks after the file
	Bell     func() // rings the terminal's bell; may be nil
	Now      func() time.Time
	NewID    func() string
	Renderer *lipgloss.Renderer // nil: no colours, no attributes
	Theme    string             // night, sun, plain: where the book does not say
	Fixed    bool               // the theme is Theme, whatever the book says
	Demo     bool
	Mouse    bool
	Suspend  bool // a shell stands behind it that can bring it back
	ASCII    bool
	Warning  string // something to say at the start, from the file for instance
}

// Model is the screen, the only tea.Model of the program. Each value is whole; what its copies share (book,
// styles, lists) is changed by Update alone, or never.
type Model struct {
	book       *core.Book
	journal    Journal
	reader     Reader
	keeper     Keeper
	keeping    keeping
	bell       func()
	pulled     pulled
	planning   planning
	trued      trued
	past       map[past.Query]pastYears // never changed, made anew
	replies    map[page]asked           // likewise
	tallied    tallyDays
	recordsOf  recordsAsked
	money      moneyAsked
	seasonOf   seasonView
	passedOver map[string]bool // steps of the close that were left undone; never changed, made anew
	now        func() time.Time
	newID      func() string
	after      func(time.Duration, tea.Msg) tea.Cmd // a timer
	renderer   *lipgloss.Renderer
	themeName  string // the name of the theme
	firstTheme string // that it began with
	themeFixed bool
	ink        *theme.Styles
	g          *glyphs
	demo       bool
	mouse      bool
	suspend    bool

	w, h   int
	at     time.Time // of the message that is dealt with
	page   page
	back   []cameFrom // the pages that Esc goes back to
	specs  []*pageSpec
	on     [pages]placeOn
	sheet  sheet // what the page that is open shows
	turn   turning
	test   catching
	with   string // the applicator chosen; empty: the first one
	only   string // what of two things it is to do; empty: all that it is ready for
	old    oldEntries
	sought lookup // what the search is for
	looked looked // the entry that its page shows
	needs  need
	rects  [bands]rect
	room   bool // the window is large enough
	keys   []binding
	got    answers
	years  toldYears
	ahd    aheadList
	scene  *scene
	status status

	subject subject
	folded  map[string]bool // tables of the tally that are folded away
	made    string          // the mix that was just made: its page shows it once the book has it

	form   *form // a form of the set-up has the keys
	drafts map[string]draft

	open bool // a line of text has the keys
	line textLine
	ask  question

	mixing mixings // what is asked at the tank lid

	queue    []pending
	writing  bool
	onItsWay string // the words of what the disk is writing
	quitting bool   // asked to end; what waits is written first
	done     bool
	trouble  error     // the journal cannot be trusted to take more
	failed   wroteTurn // what it did not take
	left     error     // what was refused while ending

	swallow    time.Time // since then keys are the tail of a torn sequence
	dropped    time.Time // when a run of keys was left out
	asked      time.Time // when the question on the screen came up
	lastYes    time.Time
	lastDo     time.Time
	hold       holding
	typedSince bool // another key came since the last Enter; no time, because a clock can be set back
	lastTap    time.Time
	tapped     tapTarget
	tickTurn   int
}

// New makes the screen.
func New(o Options) Model {
	r := o.Renderer
	if r == nil {
		r = lipgloss.NewRenderer(io.Discard)
		r.SetColorProfile(termenv.Ascii)
	}
	m := Model{
		book: o.Book, journal: o.Journal, reader: o.Reader, keeper: o.Keeper, bell: o.Bell, now: o.Now, newID: o.NewID, after: timer,
		renderer: r, themeName: o.Theme, firstTheme: o.Theme, themeFixed: o.Fixed, ink: theme.New(r, o.Theme), drafts: map[string]draft{}, g: newGlyphs(o.ASCII), demo: o.Demo, mouse: o.Mouse, suspend: o.Suspend,
		specs: newPages(), line: textLine{in: newInput()},
	}
	m.keys = newKeys(m.specs)
	m.at = m.now()
	if o.Warning != "" {
		m.status = status{kind: saysStop, what: o.Warning}
	}
	m.wearBook()
	m.settle()
	return m
}

// wear puts a theme on.
func (m *Model) wear(name string) { m.themeName, m.ink = name, theme.New(m.renderer, name) }

// newInput is the field of a line of text: no blinking, which would tick, and no clipboard program.
func newInput() textinput.Model {
	const longest = 120
	in := textinput.New()
	in.CharLimit = longest
	in.KeyMap.Paste.Unbind()
	in.Cursor.SetMode(cursorStatic)
	return in
}

// Init starts the tick that keeps ages and the clock right, and asks whether a copy of the book is due.
func (m Model) Init() tea.Cmd { return tea.Batch(m.tick(), func() tea.Msg { return copyDue{} }) }

// Trouble is what is left to say after the program has ended, nil if nothing.
func (m Model) Trouble() error {
	if m.trouble != nil {
		return m.trouble
	}
	return m.left
}

// ProgramOptions are the options for the program that runs a Model.
func ProgramOptions(o Options) []tea.ProgramOption {
	const framesPerSecond = 60
	out := []tea.ProgramOption{tea.WithAltScreen(), tea.WithFilter(filter), tea.WithFPS(framesPerSecond)}
	if o.Mouse {
		out = append(out, tea.WithMouseCellMotion())
	}
	return out
}

// filter drops what a finger or a mouse sends besides presses, and turns a request to end, as SIGTERM makes it,
// into one that waits for the queue.
func filter(m tea.Model, msg tea.Msg) tea.Msg {
	switch msg := msg.(type) {
	case tea.MouseMsg:
		if msg.Action != tea.MouseActionPress || msg.Button != tea.MouseButtonLeft {
			return nil
		}
	case tea.QuitMsg:
		if own, ok := m.(Model); ok && !own.done {
			return endAsked{}
		}
	}
	return msg
}
