package core

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// AmountAt is how much of a product stands at a place of the rig.
type AmountAt struct {
	Place  fluid.Place
	Amount measure.Amount
}

// Aboard is how much of a product the rig holds now, packages left out: all of it, and where. A product that the book
// does not know is nowhere.
func (s *state) Aboard(product string) (all measure.Amount, at []AmountAt) {
	key, known := s.ProductKey(product)
	if !known {
		return measure.Amount{}, nil
	}
	all.Kind = s.ProductByKey(key).Label.Form
	for _, a := range s.plumbing.Inside() {
		if n := a.Products.Of(key); n != 0 {
			all.N += n
			at = append(at, AmountAt{a.Place, measure.Amount{N: n, Kind: all.Kind}})
		}
	}
	return all, at
}
