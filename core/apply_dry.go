package core

func (s *state) applySpread(e Entry, f *Spread) {}
