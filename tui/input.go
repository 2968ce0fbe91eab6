package tui

import (
	"strings"
	"time"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"
)

const (
	// tornFor is how long the tail of a torn escape sequence may take to arrive.
	tornFor = 50 * time.Millisecond
	// bounce is how close a second press of Enter is still the first one.
	bounce = 150 * time.Millisecond
	// settleFor is how long a question must have stood before it can be answered.
	settleFor = 400 * time.Millisecond
	// heldFor is how close a second y is still the first one held down: a keyboard waits so long before it
	// begins to repeat, and a terminal does not tell when a key is let go.
	heldFor = 700 * time.Millisecond
	// glued is how many runes in one read may still be keys that were pressed fast.
	glued = 3
	// tornSigns stand in escape sequences and in nothing that is typed here.
	tornSigns = "[<;"
)

// typed turns what the terminal sent into strokes and deals with them one by one, each against the screen that
// the one before left.
func (m *Model) typed(k tea.KeyMsg) tea.Cmd {
	m.otherKey(k)
	var cmds []tea.Cmd
	for _, stroke := range m.strokes(k) {
		if cmd := m.press(stroke); cmd != nil {
			cmds = append(cmds, cmd)
		}
		m.settle()
	}
	switch len(cmds) {
	case 0:
		return nil
	case 1:
		return cmds[0]
	}
	return tea.Sequence(cmds...)
}

// strokes says what of a message counts as keys. Runs of runes come from keys pressed fast, from pastes, and
// from the ends of escape sequences that a slow line tore; a run never matches a binding as a whole, or the
// letters "enter" would be Enter.
func (m *Model) strokes(k tea.KeyMsg) []tea.KeyMsg {
	if k.Paste {
		return m.pasted(k)
	}
	if k.Alt {
		m.torn() // alt+[ and alt+O begin a sequence; no other is bound
		return nil
	}
	if k.Type != tea.KeyRunes && k.Type != tea.KeySpace {
		return []tea.KeyMsg{k}
	}
	if m.within(m.swallow, tornFor) {
		m.torn()
		return nil
	}
	if len(k.Runes) == 1 {
		if k.Runes[0] == '[' && !m.typing() {
			m.torn()
			return nil
		}
		return []tea.KeyMsg{k}
	}
	if strings.ContainsAny(string(k.Runes), tornSigns) {
		m.torn()
		return nil
	}
	if m.typing() {
		return []tea.KeyMsg{k}
	}
	return m.split(k)
}

// split takes keys apart that arrived in one read, if all of them are bound now. A slow machine hands over a key
// that opens a line and what was typed into it at once: the rest is text then.
func (m *Model) split(k tea.KeyMsg) []tea.KeyMsg {
	first := tea.KeyMsg{Type: tea.KeyRunes, Runes: k.Runes[:1]}
	if b, bound := find(m.keys, first); bound && b.opensLine() {
		return []tea.KeyMsg{first, {Type: tea.KeyRunes, Runes: k.Runes[1:]}}
	}
	if len(k.Runes) > glued {
		m.drop()
		return nil
	}
	var out []tea.KeyMsg
	for _, r := range k.Runes {
		s := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}
		if _, bound := find(m.keys, s); !bound {
			m.drop()
			return nil
		}
		out = append(out, s)
	}
	return out
}

// pasted lets a paste into a line of text if it is one line of what can be printed; elsewhere it would be
// commands.
func (m *Model) pasted(k tea.KeyMsg) []tea.KeyMsg {
	if !m.typing() {
		return nil
	}
	for _, r := range k.Runes {
		if !unicode.IsPrint(r) {
			return nil
		}
	}
	return []tea.KeyMsg{{Type: tea.KeyRunes, Runes: k.Runes}}
}

// torn begins the time in which keys are the tail of a torn sequence.
func (m *Model) torn() { m.swallow = m.at }

// drop leaves out a run of keys. An Enter that follows at once was meant for what they would have opened.
func (m *Model) drop() {
	m.torn()
	m.dropped = m.at
}

// within tells whether a moment was no longer ago than that. A clock that was set back makes it long ago.
func (m *Model) within(then time.Time, long time.Duration) bool {
	ago := m.at.Sub(then)
	return ago >= 0 && ago < long
}

// typing tells whether what is typed is text.
func (m *Model) typing() bool { return m.open || m.form != nil }

// press deals with one stroke.
func (m *Model) press(k tea.KeyMsg) tea.Cmd {
	run := k.Type == tea.KeyRunes && len(k.Runes) > 1
	if b, found := find(m.keys, k); found && !run {
		return m.do(b)
	}
	if m.inForm() {
		m.form.pass(k)
	} else if m.open {
		if m.line.fresh && (k.Type == tea.KeyRunes || k.Type == tea.KeySpace) {
			m.line.in.Reset()
		}
		m.line.fresh = false
		in, _ := m.line.in.Update(k) // a static cursor asks for nothing
		m.line.in = in
		m.line.wrong = ""
	}
	return nil
}

// doubled tells whether Enter comes so soon after another, and with nothing typed between, that it is the same press, or on the heels of keys that
// were dropped.
func (m *Model) doubled() bool {
	again := m.within(m.lastDo, bounce) && !m.typedSince || m.within(m.dropped, settleFor)
	m.typedSince = false
	m.lastDo = m.at
	return again
}

// hasty tells whether y comes too soon to be an answer to what stands on the screen.
func (m *Model) hasty() bool {
	early := m.within(m.asked, settleFor) || m.within(m.lastYes, heldFor)
	m.lastYes = m.at
	return early
}
