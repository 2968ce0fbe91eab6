package yard

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// laying is a product and the rate at which a liquid lays it.
type laying struct {
	product string
	rate    measure.Rate
}

// OnGrass is whether a liquid may go on a grass, or on a zone of a lawn of today.
type OnGrass struct {
	Grass, Words string
	Lawn, Zone   string // empty: the grass alone
	Weight       check.Weight
	Says, Do     string // of the heaviest; empty where nothing is said
	Source       string
	Notes        []string // what else is said
}

// may tells whether nothing that is said is a stop.
func (g OnGrass) may() bool { return g.Weight < check.Stop }

// onZone holds products against one zone.
func onZone(b *core.Book, list []laying, lawn string, z core.Zone, at core.Moment) OnGrass {
	out := OnGrass{Grass: z.Grass, Words: label.GrassWords(z.Grass), Lawn: lawn, Zone: z.Name}
	for _, l := range list {
		p := b.Product(l.product)
		if p == nil || l.rate.V <= 0 {
			continue
		}
		look := check.LookLaid(b, p, lawn, z, l.rate, at)
		if look.Weight == check.None {
			continue
		}
		if look.Weight > out.Weight {
			if out.Says != "" {
				out.Notes = append(out.Notes, out.Says)
			}
			out.Weight, out.Says, out.Do, out.Source = look.Weight, look.Says, look.Do, look.Source
			continue
		}
		out.Notes = append(out.Notes, look.Says)
	}
	return out
}

// grasses lists the grasses of the book, those of today's lawns first.
func grasses(b *core.Book) []string {
	var out []string
	seen := map[string]bool{}
	add := func(l *core.Lawn) {
		if l == nil {
			return
		}
		for _, z := range l.Zones {
			if z.Grass != "" && !seen[z.Grass] {
				seen[z.Grass] = true
				out = append(out, z.Grass)
			}
		}
	}
	for _, name := range ahead(b) {
		add(b.Lawn(name))
	}
	for _, l := range b.Lawns() {
		add(l)
	}
	return out
}

// ahead lists the lawn of the visit now, and those that are planned, in order.
func ahead(b *core.Book) []string {
	var out []string
	if v := b.Day().Visiting(); v != nil {
		out = append(out, v.Lawn)
	}
	for _, v := range b.Day().Next() {
		out = append(out, v.Lawn)
	}
	return out
}

// onGrasses holds products against each grass of the book.
func onGrasses(b *core.Book, list []laying, at core.Moment) []OnGrass {
	var out []OnGrass
	for _, g := range grasses(b) {
		out = append(out, onZone(b, list, "", core.Zone{Grass: g}, at))
	}
	return out
}

// onLawns holds products against each zone of the lawns ahead, and the liquid that holds them against all rules of the gate that are about
// a mix.
func onLawns(b *core.Book, list []laying, liquid fluid.Liquid, with string, at core.Moment) []OnGrass {
	var out []OnGrass
	for _, name := range ahead(b) {
		l := b.Lawn(name)
		if l == nil {
			continue
		}
		for _, z := range l.Zones {
			g := onZone(b, list, name, z, at)
			if r, err := check.LiquidOn(b, liquid, "The blend", check.Intent{Lawn: name, Zones: []string{z.Name}, With: with, At: at}); err == nil {
				for _, f := range r.Findings {
					if f.Weight > g.Weight {
						g.Weight, g.Says, g.Do, g.Source = f.Weight, f.Says, f.Do, f.Source
					}
				}
			}
			out = append(out, g)
		}
	}
	return out
}

// verdict writes what was found into an answer: one line for each grass, and one for each zone ahead on which it may not go.
func (a *Answer) verdict(grasses, lawns []OnGrass) {
	var may, not []string
	for _, g := range grasses {
		if g.may() {
			may = append(may, g.Words)
		} else {
			not = append(not, g.Words)
		}
		if g.Weight > check.None {
			a.note(Finding{Weight: g.Weight, Says: g.Says + ".", Do: g.Do, Source: g.Source})
		}
	}
	switch {
	case len(grasses) == 0:
		a.Says = append(a.Says, "the book has no lawn yet, so no grass was asked about")
	case len(may) == 0:
		a.Says = append(a.Says, "it may go on no grass of the book")
	case len(not) == 0:
		a.Says = append(a.Says, "nothing that is entered keeps it off a grass of the book: "+and(may))
	default:
		a.Says = append(a.Says, "it may go on "+and(may), "not on "+and(not))
	}
	var lawnsNot []string
	seen, known := map[string]bool{}, map[string]bool{}
	for _, g := range grasses {
		known[g.Grass] = !g.may()
	}
	for _, l := range lawns {
		if !l.may() && !seen[l.Lawn] {
			seen[l.Lawn] = true
			lawnsNot = append(lawnsNot, l.Lawn)
		}
		if !l.may() && !known[l.Grass] { // not for its grass: that stands there already
			a.note(Finding{Weight: l.Weight, Says: l.Lawn + ": " + l.Says, Do: l.Do, Source: l.Source})
		}
	}
	if len(lawnsNot) > 0 {
		a.Says = append(a.Says, fmt.Sprintf("of the lawns ahead not on %s", and(lawnsNot)))
	}
	a.Facts["grasses"] = grassFacts(grasses)
	a.Facts["lawns_not"] = orEmpty(lawnsNot)
}

func grassFacts(list []OnGrass) []map[string]any {
	out := []map[string]any{}
	for _, g := range list {
		var says any
		if g.Says != "" {
			says = g.Says
		}
		out = append(out, map[string]any{"grass": g.Grass, "may": g.may(), "weight": g.Weight.String(), "says": says})
	}
	return out
}

// orEmpty is a list that is not null.
func orEmpty(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

// and joins words: "a, b and c".
func and(words []string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		out := words[0]
		for _, w := range words[1 : n-1] {
			out += ", " + w
		}
		return out + " and " + words[n-1]
	}
}
