package check

import (
	"testing"

	"example.com/tintline/core"
)

func TestGoOnIsForOneZoneOfAStop(t *testing.T) {
	for _, tc := range []struct {
		name  string
		f     Finding
		zones []string
	}{
		{"a stop about two zones", Finding{Rule: "grass", Weight: Stop, Zones: []string{"front", "back"}}, []string{"front"}},
		{"an ask about two zones", Finding{Rule: "dose", Weight: Ask, Zones: []string{"front", "back"}}, []string{"front", "back"}},
		{"a stop about the rig", Finding{Rule: "line_up", Weight: Stop}, []string{""}},
	} {
		got := GoOn(tc.f, "418 Alder", "spot only")
		if len(got) != len(tc.zones) {
			t.Errorf("%s: %d entries", tc.name, len(got))
			continue
		}
		for i, f := range got {
			o := f.(*core.Overridden)
			if o.Zone != tc.zones[i] || o.Lawn != "418 Alder" || o.Rule != tc.f.Rule || o.Reason != "spot only" || o.Weight != tc.f.Weight.String() {
				t.Errorf("%s: %+v", tc.name, o)
			}
		}
	}
}
