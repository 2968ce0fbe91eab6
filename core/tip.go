package core

func (s *state) admitFitted(f *Fitted) error {
	a := s.Applicator(f.Applicator)
	if a == nil {
		return refuse(s.applicatorsHint(), "There is no applicator %q.", f.Applicator)
	}
	for _, t := range a.Tips {
		if t.Name == f.Tip {
			return nil
		}
	}
	return refuse("Enter the tip with the rig first.", "%s has no tip %q.", f.Applicator, f.Tip)
}

// applyFitted makes a tip's delivery rate and flow those of its applicator. The rig is made anew: earlier copies of
// the state keep theirs.
func (s *state) applyFitted(f *Fitted) {
	if s.rig == nil {
		return
	}
	c := *s.rig
	c.Applicators = append([]Applicator(nil), c.Applicators...)
	for i := range c.Applicators {
		a := &c.Applicators[i]
		for _, t := range a.Tips {
			if a.Name == f.Applicator && t.Name == f.Tip {
				a.Delivery, a.Flow = t.Delivery, t.Flow
			}
		}
	}
	s.rig = &c
}
