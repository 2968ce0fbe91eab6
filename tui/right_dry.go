package tui

import (
	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// rightDry is how what was logged by weight is put right; false for all else.
func (m *Model) rightDry(f core.Fact) (right, bool) {
	pounds := func(prompt string, was measure.Mass, with func(lb measure.Mass) core.Fact) (right, bool) {
		return right{prompt, measure.DryAmount(was).Text(), "a weight: 22 lb", func(said string) (core.Fact, error) {
			lb, err := measure.ReadMass(said, "lb")
			if err != nil {
				return nil, err
			}
			return with(lb), nil
		}}, true
	}
	switch f := f.(type) {
	case *core.Spread:
		was := f.Amount.Text()
		if f.By == core.ByArea {
			was = f.Area.V.Text() + " sqft"
		}
		return right{"spread on " + joined(f.Zones), was, "22 lb, or 6200 sqft", func(said string) (core.Fact, error) {
			c := core.Spread{Lawn: f.Lawn, Zones: f.Zones, Applicator: f.Applicator, Product: f.Product}
			got, err := readWeighed(c, said)
			if g, ok := got.(*core.Spread); ok && !g.Area.Known {
				g.Area = f.Area
			}
			return got, err
		}}, true
	case *core.Loaded:
		if f.Volume == 0 && len(f.Parts) > 0 {
			return pounds("loaded into the hopper of "+f.Into, f.DryMass(), func(lb measure.Mass) core.Fact { return m.book.HopperLoadOf(f, lb) })
		}
	case *core.Dumped:
		if f.Amount.Known {
			return pounds("ran out", f.Amount.V, func(lb measure.Mass) core.Fact {
				c := *f
				c.Amount = core.Known(lb)
				return &c
			})
		}
	}
	return right{}, false
}
