package core

import "example.com/tintline/core/fluid"

// apply changes the state by one entry that is not a strike. It never refuses.
func (s *state) apply(e Entry) {
	switch f := e.What.(type) {
	case *Rig:
		s.applyRig(f)
	case *Product:
		s.applyProduct(f)
	case *Mix:
		s.applyMix(f)
	case *Lawn:
		s.applyLawn(f)
	case *DayOpened:
		s.openDay(e, f)
	case *DayClosed:
		s.day.Overnight = f.Overnight
		s.closeDay(e.At)
	case *Loaded:
		s.applyLoaded(f)
	case *LinedUp:
		s.plumbing.Turn(fluid.LineUp{Supply: f.Supply, Return: f.Return})
		s.overrides, s.tint = nil, nil
	case *PushedBack:
		if c := s.plumbing.Compartment(f.Into); c != nil {
			s.plumbing.PushBack("", f.Volume, c)
		}
	case *TintSeen:
		seen := *f
		s.tint = &seen
	case *Filled:
		s.applyFilled(f)
	case *VisitBegun:
		s.beginVisit(e, f.Lawn)
	case *VisitSkipped:
		s.endVisit(e, f.Lawn, Skipped, f.Reason)
	case *VisitDone:
		s.endVisit(e, f.Lawn, Done, "")
	case *Sprayed:
		s.applySprayed(e, f)
	case *GaugeRead:
		s.applyGauge(e, f)
	case *Weather:
		s.weather = &WeatherAt{*f, e.At}
	case *Overridden:
		s.overrides = append(s.overrides, *f)
	case *Setting:
		s.settings[f.SettingName] = f.Value
	case *Rinsed:
		if c := s.plumbing.Compartment(f.Compartment); c != nil {
			s.plumbing.Rinse(c, f.Water, fluid.Place(f.To))
		}
	case *Dumped:
		s.plumbing.Dump(fluid.Place(f.From), f.Volume.V, fluid.Place(f.To))
	}
	if s.day.Open {
		s.day.Last = e.At
	}
}

func (s *state) applyProduct(f *Product) {
	if i, ok := s.productAt[f.ProductName]; ok {
		h := &s.products[i]
		h.Versions = append(h.Versions, *f)
		return
	}
	s.productAt[f.ProductName] = len(s.products)
	s.products = append(s.products, ProductHistory{f.ProductName, []Product{*f}})
}

func (s *state) applyMix(f *Mix) {
	for i := range s.mixes {
		if s.mixes[i].MixName == f.MixName {
			s.mixes[i] = *f
			return
		}
	}
	s.mixes = append(s.mixes, *f)
}

func (s *state) applyLawn(f *Lawn) {
	if i, ok := s.lawnAt[f.LawnName]; ok {
		s.lawns[i] = f
		return
	}
	s.lawnAt[f.LawnName] = len(s.lawns)
	s.lawns = append(s.lawns, f)
}
