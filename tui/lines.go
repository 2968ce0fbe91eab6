package tui

import (
	"fmt"
	"strconv"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
)

// textLine is the one line of text that the day knows. It keeps what was typed when that is wrong.
type textLine struct {
	in      textinput.Model
	read    func(m *Model, said string) ([]core.Fact, error) // what is to be logged; none: nothing is
	then    func(m *Model, said string) (*textLine, error)   // before read: the line that comes next; nil: none does
	prompt  string
	was     string                                       // stands in the field; what is typed takes its place, an arrow or Backspace changes it
	fresh   bool                                         // nothing was done to it yet
	hint    string                                       // what may be typed
	choices []string                                     // answers that have a number
	wrong   string                                       // what is wrong with what was typed, and what is allowed
	take    func(m *Model, id string) tea.Cmd            // the page's rows follow what is typed, and Enter takes the one chosen
	after   question                                     // asked once the line is entered
	extra   string                                       // stands beside the choices, as that a reason makes nothing lawful
	tells   bool                                         // what would be logged stands there while it is typed; read changes nothing then
	told    string                                       // that, in words
	again   func(m *Model, logged []core.Fact) *textLine // the line that is opened once this one is logged
}

// openLine gives the keys to a line of text.
func (m *Model) openLine(l textLine) {
	l.in = m.line.in
	l.in.Reset()
	l.in.SetValue(l.was)
	l.in.CursorEnd()
	l.fresh = l.was != ""
	l.in.Focus() // asks for no blinking: the cursor is static
	m.line, m.open, m.status = l, true, status{}
}

func (m *Model) closeLine() {
	m.line.in.Blur()
	m.line.in.Reset()
	m.open = false
}

// choose takes a numbered answer into the field.
func (m *Model) choose(n int) {
	if m.open && n < len(m.line.choices) {
		m.line.in.SetValue(strconv.Itoa(n + 1))
		m.line.in.CursorEnd()
		m.line.wrong = ""
	}
}

// said is what the line says: the answer that a lone figure stands for, else what was typed.
func (l *textLine) said() string {
	s := l.in.Value()
	if n, err := strconv.Atoi(s); err == nil && n >= 1 && n <= len(l.choices) {
		return l.choices[n-1]
	}
	return s
}

// send enters the line. What is wrong, or could not have happened, is said, and the line stays open as it was
// typed.
func (m *Model) send() tea.Cmd {
	if m.line.take != nil {
		return m.takeRow(m.chosen())
	}
	if m.line.then != nil {
		next, err := m.line.then(m, m.line.said())
		switch {
		case err != nil:
			m.wrongLine(err)
			return nil
		case next != nil:
			m.openLine(*next)
			return nil
		}
	}
	facts, err := m.line.read(m, m.line.said())
	if err == nil && len(facts) > 0 && !m.busy() {
		_, err = m.book.Prepare("", core.At(m.at), facts...)
	}
	if err != nil {
		m.wrongLine(err)
		return nil
	}
	after, again := m.line.after, m.line.again
	m.closeLine()
	var cmd tea.Cmd
	switch {
	case after.open():
		cmd = m.enter(facts...)
		m.put(after)
	case m.busy(): // the book is about to change: what it is doubted against is not known yet
		cmd = m.enter(facts...)
	case len(facts) == 0: // it said what the page is to show
		cmd = m.asks()
	default:
		cmd = m.bookTyped(facts, false)
	}
	if again != nil && !m.ask.open() {
		if next := again(m, facts); next != nil {
			m.openLine(*next)
		}
	}
	return cmd
}

// takeRow closes a line whose rows follow it, and takes one of them.
func (m *Model) takeRow(id string) tea.Cmd {
	if id == "" {
		m.line.wrong = join("No row is chosen.", m.line.hint)
		return nil
	}
	take := m.line.take
	m.closeLine()
	return take(m, id)
}

