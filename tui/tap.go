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
	row    string // actRow: the row's id
	key    string // actRun: the key that does the same
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
		switch s.act {
		case actChoose:
			m.choose(int(s.letter))
			return nil
		case actFormMore:
			m.form.more()
			return nil
		case actFormField:
			m.formTapped(s.row)
			return nil
		case actRow:
			return m.tapRow(s.row)
		}
		for _, b := range m.keys {
			if b.Enabled() && b.target() == s.tapTarget {
				return m.do(b)
			}
		}
		return nil
	}
	return nil
}

// tapRow chooses a row, and does there what Enter does if that only leads on.
func (m *Model) tapRow(id string) tea.Cmd {
	p := m.spec()
	if p == nil {
		return nil
	}
	m.on[p.page].chosen = id
	for _, r := range m.sheet.rows {
		switch {
		case r.id != id || !r.now:
		case m.follows():
			return m.takeRow(id)
		case p.pick != nil && m.free():
			return p.pick(m, id)
		}
	}
	return nil
}
