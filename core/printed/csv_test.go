package printed

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"
)

// hostile are names that printers and spreadsheets choke on.
var hostile = []string{
	"", "Oak", "=1+1", "+1", "-1", "-0.5", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "  =1", "\u00a0=1", "\u200b=1", "\u202e=1", "\uff1d1", "\uff0b1", "\uff0d1", "\uff201",
	`6" pipe, "old"`, "two\nlines", "two\r\nlines", "a\rb", "\u05e9\u05dc\u05d5\u05dd", "\u202egnirts", "\\.", "'=1", "\x00nul", "\xff", "\ufeff=1",
	"1,234.5", "-1,234.5", "+-1", "-", "--1", "1-1", "-1-1", "-.", "-.5", "5.", strings.Repeat("long ", 60), strings.Repeat("x", 300),
	"<b>bold</b> & \"quoted\"", "</title><script>alert(1)</script>", "\u6771\u4eac", "e\u0301", ",", "\"", "'", " lead", "trail ", "|", ";",
}

// heads are the hostile ones without Han, by whose letters the text is counted.
var heads = slices.DeleteFunc(slices.Clone(hostile), func(s string) bool { return letters(s) > 0 })

func anyCell() *rapid.Generator[string] {
	return rapid.OneOf(rapid.SampledFrom(hostile), rapid.String(), rapid.Custom(func(t *rapid.T) string {
		return rapid.SampledFrom([]string{"", " ", "\t", "\u200b"}).Draw(t, "before") + rapid.SampledFrom([]string{"=", "+", "-", "@", "\uff1d", "\uff0b", "\uff0d", "\uff20"}).Draw(t, "sign") + rapid.String().Draw(t, "behind")
	}))
}

func anyTable() *rapid.Generator[Table] {
	return rapid.Custom(func(t *rapid.T) Table {
		out := Table{}
		n := rapid.IntRange(1, 14).Draw(t, "columns")
		for range n {
			out.Columns = append(out.Columns, Column{
				Title: rapid.SampledFrom(heads).Draw(t, "title"), Unit: rapid.SampledFrom([]string{"", "gal", "fl oz"}).Draw(t, "unit"), Left: rapid.Bool().Draw(t, "words"),
			})
		}
		row := rapid.SliceOfN(anyCell(), n, n)
		out.Rows = rapid.SliceOfN(row, 0, 5).Draw(t, "rows")
		if rapid.Bool().Draw(t, "with a sum") {
			out.Sum = row.Draw(t, "sum")
		}
		return out
	})
}

// TestCSVReadsBack: Go's own reader gives every cell as inert wrote it, and what is no sign of a formula is what was given.
func TestCSVReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		table := anyTable().Draw(t, "table")
		checkCSV(t, table, table.CSV)
	})
}

func checkCSV(t rapid.TB, table Table, write func() (string, error)) {
	text, err := write()
	if err != nil {
		t.Fatal(err)
	}
	got, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatalf("%v in %q", err, text)
	}
	want := make([][]string, 1, 1+len(table.Rows))
	for _, c := range table.Columns {
		want[0] = append(want[0], c.Head())
	}
	want = append(want, table.Rows...)
	if len(got) != len(want) {
		t.Fatalf("%d lines for %d in %q", len(got), len(want), text)
	}
	for i, r := range got {
		for j, c := range r {
			if c != inert(want[i][j]) {
				t.Fatalf("%q came back as %q", want[i][j], c)
			}
			if formula(c) {
				t.Fatalf("%q would be a formula", c)
			}
			if c != want[i][j] && c != "'"+want[i][j] && strings.IndexFunc(want[i][j], func(r rune) bool { return unicode.IsControl(r) || r == unicode.ReplacementChar }) < 0 {
				t.Fatalf("%q became %q", want[i][j], c)
			}
		}
	}
}

