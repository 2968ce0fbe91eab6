package core

import (
	"fmt"
	"strings"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// admitHopperLoad admits dry product that goes into a hopper by weight.
func (s *state) admitHopperLoad(f *Loaded, h *fluid.Hopper) error {
	if f.Mix != "" && s.Mix(f.Mix) == nil {
		return refuse(s.mixesHint(), "There is no mix %q in the book.", f.Mix)
	}
	if f.For != "" && s.Applicator(f.For) == nil {
		return refuse(s.applicatorsHint(), "The load is made up for %q, which is no applicator.", f.For)
	}
	if len(f.Parts) == 0 {
		return refuse("Give the weight of the product.", "The load for the hopper of %s holds no product.", f.Into)
	}
	var names []string
	var sum measure.Mass
	for _, p := range f.Parts {
		names = append(names, p.Product)
		if err := s.dryAmount(p.Product, p.Amount); err != nil {
			return err
		}
		if k := s.productAt[p.Product]; len(h.Holds) > 0 && h.Holds.Of(int32(k)) == 0 {
			return s.otherInHopper(h, p.Product)
		}
		if sum += measure.Mass(p.Amount.N); sum > h.Room() {
			do := "It is full; log first what it has spread."
			if h.Room() > 0 {
				do = fmt.Sprintf("Give at most %.2f lb, or log first what it has spread.", float64(measure.MulDiv(int64(h.Room()), 100, int64(measure.Pound)))/100)
			}
			return refuse(do, "The hopper of %s holds %.2f of %.2f lb; %.2f lb more do not fit.", f.Into, h.Mass().Pounds(), h.Capacity.Pounds(), sum.Pounds())
		}
	}
	return unique("product", names)
}

// noTank says why a load does not go where it is said to go.
func (s *state) noTank(f *Loaded) error {
	a := s.Applicator(f.Into)
	switch {
	case len(f.Into) == 1:
		return s.noCompartment(f.Into[0])
	case s.plumbing.Hopper(f.Into) != nil:
		return refuse("Leave the volume out and give the weight.", "%s holds dry product in a hopper; %s gal do not go into it.", f.Into, f.Volume.Text())
	case a != nil && !a.Sprays():
		return refuse("Log the spreading alone, or enter its hopper with the rig.", "%s has no hopper in the book: it is filled from the bag as it spreads.", f.Into)
	}
	return refuse(s.tanksHint(), "%q is neither a compartment nor an applicator with a tank.", f.Into)
}

// dryAmount refuses a product that is none, or liquid, and a weight that is none.
func (s *state) dryAmount(product string, a measure.Amount) error {
	p := s.Product(product)
	switch {
	case p == nil:
		return s.noProduct(product)
	case p.Label.Form != measure.Dry:
		return refuse("Log it with an applicator that sprays.", "%s is liquid; it is not put down by weight.", product)
	case a.Kind != measure.Dry:
		return refuse("Give a weight.", "%s is dry, but its amount is a volume.", product)
	case a.N <= 0 || a.N > largestAmount:
		return refuse("Give more than 0, up to 22,000 lb.", "The amount of %s is %s.", product, a.Text())
	}
	return nil
}

// otherInHopper says that a hopper holds something else.
func (s *state) otherInHopper(h *fluid.Hopper, product string) error {
	to := "into waste/NAME"
	if len(h.Holds) == 1 {
		to = "back into package/" + s.products[h.Holds[0].Key].Name + " or " + to
	}
	return refuse("Empty it first, "+to+", and log that.", "The hopper of %s holds %s; %s does not go on top of it.", h.Name, s.hopperWords(h), product)
}

func (s *state) admitSpread(f *Spread) error {
	if err := s.needDay("log a spreading"); err != nil {
		return err
	}
	if err := s.couldSpread(f); err != nil {
		return err
	}
	if h := s.plumbing.Hopper(f.Applicator); f.Product == "" && f.Amount.N > int64(h.Mass()) {
		return refuse("Log what was put in first, or give what really went down.", "The hopper of %s holds %s; %s cannot have come out of it.", f.Applicator, s.hopperWords(h), f.Amount.Text())
	}
	return nil
}

// couldSpread is admission apart from the day: whether the spreading could happen with the rig as it stands.
func (s *state) couldSpread(f *Spread) error {
	lawn := s.Lawn(f.Lawn)
	if lawn == nil {
		return s.noLawn(f.Lawn)
	}
	a := s.Applicator(f.Applicator)
	if a == nil {
		return refuse(s.applicatorsHint(), "There is no applicator %q.", f.Applicator)
	}
	if !a.Spreads() {
		return refuse(s.spreadersHint(), "%s sprays; it has no hopper for dry product.", a.Name)
	}
	for _, z := range f.Zones {
		if _, ok := lawn.Zone(z); !ok {
			return s.noZone(lawn, z)
		}
	}
	if err := unique("zone", f.Zones); err != nil {
		return err
	}
	if f.By != ByArea && f.By != ByWeight {
		return refuse("Write area or weight.", "A spreading is measured by %q, which is neither of the ways.", f.By)
	}
	if f.Area.V <= 0 || f.Area.V > LargestArea {
		return refuse("Give more than 0 sq ft, up to 10 square kilometres.", "The area spread is %s sq ft.", f.Area.V.Text())
	}
	return s.couldCome(f)
}

// couldCome says whether the dry product could come from the hopper and the bag.
func (s *state) couldCome(f *Spread) error {
	h := s.plumbing.Hopper(f.Applicator)
	if f.Product == "" {
		if h == nil || len(h.Holds) < 2 {
			return refuse("Name the product.", "What %s spread is not said.", f.Applicator)
		}
		if a := f.Amount; a.Kind != measure.Dry || a.N <= 0 || a.N > largestAmount {
			return refuse("Give more than 0, up to 22,000 lb.", "The weight spread is %s.", a.Text())
		}
		return nil
	}
	if err := s.dryAmount(f.Product, f.Amount); err != nil {
		return err
	}
	k := int32(s.productAt[f.Product])
	switch {
	case h == nil || len(h.Holds) == 0:
		return nil
	case h.Holds.Of(k) == 0:
		return s.otherInHopper(h, f.Product)
	case len(h.Holds) > 1:
		return refuse("Leave the product out: the weight is then that of the mix.", "The hopper of %s holds %s, mixed; %s alone does not come out of it.", f.Applicator, s.hopperWords(h), f.Product)
	}
	return nil
}

func (s *state) spreadersHint() string {
	var have []string
	for i := range s.rig.Applicators {
		if s.rig.Applicators[i].Spreads() {
			have = append(have, s.rig.Applicators[i].Name)
		}
	}
	if len(have) == 0 {
		return "Enter a spreader with the rig first."
	}
	last := len(have) - 1
	if last == 0 {
		return "Log it with " + have[0] + "."
	}
	return "Log it with " + strings.Join(have[:last], ", ") + " or " + have[last] + "."
}

// admitHopperDump admits what runs out of a hopper: back into the bag that it came from, or to waste.
func (s *state) admitHopperDump(f *Dumped) error {
	kind, n := fluid.Place(f.From).Split()
	h := s.plumbing.Hopper(n)
	if kind != "applicator" || h == nil {
		return refuse("Give gallons, or name the applicator whose hopper it is.", "%s is no hopper; a weight cannot run out of it.", f.From)
	}
	if f.Volume.Known {
		return refuse("Leave one of them out.", "Gallons and a weight are given; the tank and the hopper of %s are emptied one at a time.", n)
	}
	if h.Mass() == 0 {
		return refuse("Name a place that holds some.", "The hopper of %s holds nothing.", n)
	}
	if m := f.Amount.V; m <= 0 || m > h.Mass() {
		return refuse("Give more than 0 and no more than it holds, or leave the weight out for all of it.", "The hopper of %s holds %s; %s cannot run out of it.", n, s.hopperWords(h), measure.DryAmount(m).Text())
	}
	switch to, rest := fluid.Place(f.To).Split(); to {
	case "package":
		if only, _ := s.InHopper(n); only != rest {
			return refuse("Name waste/NAME, or the package that it came from.", "The hopper of %s holds %s, which is not what package/%s holds.", n, s.hopperWords(h), rest)
		}
		return nil
	case "waste", "zone":
		return s.reaches(f.From, f.To, 0)
	}
	return refuse("Name package/PRODUCT, waste/NAME or zone/LAWN/ZONE.", "%q is no place that dry product can go to.", f.To)
}
