package core

import (
	"errors"
	"strings"
	"testing"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// seqOf is the number of the last entry of a kind that is in the sum.
func seqOf(t *testing.T, b *Book, name string) uint64 {
	t.Helper()
	since := b.Since()
	for i := len(since) - 1; i >= 0; i-- {
		if since[i].What.Name() == name {
			return since[i].Seq
		}
	}
	t.Fatalf("no %s since the last close", name)
	return 0
}

func mustEnter(t *testing.T, b *Book, f Fact) uint64 {
	t.Helper()
	es, err := b.Prepare("test", Moment{Unix: 1_780_000_000}, f)
	if err != nil {
		t.Fatalf("%+v: %v", f, err)
	}
	if err := b.Apply(es[0]); err != nil {
		t.Fatal(err)
	}
	return es[0].Seq
}

func mustRefuse(t *testing.T, b *Book, f Fact, says string) *Problem {
	t.Helper()
	before, seq := b.StateDigest(), b.Seq()
	_, err := b.Prepare("test", Moment{Unix: 1_780_000_000}, f)
	var p *Problem
	if !errors.As(err, &p) || !strings.Contains(p.What, says) {
		t.Fatalf("%+v says %v and should say %q", f, err, says)
	}
	if b.StateDigest() != before || b.Seq() != seq {
		t.Fatal("a refused strike changed the book")
	}
	return p
}

func TestStrikeListsWhatFallsShort(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	var load uint64
	for _, e := range b.Since() {
		if f, ok := e.What.(*Loaded); ok && f.Into == "a" {
			load = e.Seq
		}
	}
	p := mustRefuse(t, b, &Struck{Of: int64(load)}, "Without entry 10 later entries fall short: 20 (sprayed): Compartment a can give 0.00 gal by the book, give or take 3.00 gal; this takes 11.1 gal; 21 (filled)")
	if !strings.Contains(p.Do, "also 20, 21") {
		t.Errorf("what to do is %q", p.Do)
	}
	mustEnter(t, b, &Struck{Of: int64(load), Also: []int64{20, 21}, Reason: "wrong truck"})
	if a := b.Plumbing().Compartment('a').Liquid; a.Volume != measure.Gallons(180) || len(a.Holds) != 0 {
		t.Errorf("without the load a holds %v; its gauge was read at 180 gal of something unexplained", a)
	}
	if b.StruckBy(20) != b.Seq() {
		t.Errorf("entry 20 was struck by %d", b.StruckBy(20))
	}
	balanced(t, b)
}

func TestInsteadTakesThePlace(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	slip := seqOf(t, b, "sprayed")
	f := *b.Since()[len(b.Since())-4].What.(*Sprayed)
	f.Volume = Known(measure.Gallons(10.1))
	first := mustEnter(t, b, &Struck{Of: int64(slip), Instead: &f})
	twin := play(t, NewBook(1), strings.Replace(setUp, `"volume_gal":11.1`, `"volume_gal":10.1`, 1))
	if b.StateDigest() != twin.StateDigest() {
		t.Error("the corrected book is not the one in which it was right at once")
	}
	mustRefuse(t, b, &Struck{Of: int64(slip)}, "is struck already, by entry 24")

	// The correction was a slip too: its strike is struck, with another fact in the same place.
	f.Volume = Known(measure.Gallons(9.1))
	second := mustEnter(t, b, &Struck{Of: int64(first), Instead: &f})
	twin = play(t, NewBook(1), strings.Replace(setUp, `"volume_gal":11.1`, `"volume_gal":9.1`, 1))
	if b.StateDigest() != twin.StateDigest() {
		t.Error("the twice corrected book is not the one in which it was right at once")
	}
	mustRefuse(t, b, &Struck{Of: int64(first)}, "is struck already")
	third := mustEnter(t, b, &Struck{Of: int64(second)})
	mustRefuse(t, b, &Struck{Of: int64(third)}, "is a strike; what it struck is not brought back")
	var without []string
	for _, l := range strings.Split(setUp, "\n") {
		if !strings.Contains(l, `"volume_gal":11.1`) {
			without = append(without, l)
		}
	}
	if twin = play(t, NewBook(1), strings.Join(without, "\n")); b.StateDigest() != twin.StateDigest() {
		t.Error("with the last correction struck it is not as if nothing had been entered")
	}
}

func TestStrikeOfACorrectionAmongOthers(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	slip := seqOf(t, b, "weather")
	fix := mustEnter(t, b, &Struck{Of: int64(slip), Instead: &Weather{Wind: Known(measure.MPH(3))}})
	mustEnter(t, b, &Struck{Of: int64(seqOf(t, b, "visit_done")), Also: []int64{int64(fix)}})
	if w := b.Weather(); w != nil {
		t.Errorf("the correction was struck too, but the wind is %s", w.Wind.V.Text())
	}
}

func TestWhatAStrikeMayNotDo(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	weather := int64(seqOf(t, b, "weather"))
	for _, row := range []struct {
		f    *Struck
		says string
	}{
		{&Struck{Of: 99}, "There is no entry 99; the last one is 23."},
		{&Struck{Of: 0}, "There is no entry 0"},
		{&Struck{Of: -4}, "There is no entry -4"},
		{&Struck{Of: weather, Also: []int64{99}}, "There is no entry 99"},
		{&Struck{Of: weather, Instead: &Struck{Of: 1}}, "A strike cannot stand in the place of an entry."},
		{&Struck{Of: weather, Instead: &DayClosed{}}, "The close of a day cannot stand in the place of an entry."},
		{&Struck{Of: weather, Instead: &DayOpened{Date: "2026-05-29", Operator: "R. Example"}}, "The opening of a day can only stand in the place of another."},
		{&Struck{Of: weather, Instead: &Weather{Wind: Known(measure.MPH(200))}}, "The wind is 200.0 mph."},
		{&Struck{Of: weather, Instead: &Loaded{Into: "a", Volume: measure.Gallons(500)}}, "500.00 gal more do not fit"},
	} {
		mustRefuse(t, b, row.f, row.says)
	}
	opened := int64(seqOf(t, b, "day_opened"))
	mustEnter(t, b, &Struck{Of: opened, Instead: &DayOpened{Date: "2026-05-27", Operator: "R. Example", Route: []string{"77 Fir"}}})
	if b.Day().Date != "2026-05-27" || len(b.Day().Visits) != 2 {
		t.Errorf("the day is %+v", b.Day())
	}
	mustEnter(t, b, &DayClosed{})
	mustRefuse(t, b, &Struck{Of: weather}, "was written before the last day was closed and can no longer be struck")
}

func TestADayOpenedByMistakeIsOpenAgain(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	before := b.StateDigest()
	weather := int64(seqOf(t, b, "weather"))
	n := mustEnter(t, b, &DayOpened{Date: "2026-06-28", Operator: "R. Example"})
	if b.Day().LeftOpen != "2026-05-28" || !b.Day().Open {
		t.Errorf("the day is %+v", b.Day())
	}
	mustRefuse(t, b, &Struck{Of: weather}, "can no longer be struck")
	mustEnter(t, b, &Struck{Of: int64(n), Reason: "wrong month"})
	if b.StateDigest() != before || b.Day().Date != "2026-05-28" || !b.Day().Open {
		t.Errorf("the day is %+v", b.Day())
	}
	mustEnter(t, b, &DayOpened{Date: "2026-05-29", Operator: "R. Example"})
}

func TestActionIsAllOrNone(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	before := b.StateDigest()
	_, err := b.Prepare("two", Moment{Unix: 1_780_000_000}, &Loaded{Into: "a", Volume: measure.Gallons(100)}, &Loaded{Into: "a", Volume: measure.Gallons(100)})
	if err == nil || b.StateDigest() != before {
		t.Errorf("the second load cannot fit behind the first: %v", err)
	}
	es, err := b.Prepare("two", Moment{Unix: 1_780_000_000}, &Loaded{Into: "a", Volume: measure.Gallons(100)}, &GaugeRead{Compartment: 'a', Volume: Known(measure.Gallons(290))})
	if err != nil || len(es) != 2 || b.StateDigest() != before {
		t.Fatalf("two facts in one action: %v", err)
	}
	if err := b.Apply(es[1]); !errors.Is(err, ErrOrder) {
		t.Errorf("the second before the first: %v", err)
	}
	forged := es[0]
	forged.What = &Loaded{Into: "a", Volume: measure.Gallons(99)}
	if err := b.Apply(forged); !errors.Is(err, ErrChain) || b.StateDigest() != before {
		t.Errorf("an entry with another fact than its digest says: %v", err)
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
}

func TestAnEntrySharesNothingWithTheFactGiven(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	f := &Lawn{LawnName: "new", Zones: []Zone{{Name: "all", Grass: "zoysiagrass", Area: measure.ThousandSquareFeet}}}
	mustEnter(t, b, f)
	before := b.StateDigest()
	f.Zones[0].Area, f.LawnName = 1, "other"
	if b.StateDigest() != before || b.Lawn("new").Area() != measure.ThousandSquareFeet {
		t.Error("changing the fact after it was entered changed the book")
	}
}

func TestRigsOfTwoAndOfSix(t *testing.T) {
	for _, n := range []int{2, 6} {
		b := NewBook(1)
		g := &Rig{RigName: "truck", Hoses: []RigHose{{Name: "reel", Volume: measure.Gallons(2)}}, Applicators: []Applicator{{Name: "gun", Type: Gun, Delivery: perThousand(2)}}}
		for i := range n {
			g.Compartments = append(g.Compartments, RigCompartment{Letter: byte('a' + i), Capacity: measure.Gallons(50)})
		}
		mustEnter(t, b, g)
		for i := range n {
			l := byte('a' + i)
			mustEnter(t, b, &Loaded{Into: string(l), Volume: measure.Gallons(40)})
			mustEnter(t, b, &LinedUp{Supply: []byte{l}, Return: l})
			mustEnter(t, b, &PushedBack{Into: l, Volume: measure.Gallons(3)})
			balanced(t, b)
		}
		last := byte('a' + n - 1)
		for i := range n {
			want := measure.Gallons(40)
			if l := byte('a' + i); l != last && b.Plumbing().Compartment(l).Liquid.Volume != want {
				t.Errorf("%c of %d holds %s", l, n, b.Plumbing().Compartment(l).Liquid.Volume.Text())
			}
		}
		if w := b.Plumbing().Outside[fluid.WaterSupply].Volume; w != -measure.Gallons(float64(40*n+2)) {
			t.Errorf("%s gal of water are in a rig of %d", w.Text(), n)
		}
		mustRefuse(t, b, &Loaded{Into: string(last + 1), Volume: measure.Gallons(1)}, "There is no compartment")
	}
}
