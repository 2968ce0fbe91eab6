package check

import (
	"sort"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// reaching lists the products that would be put on a zone, empty for any of those ahead: what leaves the nozzle in more than
// a trace, what the mix meant holds, and what is spread.
func (s *situation) reaching(zone string) []int32 {
	if out, known := s.reach[zone]; known {
		return out
	}
	out := s.reachingNow(zone)
	if s.group == nil { // all rules that ask ask this of all zones
		if s.reach == nil {
			s.reach = map[string][]int32{}
		}
		s.reach[zone] = out
	}
	return out
}

func (s *situation) reachingNow(zone string) []int32 {
	seen := map[int32]bool{}
	most := map[int32]float64{} // of a trace
	s.eachParcel(func(z core.Zone, l fluid.Liquid) {
		if zone != "" && z.Name != zone {
			return
		}
		for _, p := range l.Holds {
			if seen[p.Key] {
				continue
			}
			if _, known := most[p.Key]; !known {
				most[p.Key] = s.otherMix(p.Key)
			}
			seen[p.Key] = float64(l.Strength(p.Key)) > most[p.Key]
		}
	})
	if s.meant != nil {
		for _, p := range s.meant.Parts {
			if k, ok := s.b.ProductKey(p.Product); ok {
				seen[k] = true
			}
		}
	}
	for _, k := range s.dryKeys() {
		seen[k] = true
	}
	var out []int32
	for k, yes := range seen {
		if yes {
			out = append(out, k)
		}
	}
	sort.Slice(out, func(i, j int) bool { return out[i] < out[j] })
	return out
}

// ownLimit is a limit of one product's label entry.
type ownLimit struct {
	of *core.Product
	v  float64
}

// ownLimits lists a limit of the products that would go down, the strictest first: the lowest of what must not be passed,
// the highest of what must be reached.
func (s *situation) ownLimits(least bool, limit func(label.Entry) measure.Maybe[float64]) []ownLimit {
	var out []ownLimit
	for _, k := range s.reaching("") {
		p := s.b.ProductByKey(k)
		if l := limit(p.Label); l.Known {
			out = append(out, ownLimit{p, l.V})
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		if least {
			return out[i].v > out[j].v
		}
		return out[i].v < out[j].v
	})
	return out
}

// broken are those of the limits that a figure does not keep, the strictest first.
func broken(limits []ownLimit, figure core.Maybe[float64], least bool) []ownLimit {
	n := 0
	for figure.Known && n < len(limits) && (least && figure.V < limits[n].v || !least && figure.V > limits[n].v) {
		n++
	}
	return limits[:n]
}

// isHerbicide tells whether a product is one, by its kind or by what is known of its actives.
func isHerbicide(e label.Entry) bool {
	return isKind(e, "herbicide")
}

// isKind tells whether a product is of a kind, as herbicide or herbicide_pre, by its label entry or its actives.
func isKind(e label.Entry, kind string) bool {
	if hasPrefixFold(e.Kind, kind) {
		return true
	}
	for _, a := range e.Actives {
		if info, ok := label.FindActive(a.Name); ok && hasPrefixFold(info.Class, kind) {
			return true
		}
	}
	return false
}

func hasPrefixFold(s, prefix string) bool {
	return len(s) >= len(prefix) && strings.EqualFold(s[:len(prefix)], prefix)
}
