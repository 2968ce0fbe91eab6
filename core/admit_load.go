package core

import "strings"

// admitLoadPlanned: what is planned must fit as a load would that was put in now.
func (s *state) admitLoadPlanned(f *LoadPlanned) error {
	if f.Volume != 0 {
		for _, p := range f.Parts {
			if p.Product == WaterItem {
				return refuse("Leave it out of the products.", "Water makes up the rest of the load for %s by itself.", f.Into)
			}
		}
		return s.admitLoaded(LoadedFrom(f))
	}
	if t, _ := s.tank(f.Into); t == nil {
		return refuse(s.tanksHint(), "%q is neither a compartment nor an applicator with a tank.", f.Into)
	}
	if f.Mix != "" || len(f.Parts) > 0 {
		return refuse("Give more than 0 gal, or leave mix and products out to take the plan back.", "The load planned for %s is 0.00 gal.", f.Into)
	}
	if s.plans[f.Into] == nil {
		return refuse("Plan one first.", "No load is planned for %s, so none can be taken back.", f.Into)
	}
	return nil
}

func (s *state) admitTicked(f *Ticked) error {
	if strings.HasPrefix(f.List, CheckList("")) {
		return s.admitCheckTick(f)
	}
	into, load := strings.CutPrefix(f.List, LoadList(""))
	if !load || into == "" {
		return refuse("Name a list such as load/a.", "%q is no list.", f.List)
	}
	plan := s.plans[into]
	if plan == nil {
		return refuse("Plan the load first.", "No load is planned for %s, so there is nothing to tick.", into)
	}
	if f.Undo != "" && f.Undo != yes {
		return refuse("Write yes, or leave it out.", "The tick says %q under undo.", f.Undo)
	}
	if plan.isStep(f.Item) {
		if err := f.mayTick(into, s.StepTicked(plan, f.Item)); err != nil {
			return err
		}
		if f.Item == StepMeterAfter {
			return admitMeters(plan.MeterBefore, f.Meter)
		}
		return nil
	}
	var names []string
	for _, i := range s.LoadItems(plan) {
		if i.Item != f.Item {
			names = append(names, i.Item)
			continue
		}
		return f.mayTick(into, i.Done)
	}
	return refuse("It has "+strings.Join(names, ", ")+".", "The load for %s has no item %q.", into, f.Item)
}

// resolveLoadPlanned gives a plan that names a mix the amounts of its products, as a load gets them.
func (s *state) resolveLoadPlanned(f *LoadPlanned) (Fact, error) {
	if f.Volume == 0 {
		return f, nil
	}
	full, err := s.resolveLoaded(LoadedFrom(f))
	if err != nil {
		return nil, err
	}
	c := *f
	c.Parts = full.(*Loaded).Parts
	return &c, nil
}
