package core

// digestRoute adds what books of earlier versions could not hold, and only where there is some: the digest of an old
// journal stays.
func (s *state) digestRoute(w *binaryWriter) {
	rests := func(list []ZoneRest) {
		w.count(len(list))
		for _, z := range list {
			w.str(z.Zone)
			w.int(int64(z.Area))
		}
	}
	for _, o := range s.owed {
		w.str("owed")
		w.str(o.Lawn)
		w.str(o.Reason)
		w.str(o.Until)
		rests(o.Zones)
	}
	for _, l := range s.lawns {
		for _, n := range s.notes[l.LawnName] {
			w.str("note")
			w.str(l.LawnName)
			w.str(n.Text)
		}
	}
	if s.day.Hold != nil {
		w.str("hold")
		w.str(s.day.Hold.Cause)
	}
	for i, v := range s.day.Visits {
		plain := v.Kind == "" || v.Kind == Round
		if plain && v.Cause == "" && len(v.Due) == 0 && len(v.Carried) == 0 {
			continue
		}
		w.str("visit")
		w.count(i)
		w.str(v.Kind)
		w.str(v.Cause)
		rests(v.Due)
		w.count(len(v.Carried))
		for _, z := range v.Carried {
			w.str(z)
		}
	}
}
