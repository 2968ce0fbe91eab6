package core

import (
	"strings"
	"time"
)

func (s *state) admitRouted(f *Routed) error {
	if err := s.needDay("change the visits"); err != nil {
		return err
	}
	for _, l := range f.Lawns {
		if s.Lawn(l) == nil {
			return s.noLawn(l)
		}
	}
	return unique("lawn on the route", f.Lawns)
}

// resolveCarriedOver names the zones where none is named: what the visit now has still to do, else what is owed, else
// all of the lawn.
func (s *state) resolveCarriedOver(f *CarriedOver) Fact {
	lawn := s.Lawn(f.Lawn)
	if lawn == nil || len(f.Zones) > 0 { // admission says what is wrong
		return f
	}
	c := *f
	if v := s.day.Visiting(); v != nil && v.Lawn == f.Lawn {
		c.Zones = s.RestAt(v)
		return &c
	}
	if o := s.OwedAt(f.Lawn); o != nil {
		c.Zones = o.Zones
		return &c
	}
	for _, z := range lawn.Zones {
		c.Zones = append(c.Zones, ZoneRest{z.Name, z.Area})
	}
	return &c
}

func (s *state) admitCarriedOver(f *CarriedOver, at Moment) error {
	lawn := s.Lawn(f.Lawn)
	if lawn == nil {
		return s.noLawn(f.Lawn)
	}
	if strings.TrimSpace(f.Reason) == "" {
		return refuse("Say why.", "What is carried over on %s has no reason.", f.Lawn)
	}
	if len(f.Zones) == 0 {
		return refuse("Leave the lawn, or name the zone with its area.", "Nothing is left to do on %s in this visit.", f.Lawn)
	}
	var names []string
	for _, z := range f.Zones {
		names = append(names, z.Zone)
		known, ok := lawn.Zone(z.Zone)
		if !ok {
			return refuse("It has "+strings.Join(lawn.ZoneNames(), ", ")+".", "The lawn %s has no zone %q.", f.Lawn, z.Zone)
		}
		if z.Area < 0 || z.Area > known.Area {
			return refuse("Give more than 0, up to the area of the zone.", "Zone %s of %s has %.6g sq ft; %.6g cannot be left to do.", z.Zone, f.Lawn, known.Area.SquareFeet(), z.Area.SquareFeet())
		}
		if o := s.OwedAt(f.Lawn); z.Area == 0 && (o == nil || restOf(o.Zones, z.Zone) == 0) {
			return refuse("Give the area that is left.", "Nothing is owed on zone %s of %s that 0 sq ft could take away.", z.Zone, f.Lawn)
		}
	}
	if err := unique("zone", names); err != nil {
		return err
	}
	return s.admitUntil(f.Until, at)
}

func (s *state) admitUntil(until string, at Moment) error {
	if until == "" {
		return nil
	}
	if _, err := time.Parse(time.DateOnly, until); err != nil {
		return refuse("Write it as in 2026-05-28, or leave it out.", "%q is not a date.", until)
	}
	now := at.Date()
	if s.day.Open {
		now = s.day.Date
	}
	if until <= now {
		return refuse("Give a later date, or leave it out.", "%s does not come after %s.", until, now)
	}
	return nil
}

func (s *state) admitHeld(f *Held) error {
	if err := s.needDay("hold it"); err != nil {
		return err
	}
	if strings.TrimSpace(f.Cause) == "" {
		return refuse("Say what for: wind, or rain.", "The hold has no cause.")
	}
	if h := s.day.Hold; h != nil && h.Cause == f.Cause {
		return refuse("Go on with it first, or name another cause.", "The day is on hold already, for %s since %s.", h.Cause, h.Since.Clock())
	}
	return nil
}

func (s *state) admitResumed() error {
	if err := s.needDay("go on with it"); err != nil {
		return err
	}
	if s.day.Hold == nil {
		return refuse("Nothing is to be done.", "The day is not on hold.")
	}
	return nil
}

func (s *state) admitNoted(f *Noted) error {
	if s.Lawn(f.Lawn) == nil {
		return s.noLawn(f.Lawn)
	}
	if strings.TrimSpace(f.Text) == "" {
		return refuse("Type what is to be kept.", "The note on %s is empty.", f.Lawn)
	}
	return nil
}
