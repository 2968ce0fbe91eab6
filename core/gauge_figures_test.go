package core

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

func gauge(t *testing.T, b *Book, f *GaugeRead) *GaugeRead {
	t.Helper()
	es, err := b.Prepare("test", Moment{Unix: 1_780_000_000}, f)
	if err != nil {
		t.Fatal(err)
	}
	got := es[0].What.(*GaugeRead)
	if err := b.Apply(es[0]); err != nil {
		t.Fatal(err)
	}
	return got
}

// A reading is as good as half the distance between the marks beside it, over the root of 12 (JCGM 100:2008, F.2.2.1), on the
// curve through the marks; the two figures by scipy 1.10.1 (PchipInterpolator).
func TestReadingKnowsItsBand(t *testing.T) {
	for _, row := range []struct {
		f    GaugeRead
		gal  float64 // negative: not known
		ways string
	}{
		{GaugeRead{Mark: "3"}, 13.408163333538136, "between two marks, 1.25 of a mark apart at best"},
		{GaugeRead{Mark: "4.5"}, 18.317515135510956, "at the end, to one side"},
		{GaugeRead{Mark: "red"}, -1, "a sign"},
		{GaugeRead{Mark: "F"}, -1, "a sign"},
		{GaugeRead{Volume: Known(measure.Gallons(150))}, -1, "beyond the marks that are figures"},
		{GaugeRead{Volume: Known(measure.Gallons(130))}, 18.317515135510956, "gallons at a mark"},
		{GaugeRead{Volume: Known(measure.Gallons(61.33506493506493))}, 13.408163333538136, "gallons between two marks"},
		{GaugeRead{Mark: "3", GiveOrTake: Known(measure.Gallons(1))}, 1, "said by hand"},
	} {
		b := chartBook(t)
		f := row.f
		f.Compartment = 'b'
		got := gauge(t, b, &f)
		tank := &b.Plumbing().Compartment('b').Tank
		if row.gal < 0 {
			if got.GiveOrTake.Known || b.Band(tank) != measure.Gallons(1.6) {
				t.Errorf("%s: %+v, band %s", row.ways, got, b.Band(tank).Text())
			}
			continue
		}
		if !got.GiveOrTake.Known || math.Abs(got.GiveOrTake.V.Gallons()-row.gal) > 1e-5 {
			t.Errorf("%s: %g gal, not %g", row.ways, got.GiveOrTake.V.Gallons(), row.gal)
		}
		if b.Band(tank) != got.GiveOrTake.V {
			t.Errorf("%s: the band is %s, the reading's %s", row.ways, b.Band(tank).Text(), got.GiveOrTake.V.Text())
		}
	}
}

func TestBandAfterAReadingGrowsAndEnds(t *testing.T) {
	b := chartBook(t)
	got := gauge(t, b, &GaugeRead{Compartment: 'b', Mark: "3"}).GiveOrTake.V.Gallons()
	tank := func() measure.Volume { return b.Band(&b.Plumbing().Compartment('b').Tank) }
	mustEnter(t, b, &LinedUp{Supply: []byte{'b'}, Return: 'b'})
	mustEnter(t, b, &Sprayed{Lawn: "77 Fir", Applicator: "gun", Volume: Known(measure.Gallons(40))})
	moved := b.Plumbing().Compartment('b').Moved.Gallons()
	if want := math.Hypot(got, 0.03*moved); math.Abs(tank().Gallons()-want) > 1e-6 {
		t.Errorf("after %g gal the band is %g, not %g", moved, tank().Gallons(), want)
	}
	// A reading that knows no band of its own takes the settings' again, and so does a load into the empty compartment.
	mustEnter(t, b, &GaugeRead{Compartment: 'b', Mark: "red"})
	if tank() != measure.Gallons(1.6) {
		t.Errorf("after a sign the band is %s", tank().Text())
	}
	mustEnter(t, b, &GaugeRead{Compartment: 'b', Mark: "3"})
	mustEnter(t, b, &Dumped{From: "compartment/b", To: "waste/pad"})
	mustEnter(t, b, &Loaded{Into: "b", Volume: measure.Gallons(50)})
	if tank() != measure.Gallons(1.6) {
		t.Errorf("after a load the band is %s", tank().Text())
	}
}

// 6 sq ft, 24 in off the middle, 5 per cent: 4.5 gal (own computation).
func TestSlopeMakesAReadingWorse(t *testing.T) {
	b := chartBook(t)
	rig := *b.Rig()
	rig.Compartments = append([]RigCompartment(nil), rig.Compartments...)
	c := &rig.Compartments[1]
	c.Plan, c.GaugeOff = Known(measure.SquareFeet(6)), Known(24*measure.Inch)
	mustEnter(t, b, &rig)
	mustEnter(t, b, &Setting{GaugeSlopePct, "5"})
	got := gauge(t, b, &GaugeRead{Compartment: 'b', Mark: "3"}).GiveOrTake.V.Gallons()
	tilt := math.Sqrt(got*got - 13.408163333538136*13.408163333538136)
	if math.Abs(tilt-4.488) > 0.001 {
		t.Errorf("the slope adds %g gal", tilt)
	}
	mustEnter(t, b, &Setting{GaugeSlopePct, "0"})
	mustEnter(t, b, &Setting{GaugeReadShare, "0.25"})
	if half := gauge(t, b, &GaugeRead{Compartment: 'b', Mark: "3"}).GiveOrTake.V.Gallons(); half > 0.52*13.408 || half < 0.48*13.408 {
		t.Errorf("read twice as finely it is %g gal", half)
	}
}

// A chart of any marks is read without a fall, and what is read between two marks lies between their volumes.
func TestChartsAreReadMonotonously(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := RigCompartment{Letter: 'a', Capacity: LargestVolume}
		at, v := 0, measure.Volume(0)
		for i := range rapid.IntRange(1, 10).Draw(t, "marks") {
			at += rapid.IntRange(1, 500).Draw(t, "figure")
			v += measure.Volume(rapid.Int64Range(1, 400e9).Draw(t, "volume"))
			c.Marks = append(c.Marks, GaugeMark{fmt.Sprintf("%d/100", at), v})
			if i == 2 {
				v++
				c.Marks = append(c.Marks, GaugeMark{"red", v})
			}
		}
		if err := admitMarks(c); err != nil {
			t.Fatal(err)
		}
		before := measure.Volume(-1)
		first := strings.TrimSuffix(c.Marks[0].Mark, "/100")
		var from int
		if _, err := fmt.Sscan(first, &from); err != nil {
			t.Fatal(err)
		}
		for n := from; n <= at; n++ {
			got, err := c.VolumeAt(fmt.Sprintf("%d/100", n))
			if err != nil {
				t.Fatal(err)
			}
			if got < before || got < c.Marks[0].Volume || got > v {
				t.Fatalf("at %d/100 it is %d after %d", n, got, before)
			}
			before = got
		}
		for _, m := range c.Marks {
			if got, err := c.VolumeAt(m.Mark); err != nil || got != m.Volume {
				t.Fatalf("mark %s is %d (%v), not %d", m.Mark, got, err, m.Volume)
			}
		}
	})
}
