package core

import "time"

func (s *state) admitDayPlanned(f *DayPlanned) error {
	if _, err := time.Parse(time.DateOnly, f.Date); err != nil {
		return refuse("Write it as in 2026-05-28.", "%q is not a date.", f.Date)
	}
	if s.day.Open && f.Date != s.day.Date {
		return refuse("Plan the day that is open, or close it first.", "The plan is for %s, and %s is open.", f.Date, s.day.Date)
	}
	if f.Order != OrderGiven && f.Order != OrderBest {
		return refuse("Write "+OrderGiven+" or "+OrderBest+".", "%q is no order of a plan.", f.Order)
	}
	if len(f.Visits) == 0 {
		return refuse("Plan at least one lawn.", "The plan for %s has no visit.", f.Date)
	}
	for i := range f.Visits {
		if err := s.admitPlannedZone(&f.Visits[i]); err != nil {
			return err
		}
	}
	for i := range f.Loads {
		if err := s.admitPlannedLoad(&f.Loads[i]); err != nil {
			return err
		}
	}
	if err := unique("lawn of the plan", f.Lawns()); err != nil {
		return err
	}
	for _, n := range []struct {
		what string
		v    Maybe[float64]
		low  float64
	}{{"number of changeovers", f.Changeovers, 0}, {"minutes", f.Minutes, 0}, {"minutes saved", f.Saved, -LongestPlanMin}, {"miles", f.Miles, 0}} {
		if n.v.Known && !(n.v.V >= n.low && n.v.V <= LongestPlanMin) {
			return refuse("Give a figure of one day.", "The %s of the plan is %.6g.", n.what, n.v.V)
		}
	}
	if f.Cost.Known && (f.Cost.V < 0 || f.Cost.V > HighestPrice) {
		return refuse("Give 0 to 100,000 dollars.", "The cost of the plan is %s.", f.Cost.V.Text())
	}
	return nil
}

// LongestPlanMin bounds what a plan says of minutes, miles and changeovers: a week of minutes.
const LongestPlanMin = 10080

func (s *state) admitPlannedZone(v *PlannedZone) error {
	lawn := s.Lawn(v.Lawn)
	if lawn == nil {
		return s.noLawn(v.Lawn)
	}
	z, ok := lawn.Zone(v.Zone)
	if !ok {
		return refuse("Name one of its zones.", "The lawn %s has no zone %q.", v.Lawn, v.Zone)
	}
	if v.Area <= 0 || v.Area > z.Area {
		return refuse("Give more than 0, up to the area of the zone.", "Zone %s of %s has %.6g sq ft; %.6g are planned.", z.Name, v.Lawn, z.Area.SquareFeet(), v.Area.SquareFeet())
	}
	if v.Mix == "" {
		return nil
	}
	if s.Mix(v.Mix) == nil {
		return refuse(s.mixesHint(), "There is no mix %q in the book.", v.Mix)
	}
	if s.Applicator(v.With) == nil {
		return refuse(s.applicatorsHint(), "There is no applicator %q.", v.With)
	}
	return s.admitPlannedTank(v.From)
}

func (s *state) admitPlannedLoad(l *PlannedLoad) error {
	if err := s.admitPlannedTank(l.Into); err != nil {
		return err
	}
	if s.Mix(l.Mix) == nil {
		return refuse(s.mixesHint(), "There is no mix %q in the book.", l.Mix)
	}
	if s.Applicator(l.For) == nil {
		return refuse(s.applicatorsHint(), "There is no applicator %q.", l.For)
	}
	if l.Before != "" && s.Lawn(l.Before) == nil {
		return s.noLawn(l.Before)
	}
	if l.Volume <= 0 || l.Volume > LargestVolume {
		return refuse("Give more than 0 and up to 10,000 gal.", "%s gal of %s would be loaded into %s.", l.Volume.Text(), l.Mix, l.Into)
	}
	return nil
}

func (s *state) admitPlannedTank(into string) error {
	if len(into) == 1 && s.plumbing.Compartment(into[0]) != nil || s.plumbing.Tank(into) != nil {
		return nil
	}
	return refuse("Name a compartment, or an applicator with a tank of its own.", "There is no tank %q on the rig.", into)
}
