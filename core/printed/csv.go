package printed

import (
	"encoding/csv"
	"strings"
)

// CSV is the table as comma-separated values (RFC 4180) with a head line. A cell that a spreadsheet would take for a formula
// gets an apostrophe before it (CWE-1236: = + - @, tab and carriage return at the beginning); a plain number keeps its sign.
func (t Table) CSV() (string, error) {
	var out strings.Builder
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = inert(c.Head())
	}
	if err := w.Write(head); err != nil {
		return "", err
	}
	for _, r := range t.Rows {
		cells := make([]string, len(r))
		for i, c := range r {
			cells[i] = inert(c)
		}
		if err := w.Write(cells); err != nil {
			return "", err
		}
	}
	w.Flush()
	return out.String(), w.Error()
}

func inert(cell string) string {
	if cell == "" || !strings.ContainsRune("=+-@\t\r", rune(cell[0])) || isNumber(cell) {
		return cell
	}
	return "'" + cell
}

// isNumber tells whether a cell is a sign, digits and at most one point: no formula comes of it.
func isNumber(cell string) bool {
	digits := strings.TrimLeft(cell, "+-")
	if len(cell)-len(digits) > 1 || digits == "" {
		return false
	}
	points := 0
	for _, c := range digits {
		switch {
		case c == '.':
			points++
		case c < '0' || c > '9':
			return false
		}
	}
	return points <= 1 && digits != "."
}
