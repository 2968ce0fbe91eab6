package core

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// applyRig sets the rig up, or changes it around the liquid that it holds.
func (s *state) applyRig(f *Rig) {
	p, first := s.plumbing, s.rig == nil
	f = s.keepCharts(f)
	s.keepCalibrated(f)
	s.keepFitted(f)
	s.learned = s.learnedUnder(f)
	s.entered = f
	s.fit()
	old := p.Compartments
	p.Compartments = nil
	for i := len(f.Compartments); i < len(old); i++ {
		delete(s.batches, string(old[i].Letter)) // compartments are lettered by position: these are gone
	}
	for _, c := range f.Compartments {
		now := fluid.Compartment{Letter: c.Letter}
		for _, o := range old {
			if o.Letter == c.Letter {
				now = o
			}
		}
		now.Capacity, now.Heel = c.Capacity, c.Heel
		p.Compartments = append(p.Compartments, now)
	}
	p.Cell.Size = s.learned.cellSize(f)
	p.ResizeReturn(f.ReturnLine)
	if first {
		p.Cell.Liquid = s.water(p.Cell.Size)
		p.Return.Liquid = s.water(f.ReturnLine)
	}
	s.wetRig()
	s.applyHoses(f, first)
	s.applyTanks(f)
	s.endLostPlans()
	s.applyHoppers(f)
	for i := range p.Compartments {
		c := &p.Compartments[i]
		c.Origin = s.origin(c.Letter, s.batches[string(c.Letter)])
	}
}

func (s *state) water(v measure.Volume) fluid.Liquid {
	l := fluid.Water(v, fluid.NoTank)
	s.plumbing.Outside.Take(fluid.WaterSupply, l)
	return l
}

func (s *state) applyHoses(f *Rig, first bool) {
	p := s.plumbing
	old := p.Hoses
	p.Hoses = nil
	for _, h := range f.Hoses {
		now := fluid.Hose{Name: h.Name}
		for _, o := range old {
			if o.Name == h.Name {
				now = o
			}
		}
		p.Hoses = append(p.Hoses, now)
		if first {
			p.Hoses[len(p.Hoses)-1].Size = h.Volume
			p.Hoses[len(p.Hoses)-1].Charge = []fluid.Parcel{{Liquid: s.water(h.Volume)}}
			continue
		}
		p.ResizeHose(h.Name, s.learned.hoseSize(h))
	}
}

func (s *state) applyTanks(f *Rig) {
	p := s.plumbing
	old := p.Tanks
	p.Tanks = nil
	for _, a := range f.Applicators {
		if a.Tank == 0 {
			continue
		}
		now := fluid.ApplicatorTank{Name: a.Name}
		for _, o := range old {
			if o.Name == a.Name {
				now = o
			}
		}
		now.Capacity, now.Origin = a.Tank, fluid.KeepOrigins
		p.Tanks = append(p.Tanks, now)
	}
}

// applyHoppers keeps what the hoppers hold. What was in one that is gone cannot be admitted, and goes to the
// unexplained.
func (s *state) applyHoppers(f *Rig) {
	p := s.plumbing
	old := p.Hoppers
	p.Hoppers = nil
	for _, a := range f.Applicators {
		if a.Hopper == 0 {
			continue
		}
		now := fluid.Hopper{Name: a.Name}
		for i, o := range old {
			if o.Name == a.Name {
				now, old[i].Holds = o, nil
			}
		}
		now.Capacity = a.Hopper
		p.Hoppers = append(p.Hoppers, now)
	}
	for _, o := range old {
		p.Outside.Give(fluid.Unexplained, fluid.Liquid{Holds: o.Holds})
		if p.Hopper(o.Name) == nil {
			delete(s.batches, hopperBatch(o.Name))
		}
	}
}

// origin finds or makes the key of an origin.
func (s *state) origin(letter byte, mix string) int32 {
	for i, o := range s.origins {
		if o == (Origin{letter, mix}) {
			return int32(i)
		}
	}
	s.origins = append(s.origins, Origin{letter, mix})
	return int32(len(s.origins) - 1)
}
