package core

import (
	"strings"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// hopperBatch is the key of the mix in a hopper; no tank's name holds a slash.
func hopperBatch(applicator string) string { return "hopper/" + applicator }

// MixInHopper names the mix that was last put into an empty hopper, also when it has run empty since; empty if none
// was named then.
func (s *state) MixInHopper(applicator string) string { return s.batches[hopperBatch(applicator)] }

// Spreads tells whether dry product can be spread with the applicator: it has a hopper, or is a spreader that is
// filled from the bag.
func (a *Applicator) Spreads() bool { return a.Type == Spreader || a.Hopper > 0 }

// Sprays tells whether liquid can be laid with the applicator.
func (a *Applicator) Sprays() bool { return a.Type != Spreader }

// InHopper names the product that a hopper holds; several tells that it holds a mix of dry products, which goes down
// under no product's name.
func (s *state) InHopper(applicator string) (product string, several bool) {
	h := s.plumbing.Hopper(applicator)
	if h == nil || len(h.Holds) == 0 {
		return "", false
	}
	if len(h.Holds) > 1 {
		return "", true
	}
	return s.products[h.Holds[0].Key].Name, false
}

// hopperWords is "12.0 lb of lawn food", or a mix of two.
func (s *state) hopperWords(h *fluid.Hopper) string {
	var names []string
	for _, q := range h.Holds {
		names = append(names, s.products[q.Key].Name)
	}
	return measure.DryAmount(h.Mass()).Text() + " of " + strings.Join(names, " and ")
}

// loadsHopper tells whether a load goes into a hopper: dry product by weight, without any liquid.
func (s *state) loadsHopper(f *Loaded) *fluid.Hopper {
	if f.Volume != 0 {
		return nil
	}
	return s.plumbing.Hopper(f.Into)
}

// HopperLoad is the load of so much of a dry product, or of a mix of dry products in its proportions, into a hopper.
// Without a name it is what the hopper holds already.
func (s *state) HopperLoad(into, what string, m measure.Mass) (*Loaded, error) {
	f := &Loaded{Into: into}
	if what == "" {
		h := s.plumbing.Hopper(into)
		if h == nil || len(h.Holds) == 0 {
			return nil, refuse("Name the product.", "What goes into %s is not said.", into)
		}
		f.Mix = s.MixInHopper(into)
		for _, q := range h.Mixed(m) {
			f.Parts = append(f.Parts, LoadPart{s.products[q.Key].Name, measure.Amount{N: q.N, Kind: measure.Dry}})
		}
		return f, nil
	}
	if s.Product(what) != nil {
		f.Parts = []LoadPart{{what, measure.DryAmount(m)}}
		return f, nil
	}
	mix := s.Mix(what)
	if mix == nil {
		return nil, refuse(s.mixesHint(), "%q is neither a product nor a mix of the book.", what)
	}
	f.Mix = what
	rates := make([]float64, len(mix.Parts))
	for i, p := range mix.Parts {
		if p.Rate.Kind != measure.Dry {
			return nil, refuse("Load a mix of dry products.", "%s holds %s, which is liquid.", what, p.Product)
		}
		rates[i] = p.Rate.V
	}
	for i, n := range measure.Apportion(weightsOf(rates), int64(m)) {
		f.Parts = append(f.Parts, LoadPart{mix.Parts[i].Product, measure.Amount{N: n, Kind: measure.Dry}})
	}
	return f, nil
}

// HopperLoadOf is a load of a hopper as it was, with another weight in the same proportions.
func (s *state) HopperLoadOf(f *Loaded, m measure.Mass) *Loaded {
	c := *f
	c.Parts = append([]LoadPart(nil), f.Parts...)
	weights := make([]int64, len(c.Parts))
	for i, p := range c.Parts {
		weights[i] = p.Amount.N
	}
	for i, n := range measure.Apportion(weights, int64(m)) {
		c.Parts[i].Amount = measure.Amount{N: n, Kind: measure.Dry}
	}
	return &c
}

// HopperCovers is the area that what is left in a hopper covers at the rate that is meant; false where none is known.
func (s *state) HopperCovers(applicator string) (measure.Area, bool) {
	h := s.plumbing.Hopper(applicator)
	product, several := s.InHopper(applicator)
	if h == nil || (product == "" && !several) {
		return 0, false
	}
	rate, ok := s.DryRate(applicator, product)
	return rate.AreaOf(measure.DryAmount(h.Mass())), ok
}

// weightsOf turns rates into whole weights of nine digits.
func weightsOf(rates []float64) []int64 {
	most := 0.0
	for _, r := range rates {
		most = max(most, r)
	}
	out := make([]int64, len(rates))
	for i, r := range rates {
		if most > 0 {
			out[i] = int64(r / most * 1e9)
		}
	}
	return out
}

// DryRate is how much of a product an applicator lays on an area if nothing else is said: what a test of it with that product
// showed; else what its setting gives, where the rig says that by weight; else the rate in the mix in its hopper; else that of a label entry whose lowest and
// highest rates are the same. Without a product it is the rate of the mix in the hopper.
func (s *state) DryRate(applicator, product string) (measure.Rate, bool) {
	if r := s.rateOf(applicator, s.TipOn(applicator), product); r != nil && r.Delivery.Kind == measure.Dry {
		return r.Delivery, true
	}
	a := s.Applicator(applicator)
	if a != nil && !a.Sprays() && a.Delivery.Kind == measure.Dry && a.Delivery.V > 0 {
		return a.Delivery, true
	}
	return s.saidDryRate(applicator, product)
}

// saidDryRate is the rate of a product by the mix in the hopper, else by its label.
func (s *state) saidDryRate(applicator, product string) (measure.Rate, bool) {
	if r, ok := s.MeantDryRate(applicator, product); ok {
		return r, true
	}
	if p := s.Product(product); p != nil {
		if e := p.Label; e.Form == measure.Dry && e.HasRateLow && e.HasRateHigh && e.RateLow == e.RateHigh {
			return e.RateHigh, true
		}
	}
	return measure.Rate{}, false
}

// MeantDryRate is the rate of a product in the mix in a hopper, or of that whole mix where no product is named.
func (s *state) MeantDryRate(applicator, product string) (measure.Rate, bool) {
	mix := s.Mix(s.MixInHopper(applicator))
	if mix == nil {
		return measure.Rate{}, false
	}
	sum := measure.Rate{Kind: measure.Dry}
	for _, p := range mix.Parts {
		if p.Rate.Kind == measure.Dry && (product == "" || p.Product == product) {
			sum.V += p.Rate.V
		}
	}
	return sum, sum.V > 0
}
