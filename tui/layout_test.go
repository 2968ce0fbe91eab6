package tui

import (
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/mattn/go-runewidth"
)

func TestLayoutTilesEverySize(t *testing.T) {
	for _, n := range []need{
		{tanks: 1, foot: 1, mixes: 1},
		{tanks: 2, foot: 2, mixes: 2},
		{tanks: 5, foot: 3, next: 15, mixes: 3},
		{tanks: 9, foot: 2, next: 24, mixes: 6},
		{tanks: 9, foot: 5, mixes: 6},
		{foot: 2},
	} {
		for w := 20; w <= 210; w++ {
			for h := 6; h <= 70; h++ {
				at, ok := layout(w, h, n)
				if ok != (w >= leastWidth && h >= leastHeight) {
					t.Fatalf("%dx%d for %+v: fits %v", w, h, n, ok)
				}
				if ok {
					tiles(t, w, h, at)
				}
			}
		}
	}
}

// tiles checks that the bands are disjoint and sum to the screen: each begins where the one before ends.
func tiles(t *testing.T, w, h int, at [bands]rect) {
	t.Helper()
	y := 0
	for b, r := range at {
		if r.x != 0 || r.w != w || r.y != y || r.h < 0 {
			t.Fatalf("%dx%d: band %d at %+v, expected at row %d", w, h, b, r, y)
		}
		y += r.h
	}
	if y != h {
		t.Fatalf("%dx%d: the bands sum to %d rows", w, h, y)
	}
}

// TestLayoutGivesWhatIsPromised: what stands at 40x16 for any rig, at 80x24 for the largest, and at 120x40.
func TestLayoutGivesWhatIsPromised(t *testing.T) {
	largest := need{tanks: 9, foot: 3, next: 24, mixes: 6}
	for _, one := range []struct {
		w, h int
		n    need
		want [bands]int
	}{
		{40, 16, largest, [bands]int{bandHead: 1, bandVerdict: 4, bandAct: 1, bandVisit: 1, bandTanks: 5, bandPipe: 1, bandChange: 1, bandFoot: 2}},
		{80, 24, largest, [bands]int{bandVerdict: 4, bandAct: 2, bandTanks: 9, bandWeather: 1, bandNext: 1, bandUnchecked: 1, bandFoot: 2}},
		{80, 24, need{tanks: 5, foot: 2, next: 15, mixes: 3}, [bands]int{bandVerdict: 5, bandAct: 3, bandTanks: 5, bandWeather: 1, bandNext: 3, bandUnchecked: 1, bandFoot: 2}},
		{120, 40, largest, [bands]int{bandVerdict: 5, bandAct: 3, bandTanks: 9, bandNext: 6, bandMixes: 6, bandUnchecked: 2, bandFoot: 2}},
	} {
		at, ok := layout(one.w, one.h, one.n)
		if !ok {
			t.Fatalf("%dx%d does not fit", one.w, one.h)
		}
		for b, rows := range one.want {
			if at[b].h < rows {
				t.Errorf("%dx%d: band %d has %d rows, not %d", one.w, one.h, b, at[b].h, rows)
			}
		}
	}
}

func TestNothingJumpsFromActToAct(t *testing.T) {
	c := climbIn(t, morning)
	at := c.model().rects
	for _, k := range []string{"enter", "enter", "enter", "enter", "y", "esc", "u", "esc", "enter"} {
		c.press(k)
		if now := c.model().rects; now[bandAct] != at[bandAct] || now[bandTanks] != at[bandTanks] || now[bandPipe] != at[bandPipe] {
			t.Fatalf("after %q the bands moved: %+v, %+v", k, at, now)
		}
	}
}

// TestEverySizeIsSquare draws every situation at many sizes; the driver checks lines and cells each time.
func TestEverySizeIsSquare(t *testing.T) {
	for _, s := range situations {
		t.Run(s.name, func(t *testing.T) {
			c := s.cab(t)
			for w := 0; w <= 200; w += 23 {
				for h := 0; h <= 60; h += 7 {
					c.size(w, h)
				}
			}
			for _, size := range [][2]int{{0, 0}, {0, 24}, {80, 0}, {20, 6}, {39, 16}, {40, 15}, {40, 16}, {80, 24}, {200, 60}} {
				c.size(size[0], size[1])
			}
		})
	}
}

func TestTooSmallTakesNoKeyButQuit(t *testing.T) {
	c := climbIn(t, morning).size(50, 10).sees("needs 40 by")
	c.press("enter", "a", "n", "u", "y", "?")
	if len(c.disk.entries) != 0 {
		t.Errorf("logged unseen: %s", c.facts())
	}
	if c.press("q"); !c.quit {
		t.Error("q does not quit")
	}
}

func TestGlyphsAreOneCell(t *testing.T) {
	narrow := &runewidth.Condition{}
	for _, ascii := range []bool{false, true} {
		g := newGlyphs(ascii)
		for _, r := range append(g.all(), plusMinusSign, timesSign) {
			if ascii && r > 0x7e && r != plusMinusSign && r != timesSign {
				t.Errorf("%q is not ASCII", r)
			}
			if w := lipgloss.Width(string(r)); w != 1 {
				t.Errorf("%q is %d cells for lipgloss", r, w)
			}
			if w := narrow.RuneWidth(r); w != 1 {
				t.Errorf("%q is %d cells for runewidth", r, w)
			}
			if cellsOf(r) != 1 {
				t.Errorf("%q is %d cells for us", r, cellsOf(r))
			}
		}
	}
}

func TestCleanTextHasTheWidthItSays(t *testing.T) {
	narrow := &runewidth.Condition{}
	for r := rune(0); r < 0x20000; r++ {
		if n := cellsOf(r); n > 0 {
			if w := lipgloss.Width(string(r)); w != n {
				t.Fatalf("%U %q: we say %d, lipgloss %d", r, r, n, w)
			}
			if w := narrow.RuneWidth(r); w != n {
				t.Fatalf("%U %q: we say %d, runewidth %d", r, r, n, w)
			}
		}
	}
	for _, s := range []string{"a\x1b[31mb", "tab\there", "e\u0301a\u200db", "👩‍👩‍👧 house", "🇺🇸", "ärger 草 ±4", "\x00\x7f\u0085", "⚠️"} {
		for _, ascii := range []bool{false, true} {
			g := newGlyphs(ascii)
			c := g.clean(s)
			if lipgloss.Width(c) != cells(c) {
				t.Errorf("%q became %q: %d cells, we say %d", s, c, lipgloss.Width(c), cells(c))
			}
			for w := 0; w < 12; w++ {
				if cells(g.fit(c, w)) > w {
					t.Errorf("%q does not fit %d", c, w)
				}
			}
		}
	}
}

func TestNamesFromOutsideCannotBreakTheScreen(t *testing.T) {
	c := climbIn(t, `{"fact":"lawn","name":"草 ⚠️ 77 Fi\u0301r 👩‍👩‍👧","zones":[{"name":"a b","grass":"tall_fescue","area_sqft":5200,"hazards":["x 🐕 y"]}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. 例 Example","route":["草 ⚠️ 77 Fi\u0301r 👩‍👩‍👧"]}`)
	c.press("enter", "n", "k", "esc", "u", "esc").size(120, 40).size(61, 23)
}
