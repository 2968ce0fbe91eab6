package past

import (
	"cmp"
	"slices"

	"example.com/tintline/core/measure"
)

// Year is what went down in a calendar year, by the dates of the days.
type Year struct {
	Name     string
	Products []Spent // in the order of the book
}

// Spent is how much of a product went down, and in how many entries.
type Spent struct {
	Product string
	Amount  measure.Amount
	Times   int
	key     int32
	last    uint64 // the last entry counted
}

// Years adds up by year what was found, the last one first; of the product that was asked for alone, if one was.
func (q Query) Years(list []Laid) []Year {
	var out []Year
	for i := range list {
		l := &list[i]
		name := l.Date[:min(len("2006"), len(l.Date))]
		if n := len(out); n == 0 || out[n-1].Name != name {
			out = append(out, Year{Name: name})
		}
		y := &out[len(out)-1]
		for _, u := range l.Products {
			if q.Product == "" || u.Product == q.Product {
				y.add(u, l.Seq)
			}
		}
	}
	for i := range out {
		slices.SortStableFunc(out[i].Products, func(a, b Spent) int { return cmp.Compare(a.key, b.key) })
	}
	slices.Reverse(out)
	return out
}

func (y *Year) add(u Used, seq uint64) {
	at := slices.IndexFunc(y.Products, func(s Spent) bool { return s.Product == u.Product && s.Amount.Kind == u.Amount.Kind })
	if at < 0 {
		at = len(y.Products)
		y.Products = append(y.Products, Spent{Product: u.Product, Amount: measure.Amount{Kind: u.Amount.Kind}, key: u.Key})
	}
	s := &y.Products[at]
	s.Amount.N += u.Amount.N
	if s.last != seq { // one entry lays on several zones
		s.last = seq
		s.Times++
	}
}
