package printed

import (
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"
)

// anyDocument is a document of any names.
func anyDocument() *rapid.Generator[Document] {
	return rapid.Custom(func(t *rapid.T) Document {
		some := rapid.SliceOfN(anyCell(), 0, 3)
		d := Document{Title: anyCell().Draw(t, "title"), About: some.Draw(t, "about"), Foot: some.Draw(t, "foot")}
		for range rapid.IntRange(0, 3).Draw(t, "parts") {
			p := Part{Title: anyCell().Draw(t, "part"), Lines: some.Draw(t, "lines"), Table: anyTable().Draw(t, "table"), Apart: rapid.Bool().Draw(t, "apart")}
			for range rapid.IntRange(0, 3).Draw(t, "pairs") {
				p.Pairs = append(p.Pairs, Pair{anyCell().Draw(t, "name"), anyCell().Draw(t, "says")})
			}
			d.Parts = append(d.Parts, p)
		}
		return d
	})
}

// TestTextKeepsItsWidth: no line is wider than asked for, nothing in it steers a terminal, and no letter is lost.
func TestTextKeepsItsWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyDocument().Draw(t, "document")
		width := rapid.IntRange(leastText, 140).Draw(t, "width")
		text := d.TextIn(width)
		for _, l := range strings.Split(text, "\n") {
			if places(l) > width {
				t.Fatalf("%d places in %d: %q", places(l), width, l)
			}
		}
		if i := strings.IndexFunc(text, func(r rune) bool { return (unicode.IsControl(r) && r != '\n') || unicode.Is(unicode.Cf, r) }); i >= 0 {
			t.Fatalf("%q in %q", text[i:], text)
		}
		if got, want := letters(text), letters(everything(d)); got != want {
			t.Fatalf("letters lost or made:\n%v\n%v", got, want)
		}
	})
}

// everything is all that the document says but the heads.
func everything(d Document) string {
	all := []string{d.Title}
	all = append(append(all, d.About...), d.Foot...)
	for _, p := range d.Parts {
		all = append(append(all, p.Title), p.Lines...)
		for _, q := range p.Pairs {
			all = append(all, q.Name, q.Says)
		}
		for _, r := range append(p.Table.Rows, p.Table.Sum) {
			all = append(all, r...)
		}
	}
	return OneLine(strings.Join(all, " "))
}

// letters counts those of a script that no head has: a turned table leaves heads out or repeats them.
func letters(s string) int {
	n := 0
	for _, r := range s {
		if unicode.Is(unicode.Han, r) {
			n++
		}
	}
	return n
}

// TestTextOfAWideTable: words go on below in their column, figures stay whole; a table that is still too wide is written row by row.
func TestTextOfAWideTable(t *testing.T) {
	d := Document{Title: "T", Parts: []Part{{
		Pairs: []Pair{{"customer", "J. Example of the long name"}},
		Table: Table{
			Columns: []Column{{Title: "lawn", Left: true}, {Title: "product put down", Left: true}, {Title: "area", Unit: "sq ft"}},
			Rows:    [][]string{{"12 Thimble Lane", "Example Warm 60 DF", "5,200"}, {"Oak", "X", "90"}}, Sum: []string{"all", "", "5,290"},
		},
	}}}
	const wrapped = `T

customer  J. Example of the
          long name
lawn      product     area (sq
          put down         ft)
12        Example        5,200
Thimble   Warm 60
Lane      DF
Oak       X                 90
all                      5,290
`
	if got := d.TextIn(30); got != wrapped {
		t.Errorf("at 30:\n%s", got)
	}
	const turned = `T

customer  J. Example
          of the
          long name
12 Thimble Lane
  product put down
    Example Warm 60
    DF
  area (sq ft)
    5,200
Oak
  product put down
    X
  area (sq ft)
    90
all
  area (sq ft)
    5,290
`
	if got := d.TextIn(20); got != turned {
		t.Errorf("at 20:\n%s", got)
	}
}
