package past

import (
	"example.com/tintline/core"
	"example.com/tintline/core/tally"
)

// Sums are what the days from one date to another come to, both inclusive; empty dates have no bound. It is what tally.Span
// gives. False: no day was opened in that time. The book's own day lasts until now, where that is known.
func Sums(b *core.Book, read Reader, from, to string, now core.Maybe[core.Moment]) (tally.Tally, bool, error) {
	var t, one tally.Tally
	w := newWalk(b.Day(), sumsPrefix, from, to)
	err := w.days(read, func(h head, r *reader) error {
		if err := r.sums(h, &one); err != nil {
			return err
		}
		t.AddDay(&one)
		return nil
	})
	if err != nil {
		return tally.Tally{}, false, err
	}
	if t.Lawns, err = lawns(b, read, from, to); err != nil {
		return tally.Tally{}, false, err
	}
	if w.has(b.Day()) {
		own := tally.Close(b, now)
		t.AddDay(&own)
	}
	return t, t.From != "", nil
}

// lawns adds up what was laid on each lawn before the book's own day, in the order in which they were treated.
func lawns(b *core.Book, read Reader, from, to string) ([]tally.Lawn, error) {
	var out []tally.Lawn
	at := map[string]int{}
	var d day
	var products []tally.Product
	err := newWalk(b.Day(), laidPrefix, from, to).days(read, func(h head, r *reader) error {
		if r.tables(h, &d); r.err != nil {
			return r.err
		}
		if err := r.pieces(&d); err != nil {
			return err
		}
		for i := range d.laid {
			l := &d.laid[i]
			products = products[:0]
			for _, u := range l.Products {
				products = append(products, tally.Product{Product: u.Product, Amount: u.Amount, Area: l.Area, Key: u.Key})
			}
			n, ok := at[l.Lawn]
			if !ok {
				n, at[l.Lawn] = len(out), len(out)
				out = append(out, tally.Lawn{Lawn: l.Lawn})
			}
			z := tally.Zone{Zone: l.Zone, Grass: l.Grass, Volume: l.Volume, Area: l.Treated, Products: products}
			if l.Dry {
				z.Mass = l.spread()
			}
			out[n].Take(z)
		}
		return nil
	})
	return out, err
}

// By adds up by year or by month, without the lawns; what Sums gives for the same dates is the same otherwise. The book's own
// day is in it.
func By(b *core.Book, read Reader, by tally.By, from, to string, now core.Maybe[core.Moment]) (tally.Periods, error) {
	out := tally.Periods{By: by}
	var one tally.Tally
	w := newWalk(b.Day(), sumsPrefix, from, to)
	err := w.days(read, func(h head, r *reader) error {
		if err := r.sums(h, &one); err != nil {
			return err
		}
		out.AddDay(&one)
		return nil
	})
	if err != nil {
		return tally.Periods{}, err
	}
	if w.has(b.Day()) {
		own := tally.Close(b, now)
		own.Lawns = nil
		out.AddDay(&own)
	}
	return out, nil
}
