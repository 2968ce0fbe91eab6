package check

import "example.com/tintline/core"

// GoOn are the entries by which the operator goes on in spite of a finding, with what it said. A stop is gone on with
// for one zone at a time, the first of those that it is about; an ask is answered for all of them at once.
func GoOn(f Finding, lawn, reason string) []core.Fact {
	went := core.Overridden{Rule: f.Rule, Lawn: lawn, Product: f.Product, Weight: f.Weight.String(), Said: f.Says, Reason: reason}
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
