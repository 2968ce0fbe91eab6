package printed

import "strings"

// laidOut is a part as it goes on a page.
type laidOut struct {
	*Part
	Begins bool // on a new page
	Points int  // the size of the letters of its table
	Head   []laidCell
	Rows   [][]laidCell
	Last   []laidCell // the sum
	Turned []turnedRow
}

// laidCell is a cell and how it stands: words "left", a short figure "whole", one with a long word "long", which may be broken anywhere;
// "narrow" is the head of a column of figures.
type laidCell struct{ Says, Class string }

// turnedRow is a row of a table that is too wide for any page.
type turnedRow struct {
	Title string
	Pairs []Pair
}

// What a table may take, in millimetres within margins of 12: the narrower of letter and A4, upright and on its side. A letter is taken
// for 0.64 of its height, as wide as a figure of the widest type that a browser is likely to take (measured: DejaVu Sans).
const (
	uprightWide = 186.0
	sideWide    = 255.0
	letterWide  = 0.64
	pointHigh   = 25.4 / 72
	cellEdges   = 2.4
	longWord    = 14 // letters; a longer word is broken where it must be
)

// sizes are the letters, in points, in which a table is tried, the largest first. Upright only the first two are; what needs smaller ones
// lies on its side.
var sizes = []int{10, 9, 8, 7}

// layOut finds the letters in which the words of each column keep whole within so many millimetres; false where there are none.
func layOut(p *Part, wide float64, try []int) (out laidOut, fits bool) {
	out = laidOut{Part: p, Points: sizes[0]}
	t := &p.Table
	if len(t.Columns) == 0 {
		return out, true
	}
	for _, points := range try {
		if t.least(points) <= wide {
			out.Points, fits = points, true
			break
		}
	}
	if !fits {
		out.Turned = t.turned()
		return out, false
	}
	for i, c := range t.Columns {
		class := ""
		switch {
		case c.Left:
			class = "left"
		case t.figures(i):
			class = "narrow"
		}
		out.Head = append(out.Head, laidCell{c.head(), class})
	}
	for _, r := range t.Rows {
		out.Rows = append(out.Rows, t.laid(r))
	}
	out.Last = t.laid(t.Sum)
	return out, true
}

func (t *Table) turned() []turnedRow {
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = c.Head()
	}
	var out []turnedRow
	for _, r := range t.Rows {
		out = append(out, turnedRow{r[0], rowPairs(head[1:], r[1:])})
	}
	if len(t.Sum) > 0 {
		out = append(out, turnedRow{t.Sum[0], rowPairs(head[1:], t.Sum[1:])})
	}
	return out
}

func (t *Table) laid(r []string) []laidCell {
	var out []laidCell
	for i, c := range r {
		var class []string
		if t.Columns[i].Left {
			class = append(class, "left")
		}
		switch {
		case t.whole(i, c):
			class = append(class, "whole")
		case longest(c) > longWord:
			class = append(class, "long")
		}
		out = append(out, laidCell{c, strings.Join(class, " ")})
	}
	return out
}

// whole tells whether a cell is a short figure, or one word, which is not broken: a browser would break a date at its hyphens.
func (t *Table) whole(column int, c string) bool {
	return places(c) <= longWord && (!t.Columns[column].Left || !strings.ContainsAny(c, " \n"))
}

// figures tells whether a column holds figures alone, which take no more width than they need.
func (t *Table) figures(column int) bool {
	for _, r := range t.Rows {
		if !t.whole(column, r[column]) {
			return false
		}
	}
	return !t.Columns[column].Left
}

// head is the head of a column; its unit is not broken.
func (c Column) head() string {
	c.Unit = strings.ReplaceAll(c.Unit, " ", "\u00a0")
	return c.Head()
}

// least is how wide the table is, in millimetres, when each column is as narrow as its words let it be.
func (t *Table) least(points int) float64 {
	letter := float64(points) * pointHigh * letterWide
	all := 0.0
	for i, c := range t.Columns {
		n := min(longest(c.head()), longWord)
		for _, r := range append(t.Rows[:len(t.Rows):len(t.Rows)], t.Sum) {
			switch {
			case len(r) == 0: // no sum
			case t.whole(i, r[i]):
				n = max(n, places(r[i]))
			default:
				n = max(n, min(longest(r[i]), longWord))
			}
		}
		all += float64(float64(n)*letter) + cellEdges
	}
	return all
}

// longest is the length of the longest word.
func longest(s string) int {
	n := 0
	for _, w := range strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" \t\r\n", r) }) {
		n = max(n, places(w))
	}
	return n
}
