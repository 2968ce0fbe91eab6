package say

import (
	"fmt"

	"example.com/tintline/core"
)

func routed(f *core.Routed) string {
	if len(f.Lawns) == 0 {
		return "no visit is planned any more today"
	}
	return "still to do today: " + and(f.Lawns)
}

// visitKinds are the kinds of visit that are said.
var visitKinds = map[string]string{core.CallBack: "call-back", core.First: "first visit", core.Spot: "spot", core.LookOnly: "to look only"}

// VisitKind is a kind of visit in words.
func VisitKind(kind string) string {
	switch kind {
	case "", core.Round:
		return "round"
	case core.LookOnly:
		return "look only"
	}
	return visitKinds[kind]
}

func visitBegun(f *core.VisitBegun) string {
	s := "arrived at " + f.Lawn
	if f.Arrived != "" {
		s += " at " + f.Arrived
	}
	if kind := visitKinds[f.Type]; kind != "" {
		s += ", " + kind
	}
	if f.Cause != "" {
		s += ": " + f.Cause
	}
	return s
}

func carriedOver(f *core.CarriedOver) string {
	s := "carried over: " + f.Lawn
	for i, z := range f.Zones {
		sep := ", "
		if i == 0 {
			sep = ": "
		}
		if z.Area == 0 {
			s += sep + z.Zone + " not owed any more"
			continue
		}
		s += fmt.Sprintf("%s%s %s sq ft", sep, z.Zone, z.Area.Text())
	}
	if f.Until != "" {
		s += " to " + f.Until
	}
	return s + ", " + f.Reason
}

func resumed(f *core.Resumed) string {
	if f.Reason == "" {
		return "went on after the hold"
	}
	return "went on after the hold: " + f.Reason
}
