package sheet

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/tintline/core"
)

// Trouble is what is wrong with one cell, or with a file as a whole.
type Trouble struct {
	File    string // empty: the cell of a form
	Line    int    // in the file, or the number of the row of a form; 0: no line in particular
	Column  string // empty: no column in particular
	What    string // one sentence
	Allowed string // what may be written there
	Nearest string // the nearest known name or names, empty if there is none

	do string // where Allowed says nothing: what to do, one sentence
}

// Error is one sentence: where, and what is wrong there.
func (t *Trouble) Error() string {
	var where []string
	if t.File != "" {
		where = append(where, t.File)
	}
	if t.Line > 0 {
		word := "line"
		if t.File == "" {
			word = "row"
		}
		where = append(where, word+" "+strconv.Itoa(t.Line))
	}
	if t.Column != "" && (t.File != "" || t.Line > 0) {
		where = append(where, "column "+t.Column)
	}
	if len(where) == 0 {
		return t.What
	}
	return strings.Join(where, ", ") + ": " + t.What
}

// Sentences are what is wrong and what to do about it.
func (t *Trouble) Sentences() (what, do string) {
	do = strings.TrimSuffix(t.do, ".")
	if do == "" {
		do = "Write " + t.Allowed
	}
	if t.Nearest != "" {
		do += "; nearest known: " + t.Nearest
	}
	if t.File != "" {
		do += "; nothing of the file was imported"
	}
	return t.Error(), do + "."
}

// mostTroubles is how many are said at once: a file with more wants another look at all of it.
const mostTroubles = 20

// Troubles are all that is wrong, in the order of the file.
type Troubles []Trouble

// Error is the first one, and how many more there are.
func (all Troubles) Error() string {
	what, _ := all.Sentences()
	return what
}

// Sentences are those of the first one, with how many more there are.
func (all Troubles) Sentences() (what, do string) {
	what, do = all[0].Sentences()
	switch n := len(all) - 1; {
	case n == 1:
		what += " One more cell is wrong."
	case n+1 == mostTroubles:
		what += fmt.Sprintf(" At least %d more cells are wrong.", n)
	case n > 1:
		what += fmt.Sprintf(" %d more cells are wrong.", n)
	}
	return what, do
}

// Unwrap gives each of them to errors.As.
func (all Troubles) Unwrap() []error {
	out := make([]error, len(all))
	for i := range all {
		out[i] = &all[i]
	}
	return out
}

func (all Troubles) sorted() Troubles {
	slices.SortStableFunc(all, func(a, b Trouble) int { return cmp.Compare(a.Line, b.Line) })
	return all
}

// fault is what a reader says of a cell.
type fault struct{ what, nearest string }

func (f *fault) Error() string { return f.what }

func faultf(format string, args ...any) error { return &fault{what: fmt.Sprintf(format, args...)} }

// trouble puts what a reader or the book said into words for a cell.
func trouble(column, allowed string, err error) Trouble {
	t := Trouble{Column: column, What: err.Error(), Allowed: allowed}
	var f *fault
	if errors.As(err, &f) {
		t.Nearest = f.nearest
	}
	var p *core.Problem
	if errors.As(err, &p) && allowed == "" {
		t.Allowed, t.do = strings.TrimSuffix(p.Do, "."), p.Do
	}
	return t
}

// quote gives what was typed in quotation marks, cut to what fits a line.
func quote(text string) string {
	if utf8.RuneCountInString(text) > 40 {
		text = string([]rune(text)[:39]) + "…"
	}
	return strconv.Quote(text)
}
