package tui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"
	"github.com/muesli/termenv"

	"example.com/tintline/tui/theme"
)

// situation opens one of the situations with other options.
func situation(t *testing.T, name string, change ...func(*Options)) *cab {
	t.Helper()
	for _, s := range situations {
		if s.name == name {
			was := s.cab(t)
			o := was.model()
			for _, f := range change {
				f(&was.opts)
			}
			o.renderer, o.g = was.opts.Renderer, newGlyphs(was.opts.ASCII)
			o.wear(was.opts.Theme)
			was.m = o
			return was.size(80, 24)
		}
	}
	t.Fatalf("there is no situation %q", name)
	return nil
}

func inTheme(name string, p termenv.Profile) func(*Options) {
	return func(o *Options) { o.Theme, o.Renderer = name, colours(p) }
}

// TestThemes keeps the escape codes of each theme in each set of colours. The words are the same in all of them, and
// the plain theme is the same whatever colours there are.
func TestThemes(t *testing.T) {
	profiles := []struct {
		name string
		p    termenv.Profile
	}{{"none", termenv.Ascii}, {"16", termenv.ANSI}, {"256", termenv.ANSI256}, {"full", termenv.TrueColor}}
	for _, name := range []string{"stop_with_two_stops", "ask_for_strong_wind"} {
		words := situation(t, name).screen()
		plain := situation(t, name, inTheme(theme.Plain, termenv.ANSI)).screen()
		for _, th := range theme.Names() {
			for _, p := range profiles {
				c := situation(t, name, inTheme(th, p.p))
				screen := c.screen()
				if stripped := ansi.Strip(screen); stripped != words {
					t.Errorf("%s, %s, %s: the words differ:\n%s", name, th, p.name, stripped)
				}
				switch {
				case p.p == termenv.Ascii:
					if screen != words {
						t.Errorf("%s, %s: codes without colours", name, th)
					}
				case th == theme.Plain && p.p != termenv.ANSI:
					if screen != plain {
						t.Errorf("%s: the plain theme differs with %s colours", name, p.name)
					}
				default:
					t.Run(fmt.Sprintf("%s_%s_%s_80x24", name, th, p.name), func(t *testing.T) {
						golden.RequireEqual(t, []byte(screen))
					})
				}
			}
		}
	}
}

// TestASCIIIsASCII: every sign has a twin, on every page and in every situation.
func TestASCIIIsASCII(t *testing.T) {
	for _, s := range situations {
		c := situation(t, s.name, func(o *Options) { o.ASCII = true })
		for _, size := range [][2]int{{40, 16}, {80, 24}, {120, 40}} {
			for i, l := range strings.Split(c.size(size[0], size[1]).screen(), "\n") {
				for _, r := range l {
					if r > 0x7e {
						t.Errorf("%s at %v, line %d: %q stands in %q", s.name, size, i+1, r, l)
						break
					}
				}
			}
		}
	}
}

// TestNothingDependsOnColour: what the theme marks by a token is also said by a word or a sign. The tokens that carry
// meaning stand on text that carries it too.
func TestNothingDependsOnColour(t *testing.T) {
	c := situation(t, "stop_with_two_stops")
	c.sees("STOP  Push", "STOP  Wait", "not here", "booked weather", "► gun gives  B ", "►◄ a")
	situation(t, "ask_for_strong_wind").sees("ASK   Look", "y      yes, go on")
	situation(t, "refused").sees("cannot say 170.0 gal")
	situation(t, "slow_disk").sees("writing pushed back")
}
