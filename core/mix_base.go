package core

import "example.com/tintline/core/measure"

// resolveMix gives a mix that is made from another the products of it that are not named, at its rates. What the base
// becomes later does not change the mix: the entry holds all products and says that they are all.
func (s *state) resolveMix(f *Mix) (Fact, error) {
	if f.Base == "" || f.Complete != "" { // admission refuses what is neither empty nor yes
		return f, nil
	}
	if f.Base == f.MixName {
		return nil, refuse("Name another mix as the base, or none.", "The mix %s cannot be its own base.", f.MixName)
	}
	base := s.Mix(f.Base)
	if base == nil {
		return nil, refuse(s.mixesHint(), "There is no mix %q in the book.", f.Base)
	}
	c := *f
	c.Complete = yes
	c.Parts = append([]MixPart(nil), f.Parts...)
	for _, p := range base.Parts {
		if _, named := f.Rate(p.Product); !named {
			c.Parts = append(c.Parts, p)
		}
	}
	return &c, nil
}

// yes in a text of a fact says that it is so.
const yes = "yes"

// admitBase refuses a mix that is made from itself, at once or by way of others.
func (s *state) admitBase(f *Mix) error {
	if f.Complete != "" && f.Complete != yes {
		return refuse("Write yes, or leave it out.", "The mix %s says %q under complete.", f.MixName, f.Complete)
	}
	if f.Base == "" {
		return nil
	}
	if f.Base == f.MixName {
		return refuse("Name another mix as the base, or none.", "The mix %s cannot be its own base.", f.MixName)
	}
	if s.Mix(f.Base) == nil {
		return refuse(s.mixesHint(), "There is no mix %q in the book.", f.Base)
	}
	at := f.Base
	for range s.mixes {
		m := s.Mix(at)
		if m == nil || m.Base == "" {
			return nil
		}
		if at = m.Base; at == f.MixName {
			return refuse("Name another mix as the base, or none.", "The mix %s is itself made from %s.", m.MixName, f.MixName)
		}
	}
	return nil
}

// PartDifference is a product that two mixes do not have alike: its rate in the one and in the base. A rate that is
// not known says that the product is not in it.
type PartDifference struct {
	Product    string
	Have, Base Maybe[measure.Rate]
}

// Difference lists what a mix has otherwise than its base: its own products in their order, then those of the base
// that it does not hold. A base of nil is a mix of nothing.
func Difference(mix, base *Mix) []PartDifference {
	var out []PartDifference
	if base == nil {
		base = &Mix{}
	}
	for _, p := range mix.Parts {
		switch was, in := base.Rate(p.Product); {
		case !in:
			out = append(out, PartDifference{Product: p.Product, Have: Known(p.Rate)})
		case was != p.Rate:
			out = append(out, PartDifference{p.Product, Known(p.Rate), Known(was)})
		}
	}
	for _, p := range base.Parts {
		if _, in := mix.Rate(p.Product); !in {
			out = append(out, PartDifference{Product: p.Product, Base: Known(p.Rate)})
		}
	}
	return out
}
