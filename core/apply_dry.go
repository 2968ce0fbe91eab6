package core

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// applyHopperLoad puts a load into a hopper and keeps the name of its mix.
func (s *state) applyHopperLoad(f *Loaded, h *fluid.Hopper) {
	s.batches[hopperBatch(h.Name)] = batchName(s.MixInHopper(h.Name), f.Mix, len(h.Holds) == 0)
	var dry fluid.Parts
	packages := map[int32]fluid.Place{}
	for _, p := range f.Parts {
		if k, ok := s.productAt[p.Product]; ok && s.products[k].Now().Label.Form == measure.Dry && p.Amount.N > 0 {
			dry = dry.Plus(fluid.Parts{{Key: int32(k), N: p.Amount.N}})
			packages[int32(k)] = fluid.PackagePlace(p.Product)
		}
	}
	s.plumbing.Pour(h, dry, packages)
}

// applySpread draws what was spread and lays it on the zones, each with its share by area.
func (s *state) applySpread(e Entry, f *Spread) {
	out := s.sow(s.plumbing, f)
	parts, over := s.dryParts(f, out)
	s.plumbing.Outside.Give(fluid.Unexplained, fluid.Liquid{Holds: over})
	for _, part := range parts {
		s.plumbing.Outside.Give(fluid.ZonePlace(f.Lawn, part.Zone.Name), fluid.Liquid{Holds: part.Holds})
		s.lay(Laid{
			Seq: e.Seq, At: e.At, Lawn: f.Lawn, Zone: part.Zone.Name, Grass: part.Zone.Grass,
			Applicator: f.Applicator, Area: part.Area, Holds: part.Holds, Dry: true,
		}, nil)
	}
}

// sow takes what was spread out of hopper and bag.
func (s *state) sow(p *fluid.Plumbing, f *Spread) fluid.Parts {
	m, h := measure.Mass(f.Amount.N), p.Hopper(f.Applicator)
	if f.Amount.Kind != measure.Dry || m <= 0 {
		return nil
	}
	if f.Product == "" {
		if h == nil {
			return nil
		}
		return p.SowMixed(h, m)
	}
	k, ok := s.productAt[f.Product]
	if !ok || s.products[k].Now().Label.Form != measure.Dry {
		return nil
	}
	return p.Sow(h, int32(k), m, fluid.PackagePlace(f.Product))
}

// DryPart is what one zone gets of a spreading.
type DryPart struct {
	Zone  Zone
	Area  measure.Area
	Holds fluid.Parts
}

// dryParts shares a spreading over its zones by their areas, product by product. What no zone takes is over.
func (s *state) dryParts(f *Spread, out fluid.Parts) (zones []DryPart, over fluid.Parts) {
	lawn := s.Lawn(f.Lawn)
	if lawn == nil {
		return nil, out
	}
	var parts []DryPart
	var weights []int64
	for _, n := range f.Zones {
		if z, ok := lawn.Zone(n); ok {
			parts = append(parts, DryPart{Zone: z})
			weights = append(weights, int64(s.AreaMeant(f.Lawn, z)))
		}
	}
	if len(parts) == 0 {
		return nil, out
	}
	areas := measure.Apportion(weights, int64(f.Area.V))
	for i := range parts {
		parts[i].Area = measure.Area(areas[i])
	}
	for _, q := range out {
		for i, n := range measure.Apportion(areas, q.N) {
			parts[i].Holds = parts[i].Holds.Plus(fluid.Parts{{Key: q.Key, N: n}})
		}
	}
	return parts, nil
}

// SpreadPlan is what a spreading would come to: the fact with all that follows from the book, what each zone would get,
// and where it would come from.
type SpreadPlan struct {
	Fact       Spread
	Zones      []DryPart
	FromHopper measure.Mass
	FromBag    measure.Mass // what the hopper cannot give; of a mix nobody can
	Stays      measure.Mass // in the hopper
}

// ForeseeSpread is what a spreading would come to if it were done now, or why it could not be. Where only the weight is
// not known (ErrWeight), the plan says the rest. The book is not changed.
func (s *state) ForeseeSpread(f *Spread) (*SpreadPlan, error) {
	full, err := s.resolveSpread(f)
	if full == nil {
		return nil, err
	}
	c := full.(*Spread)
	if err != nil {
		return &SpreadPlan{Fact: *c}, err
	}
	if err := s.couldSpread(c); err != nil {
		return nil, err
	}
	p := s.plumbing.Sketch()
	plan := &SpreadPlan{Fact: *c}
	h := p.Hopper(f.Applicator)
	var had measure.Mass
	if h != nil {
		had = h.Mass()
	}
	plan.Zones, _ = s.dryParts(c, s.sow(p, c))
	if h != nil {
		plan.Stays = h.Mass()
		plan.FromHopper = had - plan.Stays
	}
	plan.FromBag = measure.Mass(c.Amount.N) - plan.FromHopper
	return plan, nil
}
