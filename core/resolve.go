package core

import (
	"fmt"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// resolve fills in what follows from the book, so that the entry holds figures and never formulas. The
// fact given is not changed.
func (s *state) resolve(f Fact) (Fact, error) {
	switch f := f.(type) {
	case *Rig:
		return resolveRig(f)
	case *DayOpened:
		c := *f
		if c.FlowModel == 0 {
			c.FlowModel = FlowModel
		}
		return &c, nil
	case *DayClosed:
		c := *f
		c.Accounts = s.AccountsDigest().String()
		return &c, nil
	case *VisitBegun:
		return resolveVisitBegun(f), nil
	case *CarriedOver:
		return s.resolveCarriedOver(f), nil
	case *Loaded:
		return s.resolveLoaded(f)
	case *Sprayed:
		return s.resolveSprayed(f)
	case *LoadPlanned:
		return s.resolveLoadPlanned(f)
	case *Spread:
		return s.resolveSpread(f)
	case *Mix:
		return s.resolveMix(f)
	case *GaugeRead:
		return s.resolveGauge(f)
	case *Dumped:
		return s.resolveDumped(f)
	case *Ran:
		return s.resolveRan(f)
	case *PushedBack:
		return s.resolvePushedBack(f)
	case *Filled:
		return s.resolveFilled(f)
	case *TintSeen:
		return s.resolveTint(f)
	case *Calibrated:
		return s.resolveCalibrated(f)
	case *Stocked:
		return s.resolveStocked(f)
	case *TruedUp:
		return s.resolveTruedUp(f)
	case *Upkept:
		return s.resolveUpkept(f), nil
	case *Recorded:
		return resolveRecorded(f), nil
	case *Told:
		return s.resolveTold(f), nil
	case *VisitDone:
		return s.resolveVisitDone(f), nil
	}
	return f, nil
}

// resolveRig gives hoses without a volume the one of their bore and length: pi/4 d^2 L (geometry).
func resolveRig(f *Rig) (Fact, error) {
	c := *f
	c.Hoses = append([]RigHose(nil), f.Hoses...)
	for i := range c.Hoses {
		h := &c.Hoses[i]
		if h.Bore.Known && (h.Bore.V <= 0 || h.Bore.V > WidestBore) {
			return nil, refuse("Give more than 0 and up to 12 in.", "The inside diameter of hose %s is %.3g in.", h.Name, h.Bore.V.Inches())
		}
		if h.Length.Known && (h.Length.V <= 0 || h.Length.V > LongestHose) {
			return nil, refuse("Give more than 0 and up to 10,000 ft.", "The length of hose %s is %.6g ft.", h.Name, h.Length.V.Feet())
		}
		if h.Volume == 0 && h.Bore.Known && h.Length.Known {
			h.Volume = fluid.BoreVolume(h.Bore.V, h.Length.V)
		}
	}
	return &c, nil
}

// LoadParts are the products that a volume of a mix takes, made up for an applicator's delivery rate. The error is a Problem.
func (s *state) LoadParts(mix, applicator string, v measure.Volume) ([]LoadPart, error) {
	f, err := s.resolveLoaded(&Loaded{Mix: mix, For: applicator, Volume: v})
	if err != nil {
		return nil, err
	}
	return f.(*Loaded).Parts, nil
}

// resolveLoaded gives a load that names a mix the amounts of its products: the rate on the area that the
// volume covers at the applicator's delivery rate.
func (s *state) resolveLoaded(f *Loaded) (Fact, error) {
	if f.Mix == "" || len(f.Parts) > 0 || s.loadsHopper(f) != nil {
		return f, nil
	}
	mix := s.Mix(f.Mix)
	if mix == nil {
		return nil, refuse(s.mixesHint(), "There is no mix %q in the book.", f.Mix)
	}
	a := s.Applicator(f.For)
	if f.For == "" {
		return nil, refuse(s.applicatorsHint(), "A load of mix %q needs the applicator whose delivery rate it is made up for.", f.Mix)
	}
	if a == nil {
		return nil, refuse(s.applicatorsHint(), "The load is made up for %q, which is no applicator.", f.For)
	}
	if !a.Sprays() {
		return nil, refuse("Name an applicator that sprays.", "%s spreads dry product; no liquid is made up for it.", a.Name)
	}
	if a.Delivery.V <= 0 {
		return nil, refuse("Enter the delivery rate with the rig, or give the amounts of the products.", "%s has no delivery rate, so the amounts for mix %q cannot be worked out.", a.Name, f.Mix)
	}
	c := *f
	area := a.Delivery.AreaFor(f.Volume)
	for _, p := range mix.Parts {
		c.Parts = append(c.Parts, LoadPart{p.Product, p.Rate.Over(area)})
	}
	return &c, nil
}

func (s *state) resolveSprayed(f *Sprayed) (Fact, error) {
	c := *f
	lawn, a := s.Lawn(f.Lawn), s.Applicator(f.Applicator)
	if lawn == nil || a == nil {
		return &c, nil // admission names what is missing
	}
	if len(c.Zones) == 0 {
		c.Zones = lawn.ZoneNames()
	}
	if !c.Area.Known {
		c.Area = Known(s.meant(lawn, c.Zones))
	}
	switch c.By {
	case "", ByArea:
		if c.By == "" && c.Volume.Known {
			c.By = ByGallons
			break
		}
		c.By = ByArea
		if !c.Volume.Known {
			c.Volume = Known(a.Delivery.Volume(c.Area.V))
		}
	case ByGauge:
		if !c.Before.Known || !c.After.Known {
			return nil, refuse("Give before and after.", "A spraying by gauge needs both readings.")
		}
		for _, v := range []measure.Volume{c.Before.V, c.After.V} {
			if err := bounded("A reading", v); err != nil {
				return nil, err
			}
		}
		used := c.Before.V - c.After.V
		if used <= 0 {
			return nil, refuse("Correct a reading; before is the higher one.", "The readings are %s gal before and %s gal after.", c.Before.V.Text(), c.After.V.Text())
		}
		if c.Volume.Known && c.Volume.V != used {
			return nil, refuse("Leave the volume out, or correct a reading.",
				"The readings say %s gal, the volume given is %s gal.", used.Text(), c.Volume.V.Text())
		}
		c.Volume = Known(used)
		if len(c.Teaching) == 0 {
			c.Teaching = s.teachesJob(a, c.Area.V)
		}
	}
	if !c.Bypass.Known {
		c.Bypass = s.bypassWith(a, c.Volume.V)
	}
	return &c, nil
}

// held is how much liquid a place of the rig holds.
func (s *state) held(p fluid.Place) measure.Volume {
	for _, a := range s.plumbing.Inside() {
		if a.Place == p {
			return a.Volume
		}
	}
	return s.plumbing.Outside[p].Volume
}

func (s *state) mixesHint() string {
	if len(s.mixes) == 0 {
		return "Enter the mix first; the book has none yet."
	}
	hint := "The book has"
	for i, m := range s.mixes {
		if i == 6 {
			return hint + fmt.Sprintf(" and %d more.", len(s.mixes)-i)
		}
		if i > 0 {
			hint += ","
		}
		hint += fmt.Sprintf(" %q", m.MixName)
	}
	return hint + "."
}

func (s *state) applicatorsHint() string {
	if s.rig == nil || len(s.rig.Applicators) == 0 {
		return "Enter the applicators with the rig first."
	}
	hint := "The rig has"
	for i, a := range s.rig.Applicators {
		if i > 0 {
			hint += ","
		}
		hint += " " + a.Name
	}
	return hint + "."
}
