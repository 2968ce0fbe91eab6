package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/tui/theme"
)

// moreSpans count what is not said, with the key that opens it.
func (m *Model) moreSpans(words string) []span {
	return []span{{theme.Dim, " " + words + ": "}, {theme.Key, m.shown(actFindings)}, {theme.Dim, " "}}
}

// othersIn shares rows out where not all fits: how many are said, and the lines that name the other stops and count the
// rest. What is said most goes before how it is named, but no stop goes without its name, in one word if need be.
func (m *Model) othersIn(kept, lighter []said, w, rows int) (shown int, lines []line) {
	for shown = max(rows-1, 0); shown > 0; shown-- {
		rest := append(kept[shown:len(kept):len(kept)], lighter...)
		for _, short := range []bool{false, true} {
			if lines = m.others(rest, w, short); len(lines) <= rows-shown {
				return shown, lines
			}
		}
	}
	shown = min(1, rows-1)
	if rows == 0 {
		return 0, nil
	}
	lines = m.others(append(kept[shown:len(kept):len(kept)], lighter...), w, true)
	return shown, lines[:min(len(lines), rows-shown)]
}

// others are the last lines where not all fits: stops by their names, the rest by their number.
func (m *Model) others(rest []said, w int, short bool) []line {
	const under = " STOP  "
	stops, more := named(rest, short)
	counts := [][]span{m.moreSpans("all")}
	if more > 0 {
		counts = [][]span{m.moreSpans(fmt.Sprintf("and %d more", more)), m.moreSpans(fmt.Sprintf("+%d more", more))}
	}
	if stops == "" {
		return []line{{left: []span{{theme.Base, " "}}, right: counts[0]}}
	}
	var out []line
	for i, l := range m.g.wrap("also "+stops, w-len(under)-1) {
		left := []span{{theme.Base, " "}, {theme.Stop, "STOP "}, {theme.Base, " "}, {theme.Strong, l}}
		if i > 0 {
			left = []span{{theme.Base, strings.Repeat(" ", len(under))}, {theme.Strong, l}}
		}
		out = append(out, line{left: left})
	}
	last := &out[len(out)-1]
	for _, right := range counts {
		if spanCells(last.left)+spanCells(right) <= w {
			last.right = right
			return out
		}
	}
	return append(out, line{left: []span{{theme.Base, " "}}, right: counts[0]})
}

// named lists the names of stops, those that are alike once with their number, and counts what is lighter.
func named(rest []said, short bool) (stops string, more int) {
	var names []string
	count := map[string]int{}
	for _, s := range rest {
		if !s.stop {
			more++
			continue
		}
		name := s.brief
		if short && s.short != "" {
			name = s.short
		}
		if count[name]++; count[name] == 1 {
			names = append(names, name)
		}
	}
	for i, n := range names {
		if i > 0 {
			stops += "; "
		}
		stops += n
		if count[n] > 1 {
			stops += fmt.Sprintf(" x%d", count[n])
		}
	}
	return stops, more
}
