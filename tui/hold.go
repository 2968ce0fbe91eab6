package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/tui/theme"
)

// holdOrGoOn puts the day on hold, or goes on with it.
func (m *Model) holdOrGoOn() tea.Cmd {
	if m.book.Day().Hold == nil {
		m.openHold()
		return nil
	}
	p := m.got.next
	switch {
	case p.Act == check.ActHold && len(p.Facts) > 0:
		return m.enter(p.Facts...)
	case p.Act == check.ActHold && len(p.Else) > 0:
		return m.enter(p.Else...)
	}
	return m.enter(&core.Resumed{})
}

// openHold asks what the day waits for.
func (m *Model) openHold() {
	was, _ := check.HoldFor(m.book, core.At(m.at))
	m.openLine(textLine{
		prompt: "hold the day for", was: was, choices: []string{check.HoldWind, check.HoldRain}, hint: "or type what it waits for",
		read: func(_ *Model, said string) ([]core.Fact, error) {
			return onlyFact(&core.Held{Cause: said}, nil)
		},
	})
}

// onHold is the one state that the verdict begins with while the day waits; false if it does not.
func (m *Model) onHold() (said, bool) {
	h := m.book.Day().Hold
	if h == nil || m.got.next.Act != check.ActHold {
		return said{}, false
	}
	out := said{word: "HOLD", t: theme.Stop, brief: "on hold", stop: true, keeps: true}
	out.do = m.g.clean("ON HOLD for " + h.Cause + " since " + h.Since.Clock() + ".")
	if len(m.got.next.Facts) == 0 {
		out.says = m.g.clean(sentence(m.got.next.Why))
	}
	return out, true
}

// offerHold is the band while the day waits.
func (m *Model) offerHold() offer {
	p := m.got.next
	if len(p.Facts) > 0 {
		return offer{act: actDo, words: p.Words, small: sentence(p.Why), t: theme.Act}
	}
	return offer{act: actWeather, words: "look at the weather", t: theme.Act}
}
