package core

func (s *state) resolveRan(f *Ran) (Fact, error) { return f, nil }

func (s *state) admitRan(f *Ran) error {
	if f.Pump != "on" && f.Pump != "off" {
		return refuse("Write on or off.", "Whether the pump ran is said by %q.", f.Pump)
	}
	if !f.Seconds.Known || !(f.Seconds.V > 0) || f.Seconds.V > 86400 {
		return refuse("Give more than 0 and up to 86,400 s.", "The time is %g s.", f.Seconds.V)
	}
	return s.needRig()
}

// applyPlumbing is for what happens in the plumbing beside the day's pushing and spraying.
func (s *state) applyPlumbing(e Entry) {
	switch f := e.What.(type) {
	case *Ran:
		s.applyRan(e, f)
	case *Cleaned:
		s.applyCleaned(f)
	case *Marked:
		s.applyMarked(f)
	}
}

func (s *state) applyRan(Entry, *Ran) {}
