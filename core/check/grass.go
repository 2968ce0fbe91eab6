package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// grassRule: a product must not reach a grass that its label entry does not list. Each parcel is judged at
// its own strength: as soon as it holds more of the product than the share that still counts as clean
// (setting clean_not_allowed), it is a stop. A label entry that lists no grass at all lists none of them.
func grassRule(s *situation) []Finding {
	var out []Finding
	for _, k := range s.products() {
		out = append(out, s.perZone("grass", k, func() (found []Finding) {
			for _, grass := range s.grasses() {
				if s.b.ProductByKey(k).Label.Lists(grass) {
					continue
				}
				if f, wrong := s.wrongGrass(k, grass); wrong {
					found = append(found, f)
				}
			}
			return found
		})...)
	}
	return out
}

// grasses lists the grasses of the zones ahead, each once, in order.
func (s *situation) grasses() []string {
	var out []string
	seen := map[string]bool{}
	for _, z := range s.zones {
		if !seen[z.Grass] {
			seen[z.Grass] = true
			out = append(out, z.Grass)
		}
	}
	return out
}

// trace is the strength up to which a product that is not allowed counts as gone: the share that the setting
// leaves of the old liquid, above what the compartment itself holds of it if that is no more than such a share.
func (s *situation) trace(product int32) float64 {
	share := (1 - s.b.Setting(core.CleanNotAllowed)) * s.full(product)
	if c := s.supply(); c != nil {
		if own := s.supplied(product, c); own <= share {
			return own + float64(share*slack)
		}
	}
	return share * slack
}

func (s *situation) wrongGrass(k int32, grass string) (Finding, bool) {
	limit := s.trace(k)
	var v measure.Volume
	var f Finding
	strongest := fluid.Liquid{}
	s.eachParcel(func(z core.Zone, l fluid.Liquid) {
		if z.Grass != grass || float64(l.Strength(k)) <= limit {
			return
		}
		v += l.Volume
		f.also(z.Name)
		if l.Strength(k) > strongest.Strength(k) {
			strongest = l
		}
	})
	if v == 0 {
		return Finding{}, false
	}
	prod := s.b.ProductByKey(k)
	f = Finding{
		Weight: Stop, Product: prod.ProductName, Active: prod.Label.Words(), Grass: grass, Zones: f.Zones, Area: s.cover(v),
		Figured: core.Known(v.Gallons()), Unit: "gal", Ground: GroundLabel, Source: labelSource(prod),
	}
	s.multiples(&f, k, s.dose(strongest, k))
	f.Part = s.partOf(k, limit)
	f.Says = fmt.Sprintf("%s: %s is not for %s; %s of it would go on %s.", s.partWords(f.Part), called(prod), label.GrassWords(grass), gal(v), s.on(&f))
	s.doAboutGrass(&f)
	return f, true
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
		return "The tank of " + s.with.Name
	case PartCompartment:
		return "Compartment " + string(s.up.Supply[0])
	case PartCell:
		return "The pump's dead volume"
	}
	return "The hose"
}

func (s *situation) doAboutGrass(f *Finding) {
	switch f.Part {
	case PartApplicator:
		f.Do = fmt.Sprintf("Do not spray from %s here; use another applicator or skip the lawn.", s.with.Name)
	case PartCompartment:
		fits := Fits(s.b, s.lawn.LawnName)
		if len(fits) == 0 {
			f.Do = "No compartment holds a mix whose label entries list this grass: skip the lawn."
			return
		}
		f.Do = fmt.Sprintf("Turn to %c, change over, then spray.", fits[0])
	default:
		c := s.toClean()
		if c == nil {
			f.Do = "Push the hose through before you spray."
			return
		}
		f.PushBack = core.Known(c.PushBack)
		f.Do = pushWords(c)
		s.hoseStopped = true
	}
}

func pushWords(c *Changeover) string {
	if c.Into == 0 {
		return fmt.Sprintf("Push %s out, into a place that you log, then spray from %c.", gal(c.PushBack), c.To)
	}
	words := fmt.Sprintf("Push %s back into %c", gal(c.Legs[0].Volume), c.Legs[0].Into)
	for _, l := range c.Legs[1:] {
		words += fmt.Sprintf(" and %s into %c", gal(l.Volume), l.Into)
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
