package tally

import (
	"cmp"
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// Product is how much of a product went down, and on what area.
type Product struct {
	Product string
	Amount  measure.Amount
	Area    measure.Area // that got any of it, be it a trace
	Key     int32        // the order in the book
}

// Per1000 is the amount for each 1,000 sq ft of the area.
func (p Product) Per1000() core.Maybe[float64] {
	if p.Area == 0 {
		return core.Maybe[float64]{}
	}
	return core.Known(p.rate() * float64(measure.ThousandSquareFeet))
}

func (p Product) rate() float64 { return float64(p.Amount.N) / float64(p.Area) }

// trace is the share of the strongest rate on any zone under which a zone got no more than a trace.
const trace = 0.01

// Meant lists the products with the area that got more than a trace: what the last of another mix left in
// the hose must not make an ordinary rate look like half of it.
func (t *Tally) Meant() []Product {
	out := append([]Product(nil), t.Products...)
	for i := range out {
		strongest, area := 0.0, measure.Area(0)
		t.eachZone(out[i], func(z Product) { strongest = max(strongest, z.rate()) })
		t.eachZone(out[i], func(z Product) {
			if z.rate() >= trace*strongest {
				area += z.Area
			}
		})
		out[i].Area = area
	}
	return out
}

// eachZone visits what each zone got of a product.
func (t *Tally) eachZone(of Product, f func(Product)) {
	for _, l := range t.Lawns {
		for _, z := range l.Zones {
			for _, p := range z.Products {
				if p.Product == of.Product && p.Amount.Kind == of.Amount.Kind && p.Area > 0 {
					f(p)
				}
			}
		}
	}
}

// productsOf lists what was laid on a zone.
func productsOf(b *core.Book, l *core.Laid) []Product {
	var out []Product
	for _, h := range l.Holds {
		p := b.ProductByKey(h.Key)
		out = append(out, Product{p.ProductName, measure.Amount{N: h.N, Kind: p.Label.Form}, l.Area, h.Key})
	}
	return out
}

func (t *Tally) takeProducts(b *core.Book, l *core.Laid) {
	t.Products = addProducts(t.Products, productsOf(b, l))
}

// addProducts adds the rows of more to those of to, in the order of the book.
func addProducts(to, more []Product) []Product {
	grown := false
	for _, m := range more {
		found := false
		for i := range to {
			if to[i].Product == m.Product && to[i].Amount.Kind == m.Amount.Kind {
				to[i].Amount.N += m.Amount.N
				to[i].Area += m.Area
				found = true
				break
			}
		}
		if !found {
			to, grown = append(to, m), true
		}
	}
	if grown {
		slices.SortStableFunc(to, func(a, b Product) int { return cmp.Compare(a.Key, b.Key) })
	}
	return to
}
