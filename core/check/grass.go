package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// grassRule: the label entry goes first. One that is silent on a grass is a stop, whatever the reference says; one that
// lists a grass which the reference calls injured is asked about with both grounds; the operator's own notes add to it.
// Each parcel is judged at its own strength; what is residue is a matter of traceRule.
func grassRule(s *situation) []Finding {
	var out []Finding
	for _, k := range s.products() {
		out = append(out, s.perZone("grass", k, func() (found []Finding) {
			for _, z := range s.zones {
				if s.judges(z.Name) {
					found = append(found, s.onGrass(k, z)...)
				}
			}
			return s.sameOfMoreZones(found)
		})...)
	}
	for i := range out {
		if out[i].silent {
			out[i].Says += ifListed
			break // once: it is the same for all of them
		}
	}
	return append(out, s.growthUnknown(s.products(), s.judge())...)
}

// otherMix is the strength above which a product in a parcel is no residue of another mix but that mix itself.
func (s *situation) otherMix(k int32) float64 {
	return s.b.Setting(core.ResidueShare) * s.full(k)
}

// onGrass is what there is to say of a product on a zone.
func (s *situation) onGrass(k int32, z core.Zone) []Finding {
	limit := s.otherMix(k)
	var v measure.Volume
	strongest := fluid.Liquid{}
	s.eachParcel(func(at core.Zone, l fluid.Liquid) {
		if at.Name != z.Name || float64(l.Strength(k)) <= limit {
			return
		}
		v += l.Volume
		if l.Strength(k) > strongest.Strength(k) {
			strongest = l
		}
	})
	if v == 0 {
		return nil
	}
	prod := s.b.ProductByKey(k)
	rate := measure.Rate{V: s.dose(strongest, k), Kind: prod.Label.Form}
	var out []Finding
	for _, o := range s.judge().opinions(prod, s.lawn.LawnName, z, core.Known(rate)) {
		f := Finding{
			Weight: o.weight, About: o.about, Product: prod.ProductName, Active: prod.Label.Words(), Grass: z.Grass, Zones: []string{z.Name}, Area: s.cover(v),
			Figured: core.Known(v.Gallons()), Unit: "gal", Ground: o.ground, Source: o.source, Says: o.says, Do: o.do, Part: s.partOf(k, limit), volume: v,
		}
		s.multiples(&f, k, rate.V)
		if o.unlisted || o.weight >= Ask && (f.Part == PartHose || f.Part == PartCell) {
			s.doAboutGrass(&f, o.unlisted)
		}
		if f.Weight == Stop {
			s.stoppedOn = append(s.stoppedOn, onZone{k, z.Name})
		}
		out = append(out, f)
	}
	return out
}

// onZone is a product on a zone.
type onZone struct {
	product int32
	zone    string
}

// sameOfMoreZones makes one finding of those that say the same of several zones, and writes their sentences out.
func (s *situation) sameOfMoreZones(found []Finding) []Finding {
	var out []Finding
next:
	for _, f := range found {
		for i := range out {
			o := &out[i]
			if o.Weight == f.Weight && o.About == f.About && o.Grass == f.Grass && o.Says == f.Says && o.Do == f.Do && o.Part == f.Part {
				o.volume += f.volume
				o.Area += f.Area
				o.Figured = core.Known(o.volume.Gallons())
				if f.ShareOfLabel.Or(0) > o.ShareOfLabel.Or(0) || f.Multiple.Or(0) > o.Multiple.Or(0) {
					o.TimesMix, o.Multiple, o.ShareOfLabel = f.TimesMix, f.Multiple, f.ShareOfLabel
				}
				o.also(f.Zones[0])
				continue next
			}
		}
		out = append(out, f)
	}
	for i := range out {
		f := &out[i]
		if f.Ground == GroundLabel || f.Ground == GroundSetting {
			f.Says = fmt.Sprintf("%s: %s; %s of it would go on %s.", s.partWords(f.Part), f.Says, gal(f.volume), s.on(f))
			continue
		}
		f.Says = fmt.Sprintf("%s: %s would go on %s; %s.", s.partWords(f.Part), gal(f.volume), s.on(f), f.Says) // what the reference says is long
	}
	return out
}

// partOf says where a product comes from that leaves the nozzle.
func (s *situation) partOf(k int32, limit float64) string {
	if s.tank != nil {
		return PartApplicator
	}
	if c := s.supply(); c != nil && float64(c.Liquid.Strength(k)) > limit {
		return PartCompartment
	}
	if h := s.b.Plumbing().Hose(s.with.Hose); h != nil {
		for _, p := range h.Charge {
			if float64(p.Strength(k)) > limit {
				return PartHose
			}
		}
	}
	return PartCell
}

func (s *situation) partWords(part string) string {
	switch part {
	case PartApplicator:
		if s.alone {
			return s.meant.MixName
		}
		return "The tank of " + s.with.Name
	case PartCompartment:
		return "Compartment " + string(s.up.Supply[0])
	case PartCell:
		return "The pump's dead volume"
	}
	return "The hose"
}

// ifListed is what to do where a label entry is silent and the label is not.
const ifListed = " If the label lists it, enter that on the product's page."

func (s *situation) doAboutGrass(f *Finding, unlisted bool) {
	switch f.Part {
	case PartApplicator:
		if s.alone {
			f.Do = anotherMix
			break
		}
		f.Do = fmt.Sprintf("Do not spray from %s here; use another applicator or skip the lawn.", s.with.Name)
	case PartCompartment:
		fits := Fits(s.b, s.lawn.LawnName)
		f.Do = "No compartment holds a mix whose label entries list this grass: skip the lawn."
		if len(fits) > 0 {
			f.Do = fmt.Sprintf("Turn to %c, change over, then spray.", fits[0])
			f.silent = unlisted
			return
		}
	default:
		s.doPush(f)
		s.hoseStopped = s.hoseStopped || f.Weight == Stop
		return
	}
	if unlisted {
		f.Do += ifListed
	}
}

// doPush advises to push the hose through, and how far.
func (s *situation) doPush(f *Finding) {
	c := s.toClean()
	if c == nil {
		f.Do = "Push the hose through before you spray."
		return
	}
	f.PushBack = core.Known(c.PushBack)
	f.Do = pushWords(c)
}

func pushWords(c *Changeover) string {
	if c.Into == 0 {
		words := fmt.Sprintf("Push %s out, into a place that you log, then spray from %c.", gal(c.PushBack), c.To)
		if c.Overflow != nil {
			words += " " + c.Overflow.words()
		}
		return words
	}
	words := fmt.Sprintf("Push %s back into %s", gal(c.Legs[0].Volume), c.Legs[0].Place())
	for _, l := range c.Legs[1:] {
		words += fmt.Sprintf(" and %s into %s", gal(l.Volume), l.Place())
	}
	return words + fmt.Sprintf(", then spray from %c.", c.To)
}

// meantRate is the rate of a product in the mix that is meant to go down.
func (s *situation) meantRate(product string) (float64, bool) {
	if s.meant == nil {
		return 0, false
	}
	r, ok := s.meant.Rate(product)
	return r.V, ok && r.V > 0
}

// called names a product by its actives, or by its name if none is entered.
func called(p *core.Product) string {
	if w := p.Label.Words(); w != "" {
		return w
	}
	return p.ProductName
}

func labelSource(p *core.Product) string {
	if p.Label.Registration == "" {
		return "label entry of " + p.ProductName
	}
	return "label entry of " + p.ProductName + ", " + p.Label.Registration
}
