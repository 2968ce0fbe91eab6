package core

import "strings"

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

func (s *state) admitCarriedOver(f *CarriedOver) error {
	lawn := s.Lawn(f.Lawn)
	if lawn == nil {
		return s.noLawn(f.Lawn)
	}
	if strings.TrimSpace(f.Reason) == "" {
		return refuse("Say why.", "What is carried over on %s has no reason.", f.Lawn)
	}
	for _, z := range f.Zones {
		if known, ok := lawn.Zone(z.Zone); !ok || z.Area <= 0 || z.Area > known.Area {
			return refuse("Name zones as they stand in the book, with no more than their area.", "%s has no zone %q with %s sq ft left.", f.Lawn, z.Zone, z.Area.Text())
		}
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
	return nil
}

func (s *state) admitResumed(*Resumed) error { return s.needDay("go on with it") }

func (s *state) admitNoted(f *Noted) error {
	if s.Lawn(f.Lawn) == nil {
		return s.noLawn(f.Lawn)
	}
	if strings.TrimSpace(f.Text) == "" {
		return refuse("Type what is to be kept.", "The note on %s is empty.", f.Lawn)
	}
	return nil
}
