package core

import (
	"strings"
	"time"
)

func (s *state) admitVisitBegun(f *VisitBegun, at Moment) error {
	if err := s.needDay("begin a visit"); err != nil {
		return err
	}
	if s.Lawn(f.Lawn) == nil {
		return s.noLawn(f.Lawn)
	}
	if v := s.day.Visiting(); v != nil {
		return refuse("Finish or skip that one first.", "The visit at %s is not ended yet.", v.Lawn)
	}
	if f.Type != "" && !containsText(VisitKinds, f.Type) {
		return refuse("Write one of "+strings.Join(VisitKinds, ", ")+".", "%q is no kind of visit.", f.Type)
	}
	if f.Type == CallBack && strings.TrimSpace(f.Cause) == "" {
		return refuse("Say what the customer called about.", "The call-back at %s has no cause.", f.Lawn)
	}
	_, err := s.arrival(f, at)
	return err
}

// VisitKinds lists the kinds of visit.
var VisitKinds = []string{Round, CallBack, First, Spot, LookOnly}

// arrival is when the operator came: the time of day given, on the date of the entry, else the time of the entry.
func (s *state) arrival(f *VisitBegun, at Moment) (Moment, error) {
	if f.Arrived == "" {
		return at, nil
	}
	t, err := time.Parse(clockForm, f.Arrived)
	if err != nil {
		return at, refuse("Write it as in 09:35.", "%q is no time of day.", f.Arrived)
	}
	const minute, day = 60, 86_400
	local := at.Unix + int64(at.Offset)
	midnight := local - (local%day+day)%day
	came := Moment{midnight + int64(t.Hour()*60+t.Minute())*minute - int64(at.Offset), at.Offset}
	if came.Unix > at.Unix {
		return at, refuse("Give the time at which you came, or leave it out for now.", "Arrived at %s would be later than now, %s.", came.Clock(), at.Clock())
	}
	left, where := s.day.left()
	if came.Unix+minute > left.Unix { // a clock that is read has no seconds
		return Moment{max(came.Unix, min(left.Unix, at.Unix)), at.Offset}, nil
	}
	if where == "" {
		return at, refuse("Give a later time.", "Arrived at %s would be before the day was opened, at %s.", came.Clock(), left.Clock())
	}
	return at, refuse("Give a later time.", "Arrived at %s would be before %s was left, at %s.", came.Clock(), where, left.Clock())
}

// clockForm is how a time of day is written.
const clockForm = "15:04"

// resolveVisitBegun writes the time of day as it is kept.
func resolveVisitBegun(f *VisitBegun) Fact {
	t, err := time.Parse(clockForm, f.Arrived)
	if err != nil { // admission says so
		return f
	}
	c := *f
	c.Arrived = t.Format(clockForm)
	return &c
}

func (s *state) admitVisitSkipped(f *VisitSkipped) error {
	if err := s.needDay("skip a visit"); err != nil {
		return err
	}
	if s.Lawn(f.Lawn) == nil {
		return s.noLawn(f.Lawn)
	}
	if strings.TrimSpace(f.Reason) == "" {
		return refuse("Say why.", "The skip of %s has no reason.", f.Lawn)
	}
	if s.day.find(f.Lawn, Begun, Planned) == nil {
		return refuse("Look at the visits of the day; there is none to skip.", "No visit at %s is planned or begun today.", f.Lawn)
	}
	return nil
}

func (s *state) admitVisitDone(f *VisitDone) error {
	if err := s.needDay("end a visit"); err != nil {
		return err
	}
	if s.day.find(f.Lawn, Begun) == nil {
		return refuse("Begin it first.", "No visit at %q is begun.", f.Lawn)
	}
	return nil
}

func containsText(list []string, s string) bool {
	for _, t := range list {
		if t == s {
			return true
		}
	}
	return false
}

// RuleNames lists the rules of the check that the operator can go on in spite of.
var RuleNames = strings.Fields("grass dose season interval nitrogen trace enough line_up weather site dates standing pair stock notice papers")

// ruleWeather is the rule whose reasons end with the next observation.
const ruleWeather = "weather"

// zonedRules are those whose findings are about zones.
var zonedRules = strings.Fields("grass dose season interval nitrogen trace site")

func (s *state) admitOverridden(f *Overridden) error {
	if err := s.needDay("go on in spite of a finding"); err != nil {
		return err
	}
	if !containsText(RuleNames, f.Rule) {
		return refuse("Name one of "+strings.Join(RuleNames, ", ")+".", "%q is not a rule.", f.Rule)
	}
	if s.Lawn(f.Lawn) == nil {
		return s.noLawn(f.Lawn)
	}
	if strings.TrimSpace(f.Reason) == "" {
		return refuse("Say why.", "Going on in spite of a finding needs a reason.")
	}
	if f.Product != "" && s.Product(f.Product) == nil {
		return s.noProduct(f.Product)
	}
	if f.Zone == "" {
		return nil
	}
	if !containsText(zonedRules, f.Rule) {
		return refuse("Leave the zone out.", "What %s says is about no zone, so not about %s.", f.Rule, f.Zone)
	}
	lawn := s.Lawn(f.Lawn)
	if _, ok := lawn.Zone(f.Zone); !ok {
		return s.noZone(lawn, f.Zone)
	}
	return nil
}
