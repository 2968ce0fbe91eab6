package core

import "example.com/tintline/core/measure"

// MostMore is the most of a product that label entries still allow on a zone in the year, as one more application of its own: by
// the most of the product and of each of its actives, in whatever product it went down, and by how often. By is the name of
// the label entry that allows least. It is unknown where none has a limit. Where a sum is not known, it is at most this.
func (x *Season) MostMore(k int32) (most Maybe[measure.Rate], by string) {
	e := &x.s.products[k].Now().Label
	least := func(left float64, of string) {
		if !most.Known || left < most.V.V {
			most, by = Known(measure.Rate{V: left, Kind: e.Form}), of
		}
	}
	own := x.Product(k)
	if own.MostTimes.Known && float64(own.Times+1) > own.MostTimes.V {
		least(0, own.LimitOf)
	}
	if own.Left.Known {
		least(own.Left.V.V, own.LimitOf)
	}
	for _, c := range x.contentsOf(e) {
		per, _ := contentIn(x.contentsOf(e), c.active)
		if !per.Known || per.V <= 0 {
			continue
		}
		for _, l := range append([]SeasonLine{x.Active(c.active, k)}, x.Elsewhere(c.active, k)...) {
			if l.Left.Known {
				least(l.Left.V.V/per.V, l.LimitOf)
			}
		}
	}
	return most, by
}

// Products are the lines of the products alone, in the order in which they were entered.
func (x *Season) Products() []SeasonLine {
	var out []SeasonLine
	for _, k := range x.keys() {
		out = append(out, x.Product(k))
	}
	return out
}

// KeptFrom is the first date of which the book keeps piece by piece what was laid: the first of the year before its day's.
func (s *state) KeptFrom() string { return keptFrom(s.day.Date) }
