package tui

import (
	"example.com/tintline/core"
	"example.com/tintline/core/say"
	"example.com/tintline/core/yard"
)

// foretell works out what the line that is open would log as it stands, with what follows from the book: it stands there
// before Enter is pressed. What cannot be read yet has its hint.
func (m *Model) foretell() {
	m.line.told = ""
	if !m.open || !m.line.tells || m.line.wrong != "" || m.busy() || blank(m.line.said()) {
		return
	}
	facts, err := m.line.read(m, m.line.said())
	if err != nil || len(facts) == 0 {
		return
	}
	es, err := m.book.Prepare("", core.At(m.at), facts...)
	if err != nil {
		m.line.told = join(sentences(err))
		return
	}
	for i, e := range es {
		if i > 0 {
			m.line.told += "; "
		}
		m.line.told += m.foretold(e.What)
	}
}

// foretold is a fact with all that follows from the book, in words.
func (m *Model) foretold(f core.Fact) string {
	words := say.Fact(f)
	if ran, ok := f.(*core.Ran); ok {
		words += m.overWords(ran)
	}
	if s, ok := f.(*core.Stocked); ok {
		if more := yard.StockedWords(m.book, s); more != "" {
			words += " (" + more + ")"
		}
	}
	return "would log: " + words
}
