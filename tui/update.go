package tui

import (
	"fmt"
	"time"

	"github.com/charmbracelet/bubbles/cursor"
	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
)

const cursorStatic = cursor.CursorStatic

// The messages of our own.
type (
	wrote    struct{ turn wroteTurn }
	broke    struct{ err error }
	ticked   struct{ turn int }
	endAsked struct{}
)

// Update deals with one message. It is the only place where the model changes.
func (m Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	m.at = m.now()
	var cmd tea.Cmd
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.w, m.h = msg.Width, msg.Height
	case tea.KeyMsg:
		cmd = m.typed(msg)
	case tea.MouseMsg:
		cmd = m.tap(msg)
	case wrote:
		cmd = m.onWrote(msg.turn)
	case broke:
		cmd = m.onBroke(msg.err)
	case ticked:
		if msg.turn == m.tickTurn {
			cmd = m.tick()
		}
	case heldOver:
		cmd = m.onHeldOver(msg)
	case clocked:
		cmd = m.onClocked(msg)
	case counted:
		cmd = m.onCounted(msg)
	case keptAnswer:
		cmd = m.onKept(msg)
	case keptShare:
		cmd = m.onShare(msg)
	case copyDue:
		cmd = m.keepDaily()
	case dayFound:
		m.dayArrived(msg)
	case pulled:
		m.arrived(msg)
	case asked:
		m.askedArrived(msg)
	case pastYears:
		m.yearsArrived(msg)
	case endAsked:
		cmd = m.end()
	case tea.ResumeMsg:
		if m.mouse { // bubbletea does not turn it on again
			cmd = tea.EnableMouseCellMotion
		}
	}
	m.settle()
	return m, cmd
}

// settle brings answers, keys and what is to be drawn up to date.
func (m *Model) settle() {
	m.look()
	m.foretell()
	m.measure()
	m.move()
	m.show()
	m.enable()
	m.dressForm()
	m.scene = m.stage()
}

// tick comes back after a while; a stray one from before carries another number.
func (m *Model) tick() tea.Cmd {
	const every = 20 * time.Second
	m.tickTurn++
	return m.after(every, ticked{m.tickTurn})
}

func timer(d time.Duration, msg tea.Msg) tea.Cmd {
	return guarded(tea.Tick(d, func(time.Time) tea.Msg { return msg }))
}

// guarded runs a command and turns a panic into a message: otherwise the trace is printed on the alternate
// screen and vanishes with it.
func guarded(cmd tea.Cmd) tea.Cmd {
	if cmd == nil {
		return nil
	}
	return func() (msg tea.Msg) {
		defer func() {
			if r := recover(); r != nil {
				msg = broke{&core.Problem{
					What: fmt.Sprintf("The program hit a fault while it worked in the background: %v.", r),
					Do:   "Start it again and look whether the last entry is there.",
				}}
			}
		}()
		return cmd()
	}
}

// onBroke ends the program in order; what is left to say is in Trouble.
func (m *Model) onBroke(err error) tea.Cmd {
	m.trouble, m.writing, m.queue = err, false, nil
	m.done = true
	return tea.Quit
}

// end quits, after what waits has been written.
func (m *Model) end() tea.Cmd {
	if m.busy() && m.trouble == nil {
		m.quitting, m.open, m.form, m.ask = true, false, nil, question{}
		return nil
	}
	m.done = true
	return tea.Quit
}
