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
	if err = lawns(b, read, from, to, &t); err != nil {
		return tally.Tally{}, false, err
	}
	if w.has(b.Day()) {
		own := tally.Close(b, now)
		t.AddDay(&own)
	}
	return t, t.From != "", nil
}

// Beside is the date of the day before another one, or of the one behind it, that was opened; empty: there is none.
func Beside(b *core.Book, read Reader, date string, before bool) (string, error) {
	found := ""
	take := func(d string) {
		switch {
		case before && d < date:
			found = max(found, d)
		case !before && d > date && (found == "" || d < found):
			found = d
		}
	}
	err := newWalk(b.Day(), sumsPrefix, "", "").days(read, func(h head, _ *reader) error {
		take(h.date)
		return nil
	})
	if d := b.Day(); d.Seq != 0 {
		take(d.Date)
	}
	return found, err
}

// lawns adds up what was laid before the book's own day: on each lawn, in the order in which they were treated, with each applicator and in
// each hour.
func lawns(b *core.Book, read Reader, from, to string, t *tally.Tally) error {
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
				n, at[l.Lawn] = len(t.Lawns), len(t.Lawns)
				t.Lawns = append(t.Lawns, tally.Lawn{Lawn: l.Lawn})
			}
			z := tally.Zone{Zone: l.Zone, Grass: l.Grass, Volume: l.Volume, Area: l.Treated, Products: products}
			if l.Dry {
				z.Mass = l.spread()
			}
			t.Lawns[n].Take(z)
			t.TakeWork(l.Applicator, l.At, tally.Worked{Volume: z.Volume, Mass: z.Mass, Area: z.Area})
		}
		return nil
	})
	return err
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
		own.Lawns, own.With, own.In = nil, nil, nil
		out.AddDay(&own)
	}
	return out, nil
}
