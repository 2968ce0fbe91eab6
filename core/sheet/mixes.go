package sheet

import (
	"slices"

	"example.com/tintline/core"
)

var mixColumns = []column{
	{Column: Column{Name: "mix", Words: "what the mix is called; rows with the same name are one mix", Example: "example weed mix", Required: true}, reader: name("mix")},
	{Column: Column{Name: "product", Words: "a product in it, as it is called in the book", Example: "example mesotrione 4", Required: true}, reader: name("product")},
	{Column: Column{Name: "rate", Words: "how much of the product goes on an area", Example: "5 fl oz per acre", Required: true}, reader: rate()},
	{Column: Column{Name: "target", Words: "the pest that the product is for", Example: "crabgrass"}, reader: text()},
	{Column: Column{Name: "base", Words: "the mix that it is made from, on one of its rows: the rows then say what is added or differs", Example: "example cool weed mix"}, reader: name("mix")},
	{Column: Column{Name: "for", Words: "for which visits it is meant, on one of its rows; empty: every one. Once a year goes by what it has beyond its base", Example: core.FirstVisits}, reader: oneOf(core.MixVisits()...)},
}

// readMixes makes a mix of the rows that name it, its products in their order.
func readMixes(s *reading) {
	at := map[string]int{}
	products := map[string]named{}
	var known []string
	for _, h := range s.book.Products() {
		known = append(known, h.Name)
	}
	for _, r := range s.rows {
		ok := r.sound("")
		mix, product := value[string](r, "mix"), value[string](r, "product")
		base := value[string](r, "base")
		typed, readable := get[typedRate](r, "rate")
		if !ok || mix == "" || product == "" || !r.known("product", "product", product, known) || !readable {
			continue
		}
		part := core.MixPart{Product: product, Target: value[string](r, "target")}
		if !s.has("target") {
			part.Target = targetBefore(s.book, mix, product)
		}
		var err error
		if part.Rate, err = typed.of(s.book.Product(product).Label.Form); err != nil {
			r.bad("rate", err)
			continue
		}
		if err := core.CheckMixRate(mix, part, s.book.Product(product)); err != nil {
			t := trouble("rate", "", err)
			t.Line = r.line
			r.add(t)
			continue
		}
		i, there := at[mix]
		if !there {
			i, at[mix], products[mix] = len(s.facts), len(s.facts), named{}
			f := &core.Mix{MixName: mix}
			if old := s.book.Mix(mix); old != nil && !s.has("for") {
				f.For = old.For
			}
			s.facts = append(s.facts, made{fact: f, cut: func(n int) core.Fact {
				c := *f
				c.Parts = f.Parts[:n]
				return &c
			}})
		}
		f := s.facts[i].fact.(*core.Mix)
		r.one("base", base, &f.Base, mix)
		if s.has("for") {
			r.one("for", value[string](r, "for"), &f.For, mix)
		}
		if products[mix].once(r, "product", "product of "+mix, product) {
			f.Parts = append(f.Parts, part)
			s.facts[i].rows = append(s.facts[i].rows, r)
		}
	}
	basesStandBefore(s)
}

// targetBefore is the pest that a product of a mix was for before.
func targetBefore(b *core.Book, mix, product string) string {
	if m := b.Mix(mix); m != nil {
		for _, p := range m.Parts {
			if p.Product == product {
				return p.Target
			}
		}
	}
	return ""
}

// basesStandBefore looks for the mixes that others are made from: in the book, or further up in the file.
func basesStandBefore(s *reading) {
	var before, all []string
	for _, m := range s.book.Mixes() {
		before = append(before, m.MixName)
	}
	for _, m := range s.facts {
		all = append(all, m.fact.(*core.Mix).MixName)
	}
	for i, m := range s.facts {
		f := m.fact.(*core.Mix)
		r := m.rows[0]
		for _, other := range m.rows {
			if other.cells["base"] != "" {
				r = other
				break
			}
		}
		switch {
		case f.Base == "":
		case !slices.Contains(before, f.Base) && slices.Contains(all[i:], f.Base):
			r.bad("base", faultf("The mix %s is made from %s, which does not stand above it.", quote(f.MixName), quote(f.Base)))
		default:
			r.known("base", "mix", f.Base, before)
		}
		before = append(before, f.MixName)
	}
}
