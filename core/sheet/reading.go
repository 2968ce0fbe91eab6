package sheet

import (
	"fmt"
	"maps"
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// Most is how many entries one action has at most, and so how many facts a file may hold.
const Most = 5000

// reading is a file or a form on its way to facts.
type reading struct {
	file     string
	columns  []column
	present  map[string]bool // the columns that a file has; nil: a form, which has all
	rows     []*row
	book     *core.Book
	facts    []made
	troubles Troubles
}

// row is the filled cells of one row under the names of their columns.
type row struct {
	*reading
	line  int
	cells map[string]string

	formed bool // of a product: its form could be read, so that rates and amounts can be
}

// made is a fact with the rows that it was made of. With cut it is made of the first n of them alone, so
// that the row which the book refuses can be found.
type made struct {
	fact core.Fact
	rows []*row
	cut  func(n int) core.Fact
}

// has tells whether a file says anything of a column. What it says nothing of stays as the book has it.
func (s *reading) has(column string) bool { return s.present == nil || s.present[column] }

func (s *reading) add(t Trouble) {
	t.File = s.file
	if len(s.troubles) < mostTroubles {
		s.troubles = append(s.troubles, t)
	}
}

// bad says what is wrong with a cell.
func (r *row) bad(column string, err error) {
	t := trouble(column, find(r.columns, column).allowed, err)
	t.Line = r.line
	r.add(t)
}

// sound says whether a row fills what it needs and nothing else; part is that of a rig's row.
func (r *row) sound(part string) bool {
	ok := true
	for i := range r.columns {
		c := &r.columns[i]
		switch filled := r.cells[c.Name] != ""; {
		case !filled && c.need(part):
			r.bad(c.Name, faultf("The cell is empty."))
			ok = false
		case filled && !c.takes(part):
			t := Trouble{Line: r.line, Column: c.Name, What: fmt.Sprintf("%s stands where a row of part %s has nothing.", quote(r.cells[c.Name]), part), Allowed: "nothing there"}
			r.add(t)
			ok = false
		}
	}
	return ok
}

// get reads a cell; false where it is empty or wrong.
func get[T any](r *row, column string) (v T, ok bool) {
	cell := r.cells[column]
	if cell == "" {
		return v, false
	}
	got, err := find(r.columns, column).read(cell)
	if err != nil {
		r.bad(column, err)
		return v, false
	}
	v, ok = got.(T) // not where the cell says that there is no limit
	return v, ok
}

// value is a cell's value, zero where it is empty or wrong.
func value[T any](r *row, column string) T {
	v, _ := get[T](r, column)
	return v
}

func maybe[T any](r *row, column string) core.Maybe[T] {
	v, ok := get[T](r, column)
	return core.Maybe[T]{V: v, Known: ok}
}

// named are the rows on which names stood first.
type named map[string]*row

// once says whether a name stands for the first time.
func (n named) once(r *row, column, what, name string) bool {
	first := n[name]
	if name == "" {
		return true // it could not be read, which has been said
	}
	if first == nil {
		n[name] = r
		return true
	}
	place := "line"
	if r.file == "" {
		place = "row"
	}
	r.add(Trouble{
		Line: r.line, Column: column, What: fmt.Sprintf("The %s %s stands on %s %d already.", what, quote(name), place, first.line),
		Allowed: "a " + what + " that stands nowhere else",
	})
	return false
}

// known says whether a name is one of those that may be named here.
func (r *row) known(column, what, name string, all []string) bool {
	if slices.Contains(all, name) {
		return true
	}
	t := Trouble{
		Line: r.line, Column: column, What: fmt.Sprintf("There is no %s %s.", what, quote(name)),
		Allowed: "one of " + short(all), Nearest: label.Nearest(name, all),
	}
	if len(all) == 0 {
		t.do = fmt.Sprintf("Enter a %s first.", what)
	}
	r.add(t)
	return false
}

// short joins a list that may be long.
func short(all []string) string {
	out := ""
	for i, n := range all {
		switch {
		case i == 12:
			return out + fmt.Sprintf(" and %d more", len(all)-i)
		case i > 0:
			out += ", "
		}
		out += n
	}
	return out
}

// admitted gives the facts if the book admits them, one after the other.
func (s *reading) admitted(read func(*reading)) []core.Fact {
	if len(s.facts) > Most {
		s.add(Trouble{
			Line: s.facts[Most].rows[0].line, What: fmt.Sprintf("This would be entry %d of %d; an action has at most %d.", Most+1, len(s.facts), Most),
			Allowed: "the rest into a second file and import both",
		})
	}
	if len(s.troubles) > 0 {
		return nil
	}
	on := s.book.Clone()
	var out []core.Fact
	for _, m := range s.facts {
		entries, err := on.Prepare("sheet", on.LastAt(), m.fact)
		if err == nil {
			err = on.Apply(entries[0])
		}
		if err != nil {
			r := m.blame(on, err)
			t := trouble("", "", err)
			t.Line, t.Column = r.line, s.column(read, m, r, on, err)
			if c := find(s.columns, t.Column); c != nil {
				t.Allowed = c.allowed
			}
			s.add(t)
			continue
		}
		out = append(out, m.fact)
	}
	return out
}

// blame finds the row that brought in what the book refuses.
func (m *made) blame(on *core.Book, err error) *row {
	if m.cut == nil {
		return m.rows[0]
	}
	if _, alone := core.NewBook(1).Prepare("sheet", on.LastAt(), m.fact); alone == nil {
		return m.rows[0] // it is what this book holds that stands against it, and no single row
	}
	for n := 1; n < len(m.rows); n++ {
		if _, fewer := on.Prepare("sheet", on.LastAt(), m.cut(n)); fewer != nil && fewer.Error() == err.Error() {
			return m.rows[n-1]
		}
	}
	return m.rows[len(m.rows)-1]
}

// column finds the column that brought in what the book refuses: the first that may be left empty and without
// which it would not be refused. It is empty where there is none.
func (s *reading) column(read func(*reading), m made, guilty *row, on *core.Book, err error) string {
	for i := range s.columns {
		name := s.columns[i].Name
		if guilty.cells[name] == "" || s.columns[i].need(guilty.cells["part"]) {
			continue
		}
		without := &reading{file: s.file, columns: s.columns, present: s.present, book: s.book}
		for _, r := range m.rows {
			c := &row{reading: without, line: r.line, cells: r.cells}
			if r == guilty {
				c.cells = maps.Clone(r.cells)
				delete(c.cells, name)
			}
			without.rows = append(without.rows, c)
		}
		read(without)
		if len(without.troubles) > 0 || len(without.facts) != 1 {
			continue
		}
		if _, still := on.Prepare("sheet", on.LastAt(), without.facts[0].fact); still == nil || still.Error() != err.Error() {
			return name
		}
	}
	return ""
}
