package printed

import (
	"strings"
	"unicode"
)

// TextWidth is how many places a line of Text takes at most: letters of 9 points across a letter page or A4.
const TextWidth = 100

// Text is the document as plain text, in lines of at most TextWidth places.
func (d Document) Text() string { return d.TextIn(TextWidth) }

// TextIn is the document as plain text, in lines of at most so many places.
func (d Document) TextIn(width int) string {
	w := lines{width: max(width, leastText)}
	w.add("", "", d.Title)
	for _, l := range d.About {
		w.add("", "", l)
	}
	for _, p := range d.Parts {
		w.text.WriteString("\n")
		if p.Title != "" {
			w.add("", "", p.Title)
		}
		for _, l := range p.Lines {
			w.add("", "", l)
		}
		w.pairs("", p.Pairs)
		w.table(p.Table)
	}
	if len(d.Foot) > 0 {
		w.text.WriteString("\n")
	}
	for _, l := range d.Foot {
		w.add("", "", l)
	}
	return w.text.String()
}

// Text is the table with its columns lined up, in lines of at most TextWidth places.
func (t Table) Text() string {
	w := lines{width: TextWidth}
	w.table(t)
	return w.text.String()
}

const (
	leastText = 20 // narrower than this nothing is lined up
	gap       = 2  // between columns
	leastWord = 12 // a word of so many places is not broken while the columns fit
	wholeWord = 24 // nor is one of so many, if they fit all the same
)

type lines struct {
	width int
	text  strings.Builder
}

// add writes a line that goes on below itself.
func (w *lines) add(first, on, s string) {
	for i, l := range wrap(OneLine(s), w.width-places(first)) {
		if i > 0 {
			first = on
		}
		w.text.WriteString(strings.TrimRight(first+l, " ") + "\n")
	}
}

// pairs writes what is said beside its name; below it where the names take more than half of the line.
func (w *lines) pairs(before string, list []Pair) {
	name := 0
	for _, p := range list {
		name = max(name, places(OneLine(p.Name)))
	}
	if name > w.width/2-gap {
		for _, p := range list {
			w.add(before, before, p.Name)
			w.add(before+"  ", before+"  ", p.Says)
		}
		return
	}
	on := before + strings.Repeat(" ", name+gap)
	for _, p := range list {
		n := OneLine(p.Name)
		w.add(before+n+strings.Repeat(" ", name+gap-places(n)), on, p.Says)
	}
}

// table writes rows under their heads. Where they are wider than the line, words go on below in their column; where that does not do,
// each row is written as pairs.
func (w *lines) table(t Table) {
	if len(t.Columns) == 0 {
		return
	}
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = c.Head()
	}
	rows := append([][]string{head}, t.Rows...)
	if len(t.Sum) > 0 {
		rows = append(rows, t.Sum)
	}
	widths, fits := w.columns(t, rows)
	if !fits {
		w.turned(head, rows[1:])
		return
	}
	for _, r := range rows {
		w.row(t, r, widths)
	}
}

// columns are the widths of the columns: figures as wide as they are, the widest columns of words narrowed until all fit, whole words
// before broken ones. A head may go on below like a word.
func (w *lines) columns(t Table, rows [][]string) (widths []int, fits bool) {
	for _, whole := range []int{wholeWord, leastWord} {
		widths, least := t.wanted(rows, whole)
		all := gap * (len(widths) - 1)
		for _, n := range widths {
			all += n
		}
		if narrow(widths, least, all-w.width) {
			return widths, true
		}
	}
	return nil, false
}

// wanted are the widths at which nothing goes on below, and the least that do.
func (t *Table) wanted(rows [][]string, whole int) (widths, least []int) {
	widths, least = make([]int, len(t.Columns)), make([]int, len(t.Columns))
	for n, r := range rows {
		for i, c := range r {
			c = OneLine(c)
			widths[i] = max(widths[i], places(c))
			if n > 0 && !t.Columns[i].Left {
				least[i] = max(least[i], places(c))
				continue
			}
			for _, word := range strings.Split(c, " ") {
				least[i] = max(least[i], min(places(word), whole))
			}
		}
	}
	return widths, least
}

// narrow takes so many places away, one after the other from the widest column that can give one.
func narrow(widths, least []int, over int) bool {
	for ; over > 0; over-- {
		at := -1
		for i := range widths {
			if widths[i] > least[i] && (at < 0 || widths[i] > widths[at]) {
				at = i
			}
		}
		if at < 0 {
			return false
		}
		widths[at]--
	}
	return true
}

func (w *lines) row(t Table, r []string, widths []int) {
	cells := make([][]string, len(r))
	high := 1
	for i, c := range r {
		cells[i] = wrap(OneLine(c), widths[i])
		high = max(high, len(cells[i]))
	}
	for n := range high {
		line := ""
		for i, c := range cells {
			s := ""
			if n < len(c) {
				s = c[n]
			}
			pad := strings.Repeat(" ", max(0, widths[i]-places(s)))
			if i > 0 {
				line += strings.Repeat(" ", gap)
			}
			if t.Columns[i].Left {
				line += s + pad
			} else {
				line += pad + s
			}
		}
		w.text.WriteString(strings.TrimRight(line, " ") + "\n")
	}
}

// turned writes each row as pairs, its first cell before them.
func (w *lines) turned(head []string, rows [][]string) {
	for _, r := range rows {
		w.add("", "", r[0])
		w.pairs("  ", rowPairs(head[1:], r[1:]))
	}
}

// rowPairs are the cells of a row that say something, with their heads.
func rowPairs(head, row []string) []Pair {
	var out []Pair
	for i, c := range row {
		if c != "" {
			out = append(out, Pair{head[i], c})
		}
	}
	return out
}

// OneLine puts a text into one line: breaks and tabs become a blank, what cannot be seen and what turns the direction of
// writing is left out.
func OneLine(s string) string {
	return strings.Join(strings.Fields(strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r):
			return -1
		}
		return r
	}, s)), " ")
}
