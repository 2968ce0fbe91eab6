package grid

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// Ground is a row of the reference in words.
type Ground struct {
	Active, Grass string
	Rating        string
	Stage, Basis  string
	Condition     string // empty: none that is known
	Words         string // what else the source says
	Source        string // its id
	Cite          string // institution and title; "recalled, not read" where nobody read one
	Read          string // how much of the source was read; empty: all that there is of it, or nothing is said
	Weak          bool
	Decides       bool
	// Contradicted is the source that says otherwise, of a recalled row that decides nothing.
	Contradicted string
}

// GroundOf is a row in words.
func GroundOf(r *label.Row) Ground {
	out := Ground{
		Active: r.Active, Grass: r.Grass, Rating: r.Rating.String(), Stage: strings.ReplaceAll(r.When.Stage, "_", "-"), Basis: r.Basis,
		Condition: conditionWords(&r.When), Words: r.Words, Source: r.Source, Cite: label.SourceWords(r.Source),
	}
	if s, ok := label.FindSource(r.Source); ok {
		out.Read, out.Weak = s.Seen, s.Weak
	}
	if r.Contradicted != "" {
		out.Contradicted = label.SourceWords(r.Contradicted)
	}
	return out
}

// groundsOf are the rows on which a verdict rests. Where two sources that were read differ both are there, and the first is
// the one that decides.
func groundsOf(active string, v label.Verdict, decides bool) []Ground {
	var out []Ground
	for i := range v.Rows {
		g := GroundOf(&v.Rows[i])
		if g.Active == "" {
			g.Active = active
		}
		g.Decides = decides && i == 0
		out = append(out, g)
	}
	return out
}

// decidingFirst moves the row that decides to the front; the others stay in their order.
func decidingFirst(list []Ground) {
	slices.SortStableFunc(list, func(a, b Ground) int {
		switch {
		case a.Decides == b.Decides:
			return 0
		case a.Decides:
			return -1
		}
		return 1
	})
}

// Sentence is a row in one sentence: rating, ground, condition, source.
func (g *Ground) Sentence() string {
	words := g.Active + ": " + g.Rating + " on " + g.Stage + " turf"
	if g.Condition != "" {
		words += ", " + g.Condition
	}
	if g.Words != "" {
		words += ": " + g.Words
	}
	words += " (" + g.From() + ")"
	if g.Contradicted != "" {
		words += "; decides nothing: " + g.Contradicted + " was read and says otherwise"
	}
	return words
}

// From is where a row comes from: "trial, State University, title of 2019".
func (g *Ground) From() string {
	switch g.Basis {
	case label.BasisRecalled:
		return g.Cite
	case label.BasisNone:
		return "no source was found"
	}
	words := g.Basis + ": " + g.Cite
	if g.Read != "" {
		words += "; read: " + g.Read
	}
	return words
}

var months = [...]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// conditionWords are the conditions under which a row holds.
func conditionWords(w *label.Conditions) string {
	var out []string
	add := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	switch {
	case w.MostRate.Known && w.MostIsLimit:
		add("at most %s of the active", perAcre(w.MostRate.V))
	case w.MostRate.Known:
		add("tried up to %s of the active", perAcre(w.MostRate.V))
	}
	if w.LeastRate.Known {
		add("from %s of the active on", perAcre(w.LeastRate.V))
	}
	if w.TempMax.Known {
		add("up to %g F", w.TempMax.V)
	}
	if w.TempMin.Known {
		add("from %g F", w.TempMin.V)
	}
	var names []string
	for _, m := range w.Months {
		names = append(names, months[m-1])
	}
	if len(names) > 0 {
		add("in %s", strings.Join(names, ", "))
	}
	if w.Cultivar != "" {
		add("cultivar %s", w.Cultivar)
	}
	for _, g := range w.NotIn {
		add("not while %s", label.GrowthWords(g))
	}
	if w.Form != "" {
		add("as %s", w.Form)
	}
	return strings.Join(append(out, w.Needs...), "; ")
}

// perAcre is a rate of an active in the unit of the tables.
func perAcre(r measure.Rate) string {
	lb, err := r.In("lb_per_acre")
	if err != nil {
		return r.Text()
	}
	return fmt.Sprintf("%.3g lb per acre", lb)
}
