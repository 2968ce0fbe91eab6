package core

import "example.com/tintline/core/fluid"

// apply changes the state by one entry that is not a strike. It never refuses.
func (s *state) apply(e Entry) {
	s.follow(e)
	switch f := e.What.(type) {
	case *Rig:
		s.applyRig(f)
	case *Product:
		s.applyProduct(e, f)
	case *Mix:
		s.applyMix(f)
	case *Lawn:
		s.applyLawn(e, f)
	case *Noted:
		s.applyNoted(e, f)
	case *GrowthSeen:
		s.applyGrowthSeen(e, f)
	case *Cautioned:
		s.applyCautioned(f)
	case *JarTested:
		s.applyJarTested(e, f)
	case *Setting:
		s.applySetting(f)
	case *Stocked:
		s.applyStocked(e, f)
	case *Signed:
		s.applySigned(e, f)
	case *Told:
		s.applyTold(e, f)
	case *Neighbour:
		s.applyNeighbour(f)
	case *Paid:
		s.applyPaid(e, f)
	case *Invested:
		s.applyInvested(f)
	default:
		s.applyDayFact(e)
		s.applyMove(e)
	}
	if s.day.Open && !s.writtenLater(e) {
		s.day.Last = e.At
	}
}

// writtenLater tells whether an entry ends a visit of a date before: it says when that was written down, not how
// long the day was.
func (s *state) writtenLater(e Entry) bool {
	switch e.What.(type) {
	case *VisitDone, *VisitSkipped, *CarriedOver:
		return e.At.Date() > s.day.Date
	}
	return false
}

func (s *state) applyDayFact(e Entry) {
	switch f := e.What.(type) {
	case *DayOpened:
		s.openDay(e, f)
	case *DayClosed:
		s.day.Overnight = f.Overnight
		s.closeDay(e.At)
	case *VisitBegun:
		s.beginVisit(e, f)
	case *VisitSkipped:
		s.endVisit(e, f.Lawn, Skipped, f.Reason)
	case *VisitDone:
		s.endVisit(e, f.Lawn, Done, "")
		s.priceVisit(e, f)
	case *Routed:
		s.applyRouted(f)
	case *DayPlanned:
		plan := *f
		s.planned = &plan
	case *CarriedOver:
		s.applyCarriedOver(e, f)
	case *Held:
		s.applyHeld(e, f)
	case *Resumed:
		s.applyResumed()
	case *Weather:
		s.weather = &WeatherAt{*f, e.At}
		s.day.Looked = append(s.day.Looked[:len(s.day.Looked):len(s.day.Looked)], *s.weather)
		s.endWeatherReasons()
	case *Overridden:
		s.overrides = append(s.overrides, *f)
		s.day.Reasons = append(s.day.Reasons[:len(s.day.Reasons):len(s.day.Reasons)], Reasoned{e.Seq, *f})
	case *Recorded:
		s.day.Recorded = append(s.day.Recorded[:len(s.day.Recorded):len(s.day.Recorded)], *f)
	}
}

// applyMove moves liquid or product, or measures it.
func (s *state) applyMove(e Entry) {
	switch f := e.What.(type) {
	case *Loaded:
		s.emptyLoaded(e, f)
		s.applyLoaded(f)
		s.markLoad(e, f)
	case *LinedUp:
		s.turnValves(f)
	case *PushedBack:
		s.applyPushedBack(f)
		s.through += f.Volume
	case *TintSeen:
		if f.Missed != "" {
			s.missed = append(s.missed, *f)
			break
		}
		seen := *f
		s.tint = &seen
		s.learn(f)
	case *Filled:
		s.applyFilled(f)
		s.markFilled(f.Applicator)
		s.through += f.Volume
	case *Sprayed:
		s.applySprayed(e, f)
		if s.plumbing.Tank(f.Applicator) == nil {
			s.through += f.Volume.V
		}
	case *GaugeRead:
		s.applyGauge(e, f)
	case *Rinsed:
		if c := s.plumbing.Compartment(f.Compartment); c != nil {
			s.pour(e, f.To, func() { s.plumbing.Rinse(c, f.Water, fluid.Place(f.To)) })
		}
	case *Dumped:
		s.pour(e, f.To, func() { s.applyDumped(f) })
	case *LoadPlanned:
		s.applyLoadPlanned(f)
	case *Ticked:
		s.noteTicked(f)
		s.applyTicked(f)
	case *Fitted:
		s.applyFitted(f)
	case *Calibrated:
		s.applyCalibrated(e, f)
	case *Spread:
		s.applySpread(e, f)
	case *TruedUp:
		s.applyTruedUp(f)
	case *Amended:
		s.applyAmended(e, f)
	case *Metered, *Task, *Upkept, *Paper:
		s.applyUpkeep(e)
	default:
		s.applyPlumbing(e)
	}
}

func (s *state) applyProduct(e Entry, f *Product) {
	if i, ok := s.productAt[f.ProductName]; ok {
		h := &s.products[i]
		h.Versions, h.Entered = append(h.Versions, *f), append(h.Entered, e.At)
		return
	}
	s.productAt[f.ProductName] = len(s.products)
	s.products = append(s.products, ProductHistory{f.ProductName, []Product{*f}, []Moment{e.At}})
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
