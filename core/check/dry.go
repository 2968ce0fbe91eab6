package check

import (
	"errors"
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// dryOn is how much of a product would go on the zones of a grass; without a grass on all of them.
func (s *situation) dryOn(k int32, grass string) (amount measure.Amount, area measure.Area) {
	amount.Kind = measure.Dry
	for _, part := range s.dry.Zones {
		if (grass == "" || part.Zone.Grass == grass) && s.judges(part.Zone.Name) {
			amount.N += part.Holds.Of(k)
			area += part.Area
		}
	}
	return amount, area
}

func (s *situation) dryPlace() string {
	if s.dry.FromHopper == 0 && s.b.Plumbing().Hopper(s.with.Name) == nil {
		return "The bag for " + s.with.Name
	}
	return "The hopper of " + s.with.Name
}

// dryGrassRule: what its label entry does not list a grass for must not be spread on it.
func dryGrassRule(s *situation) []Finding {
	var out []Finding
	for _, k := range s.dryKeys() {
		out = append(out, s.perZone("grass", k, func() (found []Finding) {
			for _, grass := range s.grasses() {
				if f, wrong := s.dryWrongGrass(k, grass); wrong {
					found = append(found, f)
				}
			}
			return found
		})...)
	}
	return out
}

func (s *situation) dryWrongGrass(k int32, grass string) (Finding, bool) {
	prod := s.b.ProductByKey(k)
	area, zones := s.areaOf(grass)
	if prod.Label.Lists(grass) || len(zones) == 0 {
		return Finding{}, false
	}
	amount, _ := s.dryOn(k, grass)
	f := Finding{
		Weight: Stop, Part: PartApplicator, Product: prod.ProductName, Active: prod.Label.Words(), Grass: grass, Zones: zones, Area: area,
		Figured: core.Known(measure.Mass(amount.N).Pounds()), Unit: "lb", Ground: GroundLabel, Source: labelSource(prod),
		Do: fmt.Sprintf("Do not spread it here: empty %s and load what is listed, or skip the lawn.", s.with.Name),
	}
	much := amount.Text() + " of it"
	if s.noWeight != nil {
		f.Figured, much = core.Maybe[float64]{}, "it"
	} else {
		s.dryMultiples(&f, k)
	}
	f.Says = fmt.Sprintf("%s: %s is not for %s; %s would go on %s.", s.dryPlace(), called(prod), label.GrassWords(grass), much, s.on(&f))
	return f, true
}

// areaOf is the area meant of the zones with a grass.
func (s *situation) areaOf(grass string) (area measure.Area, zones []string) {
	for i, z := range s.zones {
		if z.Grass == grass && s.judges(z.Name) {
			area += s.areas[i]
			zones = append(zones, z.Name)
		}
	}
	return area, zones
}

// dryMultiples sets how much of a product would go down against the mix in the hopper and against the label.
func (s *situation) dryMultiples(f *Finding, k int32) {
	prod := s.b.ProductByKey(k)
	amount, area := s.dryOn(k, "")
	rate := measure.RateOf(amount, area).V + s.earlierOnAny(k)
	if r, ok := s.b.MeantDryRate(s.with.Name, prod.ProductName); ok {
		f.TimesMix = core.Known(rate / r.V)
		f.Multiple = f.TimesMix
	}
	againstLabel(f, prod, rate, s.strictestGrass(k))
}

// earlierOnAny is the most that one of the zones judged now has had of a product in this call (see earlier).
func (s *situation) earlierOnAny(k int32) (most float64) {
	for _, z := range s.zones {
		if s.judges(z.Name) {
			most = max(most, s.earlier(z, k))
		}
	}
	return most
}

// strictestGrass is the one of the grasses judged now of which the label allows least in one application.
func (s *situation) strictestGrass(k int32) string {
	prod, out, least := s.b.ProductByKey(k), "", 0.0
	for _, z := range s.zones {
		if !s.judges(z.Name) {
			continue
		}
		if most := mostOn(prod, z.Grass); out == "" || (most > 0 && (least == 0 || most < least)) {
			out, least = z.Grass, most
		}
	}
	return out
}

// dryDoseRule judges the weight spread against the label's rates and the mix in the hopper, as doseRule does a parcel.
func dryDoseRule(s *situation) []Finding {
	if s.noWeight != nil {
		var p *core.Problem
		errors.As(s.noWeight, &p)
		return []Finding{{
			Weight: Note, Part: PartApplicator, Product: s.dry.Fact.Product, Area: s.area, Unit: "multiple",
			Ground: GroundPractice, Source: "mix and label as entered", Says: p.What, Do: p.Do,
		}}
	}
	var out []Finding
	for _, k := range s.dryKeys() {
		out = append(out, s.perZone("dose", k, func() []Finding {
			if f, found := s.dryTooMuch(k); found {
				return []Finding{f}
			}
			if f, found := s.dryTooLittle(k); found {
				return []Finding{f}
			}
			return s.referenceOnce(k)
		})...)
	}
	return out
}

func (s *situation) dryFinding(k int32) Finding {
	prod := s.b.ProductByKey(k)
	_, area := s.judged()
	f := Finding{
		Part: PartApplicator, Product: prod.ProductName, Active: prod.Label.Words(), Zones: s.group.zones, Area: area,
		Limit: core.Known(1.0), Unit: "multiple", Ground: GroundPractice, Source: "mix as entered",
	}
	s.dryMultiples(&f, k)
	return f
}

func (s *situation) dryTooMuch(k int32) (Finding, bool) {
	prod, f := s.b.ProductByKey(k), s.dryFinding(k)
	most := mostOn(prod, s.strictestGrass(k))
	f.Figured = f.TimesMix
	switch {
	case most > 0 && f.Multiple.V > overLabel:
		f.Weight, f.Ground, f.Source, f.Figured = Stop, GroundLabel, labelSource(prod), f.Multiple
	case most == 0 && f.TimesMix.Or(0) >= doubled:
		f.Weight = Stop
	case f.TimesMix.Or(0) > 1+s.band():
		f.Weight = Ask
	default:
		return f, false
	}
	f.Says = fmt.Sprintf("%s would go down at %s, on %s.", called(prod), strengthWords(&f, most > 0), s.on(&f))
	f.Do = fmt.Sprintf("Spread less: %s on %s would be as meant.", s.meantWords(k, &f), sqft(s.area))
	if earlier := s.earlierOnAny(k); earlier > 0 {
		s.overAgain(&f, k, earlier)
	}
	return f, true
}

// dryTooLittle measures against the mix in the hopper, or the label's lowest rate where there is none.
func (s *situation) dryTooLittle(k int32) (Finding, bool) {
	prod, f := s.b.ProductByKey(k), s.dryFinding(k)
	share, of := f.TimesMix, "the mix"
	if !share.Known {
		share, of = f.ShareOfLabel, "the label's lowest rate"
		f.Ground, f.Source = GroundLabel, labelSource(prod)
	}
	if !share.Known || share.V >= 1-s.band() {
		return f, false
	}
	f.Weight, f.Figured = Note, share
	if share.V < halved {
		f.Weight = Ask
	}
	f.Says = fmt.Sprintf("%s would go down at %s times %s, on %s.", called(prod), measure.Multiple(share.V), of, s.on(&f))
	f.Do = fmt.Sprintf("Spread more: %s on %s would be as meant.", s.meantWords(k, &f), sqft(s.area))
	return f, true
}

// meantWords is the weight of a product that would be as the mix, or the label, means it.
func (s *situation) meantWords(k int32, f *Finding) string {
	prod := s.b.ProductByKey(k)
	r, ok := s.b.MeantDryRate(s.with.Name, prod.ProductName)
	low, _ := prod.Label.RatesFor(s.strictestGrass(k))
	switch most := prod.Label.MostFor(s.strictestGrass(k)); {
	case most.Known && most.V.V > 0 && (!ok || r.V > most.V.V):
		if f.ShareOfLabel.Known && f.ShareOfLabel.V < 1 {
			return low.V.Over(s.area).Text()
		}
		return most.V.Over(s.area).Text()
	case !ok && low.Known:
		return low.V.Over(s.area).Text()
	}
	return r.Over(s.area).Text()
}

// dryEnoughRule: a hopper that does not suffice is filled up from the bag, of which the book knows nothing; one with a
// mix of products cannot be.
func dryEnoughRule(s *situation) []Finding {
	h := s.b.Plumbing().Hopper(s.with.Name)
	if h == nil || s.noWeight != nil || s.dry.FromBag == 0 {
		return nil
	}
	need, missing := measure.Mass(s.dry.Fact.Amount.N), s.dry.FromBag
	does := measure.Area(measure.MulDiv(int64(s.dry.FromHopper), int64(s.area), int64(need)))
	f := Finding{
		Weight: Note, Part: PartApplicator, Product: s.dry.Fact.Product, Area: s.area - does, Figured: core.Known(s.dry.FromHopper.Pounds()),
		Limit: core.Known(need.Pounds()), Unit: "lb", Ground: GroundPractice, Source: "pounds booked",
		Says: fmt.Sprintf("The hopper of %s holds %s; %s needs %s: it ends after %s, and %s more must come from the bag.",
			s.with.Name, pounds(s.dry.FromHopper), s.lawn.LawnName, pounds(need), sqft(does), pounds(missing)),
		Do: fmt.Sprintf("Take at least %s along to fill it up.", pounds(missing)),
	}
	if s.dry.Fact.Product == "" {
		f.Weight = Stop
		f.Says = fmt.Sprintf("The hopper of %s holds %s of a mix; %s needs %s: it ends after %s.", s.with.Name, pounds(s.dry.FromHopper), s.lawn.LawnName, pounds(need), sqft(does))
		f.Do = fmt.Sprintf("Load %s more of the mix first, or treat %s now and log that.", pounds(missing), sqft(does))
	}
	return []Finding{f}
}

func pounds(m measure.Mass) string { return measure.DryAmount(m).Text() }