// follows tells whether the page's rows follow a line that is open.
func (m *Model) follows() bool { return m.open && m.line.take != nil && m.fits() && !m.quitting }

// wrongLine says what is wrong with what was typed.
func (m *Model) wrongLine(err error) {
	what, do := sentences(err)
	m.line.wrong = join(what, do)
}

// onlyFact is a line's answer that logs a single fact.
func onlyFact(f core.Fact, err error) ([]core.Fact, error) {
	if err != nil {
		return nil, err
	}
	return []core.Fact{f}, nil
}

func (m *Model) readOperator(said string) (core.Fact, error) {
	if blank(said) {
		return nil, slip("Nothing is typed.", "Type who works today.")
	}
	for _, f := range m.got.next.Facts {
		if open, ok := f.(*core.DayOpened); ok {
			c := *open
			c.Operator = said
			return &c, nil
		}
	}
	return nil, slip("The day is open already.", "Press Esc.")
}

func slip(what, do string) error { return &core.Problem{What: what, Do: do, Err: core.ErrRefused} }

func (m *Model) openAmount() {
	zones := "all zones"
	if len(m.got.left) > 0 {
		zones = joined(m.got.left)
	}
	hint := "11.5 gal, or 6200 sqft, or gauge 151 140 (before, after); a zone's name first limits it"
	if a := m.applicator(); a != nil {
		if !a.Sprays() || m.only == check.OnlySpread {
			m.openSpread(zones, a)
			return
		}
		zones += " with " + a.Name
		if a.Spreads() {
			hint += "; 22 lb for what was spread"
		}
	}
	m.openLine(textLine{
		prompt: "sprayed on " + zones, hint: hint,
		read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(m.readAmount(said)) },
	})
}

func (m *Model) openPush() {
	prompt, hint := "pushed through the hose", "2.6 gal or 62 s; a letter says into which compartment; tint 48 s"
	if into := m.pushInto(); into != 0 {
		prompt += fmt.Sprintf(" (into %c)", into)
	}
	for _, a := range m.book.Rig().Applicators {
		if a.Tank > 0 {
			hint += "; 5 " + a.Name + " fills it"
			break
		}
	}
	hint += m.hopperHint()
	m.openLine(textLine{
		prompt: prompt, hint: hint,
		read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(m.readPush(said)) },
	})
}

func (m *Model) openGauge() {
	hint := "b 62: compartment and gallons"
	if l := m.inUse(); l != 0 {
		hint = fmt.Sprintf("62 for %c, in use; b 62 for another; gallons", l)
	}
	m.openLine(textLine{
		prompt: "gauge reads", hint: hint,
		read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(m.readGauge(said)) },
	})
}

func (m *Model) openWeather() {
	m.openLine(textLine{
		prompt: "weather now",
		read:   func(m *Model, said string) ([]core.Fact, error) { return onlyFact(m.readWeatherNow(said)) },
		hint:   weatherHint,
	})
}

func (m *Model) openSkip() { m.askSkip(m.got.lawn) }

// openReason asks why the operator goes on in spite of a stop. The Enter of this line logs the reason, never the
// spraying.
func (m *Model) openReason(f check.Finding) {
	about := ruleWords(f)
	if len(f.Zones) > 1 {
		about += ", on " + f.Zones[0]
	}
	m.openLine(textLine{
		prompt: "go on in spite of " + about + " because", extra: f.Unlawful(),
		choices: []string{"label read in hand and it allows this", "supervisor decided", "spot or edge only"},
		hint:    "or type the reason",
		read: func(m *Model, said string) ([]core.Fact, error) {
			if blank(said) {
				return nil, slip("Nothing is typed.", "Type 1, 2 or 3, or the reason; Esc leaves it.")
			}
			return check.GoOn(f, m.got.lawn, said), nil
		},
	})
}

func (m *Model) openOperator() {
	m.openLine(textLine{
		prompt: "who works today", hint: "a name; it stands in the record",
		read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(m.readOperator(said)) },
	})
}
