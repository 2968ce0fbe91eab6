package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// aim fills in the zones that are left for the applicator in this visit: for what sprays those without liquid, for what
// spreads those without dry product. One that does both takes the zones that lack both first, and then does the one
// that is missing.
func aim(b *core.Book, in Intent) Intent {
	a := b.Applicator(applicatorName(b, in))
	if a == nil {
		in.Zones = Untreated(b)
		return in
	}
	wet, dry := ready(b, a, in)
	if !dry {
		in.Zones = Untreated(b)
		return in
	}
	noWet, noDry := Untreated(b), untreated(b, true)
	if !wet {
		in.Zones = noDry
		return in
	}
	for _, z := range noWet {
		if hasText(noDry, z) {
			in.Zones = append(in.Zones, z)
		}
	}
	switch {
	case len(in.Zones) > 0:
	case len(noWet) > 0:
		in.Zones, in.Only = noWet, OnlySpray
	default:
		in.Zones, in.Only = noDry, OnlySpread
	}
	return in
}

// applicatorName is the one that the intent names, else the first that sprays, else the first of all.
func applicatorName(b *core.Book, in Intent) string {
	if in.With != "" {
		return in.With
	}
	if first := FirstApplicator(b); first != "" || b.Rig() == nil || len(b.Rig().Applicators) == 0 {
		return first
	}
	return b.Rig().Applicators[0].Name
}

// untreated lists the zones that the visit now is for and on which no liquid, or nothing dry, was laid in it.
func untreated(b *core.Book, dry bool) []string {
	v := b.Day().Visiting()
	if v == nil || b.Lawn(v.Lawn) == nil {
		return nil
	}
	laid := map[string]bool{}
	for _, l := range b.Day().LaidAt(v) {
		laid[l.Zone] = laid[l.Zone] || l.Dry == dry
	}
	var out []string
	for _, z := range due(b, v) {
		if !laid[z] {
			out = append(out, z)
		}
	}
	return out
}

// addDry puts the spreading of this pass into the proposal: by itself, or with the spraying.
func (s *situation) addDry(p *Proposal) {
	if s.dry == nil || (s.noWeight != nil && s.wet) {
		return // what goes on is not known: the finding says so, and liquid alone is proposed
	}
	f := &core.Spread{Lawn: s.lawn.LawnName, Zones: s.dry.Fact.Zones, Applicator: s.with.Name, Product: s.dry.Fact.Product, By: core.ByArea}
	if s.in.Amount.Known {
		f.By, f.Amount = core.ByWeight, measure.DryAmount(s.in.Amount.V)
	}
	on := joinZones(f.Zones)
	if s.noWeight != nil {
		*p = Proposal{Act: ActSpread, Words: fmt.Sprintf("type how much %s went on %s", s.dryName(), on), Why: s.noWeight.Error()}
		return
	}
	words := fmt.Sprintf("spread %s of %s on %s", s.dry.Fact.Amount.Text(), s.dryName(), on)
	if !s.wet {
		*p = Proposal{Act: ActSpread, Words: words, Facts: []core.Fact{f}}
		return
	}
	p.Words = fmt.Sprintf("sprayed %s and %s", gal(s.want), words)
	p.Facts = append(p.Facts, f)
}

func joinZones(zones []string) string {
	out := ""
	for i, z := range zones {
		if i > 0 {
			out += " + "
		}
		out += z
	}
	return out
}
