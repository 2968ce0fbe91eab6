package check

import (
	"errors"
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// What an applicator with a tank and a hopper is to do in this pass. Empty: all that it is ready for.
const (
	OnlySpray  = "spray"
	OnlySpread = "spread"
)

// ready says what an applicator would lay: liquid, dry product, or both in one pass.
func ready(b *core.Book, a *core.Applicator, in Intent) (wet, dry bool) {
	switch {
	case !a.Sprays():
		return false, true
	case !a.Spreads() || in.Only == OnlySpray:
		return true, false
	case in.Only == OnlySpread:
		return false, true
	}
	h, t := b.Plumbing().Hopper(a.Name), b.Plumbing().Tank(a.Name)
	dry = in.Amount.Known || in.Product != "" || (h != nil && h.Mass() > 0)
	return !dry || in.Volume.Known || t == nil || t.Liquid.Volume > 0, dry
}

// possible refuses an intent that the applicator cannot be meant for.
func (s *situation) possible() error {
	switch in := s.in; {
	case !s.with.Sprays() && (in.Volume.Known || in.Only == OnlySpray):
		return &core.Problem{What: fmt.Sprintf("%s spreads dry product and sprays no liquid.", s.with.Name), Do: "Give pounds, or name an applicator that sprays.", Err: core.ErrRefused}
	case !s.with.Spreads() && (in.Amount.Known || in.Product != "" || in.Only == OnlySpread):
		return &core.Problem{What: fmt.Sprintf("%s sprays; it has no hopper for dry product.", s.with.Name), Do: "Give gallons, or name an applicator that spreads.", Err: core.ErrRefused}
	}
	return nil
}

// OnePass tells whether an applicator would spray and spread at once as it stands.
func OnePass(b *core.Book, applicator string) bool {
	a := b.Applicator(applicator)
	if a == nil {
		return false
	}
	wet, dry := ready(b, a, Intent{})
	return wet && dry
}

// HopperFits tells whether the label entries of all that a hopper holds list every grass of a lawn.
func HopperFits(b *core.Book, applicator, lawn string) bool {
	h, l := b.Plumbing().Hopper(applicator), b.Lawn(lawn)
	if h == nil || l == nil {
		return false
	}
	for _, q := range h.Holds {
		for _, z := range l.Zones {
			if !b.ProductByKey(q.Key).Label.Lists(z.Grass) {
				return false
			}
		}
	}
	return len(h.Holds) > 0
}

// lookDry foresees the spreading. A weight that does not follow from the book is no error: the rest is judged.
func (s *situation) lookDry() error {
	f := &core.Spread{Lawn: s.lawn.LawnName, Applicator: s.with.Name, Product: s.dryProduct(), Area: core.Known(s.area)}
	for _, z := range s.zones {
		f.Zones = append(f.Zones, z.Name)
	}
	if s.in.Amount.Known {
		f.By, f.Amount = core.ByWeight, measure.DryAmount(s.in.Amount.V)
	}
	plan, err := s.b.ForeseeSpread(f)
	if err != nil && !errors.Is(err, core.ErrWeight) {
		return err
	}
	s.dry, s.noWeight = plan, err
	return nil
}

// dryProduct is the product that is meant: the one named, else what the hopper holds (empty: the book says), else what
// the applicator spread last today, else the only one of the mix that was in its hopper.
func (s *situation) dryProduct() string {
	if s.in.Product != "" {
		return s.in.Product
	}
	if one, several := s.b.InHopper(s.with.Name); one != "" || several {
		return ""
	}
	laid := s.b.Day().Laid
	for i := len(laid) - 1; i >= 0; i-- {
		if l := &laid[i]; l.Dry && l.Applicator == s.with.Name && len(l.Holds) == 1 {
			return s.b.ProductByKey(l.Holds[0].Key).ProductName
		}
	}
	if mix := s.b.Mix(s.b.MixInHopper(s.with.Name)); mix != nil && len(mix.Parts) == 1 {
		return mix.Parts[0].Product
	}
	return ""
}

// dryKeys lists the products that would be spread.
func (s *situation) dryKeys() []int32 {
	if s.dry == nil {
		return nil
	}
	if k, ok := s.b.ProductKey(s.dry.Fact.Product); ok {
		return []int32{k}
	}
	var out []int32
	for _, q := range s.b.Plumbing().Hopper(s.with.Name).Holds {
		out = append(out, q.Key)
	}
	return out
}

// planDry adds what would be spread to a plan.
func (s *situation) planDry(p *Plan) {
	if s.dry == nil {
		return
	}
	p.Product = s.dryName()
	if s.noWeight != nil {
		return
	}
	p.Amount = core.Known(s.dry.Fact.Amount)
	p.FromBag = core.Known(s.dry.FromBag)
	if s.b.Plumbing().Hopper(s.with.Name) != nil {
		p.HopperStays = core.Known(s.dry.Stays)
	}
}

// dryName names what would be spread: the product, or the mix in the hopper.
func (s *situation) dryName() string {
	if s.dry.Fact.Product != "" {
		return s.dry.Fact.Product
	}
	if mix := s.b.MixInHopper(s.with.Name); mix != "" {
		return mix
	}
	var names []string
	for _, k := range s.dryKeys() {
		names = append(names, s.b.ProductByKey(k).ProductName)
	}
	return strings.Join(names, " + ")
}
