package grid

import (
	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// raise takes a rate if it is higher than the one there is: the strongest of the loads is judged.
func (c *Column) raise(r core.Maybe[measure.Rate], of string) {
	if r.Known && (!c.Rate.Known || r.V.V > c.Rate.V.V) {
		c.Rate, c.RateOf = r, of
	}
}

// Cell is what there is to say of a column on a row.
type Cell struct {
	Letter, Word   string
	Weight         check.Weight // the heaviest of all that is said
	Ruled          check.Weight // of label entry and reference alone
	Ground, Source string
	Says           string
	Do             string
	Notes          []string // the operator's own
	// Rate is at which it is judged, RateWords says that and where the rate comes from.
	Rate      core.Maybe[measure.Rate]
	RateWords string
	Grounds   []Ground // of the reference, the one that decides first
}

// Cell answers for a row and a column.
func (g *Grid) Cell(row, column int) Cell {
	r, c := &g.Rows[row], &g.Columns[column]
	if c.Product == "" {
		return g.ofActive(r, c)
	}
	p := g.b.Product(c.Product)
	rate, words := g.rateOn(p, c, r.Grass.Name)
	l := check.Look(g.b, p, r.Lawn, r.Zone, c.form, rate, g.at)
	out := Cell{
		Letter: l.Leave.Letter(), Word: l.Leave.Word(), Weight: l.Weight, Ruled: l.Ruled, Ground: l.Ground, Source: l.Source, Says: l.Says, Do: l.Do,
		Rate: rate, RateWords: words, Notes: l.Notes,
	}
	circumstances := check.CircumstancesOf(g.b, r.Zone, g.at)
	circumstances.Form = c.form
	first := l.Leave.Active
	for _, v := range p.Label.Verdicts(r.Grass.Name, circumstances, rate) {
		out.Grounds = append(out.Grounds, groundsOf(v.Name, v.Verdict, v.Name == first)...)
	}
	decidingFirst(out.Grounds)
	return out
}

// rateOn is the rate at which a product is judged on a grass, with words for it.
func (g *Grid) rateOn(p *core.Product, c *Column, grass string) (core.Maybe[measure.Rate], string) {
	if c.Rate.Known {
		words := c.Rate.V.Text()
		if c.RateOf != "" {
			words += ", as in " + c.RateOf
		}
		return c.Rate, words
	}
	if most := p.Label.MostFor(grass); most.Known {
		return most, most.V.Text() + ", the label's highest"
	}
	return core.Maybe[measure.Rate]{}, ""
}

// ofActive is what the reference says of an active, without any label.
func (g *Grid) ofActive(r *Row, c *Column) Cell {
	v := label.Tolerance(c.Active, r.Grass.Name, check.CircumstancesOf(g.b, r.Zone, g.at))
	out := Cell{Source: "", Says: c.Active + " on " + r.Grass.CommonName + ": " + v.Words(), Grounds: groundsOf(c.Active, v, true)}
	out.Letter, out.Word = VerdictSigns(v, r.Zone.Growth)
	if len(v.Rows) > 0 {
		out.Ground, out.Source = v.Rows[0].Basis, v.Rows[0].Cite()
	}
	decidingFirst(out.Grounds)
	return out
}

// VerdictSigns is what the reference says of an active, as a letter and a word. What was only recalled clears nothing.
func VerdictSigns(v label.Verdict, growth string) (letter, word string) {
	switch kind := v.Kind(growth); {
	case len(v.Rows) == 0:
		return "?", "not known"
	case kind == label.Injures:
		return "I", "injures"
	case kind == label.WrongState:
		return "D", "dormant only"
	case kind == label.Reduced:
		return "R", "reduced"
	case v.Rating == label.RatingUnknown && v.Recalled:
		return "?", "recalled"
	case v.Rating == label.RatingUnknown:
		return "?", "not known"
	}
	return "T", "tolerant"
}

// ActiveKeys explains the letters of the columns of actives.
func ActiveKeys() []label.LeaveKey {
	return []label.LeaveKey{
		{Letter: "I", Word: "injures", Words: "the reference calls the grass not tolerant"},
		{Letter: "D", Word: "dormant only", Words: "the reference knows it on dormant turf only"},
		{Letter: "R", Word: "reduced", Words: "at a reduced rate, or with passing injury"},
		{Letter: "?", Word: "not known", Words: "no source that was read says so"},
		{Letter: "T", Word: "tolerant", Words: "a source that was read calls it tolerant"},
	}
}
