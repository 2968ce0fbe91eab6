package core

func (s *state) admitSpread(f *Spread) error {
	return refuse("Enter it with a later version.", "Spreading with %s is not kept yet.", f.Applicator)
}

func (s *state) resolveSpread(f *Spread) (Fact, error) { return f, nil }
