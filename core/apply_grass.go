package core

// applyLawn takes a lawn over. A zone of which the entry does not say how it grows keeps what was last said of it.
func (s *state) applyLawn(e Entry, f *Lawn) {
	if i, ok := s.lawnAt[f.LawnName]; ok {
		for _, z := range f.Zones {
			if _, was := s.lawns[i].Zone(z.Name); !was {
				s.changeZone(i, z.Name, func(h *zoneHistory) { h.from = e.At.Date() })
			}
		}
		s.lawns[i] = keepGrowth(f, s.lawns[i])
		s.changeOwed(f.LawnName, func(z ZoneRest) ZoneRest { return z }) // its zones may be others now
		return
	}
	s.lawnAt[f.LawnName] = len(s.lawns)
	s.lawns = append(s.lawns, f)
	s.lawnFrom = append(s.lawnFrom, e.At.Date())
}

func keepGrowth(f, before *Lawn) *Lawn {
	c := *f
	c.Zones = append([]Zone(nil), f.Zones...)
	for i := range c.Zones {
		if was, ok := before.Zone(c.Zones[i].Name); ok && c.Zones[i].Growth == "" {
			c.Zones[i].Growth, c.Zones[i].GrowthSince = was.Growth, was.GrowthSince
		}
	}
	if c.KnownSince == "" {
		c.KnownSince = before.KnownSince
	}
	return &c
}

// applyGrowthSeen changes the zones of the lawn in force. The lawn is made anew, because a clone shares it.
func (s *state) applyGrowthSeen(e Entry, f *GrowthSeen) {
	i, ok := s.lawnAt[f.Lawn]
	if !ok {
		return
	}
	since := f.Since
	if since == "" {
		since = e.At.Date()
	}
	c := *s.lawns[i]
	c.Zones = append([]Zone(nil), c.Zones...)
	for j := range c.Zones {
		if len(f.Zones) == 0 || containsText(f.Zones, c.Zones[j].Name) {
			c.Zones[j].Growth, c.Zones[j].GrowthSince = f.Growth, since
		}
	}
	s.lawns[i] = &c
}

// applyCautioned keeps the operator's note in the place of an earlier one of the same scope.
func (s *state) applyCautioned(f *Cautioned) {
	list := make([]Cautioned, 0, len(s.cautions)+1)
	for _, c := range s.cautions {
		if !c.sameScope(f) {
			list = append(list, c)
		}
	}
	if f.Weight != NoCaution {
		list = append(list, *f)
	}
	s.cautions = list
}

// NoCaution as a weight takes a note back.
const NoCaution = "none"

func (f *Cautioned) sameScope(o *Cautioned) bool {
	return f.Product == o.Product && f.Active == o.Active && f.Grass == o.Grass && f.Lawn == o.Lawn && f.Zone == o.Zone
}

// Cautions lists the operator's own notes in force.
func (s *state) Cautions() []Cautioned { return s.cautions }

// KnownSince is the date from which on the book has all that was laid on a lawn; empty if it has no such lawn.
func (s *state) KnownSince(lawn string) string {
	i, ok := s.lawnAt[lawn]
	if !ok {
		return ""
	}
	if d := s.lawns[i].KnownSince; d != "" {
		return d
	}
	return s.lawnFrom[i]
}
