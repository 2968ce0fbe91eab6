package core

func (s *state) applyLoadPlanned(f *LoadPlanned) {}

func (s *state) applyTicked(f *Ticked) {}
