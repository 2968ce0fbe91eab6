package theme

import (
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// Styles are the tokens' escape codes. They are taken from lipgloss once, so that drawing is appending bytes.
type Styles struct{ on, off [count]string }

// New makes the styles of a theme for a renderer. The renderer's colour profile decides how many colours there
// are; with none, nothing but text is left. An unknown name gives night.
func New(r *lipgloss.Renderer, name string) *Styles {
	s := &Styles{}
	for t, l := range looks(name) {
		s.on[t], s.off[t] = codes(l.style(r))
	}
	return s
}

// On is the code that begins a token, Off the one that ends it.
func (s *Styles) On(t Token) string { return s.on[t] }

// Off is the code that ends a token.
func (s *Styles) Off(t Token) string { return s.off[t] }

func (l look) style(r *lipgloss.Renderer) lipgloss.Style {
	st := r.NewStyle()
	if l.fg.set() {
		st = st.Foreground(l.fg.colour())
	}
	if l.bg.set() {
		st = st.Background(l.bg.colour())
	}
	if l.bold && !(r.ColorProfile() == termenv.ANSI && l.fg.dark()) {
		st = st.Bold(true)
	}
	if l.reverse {
		st = st.Reverse(true)
	}
	if l.underline {
		st = st.Underline(true)
	}
	return st
}

// Style is a token as a lipgloss style, for what is drawn by lipgloss itself.
func Style(r *lipgloss.Renderer, name string, t Token) lipgloss.Style { return looks(name)[t].style(r) }

// codes draws one letter and keeps what stands before and after it.
func codes(st lipgloss.Style) (on, off string) {
	const letter = "x"
	on, off, _ = strings.Cut(st.Render(letter), letter)
	return on, off
}
