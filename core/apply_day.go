package core

func (s *state) openDay(e Entry, f *DayOpened) {
	s.noteDay()
	s.metersOfDay()
	s.loadsOfDay()
	left, before := "", s.day.Date
	if s.day.Open {
		left = s.day.Date
	}
	s.day = Day{
		Open: true, LeftOpen: left, Date: f.Date, Operator: f.Operator, FlowModel: f.FlowModel, Opened: e.At, Last: e.At,
		Seq: e.Seq, Before: s.day.Seq, BeforeDate: before,
	}
	for _, l := range f.Route {
		s.day.Visits = append(s.day.Visits, Visit{Lawn: l, State: Planned})
	}
	s.overrides, s.tint, s.missed = nil, nil, nil
	if s.planned != nil && s.planned.Date != f.Date {
		s.planned = nil
	}
	s.forget(before, f.Date)
	s.startNotices(f.Date)
	s.yearOfStock(before, f.Date)
	for i := range s.plumbing.Compartments {
		s.plumbing.Compartments[i].StartDay()
	}
	for i := range s.plumbing.Tanks {
		s.plumbing.Tanks[i].StartDay()
	}
	for i := range s.plumbing.Hoppers {
		s.plumbing.Hoppers[i].StartDay()
	}
}

// endWeatherReasons ends what was gone on with in spite of the weather: it was said of the observation before.
func (s *state) endWeatherReasons() {
	var stay []Overridden
	for _, o := range s.overrides {
		if o.Rule != ruleWeather {
			stay = append(stay, o)
		}
	}
	s.overrides = stay
}

func (s *state) closeDay(at Moment) {
	s.day.Open, s.day.Closed, s.day.Hold = false, at, nil
	s.overrides = nil
}

func (s *state) beginVisit(e Entry, f *VisitBegun) {
	s.overrides = nil
	at, err := s.arrival(f, e.At)
	if err != nil { // an entry that could not be admitted now is applied all the same
		at = e.At
	}
	before := s.day.lastEnd(f.Lawn)
	v := s.day.find(f.Lawn, Planned)
	if v == nil {
		s.day.Visits = append(s.day.Visits, Visit{Lawn: f.Lawn})
		v = &s.day.Visits[len(s.day.Visits)-1]
	}
	v.State, v.Kind, v.Cause, v.Begun = Begun, f.Type, f.Cause, at
	v.begun, v.before = e.Seq, before
	if v.Kind == "" {
		v.Kind = Round
	}
	if o := s.OwedAt(f.Lawn); o != nil && v.Kind != Spot && v.Kind != LookOnly {
		v.Due, v.dueSince = o.Zones, o.Since
	}
}

func (s *state) endVisit(e Entry, lawn, as, reason string) {
	s.overrides = nil
	v := s.day.find(lawn, Begun, Planned)
	if v == nil {
		s.day.Visits = append(s.day.Visits, Visit{Lawn: lawn})
		v = &s.day.Visits[len(s.day.Visits)-1]
	}
	v.State, v.Reason, v.Ended, v.ended = as, reason, e.At, e.Seq
}

// priceVisit keeps what the visit that the entry ended is charged.
func (s *state) priceVisit(e Entry, f *VisitDone) {
	for i := range s.day.Visits {
		if v := &s.day.Visits[i]; v.ended == e.Seq {
			v.Price = f.Price
		}
	}
}

func (s *state) applyGauge(e Entry, f *GaugeRead) {
	c := s.plumbing.Compartment(f.Compartment)
	if c == nil {
		return
	}
	s.day.Readings = append(s.day.Readings, Reading{f.Compartment, f.Volume.V, c.Liquid.Volume, e.At})
	s.noteReading(f, c.Liquid.Volume, c.Moved)
	before := c.Tank
	s.plumbing.Gauge(&c.Tank, f.Volume.V)
	c.ReadBand = f.GiveOrTake.V
	s.shows(e, c, &before)
}
