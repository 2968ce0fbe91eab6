package past

import (
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/tally"
)

const moneyPrefix = "money/"

// MoneyKey is the key of what a day brought and took.
func MoneyKey(date string, opened uint64) []byte { return dayKey(moneyPrefix, date, opened) }

func encodeEarned(h head, e tally.Earned) []byte {
	w := &writer{b: make([]byte, 0, 64*len(e.Calls)+32)}
	w.head(h)
	w.int(e.Seconds)
	w.yes(e.Miles.Known)
	if e.Miles.Known {
		w.uint(math.Float64bits(e.Miles.V))
	}
	money := func(m core.Maybe[measure.Money]) {
		w.yes(m.Known)
		if m.Known {
			w.int(int64(m.V))
		}
	}
	w.count(len(e.Calls))
	for i := range e.Calls {
		c := &e.Calls[i]
		for _, s := range []string{c.Lawn, c.Kind, c.Cause} {
			w.text(s)
		}
		money(c.Price)
		w.ints(c.Site, c.Drive)
		w.count(len(c.With))
		for _, s := range c.With {
			w.text(s)
		}
		w.count(len(c.Used))
		for _, u := range c.Used {
			w.text(u.Product)
			w.uint(uint64(u.Amount.Kind))
			w.int(u.Amount.N)
			money(u.Cost)
		}
	}
	return w.b
}

func (r *reader) money() core.Maybe[measure.Money] {
	if !r.yes() {
		return core.Maybe[measure.Money]{}
	}
	return core.Known(measure.Money(r.int()))
}

func (r *reader) earned(h head) (tally.Earned, error) {
	e := tally.Earned{Date: h.date, Seconds: r.int()}
	if r.yes() {
		e.Miles = core.Known(math.Float64frombits(r.uint()))
	}
	for n := r.count(); n > 0 && r.err == nil; n-- {
		c := tally.Call{Lawn: r.text(), Kind: r.text(), Cause: r.text(), Price: r.money(), Site: r.int(), Drive: r.int()}
		for m := r.count(); m > 0 && r.err == nil; m-- {
			c.With = append(c.With, r.text())
		}
		for m := r.count(); m > 0 && r.err == nil; m-- {
			u := tally.Cost{Product: r.text()}
			u.Amount.Kind, u.Amount.N, u.Cost = r.kind(), r.int(), r.money()
			c.Used = append(c.Used, u)
		}
		e.Calls = append(e.Calls, c)
	}
	return e, r.end()
}

// Earned lists what each day brought and took, oldest first, both dates inclusive; empty dates have no bound. The book's own day lasts
// until now, where that is known.
func Earned(b *core.Book, read Reader, from, to string, now core.Maybe[core.Moment]) ([]tally.Earned, error) {
	var out []tally.Earned
	w := newWalk(b.Day(), moneyPrefix, from, to)
	err := w.days(read, func(h head, r *reader) error {
		e, err := r.earned(h)
		if err == nil {
			out = append(out, e)
		}
		return err
	})
	if err == nil && w.has(b.Day()) {
		out = append(out, tally.EarnedOn(b, now))
	}
	return out, err
}
