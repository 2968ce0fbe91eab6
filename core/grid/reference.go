package grid

import (
	"slices"
	"strings"

	"example.com/tintline/core/label"
)

// Asked narrows a grid down; what is empty does not.
type Asked struct{ Grass, Active string }

// Narrow leaves the rows and columns that are about a grass and an active: products that hold it, else its own column and
// those of mixtures with it.
func (g *Grid) Narrow(a Asked) {
	if a.Grass != "" {
		g.Rows = slices.DeleteFunc(g.Rows, func(r Row) bool { return r.Grass.Name != a.Grass })
	}
	if a.Active == "" {
		return
	}
	g.Columns = slices.DeleteFunc(g.Columns, func(c Column) bool {
		if c.Product == "" {
			return !isOf(c.Active, a.Active)
		}
		for _, e := range g.b.Product(c.Product).Label.Actives {
			if info, known := label.FindActive(e.Name); known && info.Name == a.Active {
				return false
			}
		}
		return true
	})
	if len(g.Columns) == 0 {
		g.Of = OfReference
		for _, name := range label.RatedActives() {
			if isOf(name, a.Active) {
				g.Columns = append(g.Columns, Column{Active: name})
			}
		}
	}
}

// isOf tells whether a name of the table is an active, or a mixture with it.
func isOf(name, active string) bool {
	return slices.Contains(strings.Split(name, " + "), active)
}

// Reference lists the rows of the reference on a grass and on an active, alone or in a mixture, in the order of the table.
func Reference(a Asked) []Ground {
	var out []Ground
	for _, r := range label.Tolerances() {
		if (a.Grass == "" || r.Grass == a.Grass) && (a.Active == "" || isOf(r.Active, a.Active)) {
			out = append(out, GroundOf(&r))
		}
	}
	return out
}
