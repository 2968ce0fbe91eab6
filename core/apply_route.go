package core

func (s *state) applyRouted(f *Routed) {}

func (s *state) applyCarriedOver(e Entry, f *CarriedOver) {}

func (s *state) applyHeld(e Entry, f *Held) {}

func (s *state) applyResumed(f *Resumed) {}

func (s *state) applyNoted(e Entry, f *Noted) {}
