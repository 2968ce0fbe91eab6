package tally

import (
	"strings"
	"unicode/utf8"
)

// table is a text table: the first column stands left, the others right.
type table struct{ rows [][]string }

func (t *table) add(cells ...string) { t.rows = append(t.rows, cells) }

func (t *table) write(w *strings.Builder) {
	var widths []int
	for _, r := range t.rows {
		for i, c := range r {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], utf8.RuneCountInString(c))
		}
	}
	for _, r := range t.rows {
		line := ""
		for i, c := range r {
			pad := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(c))
			switch {
			case i == 0:
				line = c + pad
			default:
				line += "  " + pad + c
			}
		}
		w.WriteString(strings.TrimRight(line, " ") + "\n")
	}
}
