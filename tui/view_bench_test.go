package tui

import (
	"testing"
	"time"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"example.com/tintline/tui/theme"
)

// naive draws the same scene as one writes it with lipgloss at hand: a style for each piece, made where it is
// used, widths and joins left to the library.
func naive(m Model, r *lipgloss.Renderer) string {
	rows := make([]string, 0, len(m.scene.lines))
	for _, l := range m.scene.lines {
		piece := func(list []span) string {
			var out []string
			for _, s := range list {
				out = append(out, theme.Style(r, theme.Night, s.t).Render(s.s))
			}
			return lipgloss.JoinHorizontal(lipgloss.Top, out...)
		}
		right := piece(l.right)
		w := m.scene.w - lipgloss.Width(right)
		left := theme.Style(r, theme.Night, l.fill).Width(w).MaxWidth(w).Inline(true).Render(ansi.Truncate(piece(l.left), w, string(m.g.cut)))
		rows = append(rows, lipgloss.JoinHorizontal(lipgloss.Top, left, right))
	}
	return lipgloss.JoinVertical(lipgloss.Left, rows...)
}

func painted(t testing.TB, w, h int) (*cab, *lipgloss.Renderer) {
	r := colours(termenv.TrueColor)
	return climbIn(t, atAlder, func(o *Options) { o.Renderer, o.Theme = r, theme.Night }).size(w, h), r
}

func TestNaiveViewIsTheSameScreen(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 40}, {60, 20}} {
		c, r := painted(t, size[0], size[1])
		if got, want := ansi.Strip(c.screen()), ansi.Strip(naive(c.model(), r)); got != want {
			t.Errorf("%v: the two differ\n%s\n--\n%s", size, got, want)
		}
	}
}

func TestViewAllocates(t *testing.T) {
	const most = 50
	for _, size := range [][2]int{{80, 24}, {120, 40}} {
		c, _ := painted(t, size[0], size[1])
		if n := testing.AllocsPerRun(100, func() { _ = c.m.View() }); n > most {
			t.Errorf("%v: %v allocations", size, n)
		}
	}
}

// TestViewIsQuick measures both in one run, round by round, and compares the quickest of each.
func TestViewIsQuick(t *testing.T) {
	if testing.Short() {
		t.Skip("a measurement")
	}
	const rounds, most = 40, 0.05
	c, r := painted(t, 120, 40)
	own, lib := time.Hour, time.Hour
	for range rounds {
		own = min(own, timed(func() { _ = c.m.View() }))
		lib = min(lib, timed(func() { _ = naive(c.model(), r) }))
	}
	if ratio := float64(own) / float64(lib); ratio > most {
		t.Errorf("View takes %v, the naive one %v: %.3f of it", own, lib, ratio)
	} else {
		t.Logf("View takes %v, the naive one %v: %.3f of it", own, lib, ratio)
	}
}

func timed(f func()) time.Duration {
	const times = 10
	begin := time.Now()
	for range times {
		f()
	}
	return time.Since(begin) / times
}

func BenchmarkView(b *testing.B) {
	c, r := painted(b, 120, 40)
	b.Run("own", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_ = c.m.View()
		}
	})
	b.Run("naive", func(b *testing.B) {
		b.ReportAllocs()
		m := c.model()
		for b.Loop() {
			_ = naive(m, r)
		}
	})
	b.Run("settle", func(b *testing.B) { // what Update adds where nothing was asked anew
		b.ReportAllocs()
		m := c.model()
		for b.Loop() {
			m.settle()
		}
	})
	b.Run("look", func(b *testing.B) { // what Update adds when the book changed
		b.ReportAllocs()
		m := c.model()
		for b.Loop() {
			m.got.key = answersKey{}
			m.look()
		}
	})
}
