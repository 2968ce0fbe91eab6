package tui

import (
	"fmt"

	"example.com/tintline/tui/theme"
)

// stageTrouble says what is wrong with the journal. Nothing else can be logged until it has taken what it did not take.
func (m *Model) stageTrouble(s *scene) {
	what, do := sentences(m.trouble)
	body := []line{{left: []span{{theme.Base, " "}, {theme.Stop, " The last action is not booked. "}}}, {}}
	if words := m.failed.words; words != "" {
		body = append(body, text(theme.Base, " "+m.g.fitWords(m.g.clean(words), m.w-2)), line{})
	}
	for _, l := range m.g.wrap(m.g.clean(what), m.w-2) {
		body = append(body, text(theme.Strong, " "+l))
	}
	body = append(body, line{})
	for _, l := range m.g.wrap(m.g.clean(do), m.w-2) {
		body = append(body, text(theme.Base, " "+l))
	}
	body = append(body, line{})
	for _, l := range m.g.wrap(m.wayOut(), m.w-2) {
		body = append(body, text(theme.Base, " "+l))
	}
	foot := m.pageFoot()
	s.add(m.head(), line{})
	s.add(body...)
	s.end(foot.y)
	s.add(m.foot(foot, s)...)
	s.end(m.h)
}

// wayOut says what the keys do, and what became of the rest.
func (m *Model) wayOut() string {
	const kept = "What was booked before is in the book."
	switch n := len(m.queue); {
	case m.writing:
		return "Trying again ..."
	case !m.canTryAgain():
		return kept + " Only q works now."
	case n == 1:
		return kept + " One more action waits behind this one. Enter tries again; q ends without them."
	case n > 1:
		return fmt.Sprintf("%s %d more actions wait behind this one. Enter tries again; q ends without them.", kept, n)
	}
	return kept + " Enter tries again; q ends without it."
}
