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
	out, err := Earlier(*b.Day(), read, q)
	if err != nil {
		return nil, err
	}
	if newWalk(b.Day(), laidPrefix, q.From, q.To).has(b.Day()) {
		out = q.take(out, ofDay(b))
	}
	return out, nil
}

// Earlier lists what was laid before the book's own day. It needs no more of the book than that day, so that it may be asked
// beside a screen that goes on.
func Earlier(own core.Day, read Reader, q Query) ([]Laid, error) {
	var out []Laid
	var d day
	err := newWalk(&own, laidPrefix, q.From, q.To).days(read, func(h head, r *reader) error {
		if r.tables(h, &d); r.err != nil {
			return r.err
		}
		if !q.mayBeIn(&d.names) {
			return nil
		}
		if err := r.pieces(&d); err != nil {
			return err
		}
		out = q.take(out, d.laid)
		return nil
	})
	return out, err
}

// take adds those that are asked for.
func (q Query) take(out, list []Laid) []Laid {
	for i := range list {
		if l := &list[i]; q.wants(l) {
			c := *l
			c.Products = append([]Used(nil), l.Products...)
			out = append(out, c)
		}
	}
	return out
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
