package core

import (
	"errors"
	"math"
	"os"
	"strings"
	"testing"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// refused enters a line that must be refused and returns the problem; the book must be as it was.
func refused(t *testing.T, b *Book, line string) *Problem {
	t.Helper()
	before, seq, digest := b.StateDigest(), b.Seq(), b.Digest()
	err := enter(b, line)
	var p *Problem
	if !errors.As(err, &p) || !errors.Is(err, ErrRefused) {
		t.Fatalf("%s\nsays %v, which is no refusal", line, err)
	}
	if b.StateDigest() != before || b.Seq() != seq || b.Digest() != digest {
		t.Fatalf("%s\nwas refused and changed the book", line)
	}
	for _, s := range []string{p.What, p.Do} {
		if s == "" || !strings.HasSuffix(s, ".") || strings.Contains(s, "..") || strings.Contains(s, "%!") {
			t.Errorf("%s\nsays %q, which is no sentence", line, s)
		}
	}
	return p
}

// TestRefusals reads testdata/refusals.tsv: a row for each rule of admission, with the line, what is said and
// what to do. The sentences are read by people: look at them when they change.
func TestRefusals(t *testing.T) {
	refusals(t, "testdata/refusals.tsv", play(t, NewBook(1), setUp), 130)
}

// refusals enters each line of a file into a book and holds what is said.
func refusals(t *testing.T, file string, b *Book, atLeast int) {
	t.Helper()
	raw, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for _, row := range strings.Split(strings.TrimSpace(string(raw)), "\n") {
		if strings.HasPrefix(row, "#") {
			continue
		}
		f := strings.Split(strings.ReplaceAll(row, "{facts}", strings.Join(FactNames(), ", ")), "\t")
		if len(f) != 4 {
			t.Fatalf("row %q has %d fields", row, len(f))
		}
		if p := refused(t, b, f[1]); p.What != f[2] || p.Do != f[3] {
			t.Errorf("%s: it says\n%s\n%s\nand should say\n%s\n%s", f[0], p.What, p.Do, f[2], f[3])
		}
		rows++
	}
	if rows < atLeast {
		t.Errorf("only %d rows", rows)
	}
}

// TestRefusalsInOtherStates has what cannot happen in a book without a rig or a day, or with a visit begun.
func TestRefusalsInOtherStates(t *testing.T) {
	set := strings.Split(strings.TrimSpace(setUp), "\n")
	empty, rig, closed, visiting, dry := "", strings.Join(set[:1], "\n"), setUp+`{"fact":"day_closed"}`, strings.Join(set[:14], "\n"), setUp+`{"fact":"lined_up","supply":[]}`
	for _, row := range []struct{ state, line, says string }{
		{empty, `{"fact":"loaded","into":"a","volume_gal":1}`, "The book has no rig yet."},
		{empty, `{"fact":"loaded","into":"gun","volume_gal":1}`, "is neither a compartment nor an applicator"},
		{empty, `{"fact":"lined_up","supply":["a"]}`, "The book has no rig yet."},
		{empty, `{"fact":"pushed_back","into":"a","volume_gal":1}`, "The book has no rig yet."},
		{empty, `{"fact":"gauge_read","compartment":"a","volume_gal":1}`, "The book has no rig yet."},
		{empty, `{"fact":"filled","applicator":"gun","volume_gal":1}`, `There is no applicator "gun".`},
		{empty, `{"fact":"dumped","from":"cell","to":"waste/pad"}`, "cell holds nothing."},
		{empty, `{"fact":"day_closed"}`, "No day is open, so you cannot close it."},
		{rig, `{"fact":"visit_begun","lawn":"77 Fir"}`, "No day is open, so you cannot begin a visit."},
		{rig, `{"fact":"visit_skipped","lawn":"77 Fir","reason":"x"}`, "No day is open, so you cannot skip a visit."},
		{rig, `{"fact":"visit_done","lawn":"77 Fir"}`, "No day is open, so you cannot end a visit."},
		{rig, `{"fact":"sprayed","lawn":"77 Fir","applicator":"gun"}`, "No day is open, so you cannot log a spraying."},
		{rig, `{"fact":"overridden","rule":"grass","lawn":"77 Fir","reason":"x"}`, "No day is open, so you cannot go on in spite of a finding."},
		{rig, `{"fact":"loaded","into":"a","volume_gal":1,"mix":"W","for":"gun"}`, `There is no mix "W" in the book.`},
		{rig, `{"fact":"routed"}`, "No day is open, so you cannot change the visits."},
		{rig, `{"fact":"held","cause":"wind"}`, "No day is open, so you cannot hold it."},
		{rig, `{"fact":"resumed"}`, "No day is open, so you cannot go on with it."},
		{closed, `{"fact":"day_closed"}`, "No day is open, so you cannot close it."},
		{closed, `{"fact":"day_opened","date":"2026-05-28","operator":"R. Example"}`, "2026-05-28 was opened already"},
		{closed, `{"fact":"struck","of":20}`, "can no longer be struck"},
		{visiting, `{"fact":"visit_begun","lawn":"418 Alder"}`, "The visit at 77 Fir is not ended yet."},
		{dry, `{"fact":"sprayed","lawn":"77 Fir","applicator":"gun"}`, "No compartment is open to the pump, so it runs dry."},
		{dry, `{"fact":"filled","applicator":"ride-on","volume_gal":1}`, "No compartment is open to the pump, so it runs dry."},
		{dry, `{"fact":"pushed_back","into":"a","volume_gal":1}`, "No compartment is open to the pump, so it runs dry."},
	} {
		b := NewBook(1)
		if row.state != "" {
			play(t, b, row.state)
		}
		if p := refused(t, b, row.line); !strings.Contains(p.What, row.says) {
			t.Errorf("%s\nsays %s\nand should say %s", row.line, p.What, row.says)
		}
	}
}

func TestDrawBeyondTheBandAsksForAGauge(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	for _, line := range []string{
		`{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","volume_gal":190}`,
		`{"fact":"pushed_back","into":"b","volume_gal":190}`,
		`{"fact":"sprayed","lawn":"77 Fir","applicator":"ride-on","volume_gal":6}`,
	} {
		if p := refused(t, b, line); !errors.Is(p, ErrReadGauge) {
			t.Errorf("%s does not ask for a reading", line)
		}
	}
	if p := refused(t, b, `{"fact":"loaded","into":"a","volume_gal":300}`); errors.Is(p, ErrReadGauge) {
		t.Error("a load asks for a reading as a draw does")
	}
}

func TestDrawWithinTheBandIsBooked(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	a := b.Plumbing().Compartment('a')
	have, band := a.Drawable(), b.Band(&a.Tank)
	strength := a.Liquid.Strength(0)
	before := b.Plumbing().Outside[fluid.Unexplained].Volume
	over := band / 2
	mustEnter(t, b, &Sprayed{Lawn: "77 Fir", Applicator: "gun", Volume: Known(have + over)})
	a = b.Plumbing().Compartment('a')
	if a.Liquid.Volume != a.Heel {
		t.Errorf("a holds %s, not its heel", a.Liquid.Volume.Text())
	}
	if got := before - b.Plumbing().Outside[fluid.Unexplained].Volume; got != over {
		t.Errorf("the unexplained gave %s, not %s", got.Text(), over.Text())
	}
	if d := float64(a.Liquid.Strength(0) - strength); d > 1e-9 || d < -1e-9 {
		t.Errorf("the strength went from %g to %g", float64(strength), float64(a.Liquid.Strength(0)))
	}
	balanced(t, b)
}

// TestADrainedHoseIsFilledFirst: what fills the hose must be there too.
func TestADrainedHoseIsFilledFirst(t *testing.T) {
	b := play(t, NewBook(1), setUp+`{"fact":"dumped","from":"hose/reel","to":"waste/pad"}`)
	a := b.Plumbing().Compartment('a')
	hose := b.Plumbing().Hose("reel").Size
	p := refused(t, b, `{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","volume_gal":180}`)
	if want := (measure.Gallons(180) + hose).Text(); !strings.Contains(p.What, "this takes "+want+" gal") {
		t.Errorf("it says %s; 180 gal and the hose's %s are needed", p.What, hose.Text())
	}
	before := a.Liquid.Volume
	mustEnter(t, b, &Sprayed{Lawn: "77 Fir", Applicator: "gun", Volume: Known(measure.Gallons(10))})
	if took := before - b.Plumbing().Compartment('a').Liquid.Volume; took != measure.Gallons(10)+hose {
		t.Errorf("10 gal took %s", took.Text())
	}
}

func TestWhatCannotBeStoredIsRefused(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	nan := math.NaN()
	for _, row := range []struct {
		f    Fact
		says string
	}{
		{&Weather{Temp: Known(nan)}, "The figure under temp_f is NaN."},
		{&VisitSkipped{"77 Fir", "rain\xff"}, "The text under reason is not UTF-8."},
		{&VisitSkipped{"77 Fir", "rain\n"}, "The text under reason holds a control character (U+000A)."},
		{&VisitSkipped{"77 Fir", strings.Repeat("r", 2001)}, "The text under reason has 2001 letters."},
		{&LinedUp{Supply: []byte{0xe9}}, `The letter under supply is "é".`},
		{&LinedUp{Supply: []byte{0}}, "The letter under supply is"},
		{&Product{ProductName: "p", Label: label.Entry{Form: 9}}, "The form is neither liquid nor dry."},
		{&Loaded{Into: "a", Volume: 1, Parts: []LoadPart{{"iron", measure.Amount{N: 1, Kind: 9}}}}, "The amount is neither liquid nor dry."},
		{&Struck{Of: 1, Instead: &Weather{Temp: Known(nan)}}, "The figure under temp_f is NaN."},
		{nil, "An entry holds no fact."},
	} {
		mustRefuse(t, b, row.f, row.says)
	}
	if _, err := b.Prepare("x", Moment{Unix: 1 << 60}, &Weather{RainFree: Known(1.0)}); err == nil {
		t.Error("a time beyond the year 9999 is stored")
	}
	if _, err := b.Prepare("x", Moment{Offset: 90}, &Weather{RainFree: Known(1.0)}); err == nil {
		t.Error("an offset that no line can hold is stored")
	}
}
