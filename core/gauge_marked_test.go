package core

import (
	"math"
	"slices"
	"testing"

	"example.com/tintline/core/measure"
)

func marksOf(b *Book, letter byte) []GaugeMark { return b.RigCompartment(letter).Marks }

func TestMarkedFillsTheChart(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	before := b.Rig()
	for _, m := range []struct {
		mark string
		gal  float64
	}{{"4", 40}, {"12", 140}, {"8", 90}, {"full", 160}, {"0", 0}, {"8.0", 91}} {
		mustEnter(t, b, &Marked{Compartment: 'b', Mark: m.mark, Volume: Known(measure.Gallons(m.gal))})
	}
	want := []GaugeMark{{"0", 0}, {"4", measure.Gallons(40)}, {"8.0", measure.Gallons(91)}, {"12", measure.Gallons(140)}, {"full", measure.Gallons(160)}}
	if got := marksOf(b, 'b'); !slices.Equal(got, want) {
		t.Errorf("the chart is %v", got)
	}
	if len(before.Compartments[1].Marks) != 0 || len(marksOf(b, 'a')) != 0 {
		t.Error("the rig before was changed, or another compartment")
	}
	mustEnter(t, b, &Marked{Compartment: 'b', Mark: "full"})
	if got := marksOf(b, 'b'); !slices.Equal(got, want[:4]) {
		t.Errorf("the chart is %v", got)
	}
	mustEnter(t, b, &GaugeRead{Compartment: 'b', Mark: "8"})
	if v := b.Plumbing().Compartment('b').Liquid.Volume; v != measure.Gallons(91) {
		t.Errorf("b holds %s", v.Text())
	}
	balanced(t, b)
	// A mark moves nothing.
	left := b.Plumbing().Compartment('b').Liquid.Volume
	mustEnter(t, b, &Marked{Compartment: 'b', Mark: "10", Volume: Known(measure.Gallons(120))})
	if b.Plumbing().Compartment('b').Liquid.Volume != left {
		t.Error("a mark moved liquid")
	}
}

func TestMarkedIsStruckAndClonesKeepTheirOwn(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	was := b.StateDigest()
	mustEnter(t, b, &Marked{Compartment: 'b', Mark: "4", Volume: Known(measure.Gallons(40))})
	c := b.Clone()
	mustEnter(t, c, &Marked{Compartment: 'b', Mark: "5", Volume: Known(measure.Gallons(50))})
	if len(marksOf(b, 'b')) != 1 || len(marksOf(c, 'b')) != 2 {
		t.Errorf("%v and %v", marksOf(b, 'b'), marksOf(c, 'b'))
	}
	if b.StateDigest() == was {
		t.Error("the digest does not know of the mark")
	}
	mustEnter(t, b, &Struck{Of: int64(b.Seq())})
	if len(marksOf(b, 'b')) != 0 || b.StateDigest() != was {
		t.Error("the struck mark is still there")
	}
}

// What was read with a meter outlives a rig that is entered without a chart, and no other chart: an entry that brings one is
// believed. A chart that came with the rig goes with it, as it always did.
func TestMarkedAndALaterRig(t *testing.T) {
	start := func() (*Book, *Rig) {
		b := chartBook(t) // b's chart comes with the rig
		mustEnter(t, b, &Marked{Compartment: 'a', Mark: "4", Volume: Known(measure.Gallons(40))})
		mustEnter(t, b, &Marked{Compartment: 'a', Mark: "20", Volume: Known(measure.Gallons(250))})
		rig := *b.Rig()
		rig.Compartments = slices.Clone(rig.Compartments)
		return b, &rig
	}
	b, rig := start()
	measured := marksOf(b, 'a')
	rig.Compartments[0].Marks, rig.Compartments[1].Marks = nil, nil
	mustEnter(t, b, rig)
	if !slices.Equal(marksOf(b, 'a'), measured) || len(marksOf(b, 'b')) != 0 {
		t.Errorf("without charts: %v and %v", marksOf(b, 'a'), marksOf(b, 'b'))
	}
	if rig.Compartments[0].Marks != nil {
		t.Error("the entry itself was changed")
	}
	mustEnter(t, b, rig) // and again
	if !slices.Equal(marksOf(b, 'a'), measured) {
		t.Errorf("without charts, twice: %v", marksOf(b, 'a'))
	}

	b, rig = start() // the same chart leaves it what it is
	mustEnter(t, b, rig)
	without := *rig
	without.Compartments = slices.Clone(rig.Compartments)
	without.Compartments[0].Marks = nil
	mustEnter(t, b, &without)
	if !slices.Equal(marksOf(b, 'a'), measured) {
		t.Errorf("after the same chart: %v", marksOf(b, 'a'))
	}

	b, rig = start() // another chart takes its place
	rig.Compartments[0].Marks = []GaugeMark{{"4", measure.Gallons(44)}}
	mustEnter(t, b, rig)
	if got := marksOf(b, 'a'); len(got) != 1 || got[0].Volume != measure.Gallons(44) {
		t.Errorf("with another chart: %v", got)
	}
	rig.Compartments[0].Marks = nil
	mustEnter(t, b, rig)
	if len(marksOf(b, 'a')) != 0 {
		t.Errorf("a chart that came with the rig outlived it: %v", marksOf(b, 'a'))
	}

	b, rig = start() // a smaller compartment has no marks above its rim
	rig.Compartments[0].Marks, rig.Compartments[0].Capacity = nil, 200*measure.USGallon
	mustEnter(t, b, rig)
	if got := marksOf(b, 'a'); len(got) != 1 || got[0].Mark != "4" {
		t.Errorf("of 200 gal: %v", got)
	}
}

// The fold does not reckon a reading anew: the same journal gives the same book, whatever the chart says by then.
func TestReadingIsBookedAsItWasResolved(t *testing.T) {
	b := chartBook(t)
	got := gauge(t, b, &GaugeRead{Compartment: 'b', Mark: "3"})
	line := EncodeLine(Entry{Seq: 1, What: got}, 0)
	c := chartBook(t)
	mustEnter(t, c, &Marked{Compartment: 'b', Mark: "3", Volume: Known(measure.Gallons(99))})
	if err := enter(c, string(line)); err != nil {
		t.Fatal(err)
	}
	x, y := b.Plumbing().Compartment('b'), c.Plumbing().Compartment('b')
	if x.Liquid.Volume != y.Liquid.Volume || x.ReadBand != y.ReadBand || math.Abs(x.ReadBand.Gallons()-13.408163333538136) > 1e-5 {
		t.Errorf("%s give or take %s, and %s give or take %s", x.Liquid.Volume.Text(), x.ReadBand.Text(), y.Liquid.Volume.Text(), y.ReadBand.Text())
	}
}

// TestGaugeRefusals reads testdata/refusals_gauge.tsv, after a chart with marks read one by one.
func TestGaugeRefusals(t *testing.T) {
	refusals(t, "testdata/refusals_gauge.tsv", chartBook(t), 10)
}
