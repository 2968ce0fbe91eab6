package check

import "example.com/tintline/core"

// GoOn are the entries by which the operator goes on in spite of a finding, with what it said. A stop is gone on with
// for one product and one zone at a time, the first of those that it is about; an ask is answered for all of them at once,
// with what else is asked of them.
func GoOn(f Finding, lawn, reason string) []core.Fact {
	var out []core.Fact
	for _, one := range f.All() {
		if one.Reason != "" || one.Weight != f.Weight {
			continue
		}
		zones, products := one.Zones, one.products()
		if len(zones) == 0 {
			zones = []string{""}
		}
		if f.Weight == Stop {
			zones, products = zones[:1], products[:1]
		}
		for _, p := range products {
			for _, z := range zones {
				out = append(out, &core.Overridden{Rule: f.Rule, Lawn: lawn, Product: p, Zone: z, About: one.About, Weight: one.Weight.String(), Said: f.Says, Reason: reason})
			}
		}
		if f.Weight == Stop {
			break
		}
	}
	return out
}

// StandsAgainst is the stop that stands against what was sprayed or spread, if there is one: it is booked all the same, but
// with a reason.
func StandsAgainst(b *core.Book, at core.Moment, f core.Fact) (Finding, bool) {
	es, err := b.Prepare("doubt", at, f)
	if err != nil {
		return Finding{}, false
	}
	var s *situation
	switch f := es[0].What.(type) {
	case *core.Sprayed:
		s, err = lookAtSprayed(b, at, f)
	case *core.Spread:
		s, err = lookAtSpread(b, at, f)
	default:
		return Finding{}, false
	}
	if err != nil {
		return Finding{}, false
	}
	return s.stands()
}

// stands is the first stop that the operator does not go on in spite of.
func (s *situation) stands() (Finding, bool) {
	for _, f := range s.report().Findings {
		if f.Weight == Stop && f.Reason == "" {
			return f, true
		}
	}
	return Finding{}, false
}
