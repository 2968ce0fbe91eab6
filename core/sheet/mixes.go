package sheet

import "example.com/tintline/core"

var mixColumns = []column{
	{Column: Column{Name: "mix", Words: "what the mix is called; rows with the same name are one mix", Example: "example weed mix", Required: true}, reader: name("mix")},
	{Column: Column{Name: "product", Words: "a product in it, as it is called in the book", Example: "example mesotrione 4", Required: true}, reader: name("product")},
	{Column: Column{Name: "rate", Words: "how much of the product goes on an area", Example: "5 fl oz per acre", Required: true}, reader: rate()},
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
		typed, readable := get[typedRate](r, "rate")
		if !ok || mix == "" || product == "" || !r.known("product", "product", product, known) || !readable {
			continue
		}
		part := core.MixPart{Product: product}
		var err error
		if part.Rate, err = typed.of(s.book.Product(product).Label.Form); err != nil {
			r.bad("rate", err)
			continue
		}
		i, there := at[mix]
		if !there {
			i, at[mix], products[mix] = len(s.facts), len(s.facts), named{}
			f := &core.Mix{MixName: mix}
			s.facts = append(s.facts, made{fact: f, cut: func(n int) core.Fact {
				c := *f
				c.Parts = f.Parts[:n]
				return &c
			}})
		}
		if products[mix].once(r, "product", "product of "+mix, product) {
			f := s.facts[i].fact.(*core.Mix)
			f.Parts = append(f.Parts, part)
			s.facts[i].rows = append(s.facts[i].rows, r)
		}
	}
}
