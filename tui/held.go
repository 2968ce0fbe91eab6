package tui

import tea "github.com/charmbracelet/bubbletea"

// holding is an Enter that may be the one before, held down: a terminal does not tell when a key is let go. It waits
// until the next repeat would have come, and only then counts as a press of its own.
type holding struct {
	turn  int    // of the Enter that waits; another key or another Enter makes it stray
	act   act    // what it is to do
	about string // what the band said that it does
}

// heldOver says that no repeat came after an Enter.
type heldOver struct{ turn int }

// unlessHeld does what Enter does, unless it is the repeat of a key that is held down: an operator who leans on it
// must not log what has not been done.
func (m *Model) unlessHeld(a act, do func() tea.Cmd) tea.Cmd {
	before, other := m.lastDo, m.typedSince
	m.hold.turn++
	switch {
	case m.doubled():
		return nil
	case !m.within(before, heldFor) || other:
		return do()
	}
	m.hold.act, m.hold.about = a, m.offer().words
	return m.after(bounce, heldOver{m.hold.turn})
}

// onHeldOver does what an Enter asked for that was not held, if the band still says what it said then.
func (m *Model) onHeldOver(msg heldOver) tea.Cmd {
	if msg.turn != m.hold.turn || m.hold.about != m.offer().words {
		return nil
	}
	m.hold.turn++
	for _, b := range m.keys {
		if !b.Enabled() || b.act != m.hold.act {
			continue
		}
		if b.act == actPick {
			return m.pickRow()
		}
		return m.doNext()
	}
	return nil
}

// otherKey makes an Enter stray that waits, because the operator has gone on.
func (m *Model) otherKey(k tea.KeyMsg) {
	if k.Type != tea.KeyEnter {
		m.hold.turn++
		m.typedSince = true
	}
}
