package check

import (
	"errors"
	"fmt"

	"example.com/tintline/core"
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

// dryGrassRule is grassRule of what is spread.
func dryGrassRule(s *situation) []Finding {
	var out []Finding
	for _, k := range s.dryKeys() {
		out = append(out, s.perZone("grass", k, func() (found []Finding) {
			for _, z := range s.zones {
				if s.judges(z.Name) {
					found = append(found, s.dryOnGrass(k, z)...)
				}
			}
			return s.sameOfMoreZonesDry(k, found)
		})...)
	}
	if !s.wet {
		out = append(out, s.growthUnknown(s.dryKeys(), s.dryJudge())...)
	}
	return out
}

// dryOnGrass is what there is to say of a product that is spread on a zone; the sentence is written out later.
func (s *situation) dryOnGrass(k int32, z core.Zone) []Finding {
	prod := s.b.ProductByKey(k)
	var rate core.Maybe[measure.Rate]
	if amount, area := s.dryOn(k, ""); s.noWeight == nil && area > 0 {
		rate = core.Known(measure.RateOf(amount, area))
	}
	var out []Finding
	for _, o := range s.dryJudge().opinions(prod, s.lawn.LawnName, z, rate) {
		f := Finding{
			Weight: o.weight, About: o.about, Part: PartApplicator, Product: prod.ProductName, Active: prod.Label.Words(), Grass: z.Grass, Zones: []string{z.Name},
			Unit: "lb", Ground: o.ground, Source: o.source, Says: o.says, Do: o.do,
		}
		if o.unlisted {
			f.Do = fmt.Sprintf("Do not spread it here: empty %s and load what is listed, or skip the lawn.", s.with.Name) + ifListed
		}
		out = append(out, f)
	}
	return out
}

// sameOfMoreZonesDry makes one finding of those that say the same of several zones, and writes their sentences out.
func (s *situation) sameOfMoreZonesDry(k int32, found []Finding) []Finding {
	var out []Finding
next:
	for _, f := range found {
		for i := range out {
			if o := &out[i]; o.Weight == f.Weight && o.About == f.About && o.Grass == f.Grass && o.Says == f.Says && o.Do == f.Do {
				o.also(f.Zones[0])
				continue next
			}
		}
		out = append(out, f)
	}
	for i := range out {
		f := &out[i]
		amount := measure.Amount{Kind: measure.Dry}
		for _, part := range s.dry.Zones {
			if hasText(f.Zones, part.Zone.Name) {
				amount.N += part.Holds.Of(k)
			}
		}
		for j, z := range s.zones {
			if hasText(f.Zones, z.Name) {
				f.Area += s.areas[j]
			}
		}
		much := "it"
		if s.noWeight == nil {
			f.Figured, much = core.Known(measure.Mass(amount.N).Pounds()), amount.Text()+" of it"
			s.dryMultiples(f, k)
		}
		f.Says = fmt.Sprintf("%s: %s; %s would go on %s.", s.dryPlace(), f.Says, much, s.on(f))
	}
	return out
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