// formula tells in another way than inert whether a spreadsheet would work a cell out.
func formula(cell string) bool {
	seen := []rune(cell)
	for len(seen) > 0 && (unicode.IsSpace(seen[0]) || unicode.In(seen[0], unicode.Cf)) {
		seen = seen[1:]
	}
	if len(seen) == 0 || !slices.Contains([]rune("=+-@\uff1d\uff0b\uff0d\uff20"), seen[0]) {
		return false
	}
	for _, c := range seen[1:] {
		if !strings.ContainsRune("0123456789.,", c) {
			return true
		}
	}
	return len(seen) == 1 || strings.ContainsRune("=@\uff1d\uff0b\uff0d\uff20", seen[0])
}

// TestNoCellIsAFormula: what OWASP's page on CSV injection names (as recalled): = + - @, tab and return at the beginning, and the
// full-width forms; a plain number keeps its sign.
func TestNoCellIsAFormula(t *testing.T) {
	for cell, want := range map[string]string{
		"=1+1": "'=1+1", "+1": "+1", "-1": "-1", "-0.5": "-0.5", "@SUM(A1)": "'@SUM(A1)", "\t=1": "'\t=1", "\r=1": "'\n=1", "\tplain": "'\tplain",
		"  =1": "'  =1", "\u00a0+a": "'\u00a0+a", "\u200b=1": "'\u200b=1", "\ufeff=1": "'\ufeff=1", "\uff1d1": "'\uff1d1", "\uff0b1": "'\uff0b1", "\uff0d1": "'\uff0d1", "\uff201": "'\uff201",
		"-1,234.5": "-1,234.5", "-1,2": "'-1,2", "-": "'-", "+-1": "'+-1", "-1-1": "'-1-1", "-1+cmd|' /C calc'!A0": "'-1+cmd|' /C calc'!A0", "-.": "'-.", "-.5": "-.5",
		"plain": "plain", "a=1": "a=1", "": "", " ": " ", "555-0101": "555-0101", "two\r\nlines": "two\nlines",
	} {
		if got := inert(cell); got != want {
			t.Errorf("%q is written as %q, not %q", cell, got, want)
		}
	}
}

// TestADocumentIsOneTable: of several tables each row has as many cells, and stands under the head that it had.
func TestADocumentIsOneTable(t *testing.T) {
	d := Document{Parts: []Part{
		{Title: "tanks", Table: Table{Columns: []Column{{Title: "name", Left: true}, {Title: "left", Unit: "gal"}}, Rows: [][]string{{"a", "5"}}, Sum: []string{"all", "5"}}},
		{Title: "lawns", Table: Table{Columns: []Column{{Title: "name", Left: true}, {Title: "area", Unit: "sq ft"}, {Title: "area", Unit: "sq ft"}}, Rows: [][]string{{"Oak", "90", "91"}}}},
	}}
	got, err := d.CSV()
	if want := "part,name,left (gal),area (sq ft),area (sq ft)\r\ntanks,a,5,,\r\nlawns,Oak,,90,91\r\n"; err != nil || got != want {
		t.Errorf("%q, %v", got, err)
	}
	pairs := Document{Parts: []Part{{Title: "notice", Pairs: []Pair{{"phone", "=555"}}}}}
	if got, err := pairs.CSV(); err != nil || got != "part,what,says\r\nnotice,phone,'=555\r\n" {
		t.Errorf("%q, %v", got, err)
	}
	rapid.Check(t, func(t *rapid.T) {
		d := Document{}
		for _, table := range rapid.SliceOfN(anyTable(), 0, 4).Draw(t, "tables") {
			d.Parts = append(d.Parts, Part{Title: anyCell().Draw(t, "part"), Table: table})
		}
		checkCSV(t, d.joined(), d.CSV)
	})
}

func FuzzCSV(f *testing.F) {
	for _, s := range hostile {
		f.Add(s, "b")
	}
	f.Fuzz(func(t *testing.T, a, b string) {
		table := Table{Columns: []Column{{Title: a, Unit: b}, {Title: b}}, Rows: [][]string{{a, b}, {b, a}}}
		checkCSV(t, table, table.CSV)
	})
}
