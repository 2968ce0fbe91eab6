package grid

import (
	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// What the columns of a grid are.
const (
	OfLoads     = "loads"     // what stands in the tanks and hoppers, or is to be loaded
	OfProducts  = "products"  // all products of the book: nothing is loaded
	OfReference = "reference" // the actives of the reference: the book has no product
)

// Grid is a table of what may go on which grass.
type Grid struct {
	Of      string
	Columns []Column
	Rows    []Row
	b       *core.Book
	at      core.Moment
}

// Column is a product, or an active of the reference.
type Column struct {
	Product string
	Active  string // of the reference, where there is no product
	// Where says where it stands: "compartment a", "ride-on", "to load in b".
	Where []string
	// Residue: it stands nowhere as part of the mix, only as what was pushed or left there.
	Residue bool
	// Rate is at which it is judged, by the mix RateOf; unknown: the label's highest for the grass.
	Rate   core.Maybe[measure.Rate]
	RateOf string

	form string // label.FormSpray, label.FormGranule; empty: not known
}

// Name is what stands over a column.
func (c *Column) Name() string {
	if c.Product != "" {
		return c.Product
	}
	return c.Active
}

// Row is a grass, of a zone where it is of a lawn.
type Row struct {
	Grass label.Grass
	Lawn  string
	Zone  core.Zone // only its grass where it is of no lawn
}

// OfBook is the grid of all grasses: by the current loads, without any by all products, without those by the actives of
// the reference.
func OfBook(b *core.Book, at core.Moment) *Grid {
	g := &Grid{b: b, at: at}
	g.Of, g.Columns = columns(b)
	for _, grass := range label.Grasses() {
		g.Rows = append(g.Rows, Row{Grass: grass, Zone: core.Zone{Grass: grass.Name}})
	}
	return g
}

// OfLawn is the same with the zones of a lawn alone.
func OfLawn(b *core.Book, lawn string, at core.Moment) *Grid {
	g := &Grid{b: b, at: at}
	g.Of, g.Columns = columns(b)
	g.Rows = zoneRows(b, lawn)
	return g
}

// WithLawn is the grid of a book, the zones of a lawn first.
func WithLawn(b *core.Book, lawn string, at core.Moment) *Grid {
	g := OfBook(b, at)
	g.Rows = append(zoneRows(b, lawn), g.Rows...)
	return g
}

func zoneRows(b *core.Book, lawn string) []Row {
	l := b.Lawn(lawn)
	if l == nil {
		return nil
	}
	var out []Row
	for _, z := range l.Zones {
		grass, known := label.FindGrass(z.Grass)
		if !known {
			grass = label.Grass{Name: z.Grass, CommonName: z.Grass}
		}
		out = append(out, Row{grass, lawn, z})
	}
	return out
}

// OfProduct is the grid of one product and its actives: the first column is the product, the others what the
// reference says of each of its actives.
func OfProduct(b *core.Book, product string, at core.Moment) *Grid {
	g := OfBook(b, at)
	p := b.Product(product)
	if p == nil {
		g.Columns = nil
		return g
	}
	own := Column{Product: product}
	for _, c := range g.Columns {
		if c.Product == product {
			own = c
		}
	}
	g.Columns = []Column{own}
	for _, a := range p.Label.Actives {
		name := core.ActiveName(a.Name)
		if info, known := label.FindActive(a.Name); known {
			name = info.Name
		}
		g.Columns = append(g.Columns, Column{Active: name})
	}
	return g
}
