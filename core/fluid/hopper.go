package fluid

import "example.com/tintline/core/measure"

// HopperFlows are the day's movements of one hopper. What is left is always Start + Loaded - Spread + Other.
type HopperFlows struct{ Start, Loaded, Spread, Other measure.Mass }

// Left is what the flows add up to.
func (f HopperFlows) Left() measure.Mass { return f.Start + f.Loaded - f.Spread + f.Other }

// Hopper holds the dry product of a spreader, or of a ride-on machine that also spreads. Its place is that of its
// applicator; where that has a tank too, one account holds both.
type Hopper struct {
	Name     string
	Capacity measure.Mass
	Holds    Parts
	Flows    HopperFlows
}

// Mass is all that is in the hopper.
func (h *Hopper) Mass() measure.Mass { return measure.Mass(h.Holds.Sum()) }

// Room is what still goes in.
func (h *Hopper) Room() measure.Mass { return max(h.Capacity-h.Mass(), 0) }

// StartDay begins new flows from what is there.
func (h *Hopper) StartDay() { h.Flows = HopperFlows{Start: h.Mass()} }

// Hopper finds an applicator's hopper, nil if it has none.
func (p *Plumbing) Hopper(applicator string) *Hopper {
	for i := range p.Hoppers {
		if p.Hoppers[i].Name == applicator {
			return &p.Hoppers[i]
		}
	}
	return nil
}

// Pour puts dry product from its packages into a hopper.
func (p *Plumbing) Pour(h *Hopper, dry Parts, packages map[int32]Place) {
	for _, q := range dry {
		p.Outside.Take(packages[q.Key], Liquid{Holds: Parts{q}})
	}
	h.Holds = h.Holds.Plus(dry)
	h.Flows.Loaded += measure.Mass(dry.Sum())
}

// Mixed is so much of what a hopper holds, in its proportions to the unit; nothing of an empty one.
func (h *Hopper) Mixed(m measure.Mass) Parts {
	if len(h.Holds) == 0 || m <= 0 {
		return nil
	}
	weights := make([]int64, len(h.Holds))
	for i, q := range h.Holds {
		weights[i] = q.N
	}
	var out Parts
	for i, n := range measure.Apportion(weights, int64(m)) {
		out = out.Plus(Parts{{h.Holds[i].Key, n}})
	}
	return out
}

// Sow takes m of a product out of a hopper, as far as that holds it, and the rest from the product's package: the bag
// was poured on the way. The hopper may be nil.
func (p *Plumbing) Sow(h *Hopper, product int32, m measure.Mass, bag Place) Parts {
	rest := m
	if h != nil {
		got := min(m, measure.Mass(max(h.Holds.Of(product), 0)))
		h.Holds = h.Holds.Minus(Parts{{product, int64(got)}})
		h.Flows.Spread += got
		rest -= got
	}
	if rest > 0 {
		p.Outside.Take(bag, Liquid{Holds: Parts{{product, int64(rest)}}})
	}
	return Parts(nil).Plus(Parts{{product, int64(m)}})
}

// SowMixed takes m of all that a hopper holds, in its proportions; what it cannot give is taken from the unexplained.
func (p *Plumbing) SowMixed(h *Hopper, m measure.Mass) Parts {
	got := min(m, h.Mass())
	taken := h.Mixed(got)
	over := h.Mixed(m - got)
	p.Outside.Take(Unexplained, Liquid{Holds: over})
	h.Holds = h.Holds.Minus(taken)
	h.Flows.Spread += got
	return taken.Plus(over)
}

// Empty lets up to m of a hopper run to a place outside. It returns what ran.
func (p *Plumbing) Empty(h *Hopper, m measure.Mass, to Place) Parts {
	out := h.Mixed(min(m, h.Mass()))
	h.Holds = h.Holds.Minus(out)
	h.Flows.Other -= measure.Mass(out.Sum())
	p.Outside.Give(to, Liquid{Holds: out})
	return out
}
