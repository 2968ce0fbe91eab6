package sheet

import (
	"bytes"
	"encoding/csv"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/tintline/core"
)

// take reads a file and enters what it holds.
func take(t testing.TB, b *core.Book, kind, src string) []core.Fact {
	t.Helper()
	facts, err := Read(kind, kind+".csv", []byte(src), b)
	if err != nil {
		t.Fatalf("%s: %v", kind, err)
	}
	enter(t, b, facts)
	return facts
}

func enter(t testing.TB, b *core.Book, facts []core.Fact) {
	t.Helper()
	entries, err := b.Prepare("x", core.Moment{Unix: 1_790_000_000}, facts...)
	if err != nil {
		t.Fatalf("what was read is refused: %v", err)
	}
	for _, e := range entries {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
}

// filledBook has taken all templates.
func filledBook(t testing.TB) *core.Book {
	b := core.NewBook(1)
	for _, kind := range Kinds {
		take(t, b, kind, Template(kind))
	}
	return b
}

func TestTemplatesFillAnEmptyBook(t *testing.T) {
	b := filledBook(t)
	if n := len(b.Rig().Compartments); n != 2 {
		t.Errorf("%d compartments", n)
	}
	if len(b.Products()) != 3 || len(b.Mixes()) != 3 || len(b.Lawns()) != 2 {
		t.Errorf("%d products, %d mixes, %d lawns", len(b.Products()), len(b.Mixes()), len(b.Lawns()))
	}
	if m := b.Mix("example cool weed and iron"); len(m.Parts) != 3 || m.Base == "" {
		t.Errorf("a mix made from another is %+v", m)
	}
	if a := b.Rig().Applicators; len(a[0].Tips) != 2 || a[0].Tips[1].PSI.V != 40 || len(b.Rig().Compartments[0].Marks) != 4 {
		t.Errorf("tips or marks are missing: %+v", b.Rig())
	}
	// Again: each is a change of what is there.
	for _, kind := range Kinds {
		s, err := Import(kind, kind, []byte(Template(kind)), b)
		if err != nil || s.New != 0 || s.Replaced != len(s.Facts) {
			t.Errorf("%s again: %d new, %d replaced (%v)", kind, s.New, s.Replaced, err)
		}
	}
}

func TestTemplatesShowEveryColumn(t *testing.T) {
	for _, kind := range Kinds {
		rows, err := csv.NewReader(strings.NewReader(Template(kind))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for i, c := range Columns(kind) {
			if rows[0][i] != c.Name {
				t.Errorf("%s: column %d of the template is %s, not %s", kind, i+1, rows[0][i], c.Name)
			}
			if !slices.ContainsFunc(rows[1:], func(r []string) bool { return r[i] != "" }) {
				t.Errorf("%s: no row of the template fills %s", kind, c.Name)
			}
			if c.Words == "" || c.Allowed == "" || c.Example == "" || strings.HasSuffix(c.Allowed, ".") {
				t.Errorf("%s: column %s lacks words: %+v", kind, c.Name, c)
			}
			if err := Check(kind, c.Name, c.Example); err != nil {
				t.Errorf("%s: the example of %s is refused: %v", kind, c.Name, err)
			}
			if Check(kind, c.Name, "") == nil == c.Required {
				t.Errorf("%s: an empty %s is taken as if it were not %v that it is needed", kind, c.Name, c.Required)
			}
		}
	}
	if Template("routes") != "" || Columns("routes") != nil {
		t.Error("a kind that does not exist has a template or columns")
	}
}

// The templates fill each column, so that a field of these facts which stays empty has no column.
func TestEveryFieldHasAColumn(t *testing.T) {
	filled := map[string]bool{"Mix.Complete": true} // the book says so itself
	b := core.NewBook(1)
	for _, kind := range Kinds {
		for _, f := range take(t, b, kind, Template(kind)) {
			fieldsOf(reflect.ValueOf(f).Elem(), filled)
		}
	}
	for name, yes := range filled {
		if !yes {
			t.Errorf("no column fills %s", name)
		}
	}
	if len(filled) < 50 {
		t.Errorf("only %d fields were looked at", len(filled))
	}
}

// fieldsOf notes for each field of v, and of what v holds, whether it was ever filled.
func fieldsOf(v reflect.Value, filled map[string]bool) {
	switch v.Kind() {
	case reflect.Slice:
		for i := range v.Len() {
			fieldsOf(v.Index(i), filled)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			name := v.Type().Name() + "." + v.Type().Field(i).Name
			filled[name] = filled[name] || !v.Field(i).IsZero()
			fieldsOf(v.Field(i), filled)
		}
	}
}

func TestEveryPartHasItsColumns(t *testing.T) {
	for _, part := range Parts() {
		var needed []string
		for _, c := range ColumnsOf(part) {
			if c.Required {
				needed = append(needed, c.Name)
			}
		}
		want := map[string]string{
			"rig": "part name", "compartment": "part letter capacity_gal", "hose": "part name",
			"applicator": "part name kind", "tip": "part name applicator", "line_up": "part name",
		}[part]
		if got := strings.Join(needed, " "); got != want {
			t.Errorf("a row of %s needs %s, not %s", part, got, want)
		}
	}
}

// What a spreadsheet makes of a file does not change what it says.
func TestSameFileInOtherClothes(t *testing.T) {
	plain := Template(Lawns)
	want := take(t, core.NewBook(1), Lawns, plain)
	for what, src := range map[string]string{
		"byte order mark": "\ufeff" + plain,
		"CRLF":            strings.ReplaceAll(plain, "\n", "\r\n"),
		"CR alone":        strings.ReplaceAll(plain, "\n", "\r"),
		"blank lines":     "\n\n" + strings.ReplaceAll(plain, "\n", "\n\n,,,\n   \n"),
		"trailing commas": strings.ReplaceAll(plain, "\n", ",,\n"),
		"header in words": strings.Replace(plain, "area_sqft", "Area SqFt", 1),
		"hard blanks":     strings.Replace(plain, "tall fescue", "\u00a0tall\u00a0fescue ", 1),
		"no end of line":  strings.TrimSuffix(plain, "\n"),
	} {
		got, err := Read(Lawns, "f", []byte(src), nil)
		if err != nil {
			t.Errorf("%s: %v", what, err)
			continue
		}
		if !bytes.Equal(stored(got), stored(want)) {
			t.Errorf("%s: read as other lawns", what)
		}
	}
}

// stored is the stored form of facts, to compare them.
func stored(facts []core.Fact) []byte {
	var out []byte
	for _, f := range facts {
		e := core.Entry{Seq: 1, What: f}
		out = append(out, e.Encode()...)
	}
	return out
}
