package tui

import (
	"strings"

	"example.com/tintline/tui/theme"
)

// said is one thing that the screen says: a word for its weight, what to do, then the figures.
type said struct {
	word  string
	t     theme.Token
	do    string
	says  string
	brief string // its short name, where several stand in one line
	short string // shorter still: the word of the rule
	stop  bool
	keeps bool // it is never merely counted as long as there are rows: stop, ask, and what comes next
	flows bool // the figures follow right behind, not on a line of their own
}

// twoTones is a line whose first words matter more.
type twoTones struct{ strong, weak string }

// apart wraps what is said into lines of w cells: what to do, and the figures below it.
func (s *said) apart(g *glyphs, w int) []twoTones {
	var out []twoTones
	for _, l := range g.wrap(s.do, w) {
		out = append(out, twoTones{strong: l})
	}
	for _, l := range g.wrap(s.says, w) {
		out = append(out, twoTones{weak: l})
	}
	return out
}

// close wraps the same with the figures behind what to do, which may save a line.
func (s *said) close(g *glyphs, w int) []twoTones {
	var out []twoTones
	for _, l := range g.wrap(s.do, w) {
		out = append(out, twoTones{strong: l})
	}
	last := len(out) - 1
	if last < 0 || s.says == "" {
		return s.apart(g, w)
	}
	strong := out[last].strong
	for i, l := range g.wrap(strong+" "+s.says, w) {
		if i == 0 {
			out[last].weak = strings.TrimPrefix(l, strong)
			continue
		}
		out = append(out, twoTones{weak: l})
	}
	return out
}

// lines is all of it in lines of w cells.
func (s *said) lines(g *glyphs, w int) []twoTones {
	if s.flows {
		return s.close(g, w)
	}
	return s.apart(g, w)
}

// in puts it into so many rows; what has no more room is cut.
func (s *said) in(g *glyphs, w, rows int) []twoTones {
	lines := s.lines(g, w)
	if len(lines) <= rows {
		return lines
	}
	if close := s.close(g, w); len(close) <= rows || len(g.wrap(s.do, w)) >= rows {
		lines = close
	}
	if len(lines) <= rows {
		return lines
	}
	last := lines[rows-1]
	for _, l := range lines[rows:] {
		last.strong, last.weak = join(last.strong, l.strong), join(last.weak, l.weak)
	}
	if last.strong != "" && last.weak != "" && last.weak[0] != ' ' {
		last.weak = " " + last.weak
	}
	if cells(last.strong) > w {
		last.weak = ""
	}
	last.strong = g.fitWords(last.strong, w)
	last.weak = g.fitWords(last.weak, w-cells(last.strong))
	return append(lines[:rows-1:rows-1], last)
}

// wantedRows is how many rows of w cells it takes to say everything in full.
func wantedRows(all []said, g *glyphs, w int) int {
	n := 0
	for i := range all {
		n += len(all[i].lines(g, w))
	}
	return n
}

// sharedRows gives each one row, then those that want more another one in turn, stops before the rest.
func sharedRows(all []said, g *glyphs, w, rows int) []int {
	out := make([]int, len(all))
	want := make([]int, len(all))
	for i := range all {
		out[i], want[i] = 1, len(all[i].lines(g, w))
		rows--
	}
	for _, stops := range []bool{true, false} {
		for gave := true; gave && rows > 0; {
			gave = false
			for i := range all {
				if all[i].stop == stops && out[i] < want[i] && rows > 0 {
					out[i]++
					rows--
					gave = true
				}
			}
		}
	}
	return out
}

func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + " " + b
}

// gapped puts a gap before words, if there are any.
func gapped(gap, words string) string {
	if words == "" {
		return ""
	}
	return gap + words
}
