package sheet

import (
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// entryField is a column of a product with its way into a label entry and back.
type entryField struct {
	column
	limit string // the key under which the label may be said to have none
	set   func(r *row, name string, e *label.Entry)
	text  func(e *label.Entry) string
}

var nameColumn = column{Column: Column{Name: "name", Words: "what the product is called in the book", Example: "example mesotrione 4", Required: true}, reader: name("product")}

// productColumns are the name and the fields of the label entry.
var productColumns = func() []column {
	out := []column{nameColumn}
	for i := range entryFields {
		out = append(out, entryFields[i].column)
	}
	return out
}()

// readProducts makes a product of each row.
func readProducts(s *reading) {
	seen := named{}
	for _, r := range s.rows {
		ok := r.sound("")
		f := &core.Product{ProductName: value[string](r, "name")}
		if old := s.book.Product(f.ProductName); old != nil && s.present != nil {
			f.Label = old.Label
		}
		for i := range entryFields {
			if s.has(entryFields[i].Name) {
				entryFields[i].into(r, &f.Label)
			}
		}
		if ok && f.ProductName != "" && seen.once(r, "name", "product", f.ProductName) {
			s.facts = append(s.facts, made{fact: f, rows: []*row{r}})
		}
	}
}

// into puts a cell into a label entry: its value, that the label has none, or that it is blank.
func (f *entryField) into(r *row, e *label.Entry) {
	if f.limit != "" {
		e.None = slices.DeleteFunc(slices.Clone(e.None), func(n string) bool { return n == f.limit })
		if IsNone(r.cells[f.Name]) {
			e.None = append(e.None, f.limit)
		}
		if len(e.None) == 0 {
			e.None = nil
		}
	}
	f.set(r, f.Name, e)
}

// Cells are the cells of a product as they would be written.
func Cells(p *core.Product) map[string]string {
	out := map[string]string{nameColumn.Name: p.ProductName}
	for i := range entryFields {
		f := &entryFields[i]
		if f.limit != "" && p.Label.NoneOnLabel(f.limit) {
			out[f.Name] = none
			continue
		}
		out[f.Name] = f.text(&p.Label)
	}
	return out
}

// Change is a product with some cells of its label entry written anew; what the other cells say stays to the last digit.
func Change(p *core.Product, cells map[string]string) (*core.Product, error) {
	s := &reading{columns: productColumns, book: core.NewBook(1)}
	r := &row{reading: s, line: 1, cells: map[string]string{"form": p.Label.Form.String()}, formed: true}
	for name, cell := range cells {
		r.cells[name] = trim(cell)
	}
	out := *p
	for i := range entryFields {
		if _, anew := cells[entryFields[i].Name]; anew {
			entryFields[i].into(r, &out.Label)
		}
	}
	if len(s.troubles) > 0 {
		for i := range s.troubles {
			s.troubles[i].Line = 0 // there is no other row
		}
		return nil, s.troubles
	}
	return &out, nil
}

// The ways of a cell into an entry.

func textOf(p func(*label.Entry) *string) (func(*row, string, *label.Entry), func(*label.Entry) string) {
	return func(r *row, name string, e *label.Entry) { *p(e) = value[string](r, name) }, func(e *label.Entry) string { return *p(e) }
}

func field(c Column, read reader, set func(*row, string, *label.Entry), text func(*label.Entry) string) entryField {
	return entryField{column: column{Column: c, reader: read}, set: set, text: text}
}

func textField(c Column, read reader, p func(*label.Entry) *string) entryField {
	set, text := textOf(p)
	return field(c, read, set, text)
}

func numberField(c Column, limit string, read reader, p func(*label.Entry) *core.Maybe[float64]) entryField {
	f := field(c, read, func(r *row, name string, e *label.Entry) { *p(e) = maybe[float64](r, name) }, func(e *label.Entry) string {
		if !p(e).Known {
			return ""
		}
		return figure(p(e).V)
	})
	return f.orNone(limit)
}

// rateField takes a rate of the product, which is of the kind of its form.
func rateField(c Column, limit string, get func(*label.Entry) core.Maybe[measure.Rate], put func(*label.Entry, core.Maybe[measure.Rate])) entryField {
	f := field(c, rate(), func(r *row, name string, e *label.Entry) {
		v, ok := r.rateOf(name, e.Form)
		put(e, core.Maybe[measure.Rate]{V: v, Known: ok})
	}, func(e *label.Entry) string {
		if m := get(e); m.Known {
			return RateText(m.V)
		}
		return ""
	})
	return f.orNone(limit)
}

func maybeRateField(c Column, limit string, p func(*label.Entry) *core.Maybe[measure.Rate]) entryField {
	return rateField(c, limit, func(e *label.Entry) core.Maybe[measure.Rate] { return *p(e) }, func(e *label.Entry, m core.Maybe[measure.Rate]) { *p(e) = m })
}

// orNone lets a column take none, which says that the label has no such limit.
func (f entryField) orNone(limit string) entryField {
	if f.limit = limit; limit == "" {
		return f
	}
	read := f.read
	f.allowed += ", or none where the label has no such limit"
	f.read = func(cell string) (any, error) {
		if IsNone(cell) {
			return noLimit{}, nil
		}
		return read(cell)
	}
	return f
}

// none is what a cell says where the label has no such limit.
const none = "none"

// IsNone tells whether a cell says that the label has no such limit.
func IsNone(cell string) bool {
	h := headerName(cell)
	return h == none || h == "none_on_the_label" || h == "none_on_label"
}

// TakesNone tells whether a column of a product may say none.
func TakesNone(column string) bool {
	for i := range entryFields {
		if entryFields[i].Name == column {
			return entryFields[i].limit != ""
		}
	}
	return false
}

// noLimit is the value of a cell that says none.
type noLimit struct{}

// rateOf reads a rate of a product whose form is known.
func (r *row) rateOf(column string, form measure.Kind) (measure.Rate, bool) {
	typed, ok := get[typedRate](r, column)
	if !ok || !r.formed {
		return measure.Rate{}, false
	}
	rate, err := typed.of(form)
	if err != nil {
		r.bad(column, err)
		return measure.Rate{}, false
	}
	return rate, true
}
