package core

// applyPlumbing is for what happens in the plumbing beside the day's pushing and spraying.
func (s *state) applyPlumbing(e Entry) {
	switch f := e.What.(type) {
	case *Ran:
		s.applyRan(f)
	case *Cleaned:
		s.applyCleaned(f)
	case *Marked:
		s.applyMarked(f)
	}
}
