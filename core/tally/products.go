package tally

import (
	"sort"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// Product is how much of a product went down, and on what area.
type Product struct {
	Product string
	Amount  measure.Amount
	Area    measure.Area // of the zones that got any
	key     int32        // the order in the book
}

// Per1000 is the amount for each 1,000 sq ft of the area that got any.
func (p Product) Per1000() core.Maybe[float64] {
	if p.Area == 0 {
		return core.Maybe[float64]{}
	}
	return core.Known(float64(p.Amount.N) / float64(p.Area) * float64(measure.ThousandSquareFeet))
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
			to = append(to, m)
		}
	}
	sort.SliceStable(to, func(i, j int) bool { return to[i].key < to[j].key })
	return to
}
