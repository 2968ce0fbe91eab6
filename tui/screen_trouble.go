package tui

import "example.com/tintline/tui/theme"

// stageTrouble says what is wrong with the journal. Nothing can be logged any more.
func (m *Model) stageTrouble(s *scene) {
	what, do := sentences(m.trouble)
	body := []line{{left: []span{{theme.Base, " "}, {theme.Stop, " The last action is not booked, and nothing more can be. "}}}, {}}
	for _, l := range m.g.wrap(m.g.clean(what), m.w-2) {
		body = append(body, text(theme.Strong, " "+l))
	}
	body = append(body, line{})
	for _, l := range m.g.wrap(m.g.clean(do), m.w-2) {
		body = append(body, text(theme.Base, " "+l))
	}
	body = append(body, line{}, text(theme.Base, " What was booked before is in the book. Only q works now."))
	foot := m.pageFoot()
	s.add(m.head(), line{})
	s.add(body...)
	s.end(foot.y)
	s.add(m.foot(foot, s)...)
	s.end(m.h)
}
