package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	search "example.com/tintline/core/find"
	"example.com/tintline/tui/theme"
)

// lookup is what a search is for.
type lookup struct {
	prompt string
	lawns  bool   // lawns alone are meant
	offer  string // what Enter does with the name behind it
	take   func(m *Model, kind, name string) tea.Cmd
}

// openPageOf stands before the name of what is found.
const openPageOf = "open the page of "

// lettersAtLeast is from how many letters on something is looked for.
const lettersAtLeast = 3

// findPage looks for a lawn, a product or a mix by three letters. Its line is open as long as the page is.
func findPage() *pageSpec {
	return &pageSpec{
		page: pageFind, key: "s", title: "Search", words: "a lawn, a product, a mix: by three letters of its name",
		enter: (*Model).enterFind, show: (*Model).showFind, types: true,
	}
}

// search opens the page of the search.
func (m *Model) search(l lookup) tea.Cmd {
	m.sought = l
	return m.goTo(pageFind)
}

// enterFind opens the line; a search that nothing was said about opens the page of what is found.
func (m *Model) enterFind() tea.Cmd {
	if m.sought.take == nil {
		m.sought = lookup{prompt: "look for", offer: openPageOf, take: (*Model).openFound}
	}
	m.on[pageFind] = placeOn{}
	hint := "three letters of a lawn, a product or a mix; of a customer, an address, an active"
	if m.sought.lawns {
		hint = "three letters of a lawn, a customer or an address"
	}
	m.openLine(textLine{prompt: m.sought.prompt, hint: hint, take: (*Model).takeFound})
	return nil
}

// hits are what bears the letters typed and can be taken.
func (m *Model) hits() []search.Hit {
	typed := m.line.in.Value()
	if !m.follows() || len([]rune(strings.TrimSpace(typed))) < lettersAtLeast {
		return nil
	}
	var out []search.Hit
	for _, h := range search.In(m.book, typed) {
		if h.Kind == search.Lawn || !m.sought.lawns && (h.Kind == search.Product || h.Kind == search.Mix) {
			out = append(out, h)
		}
	}
	return out
}

func (m *Model) showFind() sheet {
	s := sheet{about: []line{text(theme.Dim, " the best first; Up and Down choose while you type")}}
	for _, h := range m.hits() {
		words := h.Words
		if l := m.book.Lawn(h.Name); h.Kind == search.Lawn && l != nil {
			words = grassWords(l.Zones) + ", " + words
		}
		s.rows = append(s.rows, row{id: h.Kind + "/" + h.Name, now: m.sought.offer == openPageOf, line: line{left: []span{
			m.cell(theme.Dim, h.Kind, 7), m.cell(theme.Strong, h.Name, m.w*3/10), {theme.Base, m.g.clean(words)},
		}}})
	}
	switch {
	case len(s.rows) > 0:
		_, name, _ := strings.Cut(m.chosenAmong(s.rows), "/")
		s.offer = m.sought.offer + name
	case len([]rune(strings.TrimSpace(m.line.in.Value()))) >= lettersAtLeast:
		s.rows = m.wrapped(theme.Base, "Nothing bears these letters.")
	}
	return s
}

// takeFound does with what was found what the search is for.
func (m *Model) takeFound(id string) tea.Cmd {
	kind, name, _ := strings.Cut(id, "/")
	take := m.sought.take
	m.sought = lookup{}
	m.goBack()
	return take(m, kind, name)
}

// openFound opens the page of what was found.
func (m *Model) openFound(kind, name string) tea.Cmd {
	switch kind {
	case search.Product:
		return m.openProduct(name)
	case search.Mix:
		return m.openMix(name)
	}
	return m.goToLawn(name)
}
