package sheet

import (
	"slices"
	"strings"
)

// The kinds of sheet.
const (
	Rig      = "rig"
	Products = "products"
	Mixes    = "mixes"
	Lawns    = "lawns"
)

// Kinds lists them in the order in which a book can take them: a mix names products.
var Kinds = []string{Rig, Products, Mixes, Lawns}

// Column is a column of a file, or a field of a form.
type Column struct {
	Name     string // the header
	Words    string // what stands in it
	Allowed  string // what may be written, "more than 0 and up to 10,000 gal"
	Example  string
	Required bool // each row needs it
}

// column is a Column with the way from its cell to a value.
type column struct {
	Column
	reader
	parts  []string // of a rig: the parts that have it; nil: every row
	needed []string // of a rig: the parts that need it
}

// need says whether a row needs the column; part is that of a rig's row.
func (c *column) need(part string) bool { return c.Required || slices.Contains(c.needed, part) }

// takes says whether a row may fill the column.
func (c *column) takes(part string) bool { return c.parts == nil || slices.Contains(c.parts, part) }

// table gives a kind's columns and what makes facts of its rows; nil for an unknown kind.
func table(kind string) ([]column, func(*reading)) {
	switch kind {
	case Rig:
		return rigColumns, readRig
	case Products:
		return productColumns, readProducts
	case Mixes:
		return mixColumns, readMixes
	case Lawns:
		return lawnColumns, readLawns
	}
	return nil, nil
}

// Columns lists the columns of a kind, nil for an unknown kind.
func Columns(kind string) []Column {
	columns, _ := table(kind)
	return shown(columns, "")
}

// Parts lists the parts of a rig, each a row of its own.
func Parts() []string { return slices.Clone(rigParts) }

// ColumnsOf lists the columns that a part of the rig has, with Required as that part has it.
func ColumnsOf(part string) []Column { return shown(rigColumns, part) }

func shown(columns []column, part string) []Column {
	var out []Column
	for i := range columns {
		c := &columns[i]
		if part != "" && !c.takes(part) {
			continue
		}
		one := c.Column
		one.Allowed, one.Required = c.allowed, c.need(part)
		out = append(out, one)
	}
	return out
}

func find(columns []column, name string) *column {
	for i := range columns {
		if columns[i].Name == name {
			return &columns[i]
		}
	}
	return nil
}

func names(columns []column) []string {
	var out []string
	for i := range columns {
		out = append(out, columns[i].Name)
	}
	return out
}

// headerName is a header as it was written, in the form in which columns are named.
func headerName(text string) string {
	return strings.Join(strings.Fields(strings.NewReplacer("-", " ", "_", " ").Replace(strings.ToLower(text))), "_")
}
