package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
)

// Reader reads old entries; it is implemented by the command.
type Reader interface {
	// Last lists up to n entries before a number (0: from the end), newest first.
	Last(before uint64, n int) ([]core.Entry, error)
	// OfLawn lists the last n entries about a lawn, newest first.
	OfLawn(lawn string, n int) ([]core.Entry, error)
}

// pulled are entries that were read for a page.
type pulled struct {
	what    string // what was asked for
	entries []core.Entry
	err     error
	done    bool
}

// pull reads entries beside the screen. What was asked for before is forgotten.
func (m *Model) pull(what string, f func(r Reader) ([]core.Entry, error)) tea.Cmd {
	m.pulled = pulled{what: what}
	if m.reader == nil {
		m.pulled.done = true
		return nil
	}
	r := m.reader
	return guarded(func() tea.Msg {
		entries, err := f(r)
		return pulled{what: what, entries: entries, err: err, done: true}
	})
}

// arrived keeps what was read for the page that asked for it, also if another one is open by now.
func (m *Model) arrived(p pulled) {
	if p.what == m.pulled.what {
		m.pulled = p
		return
	}
	m.back = append([]cameFrom(nil), m.back...)
	for i := range m.back {
		if m.back[i].pulled.what == p.what {
			m.back[i].pulled = p
		}
	}
}

// ring rings the terminal's bell.
func (m *Model) ring() tea.Cmd {
	if m.bell == nil {
		return nil
	}
	bell := m.bell
	return guarded(func() tea.Msg { bell(); return nil })
}
