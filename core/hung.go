package core

// HangsOn is the hose on which an applicator hangs now, false where it hangs on the one that was entered with the rig.
func (s *state) HangsOn(applicator string) (hose string, other bool) {
	hose, other = s.hung[applicator]
	return hose, other
}

// admitHung refuses a hose that is not there, and what draws through none.
func (s *state) admitHung(f *Fitted, a *Applicator) error {
	if !a.Sprays() {
		return refuse("Name an applicator that sprays.", "%s spreads dry product and hangs on no hose.", a.Name)
	}
	if s.plumbing.Hose(f.Hose) == nil {
		return refuse(s.hosesHint(), "There is no hose %q.", f.Hose)
	}
	return nil
}

// hang keeps on which hose an applicator hangs from now on. What the other hose holds stays in it.
func (s *state) hang(f *Fitted) {
	entered := s.entered.applicator(f.Applicator)
	if f.Hose == "" || entered == nil || s.plumbing.Hose(f.Hose) == nil {
		return
	}
	s.hung = cloneMap(s.hung)
	if entered.Hose == f.Hose {
		delete(s.hung, f.Applicator)
		return
	}
	s.hung[f.Applicator] = f.Hose
}

// keepHung says which applicators stay on the other hose when the rig is entered anew: where it still has both, unless
// the new entry hangs the applicator on another hose by hand. It is asked before the new rig stands in the book.
func (s *state) keepHung(f *Rig) {
	kept := map[string]string{}
	for name, on := range s.hung {
		a, was := f.applicator(name), s.entered.applicator(name)
		if a == nil || was == nil || f.hose(on) == nil || a.Hose == on {
			continue
		}
		if a.Hose == was.Hose {
			kept[name] = on
		}
	}
	s.hung = kept
}

// digestHung says nothing of a book in which every applicator hangs where the rig says.
func (s *state) digestHung(w *binaryWriter) {
	if len(s.hung) > 0 {
		w.str("hung")
		w.words(1, "", &s.hung)
	}
}
