package printed

import (
	"encoding/csv"
	"slices"
	"strings"
)

// CSV is the table as comma-separated values (RFC 4180), UTF-8 without a mark at the beginning, with the units in the head line. The
// sum is left out, so that what adds up a column counts nothing twice. See inert for what becomes of a formula.
func (t Table) CSV() (string, error) {
	var out strings.Builder
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	rows := make([][]string, 0, 1+len(t.Rows))
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = c.Head()
	}
	for _, r := range append(append(rows, head), t.Rows...) {
		cells := make([]string, len(r))
		for i, c := range r {
			cells[i] = inert(c)
		}
		if len(cells) == 1 && cells[0] == "" { // else an empty line, which no reader takes for a row
			w.Flush()
			out.WriteString("\"\"\r\n")
			continue
		}
		if err := w.Write(cells); err != nil {
			return "", err
		}
	}
	w.Flush()
	return out.String(), w.Error()
}

// CSV is what the document has to add up or to look up, as one table: every row has as many cells. Of several tables the first
// column says in which part a row stands, and columns of the same head are one. A document without a table gives its pairs.
func (d Document) CSV() (string, error) { return d.joined().CSV() }

func (d Document) joined() Table {
	var some []Part
	for _, p := range d.Parts {
		if len(p.Table.Columns) > 0 {
			some = append(some, p)
		}
	}
	switch len(some) {
	case 0:
		return d.paired()
	case 1:
		return some[0].Table
	}
	out := Table{Columns: []Column{{Title: "part", Left: true}}}
	for _, p := range some {
		at := make([]int, len(p.Table.Columns))
		for i, c := range p.Table.Columns {
			at[i] = 1 + slices.IndexFunc(out.Columns[1:], func(have Column) bool { return have.Head() == c.Head() })
			if at[i] == 0 || slices.Contains(at[:i], at[i]) { // a table may have two columns of one head
				at[i] = len(out.Columns)
				out.Columns = append(out.Columns, c)
			}
		}
		for _, r := range p.Table.Rows {
			row := []string{p.Title}
			for i, c := range r {
				for len(row) <= at[i] {
					row = append(row, "")
				}
				row[at[i]] = c
			}
			out.Rows = append(out.Rows, row)
		}
	}
	for i := range out.Rows {
		for len(out.Rows[i]) < len(out.Columns) {
			out.Rows[i] = append(out.Rows[i], "")
		}
	}
	return out
}

func (d Document) paired() Table {
	out := Table{Columns: []Column{{Title: "part", Left: true}, {Title: "what", Left: true}, {Title: "says", Left: true}}}
	for _, p := range d.Parts {
		for _, q := range p.Pairs {
			out.Rows = append(out.Rows, []string{p.Title, q.Name, q.Says})
		}
	}
	return out
}
