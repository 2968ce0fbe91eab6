package tui

import (
	"strings"

	"example.com/tintline/tui/theme"
)

const (
	tableGap   = 2
	tableMarks = 3 // the mark of the row chosen, and a cell at the right
	shortName  = 10
)

// tabled draws a table, the first column left and the others right. Where it is too wide its first column is cut; if
// that does not do, rows and columns change places (turned), in as many blocks as the width asks for.
func (m *Model) tabled(head []string, rows [][]string) (lines []line, turned bool) {
	widths := m.tableWidths(head, rows)
	room := m.w - tableMarks
	for _, w := range widths[1:] {
		room -= w + tableGap
	}
	if room < min(widths[0], shortName) {
		return m.turnedTable(head, rows), true
	}
	widths[0] = min(widths[0], room)
	lines = append(lines, m.tableLine(theme.Dim, head, widths))
	for _, r := range rows {
		lines = append(lines, m.tableLine(theme.Base, r, widths))
	}
	return lines, false
}

func (m *Model) tableWidths(head []string, rows [][]string) []int {
	widths := make([]int, len(head))
	for i, s := range head {
		widths[i] = cells(s)
	}
	for _, r := range rows {
		for i, s := range r {
			widths[i] = max(widths[i], cells(m.g.clean(s)))
		}
	}
	return widths
}

func (m *Model) tableLine(t theme.Token, r []string, widths []int) line {
	l := line{}
	for i, s := range r {
		if i == 0 {
			l.left = append(l.left, span{t, m.padded(m.g.clean(s), widths[0])})
			continue
		}
		l.left = append(l.left, span{t, strings.Repeat(" ", tableGap) + m.ended(m.g.clean(s), widths[i])})
	}
	return l
}

// turnedTable has a column for each row of the table.
func (m *Model) turnedTable(head []string, rows [][]string) []line {
	first := m.tableWidths(head[:1], nil)[0]
	for _, s := range head {
		first = max(first, cells(s))
	}
	var out []line
	for from := 0; from < len(rows); {
		widths, used, to := []int{first}, first+tableMarks, from
		for ; to < len(rows); to++ {
			w := 0
			for _, s := range rows[to] {
				w = max(w, cells(m.g.clean(s)))
			}
			if used += w + tableGap; used > m.w && to > from {
				break
			}
			widths = append(widths, w)
		}
		for i, h := range head {
			cell := []string{h}
			for _, r := range rows[from:to] {
				cell = append(cell, r[i])
			}
			t := theme.Base
			if i == 0 {
				t = theme.Dim
			}
			out = append(out, m.tableLine(t, cell, widths))
		}
		from = to
	}
	return out
}
