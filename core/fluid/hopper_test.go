package fluid

import (
	"testing"

	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

// TestHopperKeepsEveryNanogram: pour, sow and empty in any order and amount; all places together stay at nothing.
func TestHopperKeepsEveryNanogram(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := &Plumbing{Hoppers: []Hopper{{Name: "s", Capacity: 1 << 40}, {Name: "r", Capacity: 1 << 40}}, Tanks: []ApplicatorTank{{Name: "r"}}, Outside: Accounts{}}
		bags := map[int32]Place{1: "package/x", 2: "package/y"}
		for range 40 {
			h := &p.Hoppers[rapid.IntRange(0, 1).Draw(t, "hopper")]
			m := measure.Mass(rapid.Int64Range(0, 1<<36).Draw(t, "mass"))
			product := int32(rapid.IntRange(1, 2).Draw(t, "product"))
			before := h.Mass()
			switch rapid.IntRange(0, 3).Draw(t, "move") {
			case 0:
				p.Pour(h, Parts(nil).Plus(Parts{{product, int64(m)}}), bags)
			case 1:
				zone := p.Sow(h, product, m, bags[product])
				p.Outside.Give("zone/l/z", Liquid{Holds: zone})
				if zone.Sum() != int64(m) {
					t.Fatalf("%d of %d went down", zone.Sum(), m)
				}
			case 2:
				zone := p.SowMixed(h, m)
				p.Outside.Give("zone/l/z", Liquid{Holds: zone})
				if before > 0 && zone.Sum() != int64(m) {
					t.Fatalf("%d of %d went down", zone.Sum(), m)
				}
			default:
				if out := p.Empty(h, m, "waste/w"); out.Sum() != int64(min(m, before)) {
					t.Fatalf("%d of %d ran out of %d", out.Sum(), m, before)
				}
			}
			if h.Flows.Left() != h.Mass() || h.Mass() < 0 {
				t.Fatalf("%s holds %d, by its flows %d", h.Name, h.Mass(), h.Flows.Left())
			}
			if s := p.Sum(); !s.Empty() {
				t.Fatalf("all places come to %v", s)
			}
		}
		seen := map[Place]bool{}
		for _, a := range p.Accounts() {
			if seen[a.Place] {
				t.Fatalf("%s twice", a.Place)
			}
			seen[a.Place] = true
		}
	})
}

func TestMixedKeepsTheProportion(t *testing.T) {
	h := &Hopper{Holds: Parts{{1, 200}, {2, 100}}}
	if got := h.Mixed(100); got.Of(1) != 67 || got.Of(2) != 33 {
		t.Errorf("%v", got)
	}
	if got := (&Hopper{}).Mixed(100); got != nil {
		t.Errorf("out of nothing came %v", got)
	}
}
