package core

import (
	"strings"
	"time"
)

// What signs and neighbours can be at most.
const (
	mostSigns    = 100
	mostHours    = 24 * 366
	mostCalls    = 20
	furthestTold = 2 // years ahead of the entry
)

func (s *state) admitSigned(f *Signed, at Moment) error {
	if s.Lawn(f.Lawn) == nil {
		return s.noLawn(f.Lawn)
	}
	if err := admitClockBefore(f.Clock, at); err != nil {
		return err
	}
	switch f.What {
	case SignsUp:
		if f.Count < 1 || f.Count > mostSigns {
			return refuse("Give 1 to 100.", "%d signs are put up at %s.", f.Count, f.Lawn)
		}
		if err := admitHours("The signs at "+f.Lawn+" stay", f.Hours); err != nil {
			return err
		}
		if err := admitDate(f.Until); err != nil {
			return err
		}
		if f.Until != "" && (f.Until < at.Date() || f.Until > yearsLater(at)) {
			return refuse("Give the date of the entry or one up to two years later.", "The signs at %s are to stay until %s; they are put up on %s.", f.Lawn, f.Until, at.Date())
		}
		return nil
	case SignsDown:
		if f.Count != 0 || f.Hours.Known || f.Until != "" {
			return refuse("Leave them out: all signs at the lawn are taken down.", "A number, hours or a date go with signs that are put up.")
		}
		for _, g := range s.signs {
			if g.Lawn == f.Lawn && g.Down.Zero() {
				return nil
			}
		}
		return refuse("Look at the signs that stand.", "No sign stands at %s.", f.Lawn)
	}
	return refuse("Say "+SignsUp+" or "+SignsDown+".", "%q is not what is done with signs.", f.What)
}

// admitClockBefore admits a time of day on the date of the entry that is not later than it, or none.
func admitClockBefore(clock string, at Moment) error {
	if clock == "" {
		return nil
	}
	if _, err := time.Parse(clockForm, clock); err != nil {
		return refuse("Write it as in 09:35.", "%q is no time of day.", clock)
	}
	if onDate(at, clock).Unix > at.Unix {
		return refuse("Give the time at which it was, or leave it out for now.", "%s would be later than now, %s.", clock, at.Clock())
	}
	return nil
}

func admitHours(what string, h Maybe[float64]) error {
	if h.Known && !(h.V >= 0 && h.V <= mostHours) {
		return refuse("Give 0 to 8,784 hours.", "%s %.6g hours.", what, h.V)
	}
	return nil
}

func yearsLater(at Moment) string {
	return at.Time().AddDate(furthestTold, 0, 0).Format(time.DateOnly)
}

func (s *state) admitTold(f *Told, at Moment) error {
	if s.Lawn(f.Lawn) == nil {
		return s.noLawn(f.Lawn)
	}
	if err := s.admitWhom(f); err != nil {
		return err
	}
	if !containsText(ContactWays(), f.How) {
		return refuse("Say one of "+strings.Join(ContactWays(), ", ")+".", "%q is no way of a contact.", f.How)
	}
	if f.Result != ToldReached && f.Result != ToldFailed {
		return refuse("Say "+ToldReached+" or "+ToldFailed+".", "%q is not what came of a contact.", f.Result)
	}
	for _, g := range f.Given {
		if !containsText(Givens(), g) {
			return refuse("Say one of "+strings.Join(Givens(), ", ")+".", "%q is not what a contact gives.", g)
		}
	}
	if err := unique("thing given", f.Given); err != nil {
		return err
	}
	if f.Result == ToldFailed && len(f.Given) > 0 {
		return refuse("Leave out what was given, or say "+ToldReached+".", "The contact failed, so nothing was given.")
	}
	if err := admitClockBefore(f.Clock, at); err != nil {
		return err
	}
	return admitTreatment(f, at)
}

