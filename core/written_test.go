package core

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"example.com/tintline/core/measure"
)

func TestWrittenTellsWhatBecameOfEach(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	push := mustEnter(t, b, &PushedBack{Into: 'b', Volume: measure.Gallons(1)})
	first := mustEnter(t, b, &Struck{Of: int64(push), Instead: &PushedBack{Into: 'b', Volume: measure.Gallons(2)}})
	stands := func(seq uint64) Fact {
		for _, w := range b.Written() {
			if w.Seq == seq {
				return w.Stands
			}
		}
		t.Fatalf("no entry %d", seq)
		return nil
	}
	if f, ok := stands(first).(*PushedBack); !ok || f.Volume != measure.Gallons(2) || stands(push) != nil {
		t.Errorf("after the first: %+v, %+v", stands(push), stands(first))
	}
	second := mustEnter(t, b, &Struck{Of: int64(first), Instead: &PushedBack{Into: 'b', Volume: measure.Gallons(3)}})
	if f, ok := stands(second).(*PushedBack); !ok || f.Volume != measure.Gallons(3) || stands(first) != nil || stands(push) != nil {
		t.Errorf("after the second: %+v, %+v, %+v", stands(push), stands(first), stands(second))
	}
	third := mustEnter(t, b, &Struck{Of: int64(second)})
	if stands(third) != nil || stands(second) != nil {
		t.Errorf("after the third: %+v, %+v", stands(second), stands(third))
	}
	// the marks worked out from the entries alone are those of the book
	var list []Entry
	for _, w := range b.Written() {
		list = append(list, w.Entry)
	}
	marks := StruckIn(list)
	for _, w := range b.Written() {
		if marks[w.Seq] != w.StruckBy {
			t.Errorf("entry %d: struck by %d in the list, by %d in the book", w.Seq, marks[w.Seq], w.StruckBy)
		}
	}
}

func TestWithLaterStrikesAllThatFallsShort(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	var load uint64
	for _, e := range b.Since() {
		if f, ok := e.What.(*Loaded); ok && f.Into == "a" {
			load = e.Seq
		}
	}
	_, err := b.Prepare("", Moment{Unix: 1_780_000_000}, &Struck{Of: int64(load)})
	var fall *LaterFall
	if !errors.As(err, &fall) || !errors.Is(err, ErrRefused) {
		t.Fatalf("refused with %v", err)
	}
	all, err := b.WithLater(&Struck{Of: int64(load)}, Moment{Unix: 1_780_000_000})
	if err != nil || !reflect.DeepEqual(all.Also, fall.Also) {
		t.Fatalf("%+v, %v", all, err)
	}
	mustEnter(t, b, all)
	if sum := b.Plumbing().Sum(); sum.Volume != 0 || len(sum.Holds) != 0 {
		t.Errorf("the places sum to %v", sum)
	}
	if _, err := b.WithLater(&Struck{Of: int64(load)}, Moment{Unix: 1_780_000_000}); err == nil {
		t.Error("it was struck twice")
	}
}

// TestLaterFallNamesTheStrike: what a strike put in the place of an entry is taken away by striking that strike.
func TestLaterFallNamesTheStrike(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	load := seqOf(t, b, "loaded")
	f := &Dumped{Volume: Known(measure.Gallons(10)), To: "waste/yard"}
	for _, e := range b.Since() {
		if l, ok := e.What.(*Loaded); ok && len(l.Into) == 1 {
			load, f.From = e.Seq, "compartment/"+l.Into
		}
	}
	dump := mustEnter(t, b, f)
	more := *f
	more.Volume = Known(measure.Gallons(11))
	right := mustEnter(t, b, &Struck{Of: int64(dump), Instead: &more})
	all, err := b.WithLater(&Struck{Of: int64(load)}, Moment{Unix: 1_780_000_000})
	if err != nil {
		t.Fatal(err)
	}
	if !contains(all.Also, int64(right)) || contains(all.Also, int64(dump)) {
		t.Errorf("the strike of %d takes %v with it; %d put a fact in the place of %d", load, all.Also, right, dump)
	}
	mustEnter(t, b, all)
}

func TestStrikeIsFoundWithItsLawns(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	keys := func(f Fact) string {
		var out []string
		for _, k := range b.Keys(f, Moment{Unix: 1_780_000_000}) {
			out = append(out, string(k))
		}
		return strings.Join(out, " ")
	}
	note := func(lawn string) int64 { return int64(mustEnter(t, b, &Noted{Lawn: lawn, Text: "x"})) }
	fir, alder, fir2 := note("77 Fir"), note("418 Alder"), note("77 Fir")
	mustEnter(t, b, &Lawn{LawnName: "third", Zones: []Zone{{Name: "all", Grass: "tall_fescue", Area: measure.SquareFeet(100)}}})
	third := note("third")
	weather := int64(mustEnter(t, b, &Weather{RainFree: Known(2.0)}))
	for _, tc := range []struct {
		f    *Struck
		want string
	}{
		{&Struck{Of: fir}, "day/2026-05-28 lawn/77 Fir"},
		{&Struck{Of: fir, Also: []int64{fir2}}, "day/2026-05-28 lawn/77 Fir"},
		{&Struck{Of: fir, Also: []int64{alder}}, "day/2026-05-28 lawn/77 Fir lawn/418 Alder"},
		{&Struck{Of: fir, Instead: &Noted{Lawn: "418 Alder", Text: "y"}}, "day/2026-05-28 lawn/77 Fir lawn/418 Alder"},
		{&Struck{Of: fir, Also: []int64{alder, third}}, "day/2026-05-28 lawns"},
		{&Struck{Of: weather}, "day/2026-05-28"},
	} {
		if got := keys(tc.f); got != tc.want {
			t.Errorf("%+v: %s, not %s", tc.f, got, tc.want)
		}
	}
	strike := int64(mustEnter(t, b, &Struck{Of: fir, Instead: &Noted{Lawn: "418 Alder", Text: "y"}}))
	if got := keys(&Struck{Of: strike}); got != "day/2026-05-28 lawn/418 Alder" {
		t.Errorf("the strike of what a strike put in: %s", got)
	}
}
