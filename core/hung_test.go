package core

import (
	"testing"

	"example.com/tintline/core/measure"
)

// twoReels hangs the gun of tinted on one of two hoses.
func twoReels(t *testing.T) *Book {
	t.Helper()
	b := tinted(t)
	r := *b.Rig()
	r.Hoses = append(append([]RigHose(nil), r.Hoses...), RigHose{Name: "short", Volume: measure.Gallons(0.5)})
	r.Applicators = append([]Applicator(nil), r.Applicators...)
	r.Applicators[0].Tips = []Tip{{Name: "wide", Delivery: measure.Rate{V: 3, Kind: measure.Liquid}, Flow: Known(measure.GPM(4))}}
	mustEnter(t, b, &r)
	return b
}

// TestGunOnTheOtherHose: from the entry on it draws through that one, and what the first hose holds stays in it.
func TestGunOnTheOtherHose(t *testing.T) {
	b := twoReels(t)
	changeTo(t, b, 'a', 4)
	reel := b.Plumbing().Hose("reel").Liquid()
	mustEnter(t, b, &Fitted{Applicator: "gun", Hose: "short"})
	if a := b.Applicator("gun"); a.Hose != "short" || a.Delivery.V != 2 {
		t.Fatalf("the gun is %+v", a)
	}
	mustEnter(t, b, &DayOpened{Date: "2026-05-28", Operator: "ann"})
	mustEnter(t, b, &Lawn{LawnName: "77 Fir", Zones: []Zone{{Name: "front", Grass: "tall_fescue", Area: measure.SquareFeet(1000)}}})
	mustEnter(t, b, &Sprayed{Lawn: "77 Fir", Applicator: "gun", Volume: Known(measure.Gallons(3))})
	if now := b.Plumbing().Hose("reel").Liquid(); now.Volume != reel.Volume || len(now.From) != len(reel.From) {
		t.Errorf("the reel held %+v and holds %+v", reel, now)
	}
	// 3 gal through a hose of 0.5 gal: it is full of compartment a, but for what the cell still gives of the first water.
	if now := b.Plumbing().Hose("short").Liquid(); float64(now.From.Of(b.origin('a', ""))) < 0.99*float64(now.Volume) {
		t.Errorf("the short hose holds %+v", now)
	}
	mustEnter(t, b, &Struck{Of: int64(b.Seq()), Also: []int64{int64(b.Seq()) - 3}})
	if a := b.Applicator("gun"); a.Hose != "reel" {
		t.Errorf("struck, and the gun hangs on %s", a.Hose)
	}
}

// TestHoseStaysThroughARigEntry as a tip does, and goes back where the entry says another one by hand.
func TestHoseStaysThroughARigEntry(t *testing.T) {
	entered := func(b *Book) Rig {
		r := *b.entered
		r.Applicators = append([]Applicator(nil), r.Applicators...)
		return r
	}
	for _, c := range []struct {
		what   string
		change func(b *Book) Rig
		hose   string
		other  bool
	}{
		{"as it was entered", func(b *Book) Rig { r := entered(b); r.RigName = "new"; return r }, "short", true},
		{"as it is in force", func(b *Book) Rig { return *b.Rig() }, "short", false},
		{"on a third", func(b *Book) Rig {
			r := entered(b)
			r.Hoses = append(r.Hoses[:2:2], RigHose{Name: "third", Volume: measure.Gallons(0.4)})
			r.Applicators[0].Hose = "third"
			return r
		}, "third", false},
	} {
		b := twoReels(t)
		mustEnter(t, b, &Fitted{Applicator: "gun", Tip: "wide", Hose: "short"})
		if a := b.Applicator("gun"); a.Hose != "short" || a.Delivery.V != 3 {
			t.Fatalf("tip and hose in one entry: %+v", a)
		}
		r := c.change(b)
		mustEnter(t, b, &r)
		if _, other := b.HangsOn("gun"); b.Applicator("gun").Hose != c.hose || other != c.other {
			t.Errorf("%s: it hangs on %s (%v)", c.what, b.Applicator("gun").Hose, other)
		}
	}
}

// TestHungIsInTheDigestOnlyWhereItIs: hung back, the book is as before.
func TestHungIsInTheDigestOnlyWhereItIs(t *testing.T) {
	b := twoReels(t)
	before := b.StateDigest()
	mustEnter(t, b, &Fitted{Applicator: "gun", Hose: "short"})
	if b.StateDigest() == before {
		t.Error("the digest does not know of the other hose")
	}
	mustEnter(t, b, &Fitted{Applicator: "gun", Hose: "reel"})
	if b.StateDigest() != before {
		t.Error("hung back, and the digest is another")
	}
}
