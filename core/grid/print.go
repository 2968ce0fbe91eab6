package grid

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"example.com/tintline/core/check"
)

// paper is how wide text is printed.
const paper = 80

// signs is how wide a letter with its longest word is.
const signs = len("D! dormant only")

// headLines is in how many lines the name over a column may stand.
const headLines = 3

// Text is the grid as people read it, within 80 columns: as many columns side by side as fit, the others below.
func (g *Grid) Text() string {
	var w strings.Builder
	w.WriteString(g.title())
	longest := 0
	for i := range g.Rows {
		longest = max(longest, width(g.Rows[i].Name()))
	}
	fit := max((paper-longest)/(signs+1), 1)
	for from := 0; from < len(g.Columns); from += fit {
		w.WriteString("\n")
		g.block(&w, longest, from, min(from+fit, len(g.Columns)))
	}
	if len(g.Columns) > 0 {
		w.WriteString("\n" + g.keyText() + "\nThe label and local rules decide.\n")
	}
	return w.String()
}

// Name is the grass, with its zone where it is of a lawn.
func (r *Row) Name() string {
	if r.Lawn != "" {
		return r.Zone.Name + ", " + r.Grass.CommonName
	}
	return r.Grass.CommonName
}

func (g *Grid) title() string {
	switch g.Of {
	case OfLoads:
		return "What may go on which grass: the products of the current loads.\n"
	case OfProducts:
		return "What may go on which grass: all products. Nothing is loaded.\n"
	}
	if len(g.b.Products()) > 0 {
		return "What the reference says: no product here holds it.\n"
	}
	return "What the reference says of actives. The book has no product yet.\n"
}

func (g *Grid) block(w *strings.Builder, longest, from, to int) {
	heads := make([][]string, to-from)
	lines := 0
	for i := range heads {
		heads[i] = Head(g.Columns[from+i].Name(), signs, headLines)
		lines = max(lines, len(heads[i]))
	}
	for n := range lines {
		line := strings.Repeat(" ", longest)
		for _, h := range heads {
			s := ""
			if at := n - (lines - len(h)); at >= 0 { // they end on the line above the cells
				s = h[at]
			}
			line += " " + padded(s, signs)
		}
		w.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	for i := range g.Rows {
		line := padded(g.Rows[i].Name(), longest)
		for j := from; j < to; j++ {
			c := g.Cell(i, j)
			line += " " + padded(c.Signs(), signs)
		}
		w.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	for j := from; j < to; j++ {
		if c := &g.Columns[j]; len(c.Where) > 0 || c.Residue {
			printWrapped(w, c.Name()+": "+c.WhereWords(), 2)
		}
	}
}

// Signs is a cell as it stands in the table: a letter and a word; a mark behind the letter says that there is a note of the
// operator's own.
func (c *Cell) Signs() string {
	if len(c.Notes) > 0 {
		return c.Letter + "! " + c.Word
	}
	return c.Letter + "  " + c.Word
}

// WhereWords says where a product stands.
func (c *Column) WhereWords() string {
	if c.Residue {
		return "only as residue, in what was loaded for another mix"
	}
	return strings.Join(c.Where, ", ")
}

// keyText explains the letters.
func (g *Grid) keyText() string {
	var w strings.Builder
	for _, k := range g.Keys() {
		printWrapped(&w, fmt.Sprintf("%s  %s: %s", k.Letter, k.Word, k.Words), 3)
	}
	return w.String()
}

// Why is all on which each cell of the grid stands, within 80 columns: of a grid that was narrowed down to one grass.
func (g *Grid) Why() string {
	var w strings.Builder
	for i := range g.Rows {
		for j := range g.Columns {
			w.WriteString("\n")
			printWrapped(&w, g.CellTitle(i, j), 2)
			for _, t := range g.Tell(i, j) {
				printIndented(&w, t.About+": "+t.Words, 2)
			}
		}
	}
	return w.String()
}

// CellTitle is a cell in one line: "N not listed, stop: Example Cool on common bermudagrass".
func (g *Grid) CellTitle(row, column int) string {
	c := g.Cell(row, column)
	title := c.Letter + " " + c.Word
	if c.Weight != check.None {
		title += ", " + c.Weight.String()
	}
	return title + ": " + g.Columns[column].Name() + " on " + g.Rows[row].Grass.CommonName
}

// ReferenceText is rows of the reference, each with its source, within 80 columns.
func ReferenceText(rows []Ground, a Asked) string {
	var w strings.Builder
	fmt.Fprintf(&w, "\nThe reference: %s\n", count(len(rows), "row", a))
	last := ""
	for i := range rows {
		r := &rows[i]
		if head := r.Active + " on " + grassWords(r.Grass); head != last {
			fmt.Fprintf(&w, "\n%s\n", head)
			last = head
		}
		words := r.Rating + " on " + r.Stage + " turf"
		if r.Condition != "" {
			words += ", " + r.Condition
		}
		if r.Words != "" {
			words += ": " + r.Words
		}
		printIndented(&w, words, 2)
		printIndented(&w, r.From(), 6)
		if r.Contradicted != "" {
			printIndented(&w, "decides nothing; contradicted by "+r.Contradicted, 6)
		}
	}
	return w.String()
}

func width(s string) int { return utf8.RuneCountInString(s) }

func padded(s string, w int) string {
	if n := w - width(s); n > 0 {
		return s + strings.Repeat(" ", n)
	}
	return s
}
