package theme

import (
	"io"
	"strings"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

func renderer(p termenv.Profile) *lipgloss.Renderer {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(p)
	return r
}

// TestProfiles: each set of colours has its own codes, and with none there is none. NO_COLOR is the plain theme with 16
// colours: attributes stay, which a profile without colour would take away with them.
func TestProfiles(t *testing.T) {
	t.Setenv("CLICOLOR_FORCE", "1") // what the renderer was given holds all the same
	t.Setenv("COLORTERM", "truecolor")
	t.Setenv("TERM", "xterm-256color")
	for _, one := range []struct {
		name    string
		profile termenv.Profile
		has     []string
		hasNot  []string
	}{
		{Sun, termenv.TrueColor, []string{"38;2;255;255;255", "48;2;155;0;0"}, nil},
		{Sun, termenv.ANSI256, []string{"38;5;231", "48;5;88"}, []string{";2;"}},
		{Sun, termenv.ANSI, []string{"97", "41"}, []string{"38;", "48;"}},
		{Night, termenv.ANSI, []string{"97", "41"}, []string{"38;", "48;"}},
		{Plain, termenv.ANSI, []string{"1", "7"}, []string{"3", "4", "9"}},
		{Plain, termenv.TrueColor, []string{"1", "7"}, []string{"3", "4", "9"}},
	} {
		on := New(renderer(one.profile), one.name).On(Stop)
		for _, s := range one.has {
			if !strings.Contains(on, s) {
				t.Errorf("%s with profile %v: a stop begins with %q, without %q", one.name, one.profile, on, s)
			}
		}
		for _, s := range one.hasNot {
			if strings.Contains(on, s) {
				t.Errorf("%s with profile %v: a stop begins with %q, with %q", one.name, one.profile, on, s)
			}
		}
	}
	for _, name := range Names() {
		s := New(renderer(termenv.Ascii), name)
		for tok := Token(0); tok < count; tok++ {
			if s.On(tok)+s.Off(tok) != "" {
				t.Errorf("%s: token %d has codes without any colours", name, tok)
			}
		}
	}
}

// TestNewIsCheap: the theme is changed on the screen with one key, so making it must not be felt.
func TestNewIsCheap(t *testing.T) {
	r := renderer(termenv.TrueColor)
	const most = 2000
	if n := testing.AllocsPerRun(10, func() { _ = New(r, Sun) }); n > most {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkNew(b *testing.B) {
	r := renderer(termenv.TrueColor)
	for b.Loop() {
		_ = New(r, Sun)
	}
}
