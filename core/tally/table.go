package tally

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// table is a text table: the first column stands left, the others right.
type table struct{ rows [][]string }

func (t *table) add(cells ...string) { t.rows = append(t.rows, cells) }

func (t *table) write(w *strings.Builder) {
	w.WriteString(columns(t.rows, func(i int) bool { return i > 0 }))
}

// Columns lines rows of text up; the columns named stand right.
func Columns(rows [][]string, right ...int) string {
	return columns(rows, func(i int) bool { return slices.Contains(right, i) })
}

func columns(rows [][]string, right func(int) bool) string {
	var w strings.Builder
	var widths []int
	for _, r := range rows {
		for i, c := range r {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], utf8.RuneCountInString(c))
		}
	}
	for _, r := range rows {
		line := ""
		for i, c := range r {
			pad := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(c))
			if i > 0 {
				line += "  "
			}
			if right(i) {
				line += pad + c
			} else {
				line += c + pad
			}
		}
		w.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return w.String()
}
