package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// again is how soon a second tap on the same target is still the first one.
const again = 300 * time.Millisecond

// tapTarget is what a tap means: the same as a key.
type tapTarget struct {
	act    act
	letter byte
}

// spot is a place to tap.
type spot struct {
	rect
	tapTarget
}

// tap deals with a finger or the left button. Only the press counts: some terminals never send the release.
func (m *Model) tap(e tea.MouseMsg) tea.Cmd {
	if e.Action != tea.MouseActionPress || e.Button != tea.MouseButtonLeft {
		return nil
	}
	for _, s := range m.scene.spots {
		if !s.holds(e.X, e.Y) {
			continue
		}
		if s.tapTarget == m.tapped && m.within(m.lastTap, again) {
			m.lastTap = m.at
			return nil
		}
		m.tapped, m.lastTap = s.tapTarget, m.at
		if s.act == actChoose {
			m.choose(int(s.letter))
			return nil
		}
		for _, b := range m.keys {
			if b.Enabled() && b.act == s.act && b.letter == s.letter {
				return m.do(b)
			}
		}
		return nil
	}
	return nil
}
