package grid

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
)

// Told is a paragraph about a cell: what it is about in a word, and the words.
type Told struct{ About, Words string }

// Tell says all on which a cell stands: the label entry, what decides, the rows of the reference, the operator's own notes.
func (g *Grid) Tell(row, column int) []Told {
	r, c, cell := &g.Rows[row], &g.Columns[column], g.Cell(row, column)
	var out []Told
	add := func(about, format string, args ...any) {
		out = append(out, Told{about, fmt.Sprintf(format, args...)})
	}
	if c.Product != "" {
		p := g.b.Product(c.Product)
		add("label", "%s", labelWords(p, r.Grass.Name))
		if c.Residue {
			add("residue", "it stands here %s; as residue it is judged by its share of the lowest label rate", c.WhereWords())
		}
	}
	if cell.Ruled != check.None && cell.Do != "" {
		add(cell.Ruled.String(), "%s", cell.Do)
	}
	for _, n := range cell.Notes {
		add("own note", "%s", n)
	}
	if r.Lawn != "" {
		add("zone", "%s of %s: %s", r.Zone.Name, r.Lawn, ZoneWords(r.Zone))
	}
	if cell.RateWords != "" {
		add("judged at", "%s", cell.RateWords)
	}
	for i := range cell.Grounds {
		about := "reference"
		if cell.Grounds[i].Decides && cell.Grounds[i].Rating != label.RatingUnknown.String() {
			about = "decides"
		}
		add(about, "%s", cell.Grounds[i].Sentence())
	}
	if differ(cell.Grounds) {
		add("differ", "sources that were read differ; the stricter one decides")
	}
	for _, name := range g.silentOn(c, cell.Grounds) {
		add("reference", "%s: nothing is known on %s in this state", name, r.Grass.CommonName)
	}
	return out
}

// labelWords is what the operator's label entry says of a grass.
func labelWords(p *core.Product, grass string) string {
	number := "no registration number"
	if p.Label.Registration != "" {
		number = "no. " + p.Label.Registration
	}
	entry := "the label entry of " + p.ProductName + " (" + number + ") "
	if !p.Label.Lists(grass) {
		return entry + "does not list " + label.GrassWords(grass) + ": a stop, whatever the reference says. If the label in your hand lists it, enter that"
	}
	words := entry + "lists " + label.GrassWords(grass)
	low, high := p.Label.RatesFor(grass)
	return words + "; rates " + RangeWords(p.Label, low, high)
}

// RangeWords is a lowest and a highest rate, with what is blank or not on the label.
func RangeWords(e label.Entry, low, high core.Maybe[measure.Rate]) string {
	lacks := func(limit string) string {
		if e.NoneOnLabel(limit) {
			return "none on the label"
		}
		return "blank: not checked"
	}
	from, to := RateWords(low.V), RateWords(high.V)
	switch {
	case low.Known && high.Known && low.V == high.V:
		return to
	case low.Known && high.Known:
		figure, unit, _ := strings.Cut(from, " ")
		if strings.HasSuffix(to, " "+unit) {
			return figure + " to " + to
		}
		return from + " to " + to
	case low.Known:
		return "at least " + from + "; highest " + lacks(label.LimitRateHigh)
	case high.Known:
		return "at most " + to + "; lowest " + lacks(label.LimitRateLow)
	}
	return lacks(label.LimitRateHigh)
}

// longestFigure is how long a figure is that somebody would have read from a label.
const longestFigure = 6

// RateWords is a rate in the unit in which a label would give it, because it is held against the label in the hand:
// "0.25 oz per acre".
func RateWords(r measure.Rate) string {
	words := sheet.RateText(r)
	if figure, _, _ := strings.Cut(words, " "); len(figure) > longestFigure {
		return r.Text()
	}
	return strings.Replace(words, "1000 sqft", "1,000 sq ft", 1)
}

// ZoneWords is the grass of a zone, how it grows and since when, and its cultivar.
func ZoneWords(z core.Zone) string {
	words := label.GrassWords(z.Grass)
	if z.Cultivar != "" {
		words += ", cultivar " + z.Cultivar
	}
	return words + ", " + GrowthWords(z)
}

// GrowthWords is how a zone grows, and since when.
func GrowthWords(z core.Zone) string {
	words := label.GrowthWords(z.Growth)
	if z.Growth != "" && z.GrowthSince != "" {
		words += " since " + z.GrowthSince
	}
	return words
}

// differ tells whether rows that were read, of one active, do not say the same.
func differ(list []Ground) bool {
	for i := range list {
		for j := range i {
			a, b := &list[i], &list[j]
			if a.read() && b.read() && a.Active == b.Active && a.Rating != b.Rating {
				return true
			}
		}
	}
	return false
}

func (g *Ground) read() bool {
	return g.Basis != label.BasisRecalled && g.Basis != label.BasisNone && g.Contradicted == ""
}

// silentOn lists the actives of a column of which the reference has no row there.
func (g *Grid) silentOn(c *Column, have []Ground) []string {
	names := []string{c.Active}
	if c.Product != "" {
		names = nil
		for _, a := range g.b.Product(c.Product).Label.Actives {
			names = append(names, a.Name)
		}
	}
	var out []string
next:
	for _, n := range names {
		for i := range have {
			if isOf(have[i].Active, core.ActiveName(n)) || have[i].Active == n {
				continue next
			}
		}
		out = append(out, n)
	}
	return out
}
