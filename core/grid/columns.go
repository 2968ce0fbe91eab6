package grid

import (
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
)

// columns lists the products of the current loads, those that stand there as residue alone last. Without loads it is all
// products, without products the actives of the reference that it rates.
func columns(b *core.Book) (of string, out []Column) {
	if out = loaded(b); len(out) > 0 {
		return OfLoads, out
	}
	for i := range b.Products() {
		out = append(out, Column{Product: b.Products()[i].Name})
	}
	if len(out) > 0 {
		return OfProducts, out
	}
	for _, name := range label.RatedActives() {
		out = append(out, Column{Active: name})
	}
	return OfReference, out
}

// gatherer collects columns by the key of their product.
type gatherer struct {
	b     *core.Book
	of    map[int32]*Column
	whole map[int32]bool // it is part of the mix somewhere
}

func loaded(b *core.Book) []Column {
	g := &gatherer{b, map[int32]*Column{}, map[int32]bool{}}
	p := b.Plumbing()
	for _, c := range p.Compartments {
		g.tank(c.Liquid.Holds, string(rune(c.Letter)), "compartment "+string(rune(c.Letter)))
	}
	for _, t := range p.Tanks {
		g.tank(t.Liquid.Holds, t.Name, "tank of "+t.Name)
	}
	for _, h := range p.Hoppers {
		for _, q := range h.Holds {
			c := g.column(q.Key, "hopper of "+h.Name, label.FormGranule)
			g.whole[q.Key] = true
			if r, known := b.DryRate(h.Name, c.Product); known {
				c.raise(core.Known(r), b.MixInHopper(h.Name))
			}
		}
	}
	for _, plan := range b.LoadPlans() {
		for _, part := range plan.Parts {
			if k, known := b.ProductKey(part.Product); known {
				form := label.FormSpray
				if plan.Volume == 0 {
					form = label.FormGranule
				}
				c := g.column(k, "to load in "+plan.Into, form)
				g.whole[k] = true
				c.meant(b.Mix(plan.Mix))
			}
		}
	}
	var out, residue []Column
	for k := range b.Products() {
		if c := g.of[int32(k)]; c != nil && g.whole[int32(k)] {
			out = append(out, *c)
		} else if c != nil {
			c.Residue = true
			residue = append(residue, *c)
		}
	}
	return append(out, residue...)
}

// tank adds what a tank holds. What is no part of the mix that was loaded is residue there.
func (g *gatherer) tank(holds fluid.Parts, tank, where string) {
	mix := g.b.Mix(g.b.MixIn(tank))
	for _, q := range holds {
		if q.N <= 0 {
			continue
		}
		name := g.b.ProductByKey(q.Key).ProductName
		if mix != nil {
			if _, in := mix.Rate(name); !in {
				if g.of[q.Key] == nil {
					g.column(q.Key, "", label.FormSpray)
				}
				continue
			}
		}
		c := g.column(q.Key, where, label.FormSpray)
		g.whole[q.Key] = true
		c.meant(mix)
	}
}

func (g *gatherer) column(k int32, where, form string) *Column {
	c := g.of[k]
	if c == nil {
		c = &Column{Product: g.b.ProductByKey(k).ProductName, form: form}
		g.of[k] = c
	}
	if c.form != form {
		c.form = "" // it is sprayed here and spread there
	}
	if where != "" && !slices.Contains(c.Where, where) {
		c.Where = append(c.Where, where)
	}
	return c
}

// meant takes the rate of a mix.
func (c *Column) meant(mix *core.Mix) {
	if mix == nil {
		return
	}
	if r, in := mix.Rate(c.Product); in {
		c.raise(core.Known(r), mix.MixName)
	}
}
