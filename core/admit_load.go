package core

import "strings"

func (s *state) admitLoadPlanned(f *LoadPlanned) error {
	t, _ := s.tank(f.Into)
	if t == nil {
		return refuse(s.tanksHint(), "%q is neither a compartment nor an applicator with a tank.", f.Into)
	}
	return bounded("The load planned for "+f.Into, f.Volume)
}

func (s *state) admitTicked(f *Ticked) error {
	if strings.TrimSpace(f.List) == "" || strings.TrimSpace(f.Item) == "" {
		return refuse("Name the list and the item.", "A tick belongs to an item of a list.")
	}
	return nil
}

// resolveLoadPlanned gives a plan that names a mix the amounts of its products, as a load gets them.
func (s *state) resolveLoadPlanned(f *LoadPlanned) (Fact, error) {
	if f.Volume == 0 {
		return f, nil
	}
	full, err := s.resolveLoaded(&Loaded{Into: f.Into, Volume: f.Volume, Parts: f.Parts, Mix: f.Mix, For: f.For})
	if err != nil {
		return nil, err
	}
	c := *f
	c.Parts = full.(*Loaded).Parts
	return &c, nil
}

func (s *state) resolveMix(f *Mix) (Fact, error) { return f, nil }

func (s *state) resolveGauge(f *GaugeRead) (Fact, error) { return f, nil }
