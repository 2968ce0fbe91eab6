package printed

import (
	"encoding/xml"
	"html"
	"io"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// TestHTMLHoldsWhatIsSaid: the page is well formed, and between its tags stands every text, escaped, each apart from its
// neighbours' direction of writing.
func TestHTMLHoldsWhatIsSaid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyDocument().Draw(t, "document")
		page, err := d.HTML()
		if err != nil {
			t.Fatal(err)
		}
		apart := isolated(t, page)
		want := append([]string{d.Title}, append(d.About, d.Foot...)...)
		for _, p := range d.Parts {
			want = append(append(want, p.Lines...), p.Title)
			for _, q := range p.Pairs {
				want = append(want, q.Name, q.Says)
			}
			for _, r := range p.Table.Rows {
				want = append(want, r...)
			}
		}
		for _, s := range want {
			if s = shown(s); s != "" && !apart[s] {
				t.Fatalf("%q is not on the page", s)
			}
		}
	})
}

// shown is a text as a page gives it back: without what HTML has no letter for.
func shown(s string) string {
	return strings.NewReplacer("\r\n", "\n", "\r", "\n", "\x00", "\ufffd").Replace(strings.ToValidUTF8(s, "\ufffd"))
}

// isolated are the texts within bdi, unescaped; the tags are read by Go's XML reader in its loose way.
func isolated(t rapid.TB, page string) map[string]bool {
	if !utf8.ValidString(page) || strings.Contains(page, "<script") || strings.Contains(page, "ZgotmplZ") {
		t.Fatal("a script, letters that are none, or a style that was refused")
	}
	out := map[string]bool{}
	for _, piece := range strings.Split(page, "<bdi>")[1:] {
		text, _, _ := strings.Cut(piece, "</bdi>")
		if strings.ContainsAny(text, "<>") {
			t.Fatalf("not escaped: %q", text)
		}
		out[shown(html.UnescapeString(text))] = true
	}
	return out
}

// TestHTMLTagsClose: what is opened is closed, in its order.
func TestHTMLTagsClose(t *testing.T) {
	d := Document{Title: "T", Parts: []Part{
		{Title: "P", Lines: []string{"l"}, Pairs: []Pair{{"n", "s"}}, Table: wideTable(4), Apart: true},
		{Table: wideTable(80), Apart: true},
	}, Foot: []string{"f"}}
	page, err := d.HTML()
	if err != nil {
		t.Fatal(err)
	}
	page = strings.NewReplacer(`<meta charset="utf-8">`, `<meta charset="utf-8"/>`, `content="width=device-width">`, `content="width=device-width"/>`, "<!DOCTYPE html>", "").Replace(page)
	r := xml.NewDecoder(strings.NewReader(page))
	for {
		if _, err := r.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
	for _, want := range []string{`<body class="side">`, "thead", "counter(page)", `<section class="apart">`} {
		if !strings.Contains(page, want) {
			t.Errorf("no %s", want)
		}
	}
}

func wideTable(n int) Table {
	out := Table{Rows: [][]string{nil}}
	for i := range n {
		out.Columns = append(out.Columns, Column{Title: "column " + strconv.Itoa(i), Left: i%2 == 0})
		out.Rows[0] = append(out.Rows[0], "measured")
		out.Sum = append(out.Sum, "12,345.6")
	}
	return out
}

// TestAWideTableLiesOnItsSide: few columns stand upright, more lie on their side in smaller letters, and too many are written row by row.
func TestAWideTableLiesOnItsSide(t *testing.T) {
	for _, c := range []struct {
		columns      int
		side, turned bool
	}{{4, false, false}, {9, false, false}, {12, true, false}, {16, true, false}, {60, true, true}} {
		page, err := Document{Parts: []Part{{Table: wideTable(c.columns)}}}.HTML()
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(page, `<body class="side">`); got != c.side {
			t.Errorf("%d columns on their side: %v", c.columns, got)
		}
		if got := !strings.Contains(page, "<thead>"); got != c.turned {
			t.Errorf("%d columns row by row: %v", c.columns, got)
		}
	}
}
