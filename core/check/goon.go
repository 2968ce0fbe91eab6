package check

import "example.com/tintline/core"

// GoOn are the entries by which the operator goes on in spite of a finding, with what it said. A stop is gone on with
// for one zone at a time, the first of those that it is about; an ask is answered for all of them at once.
func GoOn(f Finding, lawn, reason string) []core.Fact {
	went := core.Overridden{Rule: f.Rule, Lawn: lawn, Product: f.Product, About: f.About, Weight: f.Weight.String(), Said: f.Says, Reason: reason}
	zones := f.Zones
	switch {
	case len(zones) == 0:
		zones = []string{""}
	case f.Weight == Stop:
		zones = zones[:1]
	}
	out := make([]core.Fact, 0, len(zones))
	for _, z := range zones {
		one := went
		one.Zone = z
		out = append(out, &one)
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
