package core

import "example.com/tintline/core/measure"

// FittedTip names the tip that is on an applicator, or its setting; empty until one was fitted.
func (s *state) FittedTip(applicator string) string { return s.fitted[applicator] }

// NextTip is the tip after the one that is on an applicator, in the order of the rig's list; the first comes after the
// last. Where none was fitted yet, one with the applicator's own delivery rate and flow counts as on. It is false where
// there is none to change to.
func (s *state) NextTip(applicator string) (Tip, bool) {
	a := s.Applicator(applicator)
	if a == nil || len(a.Tips) == 0 {
		return Tip{}, false
	}
	on, next := s.TipOn(applicator), 0
	for i, t := range a.Tips {
		if t.Name == on {
			next = (i + 1) % len(a.Tips)
		}
	}
	return a.Tips[next], a.Tips[next].Name != on
}

func (a *Applicator) tip(name string) *Tip {
	for i := range a.Tips {
		if a.Tips[i].Name == name {
			return &a.Tips[i]
		}
	}
	return nil
}

func (s *state) admitFitted(f *Fitted) error {
	a := s.Applicator(f.Applicator)
	if a == nil {
		return refuse(s.applicatorsHint(), "There is no applicator %q.", f.Applicator)
	}
	if f.Hose != "" {
		if err := s.admitHung(f, a); err != nil || f.Tip == "" {
			return err
		}
	}
	if a.tip(f.Tip) == nil {
		do := "Enter the tip with the rig first."
		for i, t := range a.Tips {
			if i == 0 {
				do = "It has"
			} else {
				do += ","
			}
			do += " " + t.Name
		}
		if len(a.Tips) > 0 {
			do += "."
		}
		return refuse(do, "%s has no tip %q.", f.Applicator, f.Tip)
	}
	return nil
}

func (s *state) applyFitted(f *Fitted) {
	a := s.Applicator(f.Applicator)
	if a == nil {
		return
	}
	s.hang(f)
	if a.tip(f.Tip) != nil {
		s.fitted = cloneMap(s.fitted)
		s.fitted[f.Applicator] = f.Tip
	}
	s.fit()
}

// keepFitted says which tips stay on when the rig is entered anew: those that the new entry still names, unless it
// gives the applicator another delivery rate by hand. It is asked before the new rig stands in the book.
func (s *state) keepFitted(f *Rig) {
	kept := map[string]string{}
	for i := range f.Applicators {
		a := &f.Applicators[i]
		on := s.fitted[a.Name]
		t := a.tip(on)
		if on == "" || t == nil {
			continue
		}
		same := a.Delivery == t.Delivery
		for _, r := range []*Rig{s.rig, s.entered} {
			if b := r.applicator(a.Name); b != nil && b.Delivery == a.Delivery {
				same = true
			}
		}
		if same {
			kept[a.Name] = on
		}
	}
	s.fitted = kept
	s.keepHung(f)
}

// fit makes the rig in force: the one entered, with the delivery rate and flow of the tips that are on, of the tests that
// were accepted since, and the hoses on which the applicators hang. It is made anew: earlier copies of the state keep theirs.
func (s *state) fit() {
	s.rig = s.entered
	if len(s.fitted)+len(s.hung)+len(s.rates) == 0 || s.entered == nil {
		return
	}
	c := *s.entered
	c.Applicators = append([]Applicator(nil), c.Applicators...)
	for i := range c.Applicators {
		a := &c.Applicators[i]
		if t := a.tip(s.fitted[a.Name]); t != nil {
			a.Delivery, a.Flow = t.Delivery, t.Flow
		}
		s.rule(a)
		if hose, other := s.hung[a.Name]; other {
			a.Hose = hose
		}
	}
	s.rig = &c
}

// admitTips admits what can be fitted on an applicator.
func admitTips(a *Applicator) error {
	var names []string
	for _, t := range a.Tips {
		if err := name("tip of "+a.Name, t.Name); err != nil {
			return err
		}
		names = append(names, t.Name)
		if t.PSI.Known && (!(t.PSI.V > 0) || t.PSI.V > HighestPSI) {
			return refuse("Give more than 0 and up to 1,000 psi, or leave it out.", "The pressure for tip %s of %s is %g psi.", t.Name, a.Name, t.PSI.V)
		}
		if t.Flow.Known && (!(t.Flow.V > 0) || t.Flow.V > measure.GPM(LargestFlowGPM)) {
			return refuse("Give more than 0 and up to 500 gpm, or leave it out.", "The flow of tip %s of %s is %s.", t.Name, a.Name, t.Flow.V.Text())
		}
		if !(t.Delivery.V > 0) || t.Delivery.V > LargestDelivery || (t.Delivery.Kind == measure.Dry) == a.Sprays() {
			how := "in gallons per 1,000 sq ft"
			if !a.Sprays() {
				how = "in pounds per 1,000 sq ft"
			}
			return refuse("Give it "+how+", more than 0.", "The delivery rate of tip %s of %s is %s.", t.Name, a.Name, t.Delivery.Text())
		}
	}
	return unique("tip of "+a.Name, names)
}

// admitHopper admits the hopper of an applicator.
func admitHopper(a *Applicator) error {
	switch {
	case a.Hopper != 0 && a.Type != Spreader && a.Type != RideOn:
		return refuse("Leave the hopper out, or write ride_on or spreader.", "%s is a %s and has no hopper for dry product.", a.Name, a.Type)
	case a.Hopper < 0 || a.Hopper > LargestHopper:
		return refuse("Give 0 to 22,000 lb.", "The hopper of %s holds %.6g lb.", a.Name, a.Hopper.Pounds())
	}
	return nil
}

// hoppersStillFit refuses a rig that would take away a hopper that holds product, or make it too small.
func (s *state) hoppersStillFit(f *Rig) error {
	for i := range s.plumbing.Hoppers {
		h := &s.plumbing.Hoppers[i]
		room := measure.Mass(0)
		if a := f.applicator(h.Name); a != nil {
			room = a.Hopper
		}
		if h.Mass() > room {
			return refuse("Empty it first, or keep the part as it is.", "The hopper of %s holds %s and would have room for %.2f lb.", h.Name, s.hopperWords(h), room.Pounds())
		}
	}
	return nil
}
