package core

// applyRouted puts the visits planned in the place of those that were; the others stay, in front of them.
func (s *state) applyRouted(f *Routed) {
	var list []Visit
	for _, v := range s.day.Visits {
		if v.State != Planned {
			list = append(list, v)
		}
	}
	for _, l := range f.Lawns {
		list = append(list, Visit{Lawn: l, State: Planned})
	}
	s.day.Visits = list
}

// applyCarriedOver keeps what is left, and ends a planned visit at which nothing was laid.
func (s *state) applyCarriedOver(e Entry, f *CarriedOver) {
	since := e.At.Date()
	if s.day.Open {
		since = s.day.Date
	}
	zones := f.Zones
	if lawn := s.Lawn(f.Lawn); lawn != nil && len(zones) == 0 {
		for _, z := range lawn.Zones {
			zones = append(zones, ZoneRest{z.Name, z.Area})
		}
	}
	s.owe(Owed{Lawn: f.Lawn, Zones: zones, Reason: f.Reason, Since: since, Until: f.Until})
	if v := s.day.find(f.Lawn, Begun); v != nil {
		for _, z := range zones {
			if !containsText(v.Carried, z.Zone) {
				v.Carried = append(v.Carried[:len(v.Carried):len(v.Carried)], z.Zone)
			}
		}
		return
	}
	if v := s.day.find(f.Lawn, Planned); v != nil && !s.laidSince(f.Lawn, s.day.lastEnd(f.Lawn)) {
		v.State, v.Reason, v.Ended, v.ended = Skipped, "carried over: "+f.Reason, e.At, e.Seq
	}
}

// laidSince tells whether something was laid on a lawn after an entry.
func (s *state) laidSince(lawn string, seq uint64) bool {
	for i := range s.day.Laid {
		if s.day.Laid[i].Lawn == lawn && s.day.Laid[i].Seq > seq {
			return true
		}
	}
	return false
}

func (s *state) applyHeld(e Entry, f *Held) { s.day.Hold = &Hold{f.Cause, e.At} }

func (s *state) applyResumed() { s.day.Hold = nil }
