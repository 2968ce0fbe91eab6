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

func carriedOver(f *core.CarriedOver) string {
	s := "carried over: " + f.Lawn
	for i, z := range f.Zones {
		sep := ", "
		if i == 0 {
			sep = ": "
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
