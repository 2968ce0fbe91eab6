package check

import (
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// TestAnEmptiedHoseGivesAirFirst: half of the hose was drained. The seconds count the air, the gallons do not, and what is
// pushed by them leaves the nozzle as clean as with a full hose.
func TestAnEmptiedHoseGivesAirFirst(t *testing.T) {
	const drained = 0.86 // gal of the 1.7212 that the hose holds
	lines := loadedLines + hoseOf("b")
	full := play(t, lines)
	empty := play(t, lines+`{"fact":"dumped","from":"hose/reel","volume_gal":0.86,"to":"waste/pail"}`)
	in := Intent{Lawn: "Alder", From: 'a', At: clock}
	was, is := ToClean(full, in), ToClean(empty, in)
	if was == nil || is == nil {
		t.Fatalf("%v, %v", was, is)
	}
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 0.011 { // PushBack is in whole hundredths
			t.Errorf("%s: %.4f, not %.4f", what, got, want)
		}
	}
	near("air", is.Air.Gallons(), drained)
	near("it arrives", is.Arrives.Gallons(), was.Arrives.Gallons()-drained)
	near("clean", is.Clean.Gallons(), was.Clean.Gallons()-drained)
	near("half", is.Half.Gallons(), was.Half.Gallons()-drained)
	if math.Abs(is.ArrivesS.V-was.ArrivesS.V) > 0.3 || math.Abs(is.CleanS.V-was.CleanS.V) > 0.3 {
		t.Errorf("it arrives after %.1f s and is clean after %.1f s; through a full hose %.1f and %.1f", is.ArrivesS.V, is.CleanS.V, was.ArrivesS.V, was.CleanS.V)
	}
	gun := measure.GPM(2.5)
	p := Running(is, gun, 10) // 0.4167 gal by then: still air
	near("air to come", p.Air.Gallons(), drained-10*2.5/60)
	if p.Gone != 0 || p.Stage != StageOld {
		t.Errorf("after 10 s: %+v", p)
	}
	near("after 30 s", Running(is, gun, 30).Gone.Gallons(), 30*2.5/60-drained)
	if p := Running(is, gun, gun.Seconds(is.PushBack+is.Air)+0.1); p.Stage != StageClean {
		t.Errorf("at the end: %+v", p)
	}
	var said string
	for _, s := range Steps(empty, in, 'a') {
		said += s.Text + "\n"
	}
	if !strings.Contains(said, "Air comes first, 0.86 gal of it") {
		t.Error(said)
	}
	for _, b := range []*core.Book{full, empty} {
		c := ToClean(b, in)
		more(t, b, `{"fact":"lined_up","supply":["a"],"return":"a"}`)
		for _, f := range Pushed(c, c.PushBack) {
			log(t, b, f)
		}
		if h := b.Plumbing().Hose("reel"); h.Air() != 0 {
			t.Errorf("there is still %s of air in it", h.Air().Text())
		}
		if left := ToClean(b, Intent{Lawn: "Alder", At: clock}); left != nil {
			t.Errorf("pushed as advised, and it takes %s more", left.Clean.Text())
		}
	}
}

// TestAnEmptyHoseLeavesTheCellInDoubt: with all of the hose drained only the cell is washed out, and it is 50 per cent
// uncertain while no changeover was timed. Half of it is 0.2 ln 2 = 0.1386 gal, twice half of that and 3 per cent later 0.2775.
func TestAnEmptyHoseLeavesTheCellInDoubt(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+`{"fact":"dumped","from":"hose/reel","to":"waste/pail"}`)
	c := ToClean(b, Intent{Lawn: "Alder", From: 'a', At: clock})
	if c == nil || c.Arrives != 0 {
		t.Fatalf("%+v", c)
	}
	if band, least := c.Band.Gallons(), 0.5*c.Clean.Gallons(); band < least || band > 1.1*least {
		t.Errorf("clean at %s, give or take %.4f gal; half of it is %.4f", c.Clean.Text(), band, least)
	}
	if got := (c.Advised - c.Clean).Gallons() / c.Clean.Gallons(); math.Abs(got-0.5) > 0.01 {
		t.Errorf("advised from %.3f of it above", got)
	}
	if s := LegSeconds(c.Legs, c.Air, measure.GPM(2.5)); math.Abs(s[0]-(c.Legs[0].Volume.Gallons()+c.Air.Gallons())*24) > 0.01 {
		t.Errorf("the first leg takes %.1f s; 1.72 gal of air leave before it", s[0])
	}
	if s := LegSeconds([]Leg{{Volume: measure.USGallon}, {Volume: measure.USGallon}}, measure.USGallon, measure.GPM(2)); s[0] != 60 || s[1] != 30 {
		t.Error(s)
	}
	if by := c.TintBy.Gallons(); math.Abs(by-0.2775) > 0.002 {
		t.Errorf("the tint must have come by %.4f gal", by)
	}
	if f := standingAt(t, b, "Alder", 60*20, aboutNight); f != nil && !strings.Contains(f.Says, "The mixing cell holds ") {
		t.Error(f.Says)
	} else if f == nil {
		t.Error("nothing stands")
	}
}

// TestTheOtherHoseKeepsWhatItHolds: the gun goes over to a hose in which other liquid stands, and that is said.
func TestTheOtherHoseKeepsWhatItHolds(t *testing.T) {
	b := play(t, loadedLines)
	r := *b.Rig()
	r.Hoses = append(append([]core.RigHose(nil), r.Hoses...), core.RigHose{Name: "short", Volume: measure.Gallons(1)})
	log(t, b, &r)
	more(t, b, `{"fact":"fitted","applicator":"gun","hose":"short"}`)
	more(t, b, `{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"pushed_back","into":"b","volume_gal":8,"hose":"short"}
{"fact":"fitted","applicator":"gun","hose":"reel"}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":8,"hose":"reel"}
{"fact":"visit_begun","lawn":"Alder"}`)
	in := Intent{Lawn: "Alder", At: clock}
	if c := ToClean(b, in); c != nil {
		t.Fatalf("the reel holds a, and it takes %s", c.Clean.Text())
	}
	more(t, b, `{"fact":"fitted","applicator":"gun","hose":"short"}`)
	c := ToClean(b, in)
	if c == nil || c.Hose != "short" || c.Arrives < measure.Gallons(0.9) || c.Arrives > measure.Gallons(1.01) {
		t.Fatalf("the short hose holds b: %+v", c)
	}
	var said []string
	for _, f := range before(t, b, in).Findings {
		if f.Weight >= Ask {
			said = append(said, f.Rule+": "+f.Says)
		}
	}
	if !strings.Contains(strings.Join(said, "\n"), "grass: The hose: mesotrione is not for common bermudagrass; 1.00 gal of it") {
		t.Errorf("nothing is said of it: %q", said)
	}
}
