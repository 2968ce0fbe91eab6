package check

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// zoneGroup is zones that are judged together: those that have the same reason to go on, or none.
type zoneGroup struct {
	zones []string
	went  core.Overridden
}

// perZone asks about one product: of all zones at once, but for those where the operator goes on in spite of what the
// rule says of it. Going on is for one zone, so what stands for the others goes on standing.
func (s *situation) perZone(rule string, product int32, ask func() []Finding) []Finding {
	return s.perZoneOf(rule, s.b.ProductByKey(product).ProductName, ask)
}

// perZoneOf is the same about a product by its name; empty: about all of them together.
func (s *situation) perZoneOf(rule, name string, ask func() []Finding) []Finding {
	var groups []*zoneGroup
next:
	for _, z := range s.zones {
		went, _ := s.b.Overridden(rule, s.lawn.LawnName, name, z.Name)
		for _, g := range groups {
			if g.went.Reason == went.Reason && g.went.Weight == went.Weight {
				g.zones = append(g.zones, z.Name)
				continue next
			}
		}
		groups = append(groups, &zoneGroup{[]string{z.Name}, went})
	}
	var out []Finding
	for _, g := range groups {
		s.group = g
		if _, area := s.judged(); area <= 0 {
			continue
		}
		for _, f := range ask() {
			f.goOn(g.went)
			out = append(out, f)
		}
	}
	s.group = nil
	return out
}

// goOn gives a finding the reason for which the operator goes on in spite of it, if that is meant for its weight.
func (f *Finding) goOn(went core.Overridden) {
	if went.Opens(f.Weight.String()) {
		f.Reason = went.Reason
	}
}

// judges tells whether a zone is among those judged now.
func (s *situation) judges(zone string) bool { return s.group == nil || hasText(s.group.zones, zone) }

// judged is what would be laid on the zones judged now, and their area.
func (s *situation) judged() (v measure.Volume, area measure.Area) {
	for _, p := range s.parts {
		if s.judges(p.Zone.Name) {
			v += p.Volume
		}
	}
	for i, z := range s.zones {
		if s.judges(z.Name) {
			area += s.areas[i]
		}
	}
	return v, area
}

// on is an area in words; it names the zones where not all of them are judged together.
func (s *situation) on(f *Finding) string {
	if s.group == nil || len(s.group.zones) == len(s.zones) {
		return sqft(f.Area)
	}
	return sqft(f.Area) + " of " + strings.Join(f.Zones, " + ")
}

// also adds a zone to those that a finding is about.
func (f *Finding) also(zone string) {
	if !hasText(f.Zones, zone) {
		f.Zones = append(f.Zones, zone)
	}
}

// grasses lists the grasses of the zones ahead, each once, in order.
func (s *situation) grasses() []string {
	var out []string
	for _, z := range s.zones {
		if !hasText(out, z.Grass) {
			out = append(out, z.Grass)
		}
	}
	return out
}
