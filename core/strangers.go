package core

import "example.com/tintline/core/measure"

// Stranger is liquid in a compartment that is not its own: of another compartment, or of what stood in this one before its
// last load.
type Stranger struct {
	From byte   // where it was drawn; 0: it was loaded straight into an applicator
	Mix  string // what stood there
	Now  measure.Volume
	// In is how much has come in all since the compartment was last loaded empty or rinsed.
	In measure.Volume
}

// Strangers lists what of a compartment's liquid is not its own, in the order in which the book came to know where it is
// from; empty where there is none. The sum begins anew with a load into an empty compartment, where what is left of
// the old batch counts, and when rinse water has run out of it.
func (s *state) Strangers(letter byte) []Stranger {
	c := s.plumbing.Compartment(letter)
	if c == nil {
		return nil
	}
	var out []Stranger
	for _, in := range c.StrangeIn {
		o := s.origins[in.Key]
		out = append(out, Stranger{From: o.Letter, Mix: o.Mix, Now: measure.Volume(c.Strange.Of(in.Key)), In: measure.Volume(in.N)})
	}
	return out
}
