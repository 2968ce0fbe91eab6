package tui

import (
	"fmt"

	"example.com/tintline/tui/theme"
)

// scene is all that is to be drawn: exactly as many lines as the screen has, and the places to tap.
type scene struct {
	w     int
	lines []line
	spots []spot
}

// stage sets the scene for the page that is open.
func (m *Model) stage() *scene {
	s := &scene{w: m.w}
	switch {
	case m.w <= 0 || m.h <= 0:
		return s
	case !m.fits():
		m.stageSmall(s)
	case m.page == pageTrouble:
		m.stageTrouble(s)
	case m.form != nil:
		m.stageForm(s)
	case m.spec() != nil:
		m.stageSheet(s)
	default:
		m.stageCab(s)
	}
	return s
}

// fits tells whether the window is large enough for what this rig needs.
func (m *Model) fits() bool { return m.room }

// measure works out the layout for this window and this rig.
func (m *Model) measure() {
	m.needs = m.need()
	m.rects, m.room = layout(m.w, m.h, m.needs)
}

// need is what rig, day and keys ask of the layout.
func (m *Model) need() need {
	n := need{foot: m.footRows()}
	if m.book.Rig() != nil {
		n.mixes = len(m.book.Plumbing().Compartments)
		n.mixRows = m.mixRows(m.w)
		n.tanks = n.mixes + len(m.book.Plumbing().Tanks) + len(m.book.Plumbing().Hoppers)
		n.next = len(m.book.Day().Visits)
	}
	return n
}

// stageSmall says in one sentence that the window is too small. No key but quit works then.
func (m *Model) stageSmall(s *scene) {
	words := fmt.Sprintf("This window is %d by %d; the screen needs %d by %d. Make it larger, or its letters smaller.", m.w, m.h, leastWidth, leastHeight)
	if m.demo {
		words = "Demo book. " + words
	}
	for _, l := range m.g.wrap(words, m.w) {
		s.add(text(theme.Strong, l))
	}
	s.end(m.h)
}

func (s *scene) add(l ...line) { s.lines = append(s.lines, l...) }

// end makes the scene exactly h lines long.
func (s *scene) end(h int) {
	for len(s.lines) < h {
		s.lines = append(s.lines, line{})
	}
	s.lines = s.lines[:h]
}

// View paints the scene. It asks nothing and works nothing out.
func (m Model) View() string {
	if m.scene == nil || len(m.scene.lines) == 0 {
		return ""
	}
	const perCell = 2 // bytes, codes included, of a screen full of text
	p := painter{st: m.ink, g: m.g, b: make([]byte, 0, perCell*m.w*m.h+1024)}
	for i, l := range m.scene.lines {
		if i > 0 {
			p.b = append(p.b, '\n')
		}
		p.line(l, m.scene.w)
		p.end()
	}
	return string(p.b)
}
