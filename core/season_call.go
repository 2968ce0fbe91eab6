package core

import (
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// call is what went down in the call in which the plan would.
func (x *Season) call() []Went {
	var out []Went
	for _, w := range x.past {
		if len(x.plan) > 0 && w.SameCall(x.plan[0]) {
			out = append(out, w)
		}
	}
	return out
}

// NitrogenNow is the nitrogen of this call with what is planned: all of it, and what of it acts at once.
func (x *Season) NitrogenNow() (all, quick Maybe[measure.Rate]) {
	call := x.call()
	all = x.nitrogen(func(e *label.Entry) Maybe[float64] { return e.NitrogenPerProduct() }).sum(call, x.plan, "")
	return all, x.nitrogen(quickPerProduct).sum(call, x.plan, "")
}

// Earlier is what the part that got most has had of a product in this call, where the plan goes over it again: with the
// plan it is one dose. Parts that are laid one after the other are not gone over again.
func (x *Season) Earlier(k int32) measure.Rate {
	q := &question{x: x, counts: func(w *Went) bool { return w.Product == k && !x.goesOn(w) }}
	q.value = func(w *Went) Maybe[float64] { return Known(perMM2(w)) }
	return measure.Rate{V: q.total(x.call(), nil, "").rate, Kind: x.s.products[k].Now().Label.Form}
}

// Planned tells whether a product is to go down, and whether that is an application or only a trace.
func (x *Season) Planned(k int32) (dose measure.Rate, application bool) {
	form := x.s.products[k].Now().Label.Form
	for i := range x.plan {
		if w := &x.plan[i]; w.Product == k && w.Peak > 0 {
			return w.Dose(form), x.applied(w)
		}
	}
	return measure.Rate{Kind: form}, false
}

// LastActive is when an active last went down before this call, in an application of another product than the one named;
// -1: of any.
func (x *Season) LastActive(active string, but int32) (date, product string, days int, found bool) {
	for i := len(x.past) - 1; i >= 0; i-- {
		w := &x.past[i]
		if w.Product == but || !x.applied(w) || x.goesOn(w) || (len(x.plan) > 0 && w.SameCall(x.plan[0])) {
			continue
		}
		if _, has := x.contentOf(w, active); has {
			return w.Date, x.s.products[w.Product].Name, x.day - dayNumber(w.Date), true
		}
	}
	return "", "", 0, false
}

// After is the date so many days after another; a part of a day counts as one.
func After(date string, days float64) string { return dateOf(dayNumber(date) + wholeDays(days)) }
