package core

import (
	"errors"
	"fmt"

	"example.com/tintline/core/fluid"
)

// resolveSpread fills in the zones, their area, the product that the hopper holds, and by area the weight.
func (s *state) resolveSpread(f *Spread) (Fact, error) {
	c := *f
	lawn, a := s.Lawn(f.Lawn), s.Applicator(f.Applicator)
	if lawn == nil || a == nil || !a.Spreads() {
		return &c, nil // admission names what is missing
	}
	if len(c.Zones) == 0 {
		c.Zones = lawn.ZoneNames()
	}
	if !c.Area.Known {
		c.Area = Known(s.meant(lawn, c.Zones))
	}
	several := false
	if c.Product == "" {
		if c.Product, several = s.InHopper(f.Applicator); c.Product == "" && !several {
			return nil, refuse("Name the product, or log the load of the hopper first.", "What %s spread is not said, and its hopper holds nothing.", a.Name)
		}
	}
	given := c.Amount.N != 0
	switch c.By {
	case "":
		c.By = ByArea
		if given {
			c.By = ByWeight
		}
	case ByWeight:
		if !given {
			return nil, refuse("Give the pounds.", "A spreading by weight needs its weight.")
		}
	}
	if c.By == ByArea && !given {
		rate, ok := s.DryRate(f.Applicator, c.Product)
		if !ok {
			what := c.Product
			if several {
				what = "the mix in " + a.Name
			}
			return &c, &Problem{
				What: fmt.Sprintf("How much of %s goes on an area is not in the book.", what),
				Do:   "Give the weight, or load it under a mix that has its rate.", Err: errors.Join(ErrRefused, ErrWeight),
			}
		}
		c.Amount = rate.Over(c.Area.V)
	}
	return &c, nil
}

// resolveDumped says how much ran: all that there is, where nothing is said. Of an applicator with tank and hopper the
// weight means the hopper, and so does a package; without either it is the tank, unless that is empty.
func (s *state) resolveDumped(f *Dumped) (Fact, error) {
	c := *f
	if c.Volume.Known || c.Amount.Known {
		return &c, nil
	}
	kind, name := fluid.Place(f.From).Split()
	if h := s.plumbing.Hopper(name); kind == "applicator" && h != nil {
		to, _ := fluid.Place(f.To).Split()
		if t := s.plumbing.Tank(name); to == "package" || t == nil || (t.Liquid.Volume == 0 && h.Mass() > 0) {
			c.Amount = Known(h.Mass())
			return &c, nil
		}
	}
	c.Volume = Known(s.held(fluid.Place(f.From)))
	return &c, nil
}
