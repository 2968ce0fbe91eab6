package past

import (
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// Query says what of all that was laid is asked for; what is empty has no bound. Dates are inclusive.
type Query struct{ Lawn, Product, From, To string }

// Find lists what was laid, oldest first, the book's own day included. Of a product it lists each spraying and spreading that
// held any, be it a trace, with all that was in it.
func Find(b *core.Book, read Reader, q Query) ([]Laid, error) {
	var out []Laid
	var d day
	take := func(list []Laid) {
		for i := range list {
			if l := &list[i]; q.wants(l) {
				c := *l
				c.Products = append([]Used(nil), l.Products...)
				out = append(out, c)
			}
		}
	}
	w := newWalk(b, laidPrefix, q.From, q.To)
	err := w.days(read, func(h head, r *reader) error {
		if r.tables(h, &d); r.err != nil {
			return r.err
		}
		if !q.mayBeIn(&d.names) {
			return nil
		}
		if err := r.pieces(&d); err != nil {
			return err
		}
		take(d.laid)
		return nil
	})
	if err != nil {
		return nil, err
	}
	if w.has(b.Day()) {
		take(ofDay(b))
	}
	return out, nil
}

func (q Query) mayBeIn(t *tables) bool {
	return (q.Lawn == "" || slices.Contains(t.lawns, q.Lawn)) &&
		(q.Product == "" || slices.ContainsFunc(t.products, func(u Used) bool { return u.Product == q.Product }))
}

func (q Query) wants(l *Laid) bool {
	if q.Lawn != "" && l.Lawn != q.Lawn {
		return false
	}
	_, has := l.of(q.Product)
	return q.Product == "" || has
}

// spread is the weight of what was spread.
func (l *Laid) spread() measure.Mass {
	var n int64
	for _, u := range l.Products {
		n += u.Amount.N
	}
	return measure.Mass(n)
}
