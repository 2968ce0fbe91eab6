package grid

import (
	"slices"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// Document is a grid as JSON: flat, no list is null.
type Document struct {
	Of       string       `json:"of"`
	Grasses  []GrassRow   `json:"grasses"`
	Products []ProductRow `json:"products"`
	Cells    []CellRow    `json:"cells"`
	// Rows are those of the reference that were asked for by grass or active; else there are none.
	Rows    []ReferenceRow `json:"rows"`
	Sources []SourceRow    `json:"sources"`
}

// GrassRow is a grass in the document.
type GrassRow struct {
	Name       string `json:"name"`
	CommonName string `json:"common_name"`
	Botanical  string `json:"botanical_name"`
	Season     string `json:"season"`
	Source     string `json:"source"`
}

// ProductRow is a column in the document; of the reference it has an active and no product.
type ProductRow struct {
	Product      *string  `json:"product"`
	Actives      []string `json:"actives"`
	Kind         *string  `json:"kind"`
	Registration *string  `json:"registration"`
	Where        []string `json:"where"`
	Residue      bool     `json:"residue"`
	Mix          *string  `json:"mix"`
}

// CellRow is a cell in the document.
type CellRow struct {
	Grass   string         `json:"grass"`
	Product *string        `json:"product"`
	Active  *string        `json:"active"`
	Letter  string         `json:"letter"`
	Word    string         `json:"word"`
	Weight  string         `json:"weight"`
	Ground  *string        `json:"ground"`
	Source  *string        `json:"source"`
	Says    string         `json:"says"`
	RateWet *float64       `json:"rate_fl_oz_per_1000_sqft"`
	RateDry *float64       `json:"rate_oz_per_1000_sqft"`
	Notes   []string       `json:"notes"`
	Rows    []ReferenceRow `json:"rows"`
}

// ReferenceRow is a row of the reference in the document.
type ReferenceRow struct {
	Active       string  `json:"active"`
	Grass        string  `json:"grass"`
	Rating       string  `json:"rating"`
	Stage        string  `json:"stage"`
	Basis        string  `json:"basis"`
	Condition    *string `json:"condition"`
	Words        *string `json:"words"`
	Source       string  `json:"source"`
	Cite         string  `json:"cite"`
	Decides      bool    `json:"decides"`
	Contradicted *string `json:"contradicted_by"`
}

// SourceRow is a source of the rows in the document.
type SourceRow struct {
	ID          string  `json:"source"`
	Institution string  `json:"institution"`
	Title       *string `json:"title"`
	Address     *string `json:"address"`
	Weak        bool    `json:"weak"`
	Read        *string `json:"read"`
}

// Document is the grid as JSON, with the rows of the reference that were asked for beside it.
func (g *Grid) Document(reference []Ground) Document {
	d := Document{
		Of: g.Of, Grasses: []GrassRow{}, Products: []ProductRow{}, Cells: []CellRow{},
		Rows: referenceRows(reference), Sources: []SourceRow{},
	}
	cited := d.Rows
	for i := range g.Rows {
		r := &g.Rows[i]
		d.Grasses = append(d.Grasses, GrassRow{r.Grass.Name, r.Grass.CommonName, r.Grass.Botanical, r.Grass.Season, r.Grass.Source})
	}
	for i := range g.Columns {
		d.Products = append(d.Products, g.productRow(&g.Columns[i]))
	}
	for i := range g.Rows {
		for j := range g.Columns {
			c := g.Cell(i, j)
			row := CellRow{
				Grass: g.Rows[i].Grass.Name, Product: text(g.Columns[j].Product), Active: text(g.Columns[j].Active), Letter: c.Letter, Word: c.Word,
				Weight: c.Weight.String(), Ground: text(c.Ground), Source: text(c.Source), Says: c.Says,
				RateWet: rateIn(c, measure.Liquid, "fl_oz_per_1000_sqft"), RateDry: rateIn(c, measure.Dry, "oz_per_1000_sqft"),
				Notes: append([]string{}, c.Notes...), Rows: referenceRows(c.Grounds),
			}
			cited = append(cited, row.Rows...)
			d.Cells = append(d.Cells, row)
		}
	}
	for _, r := range cited {
		d.cite(r.Source)
	}
	return d
}

func (d *Document) cite(id string) {
	s, ok := label.FindSource(id)
	if !ok || slices.ContainsFunc(d.Sources, func(r SourceRow) bool { return r.ID == id }) {
		return
	}
	d.Sources = append(d.Sources, SourceRow{s.ID, s.Institution, text(s.Title), text(s.URL), s.Weak, text(s.Seen)})
}

func (g *Grid) productRow(c *Column) ProductRow {
	out := ProductRow{Product: text(c.Product), Actives: []string{}, Where: append([]string{}, c.Where...), Residue: c.Residue, Mix: text(c.RateOf)}
	if c.Product == "" {
		out.Actives = append(out.Actives, c.Active)
		return out
	}
	e := g.b.Product(c.Product).Label
	out.Kind, out.Registration = text(e.Kind), text(e.Registration)
	for _, a := range e.Actives {
		out.Actives = append(out.Actives, a.Name)
	}
	return out
}

func referenceRows(list []Ground) []ReferenceRow {
	out := []ReferenceRow{}
	for _, g := range list {
		out = append(out, ReferenceRow{
			g.Active, g.Grass, g.Rating, g.Stage, g.Basis, text(g.Condition), text(g.Words), g.Source, g.Cite, g.Decides, text(g.Contradicted),
		})
	}
	return out
}

// rateIn is the rate of a cell in a unit; null if it is not known, or of another kind.
func rateIn(c Cell, k measure.Kind, unit string) *float64 {
	if !c.Rate.Known || c.Rate.V.Kind != k {
		return nil
	}
	f, err := c.Rate.V.In(unit)
	if err != nil {
		return nil
	}
	return &f
}

// text is null where there is none.
func text(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}
