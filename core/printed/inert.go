package printed

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// formulaSigns begin what a spreadsheet works out instead of showing it: = + - @ and their full-width forms (OWASP, "CSV Injection",
// as recalled; CWE-1236).
const formulaSigns = "=+-@\uff1d\uff0b\uff0d\uff20"

// inert is a cell that no spreadsheet takes for a formula: one that begins with a sign of a formula, also behind blanks or letters that
// cannot be seen, or with a tab or a new line, gets an apostrophe before it. A plain number keeps its sign. A return becomes a new
// line, and what steers a terminal is left out, so that a reader of CSV gives the cell back as it was written.
func inert(cell string) string {
	cell = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(strings.ToValidUTF8(cell, "\ufffd"))
	cell = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) && r != '\n' && r != '\t' {
			return -1
		}
		return r
	}, cell)
	if isNumber(cell) {
		return cell
	}
	seen := strings.TrimLeftFunc(cell, func(r rune) bool { return unicode.IsSpace(r) || unicode.Is(unicode.Cf, r) })
	first, _ := utf8.DecodeRuneInString(seen)
	if (seen != "" && strings.ContainsRune(formulaSigns, first)) || strings.HasPrefix(cell, "\t") || strings.HasPrefix(cell, "\n") {
		return "'" + cell
	}
	return cell
}

// isNumber tells whether a cell is at most a sign, digits, parted by commas into thousands or not, and at most one point: no formula
// comes of it.
func isNumber(cell string) bool {
	if cell != "" && strings.ContainsRune("+-", rune(cell[0])) {
		cell = cell[1:]
	}
	whole, rest, _ := strings.Cut(cell, ".")
	for i, group := range strings.Split(whole, ",") {
		if !digits(group) || (i > 0 && len(group) != 3) {
			return false
		}
	}
	return digits(rest) && whole+rest != ""
}

func digits(s string) bool {
	return strings.TrimLeft(s, "0123456789") == ""
}
