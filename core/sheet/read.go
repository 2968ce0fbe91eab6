package sheet

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// Sheet is what a file holds.
type Sheet struct {
	Facts    []core.Fact
	Rows     int
	New      int // facts about what the book does not know yet
	Replaced int // facts that change what the book knows
}

// Import reads a file of a kind for a book: all of it, or Troubles. file is its name, for the sentences.
func Import(kind, file string, src []byte, b *core.Book) (Sheet, error) {
	s, read, err := begin(kind, file, b)
	if err != nil {
		return Sheet{}, err
	}
	s.parse(kind, src)
	if len(s.troubles) > 0 {
		return Sheet{}, s.troubles.sorted()
	}
	facts, err := s.finish(read)
	if err != nil {
		return Sheet{}, err
	}
	out := Sheet{Facts: facts, Rows: len(s.rows)}
	for _, f := range facts {
		if knows(b, f) {
			out.Replaced++
		} else {
			out.New++
		}
	}
	return out, nil
}

// Read is the facts of Import.
func Read(kind, file string, src []byte, b *core.Book) ([]core.Fact, error) {
	s, err := Import(kind, file, src, b)
	return s.Facts, err
}

// Row reads the fields of a form about one thing, by their columns: a product, a lawn with one zone.
func Row(kind string, cells map[string]string, b *core.Book) (core.Fact, error) {
	facts, err := Rows(kind, []map[string]string{cells}, b)
	if err != nil {
		var all Troubles
		if errors.As(err, &all) {
			for i := range all {
				all[i].Line = 0 // there is no other row
			}
		}
		return nil, err
	}
	return facts[0], nil
}

// Rows reads forms that belong together, such as the parts of a rig. In the sentences the first is row 1.
func Rows(kind string, rows []map[string]string, b *core.Book) ([]core.Fact, error) {
	s, read, err := begin(kind, "", b)
	if err != nil {
		return nil, err
	}
	for i, cells := range rows {
		r := &row{reading: s, line: i + 1, cells: map[string]string{}}
		for _, name := range sortedNames(cells) {
			if find(s.columns, name) == nil {
				t := unknownColumn(kind, name, s.columns)
				t.Line = r.line
				s.add(t)
			}
			r.cells[name] = trim(cells[name])
		}
		s.rows = append(s.rows, r)
	}
	if len(rows) == 0 {
		s.add(Trouble{What: "No row is filled in.", Allowed: "at least one"})
	}
	return s.finish(read)
}

// Check says what is wrong with one cell alone; nil where it may be right. An empty cell is right where the
// column may be left empty.
func Check(kind, column, cell string) error {
	columns, _ := table(kind)
	c := find(columns, column)
	if c == nil {
		t := unknownColumn(kind, column, columns)
		return &t
	}
	if cell = trim(cell); cell == "" {
		if !c.Required {
			return nil
		}
		return &Trouble{Column: column, What: "The cell is empty.", Allowed: c.allowed}
	}
	if _, err := c.read(cell); err != nil {
		t := trouble(column, c.allowed, err)
		return &t
	}
	return nil
}

func begin(kind, file string, b *core.Book) (*reading, func(*reading), error) {
	columns, read := table(kind)
	if read == nil {
		return nil, nil, &Trouble{
			File: file, What: fmt.Sprintf("%s is no kind of sheet.", quote(kind)),
			Allowed: strings.Join(Kinds, ", "), Nearest: label.Nearest(kind, Kinds),
		}
	}
	if b == nil {
		b = core.NewBook(1)
	}
	return &reading{file: file, columns: columns, book: b}, read, nil
}

func (s *reading) finish(read func(*reading)) ([]core.Fact, error) {
	if len(s.troubles) == 0 {
		read(s)
	}
	facts := s.admitted(read)
	if len(s.troubles) > 0 {
		return nil, s.troubles.sorted()
	}
	return facts, nil
}

// knows says whether the book has what a fact sets up.
func knows(b *core.Book, f core.Fact) bool {
	if b == nil {
		return false
	}
	switch f := f.(type) {
	case *core.Rig:
		return b.Rig() != nil
	case *core.Product:
		return b.Product(f.ProductName) != nil
	case *core.Mix:
		return b.Mix(f.MixName) != nil
	case *core.Lawn:
		return b.Lawn(f.LawnName) != nil
	}
	return false
}

func unknownColumn(kind, name string, columns []column) Trouble {
	all := names(columns)
	return Trouble{
		Column: name, What: fmt.Sprintf("%s has no column %s.", kind, quote(name)),
		Allowed: "one of " + strings.Join(all, ", "), Nearest: label.Nearest(name, all),
	}
}

func sortedNames(m map[string]string) []string {
	var out []string
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

// trim takes the blanks off a cell; a spreadsheet's blank that must not break is a blank.
func trim(cell string) string { return strings.TrimSpace(strings.ReplaceAll(cell, "\u00a0", " ")) }
