package audit

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/testdata/demo"
	"pgregory.net/rapid"
)

// TestTheLedgerIsTheSumOfAllPlaces: what it keeps from entry to entry comes to the same as adding all places up anew.
func TestTheLedgerIsTheSumOfAllPlaces(t *testing.T) {
	begun := core.NewBook(1)
	for _, line := range strings.Split(strings.TrimSpace(demo.Journal), "\n") {
		l, err := core.DecodeLine([]byte(line))
		if err != nil {
			t.Fatal(err)
		}
		es, err := begun.Prepare("x", l.At.V, l.Fact)
		if err != nil {
			t.Fatal(err)
		}
		if err := begun.Apply(es[0]); err != nil {
			t.Fatal(err)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		b, l := begun.Clone(), ledger{}
		at := begun.LastAt()
		for range rapid.IntRange(1, 12).Draw(t, "entries") {
			at.Unix += 60
			f := anyMove(t, b)
			es, err := b.Prepare("x", at, f)
			if err != nil {
				continue
			}
			if err := b.Apply(es[0]); err != nil {
				t.Fatal(err)
			}
			// A defect of the fold on the way: the ledger must see what is there and nothing else.
			if rapid.IntRange(0, 5).Draw(t, "lose") == 0 {
				b.Plumbing().Compartments[0].Liquid.Volume--
			}
			if got, want := l.sum(b, es[0].What), sumOf(b.Plumbing().Outside, b.Plumbing().Outside.Places()); true {
				for _, a := range b.Plumbing().Inside() {
					want.add(int64(a.Volume), a.Products, 1)
				}
				if !got.same(want) {
					t.Fatalf("after %T: %+v, and all places come to %+v", es[0].What, got, want)
				}
			}
		}
	})
}

// anyMove draws a fact that moves liquid, strikes one that did, or names a lawn.
func anyMove(t *rapid.T, b *core.Book) core.Fact {
	gal := func(most float64) measure.Volume {
		return measure.Gallons(rapid.Float64Range(0.01, most).Draw(t, "gal"))
	}
	lawns := b.Lawns()
	lawn := lawns[rapid.IntRange(0, len(lawns)-1).Draw(t, "lawn")]
	letter := rapid.SampledFrom([]byte("abc"))
	switch rapid.IntRange(0, 9).Draw(t, "fact") {
	case 0, 1:
		if v := b.Day().Visiting(); v != nil {
			return &core.Sprayed{Lawn: v.Lawn, Applicator: "gun", By: core.ByGallons, Volume: core.Known(gal(12))}
		}
		return &core.VisitBegun{Lawn: lawn.LawnName}
	case 2:
		if v := b.Day().Visiting(); v != nil {
			return &core.VisitDone{Lawn: v.Lawn}
		}
		return &core.VisitBegun{Lawn: lawn.LawnName}
	case 3:
		c := letter.Draw(t, "supply")
		return &core.LinedUp{Supply: []byte{c}, Return: letter.Draw(t, "return")}
	case 4:
		return &core.PushedBack{Into: letter.Draw(t, "into"), Volume: gal(3)}
	case 5:
		to := []string{"waste/pad", fmt.Sprintf("zone/%s/%s", lawn.LawnName, lawn.Zones[0].Name), "waste/pail"}
		return &core.Dumped{From: "compartment/" + string(letter.Draw(t, "from")), Volume: core.Known(gal(2)), To: rapid.SampledFrom(to).Draw(t, "to")}
	case 6:
		return &core.Loaded{Into: string(letter.Draw(t, "into")), Volume: gal(10)}
	case 7:
		return &core.GaugeRead{Compartment: letter.Draw(t, "compartment"), Volume: core.Known(gal(90))}
	case 8:
		since := b.Since()
		return &core.Struck{Of: int64(since[rapid.IntRange(0, len(since)-1).Draw(t, "of")].Seq)}
	}
	return &core.Filled{Applicator: "ride-on", Volume: gal(3)}
}
