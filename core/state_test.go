package core

import (
	"strings"
	"testing"

	"example.com/tintline/core/measure"
)

func TestOverridesOfACloneAreItsOwn(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	for range 3 { // so that the list has room for one more behind its end
		mustEnter(t, b, &Overridden{Rule: "grass", Lawn: "77 Fir", Reason: "asked for"})
	}
	c := b.Clone()
	mustEnter(t, b, &Overridden{Rule: "dose", Lawn: "77 Fir", Reason: "the book's"})
	mustEnter(t, c, &Overridden{Rule: "dose", Lawn: "77 Fir", Reason: "the clone's"})
	if went, _ := b.Overridden("dose", "77 Fir", "", ""); went.Reason != "the book's" {
		t.Errorf("the book's reason is now %s", went.Reason)
	}
}

func TestBandGrowsWithWhatIsDrawnAndStartsAgain(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	a := &b.Plumbing().Compartment('a').Tank
	if got, want := b.Band(a), measure.Gallons(3); got != want {
		t.Errorf("after a reading the band is %s, not 1 per cent of 300 gal", got.Text())
	}
	mustEnter(t, b, &Sprayed{Lawn: "77 Fir", Applicator: "gun", Volume: Known(measure.Gallons(100))})
	a = &b.Plumbing().Compartment('a').Tank
	// Root of 3^2 + (3 per cent of 100)^2.
	if got := b.Band(a).Gallons(); got < 4.2425 || got > 4.2428 {
		t.Errorf("after 100 gal the band is %g gal, not 4.2426", got)
	}
	mustEnter(t, b, &Dumped{From: "compartment/a", To: "waste/pad"})
	mustEnter(t, b, &Loaded{Into: "a", Volume: measure.Gallons(50)})
	if got := b.Band(&b.Plumbing().Compartment('a').Tank); got != measure.Gallons(3) {
		t.Errorf("after a load into the empty compartment the band is %s", got.Text())
	}
	mustEnter(t, b, &Setting{GaugeErrorPct, "2"})
	if got := b.SupplyBand(); got != measure.Gallons(6) {
		t.Errorf("with 2 per cent the band is %s", got.Text())
	}
}

func TestMixNameGoesWithTheCompartment(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	mustEnter(t, b, &Loaded{Into: "c", Volume: measure.Gallons(10), Mix: "C", For: "gun"})
	mustEnter(t, b, &Loaded{Into: "c", Volume: measure.Gallons(10)})
	if got := b.MixIn("c"); got != "C" {
		t.Errorf("a top-up with water made the mix %q", got)
	}
	mustEnter(t, b, &Loaded{Into: "c", Volume: measure.Gallons(10), Mix: "W", For: "gun"})
	if got := b.MixIn("c"); got != "C + W" {
		t.Errorf("two mixes together are called %q", got)
	}
	mustEnter(t, b, &Dumped{From: "compartment/c", To: "waste/pad"})
	two := *b.Rig()
	two.Compartments = two.Compartments[:2]
	three := *b.Rig()
	mustEnter(t, b, &two)
	mustEnter(t, b, &three)
	if got := b.MixIn("c"); got != "" {
		t.Errorf("a new compartment holds the mix %q of the one before", got)
	}
}

func TestLineWritesTextsAsTheyAre(t *testing.T) {
	line := string(EncodeLine(Entry{Seq: 1, What: &VisitBegun{Lawn: "A & B <north>"}}, 0))
	if !strings.Contains(line, `"lawn":"A & B <north>"`) {
		t.Error(line)
	}
	if line = string(EncodeLine(Entry{Seq: 1, What: &VisitBegun{Lawn: "x"}}, 9)); !strings.Contains(line, `"struck_by":9`) {
		t.Error(line)
	}
}

func TestKeysNameTheDayAndTheLawn(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	for _, row := range []struct {
		f    Fact
		want string
	}{
		{&Weather{RainFree: Known(2.0)}, "day/2026-05-28"},
		{&VisitBegun{Lawn: "77 Fir"}, "day/2026-05-28 lawn/77 Fir"},
		{&Sprayed{Lawn: "77 Fir", Applicator: "gun"}, "day/2026-05-28 lawn/77 Fir"},
		{&DayOpened{Date: "2026-05-30", Operator: "R. Example"}, "day/2026-05-30"},
	} {
		es, err := b.Prepare("x", Moment{Unix: 1_780_000_000}, row.f)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, k := range es[0].Keys {
			got = append(got, string(k))
		}
		if strings.Join(got, " ") != row.want {
			t.Errorf("%s has the keys %q, not %q", row.f.Name(), got, row.want)
		}
	}
}

func TestLastReadingSaysHowFarOffTheBookWas(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	booked := b.Plumbing().Compartment('b').Liquid.Volume
	mustEnter(t, b, &GaugeRead{Compartment: 'b', Volume: Known(booked - measure.Gallons(5))})
	mustEnter(t, b, &GaugeRead{Compartment: 'b', Volume: Known(booked - measure.Gallons(3))})
	r := b.Day().LastReading('b')
	if r == nil || r.Off() != measure.Gallons(2) || r.At != b.LastAt() {
		t.Errorf("the last reading is %+v", r)
	}
	if got := b.Day().LastReading('c'); got != nil {
		t.Errorf("c was never read: %+v", got)
	}
}
