package core

import (
	"testing"

	"example.com/tintline/core/measure"
)

func TestAboardIsTheSumOfItsPlaces(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	for _, p := range b.Products() {
		all, at := b.Aboard(p.Name)
		var sum int64
		for _, a := range at {
			if a.Amount.N == 0 || a.Amount.Kind != all.Kind {
				t.Errorf("%s at %s: %+v", p.Name, a.Place, a.Amount)
			}
			sum += a.Amount.N
		}
		if sum != all.N {
			t.Errorf("%s: %d in all, its places hold %d", p.Name, all.N, sum)
		}
	}
	before, _ := b.Aboard("warm weed")
	mustEnter(t, b, &Loaded{Into: "a", Volume: measure.Gallons(1), Parts: []LoadPart{{"warm weed", measure.LiquidAmount(measure.Gallons(0.25))}}})
	after, at := b.Aboard("warm weed")
	if got := after.N - before.N; got != int64(measure.Gallons(0.25)) {
		t.Errorf("after a quarter of a gallon %d more is aboard", got)
	}
	if len(at) == 0 || at[0].Place != "compartment/a" {
		t.Errorf("it stands at %v", at)
	}
	if all, at := b.Aboard("no such product"); all.N != 0 || at != nil {
		t.Errorf("an unknown product is aboard: %v %v", all, at)
	}
}

func TestVersionsKeepWhenTheyWereEntered(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	again := *b.Product("warm weed")
	again.Label.Registration = "00000-9"
	mustEnter(t, b, &again)
	h := b.Products()[0]
	if h.Name != "warm weed" || len(h.Versions) != 2 || len(h.Entered) != 2 || h.Entered[1] != b.LastAt() {
		t.Errorf("%s has %d versions, entered at %v; the last entry is of %v", h.Name, len(h.Versions), h.Entered, b.LastAt())
	}
}
