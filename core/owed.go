package core

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Owed is what is left to do on a lawn since another day.
type Owed struct {
	Lawn   string
	Zones  []ZoneRest // each with more than 0
	Reason string
	Since  string // the date on which it was first carried over
	Until  string // the date for which it is meant; empty: any
}

// Owed lists what is owed, oldest first.
func (s *state) Owed() []Owed { return s.owed }

// OwedAt is what is owed on a lawn, nil if nothing is.
func (s *state) OwedAt(lawn string) *Owed {
	for i := range s.owed {
		if s.owed[i].Lawn == lawn {
			return &s.owed[i]
		}
	}
	return nil
}

// restOf is the area of a zone in a list, 0 if it is not in it.
func restOf(list []ZoneRest, zone string) measure.Area {
	for _, z := range list {
		if z.Zone == zone {
			return z.Area
		}
	}
	return 0
}

// AreaMeant is what of a zone a spraying now would be meant to cover: what is due there in the visit now, or owed
// where none is on; else all of it.
func (s *state) AreaMeant(lawn string, z Zone) measure.Area {
	var due []ZoneRest
	if v := s.day.Visiting(); v != nil && v.Lawn == lawn {
		due = v.Due
	} else if o := s.OwedAt(lawn); o != nil {
		due = o.Zones
	}
	if a := restOf(due, z.Name); a > 0 {
		return min(a, z.Area)
	}
	return z.Area
}

// meant is what of some zones together a treatment now would be meant to cover.
func (s *state) meant(lawn *Lawn, zones []string) measure.Area {
	var sum measure.Area
	for _, n := range zones {
		z, _ := lawn.Zone(n)
		sum += s.AreaMeant(lawn.LawnName, z)
	}
	return sum
}

// RestAt is what a visit has still to do: of each zone what was due less what it laid there. What was carried over
// in it is no longer its own.
func (s *state) RestAt(v *Visit) []ZoneRest {
	lawn := s.Lawn(v.Lawn)
	if lawn == nil {
		return nil
	}
	laid := s.day.LaidAt(v)
	var out []ZoneRest
	for _, z := range lawn.Zones {
		due := z.Area
		if len(v.Due) > 0 {
			due = min(restOf(v.Due, z.Name), z.Area)
		}
		if done := max(covered(laid, z.Name), 0); done < due && !containsText(v.Carried, z.Name) {
			out = append(out, ZoneRest{z.Name, due - done})
		}
	}
	return out
}

// owe keeps what is left of zones. A later word about a zone takes the place of an earlier one. Lists are made
// anew, because a clone shares them.
func (s *state) owe(o Owed) {
	was := s.OwedAt(o.Lawn)
	if was == nil {
		s.owed = append(s.owed[:len(s.owed):len(s.owed)], s.sound(o)...)
		return
	}
	o.Since = was.Since
	for _, z := range was.Zones {
		if !hasZone(o.Zones, z.Zone) {
			o.Zones = append(o.Zones[:len(o.Zones):len(o.Zones)], z)
		}
	}
	var list []Owed
	for _, other := range s.owed {
		if other.Lawn == o.Lawn {
			list = append(list, s.sound(o)...)
			continue
		}
		list = append(list, other)
	}
	s.owed = list
}

func hasZone(list []ZoneRest, zone string) bool {
	for _, z := range list {
		if z.Zone == zone {
			return true
		}
	}
	return false
}

// sound is what is owed cut to the zones that the lawn has, in their order; nothing if nothing is left of it.
func (s *state) sound(o Owed) []Owed {
	lawn := s.Lawn(o.Lawn)
	if lawn == nil {
		return nil
	}
	var zones []ZoneRest
	for _, z := range lawn.Zones {
		if a := min(restOf(o.Zones, z.Name), z.Area); a > 0 {
			zones = append(zones, ZoneRest{z.Name, a})
		}
	}
	if o.Zones = zones; len(zones) == 0 {
		return nil
	}
	return []Owed{o}
}

// changeOwed makes the list of what is owed anew with one lawn's zones changed.
func (s *state) changeOwed(lawn string, change func(ZoneRest) ZoneRest) {
	if s.OwedAt(lawn) == nil {
		return
	}
	var list []Owed
	for _, o := range s.owed {
		if o.Lawn == lawn {
			zones := make([]ZoneRest, 0, len(o.Zones))
			for _, z := range o.Zones {
				zones = append(zones, change(z))
			}
			o.Zones = zones
			list = append(list, s.sound(o)...)
			continue
		}
		list = append(list, o)
	}
	s.owed = list
}

// covered is how much of a zone was treated: what was sprayed on it or what was spread, whichever is more.
func covered(laid []Laid, zone string) measure.Area {
	var wet, dry measure.Area
	for _, l := range laid {
		switch {
		case l.Zone != zone:
		case l.Dry:
			dry += l.Area
		default:
			wet += l.Area
		}
	}
	return max(wet, dry)
}

// lay books what was put on a zone, and takes it off what is owed there. A visit for a spot treats none of that.
func (s *state) lay(l Laid, parcels []fluid.Liquid) {
	s.remember(l, parcels)
	l.Versions = s.versionsOf(l.Holds)
	l.Load = s.loadLaid(&l)
	s.day.Laid = append(s.day.Laid, l)
	if s.OwedAt(l.Lawn) == nil {
		return
	}
	at := &Visit{Lawn: l.Lawn, before: s.day.lastEnd(l.Lawn)}
	if v := s.day.Visiting(); v != nil && v.Lawn == l.Lawn {
		if at = v; v.Kind == Spot {
			return
		}
	}
	all := s.day.LaidAt(at)
	more := covered(all, l.Zone)
	for i := range all {
		if all[i].Seq == l.Seq && all[i].Zone == l.Zone && all[i].Dry == l.Dry {
			more -= covered(append(all[:i:i], all[i+1:]...), l.Zone)
			break
		}
	}
	s.changeOwed(l.Lawn, func(z ZoneRest) ZoneRest {
		if z.Zone == l.Zone {
			z.Area = max(z.Area-more, 0)
		}
		return z
	})
}