func (s *state) admitWhom(f *Told) error {
	switch f.Whom {
	case ToldCustomer:
		return nil
	case ToldNeighbour:
		if s.Neighbour(f.Lawn, f.Person) != nil {
			return nil
		}
		return refuse(s.neighboursHint(f.Lawn), "%s has no neighbour %q who is to be told.", f.Lawn, f.Person)
	}
	return refuse("Say "+ToldCustomer+" or "+ToldNeighbour+".", "%q is nobody who is told.", f.Whom)
}

func (s *state) neighboursHint(lawn string) string {
	var names []string
	for _, n := range s.neighbours {
		if n.Lawn == lawn {
			names = append(names, n.NeighbourName)
		}
	}
	if len(names) == 0 {
		return "Enter the neighbour first; the lawn has none yet."
	}
	return "It has " + strings.Join(names, ", ") + "."
}

// admitTreatment admits the date that a contact is about, and the times that were named.
func admitTreatment(f *Told, at Moment) error {
	if err := admitDate(f.For); err != nil {
		return err
	}
	if f.For == "" || f.For > yearsLater(at) {
		return refuse("Give a date up to two years from now.", "The date of the treatment is %q.", f.For)
	}
	for _, c := range []string{f.EarliestStart, f.LatestFinish} {
		if _, err := time.Parse(clockForm, c); c != "" && err != nil {
			return refuse("Write it as in 09:35.", "%q is no time of day.", c)
		}
	}
	if f.EarliestStart != "" && f.LatestFinish != "" && f.LatestFinish < f.EarliestStart {
		return refuse("Give the earliest start first.", "The latest finish, %s, lies before the earliest start, %s.", f.LatestFinish, f.EarliestStart)
	}
	return nil
}

// resolveTold fills in the date of the open day, that somebody was reached, and what is given as a rule: the notice of a treatment, or the word
// ahead of one.
func (s *state) resolveTold(f *Told) Fact {
	c := *f
	if c.For == "" && s.day.Open {
		c.For = s.day.Date
	}
	if c.Result == "" {
		c.Result = ToldReached
	}
	if len(c.Given) == 0 && c.Result == ToldReached {
		c.Given = []string{GaveNotice}
		if c.Whom == ToldNeighbour || c.For > s.day.Date {
			c.Given = []string{GaveAdvance}
		}
	}
	return &c
}

func (s *state) admitNeighbour(f *Neighbour) error {
	if s.Lawn(f.Lawn) == nil {
		return s.noLawn(f.Lawn)
	}
	if err := name("neighbour", f.NeighbourName); err != nil {
		return err
	}
	if f.Gone != "" {
		if f.Gone != "yes" {
			return refuse("Say yes, or leave it out.", "gone is %q.", f.Gone)
		}
		if s.Neighbour(f.Lawn, f.NeighbourName) == nil {
			return refuse(s.neighboursHint(f.Lawn), "%s has no neighbour %q who is to be told.", f.Lawn, f.NeighbourName)
		}
		return nil
	}
	if f.Feet.Known && !(f.Feet.V >= 0 && f.Feet.V <= FurthestFeet) {
		return refuse("Give 0 to 5,000 ft.", "%s is %.6g ft off.", f.NeighbourName, f.Feet.V)
	}
	for _, h := range []Maybe[float64]{f.HoursLeast, f.HoursMost} {
		if err := admitHours(f.NeighbourName+" is to be told ahead by", h); err != nil {
			return err
		}
	}
	if f.HoursLeast.Known && f.HoursMost.Known && f.HoursMost.V < f.HoursLeast.V {
		return refuse("Give the lesser number first.", "%s is to be told %g to %g hours ahead.", f.NeighbourName, f.HoursLeast.V, f.HoursMost.V)
	}
	if f.Calls < 0 || f.Calls > mostCalls {
		return refuse("Give 0 to 20.", "A note on the door of %s counts after %d failed calls.", f.NeighbourName, f.Calls)
	}
	if err := admitDate(f.Until); err != nil {
		return err
	}
	if f.Register != OwnRequest && f.Register != StateRegister {
		return refuse("Say "+OwnRequest+" or "+StateRegister+".", "%q is not why %s is to be told.", f.Register, f.NeighbourName)
	}
	return nil
}
