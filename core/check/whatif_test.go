package check

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
)

func place(t Turn, l byte) PlaceAfter {
	for _, p := range t.Places {
		if p.Letter == l {
			return p
		}
	}
	return PlaceAfter{}
}

func TestWhatIf(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+`{"fact":"visit_begun","lawn":"Alder"}`)
	turn, err := WhatIf(b, Intent{Lawn: "Alder", At: clock}, 'a')
	if err != nil {
		t.Fatal(err)
	}
	if turn.Mix != "W" || turn.Name != "warm" || !turn.Fits || turn.Report.Verdict != Stop || turn.Cannot != nil || turn.Pushed == nil || turn.Pushed.Verdict != Note || find(*turn.Pushed, "trace").Part != PartCompartment {
		t.Errorf("%+v", turn)
	}
	// arithmetic: 1.86 gal into b, the last 0.1388 of them through a cell of 0.2 that held b: new is
	// x - V(1 - e^(-x/V)) = 0.0389. The next 0.47 gal go into a pail: with them a would hold 0.0015
	// of the lowest rate of mesotrione, which is asked about. Into a go 1.63 gal (to the upper side of what was never timed) with
	// a twentieth (e^-3) of the cell, 0.0100 gal, and the 0.1 that stood in the return line.
	into := place(turn, 'b')
	if len(turn.Places) != 2 || len(into.Foreign) != 1 || into.Foreign[0].From != 'a' || into.Foreign[0].Mix != "W" || math.Abs(into.Foreign[0].Volume.Gallons()-0.0389) > 0.0003 {
		t.Errorf("b: %+v", turn.Places)
	}
	a := place(turn, 'a')
	if len(a.Foreign) != 1 || a.Foreign[0].From != 'b' || math.Abs(a.Foreign[0].Volume.Gallons()-0.110) > 0.002 || math.Abs(a.Share-a.Foreign[0].Volume.Gallons()/a.After.Gallons()) > 1e-9 {
		t.Errorf("a: %+v", a)
	}
	if math.Abs(a.Gets.Gallons()-1.63) > 0.011 || math.Abs(into.Gets.Gallons()-1.86) > 0.001 || len(a.Loses)+len(into.Loses) > 0 {
		t.Errorf("%+v", turn.Places)
	}
}

// Little in the place that receives it, and the lawns it was for are lost.
func TestWhatIfSaysWhichLawnsAreLost(t *testing.T) {
	b := play(t, loadedLines+hoseOf("a")+`{"fact":"gauge_read","compartment":"b","volume_gal":4}`)
	turn, err := WhatIf(b, Intent{Lawn: "Fir", At: clock}, 'b')
	if err != nil {
		t.Fatal(err)
	}
	into := place(turn, 'b')
	// 0.2 gal of W in 2.2 gal is a tenth: more than a trace of 1 per cent (arithmetic)
	if strings.Join(into.Loses, " ") != "Fir" || into.Share < 0.03 {
		t.Errorf("%+v", into)
	}
	if a := place(turn, 'a'); len(a.Loses) > 0 {
		t.Errorf("%+v", a)
	}
}

func TestWhatIfIsRefused(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b"))
	for _, row := range []struct {
		in   Intent
		to   byte
		says string
	}{
		{Intent{Lawn: "Alder"}, 'f', `There is no compartment "f".`},
		{Intent{Lawn: "Alder"}, 0, "No compartment is named."},
		{Intent{Lawn: "Nowhere"}, 'a', `There is no lawn "Nowhere" in the book.`},
		{Intent{Lawn: "Alder", With: "ride-on"}, 'a', "ride-on draws from its own tank: turning the valves does not change what it lays."},
	} {
		if _, err := WhatIf(b, row.in, row.to); err == nil || err.Error() != row.says {
			t.Errorf("%+v %c says %v", row.in, row.to, err)
		}
		if s := Steps(b, row.in, row.to); len(s) > 0 {
			t.Errorf("%+v %c has steps %+v", row.in, row.to, s)
		}
	}
}

// Where nothing can take what has to go there is no push-back; where the supply cannot give it, the Problem says so.
func TestWhatIfThePushCannotBe(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+`{"fact":"gauge_read","compartment":"a","volume_gal":2.5}
{"fact":"setting","name":"gauge_error_pct","value":0}`)
	turn, err := WhatIf(b, Intent{Lawn: "Alder", At: clock}, 'a')
	if err != nil || turn.Cannot == nil || turn.Pushed != nil || !strings.Contains(turn.Cannot.Error(), "Compartment a can give") {
		t.Errorf("%v %+v", err, turn.Cannot)
	}
	b = play(t, loadedLines+hoseOf("b")+`{"fact":"gauge_read","compartment":"b","volume_gal":160}`)
	turn, err = WhatIf(b, Intent{Lawn: "Alder", At: clock}, 'a')
	if err != nil || turn.Changeover.Into != 0 || turn.Pushed != nil || len(turn.Places) > 0 {
		t.Errorf("%v %+v", err, turn)
	}
	steps := Steps(b, Intent{Lawn: "Alder"}, 'a')
	if len(steps) != 5 || steps[2].Kind != StepPush || steps[2].Into != 0 || len(steps[2].Facts) > 0 || !strings.Contains(steps[2].Text, "into a can") {
		t.Errorf("%+v", steps)
	}
}

// Whatever is looked at, the book stays as it is, and what was foretold is what the entries then make of it.
func TestWhatIfIsWhatThenHappens(t *testing.T) {
	looked := 0
	for _, row := range ruleRows {
		b := play(t, loadedLines+row.lines)
		for _, to := range []byte("abc") {
			before := b.StateDigest()
			in := row.in
			in.At, in.With = clock, "gun"
			turn, err := WhatIf(b, in, to)
			if err != nil {
				t.Fatal(err)
			}
			if b.StateDigest() != before {
				t.Fatalf("%s: looking at %c changed the book", row.name, to)
			}
			if turn.Pushed == nil {
				continue
			}
			looked++
			done := b.Clone()
			for _, s := range Steps(b, in, to) {
				log(t, done, s.Facts...)
			}
			in.From = to
			if c := ToClean(done, in); c != nil {
				t.Errorf("%s: after the steps to %c there is still to clean: %+v", row.name, to, c)
			}
			for _, p := range turn.Places {
				if got := done.Plumbing().Compartment(p.Letter).Liquid.Volume; got != p.After {
					t.Errorf("%s: %c was to hold %s and holds %s", row.name, p.Letter, p.After.Text(), got.Text())
				}
			}
			if now := asTheyStand(t, done, in); now.Verdict != turn.Pushed.Verdict {
				t.Errorf("%s: the verdict was to be %v and is %v", row.name, turn.Pushed.Verdict, now.Verdict)
			}
			if text := strings.ToLower(fmt.Sprintf("%+v %+v", turn, Steps(b, in, to))); strings.Contains(text, "safe") {
				t.Error(text)
			}
		}
	}
	if looked < 20 {
		t.Errorf("only %d changeovers were looked at", looked)
	}
}

func asTheyStand(t *testing.T, b *core.Book, in Intent) Report {
	t.Helper()
	in.From = 0
	return before(t, b, in)
}

// Clean is hose and cell, 1.7212 + 0.2 ln(1.470/(0.001/1.1)) = 3.20 gal: mesotrione is asked about from 0.001 of its lowest
// rate, of which b holds 1.47 (see TestOldMixInHoseIsAStopUntilPushedBack). Give or take half of the 1.48 gal of the cell.
func TestSteps(t *testing.T) {
	valves := strings.Replace(loadedLines, `"tank_gal":14}]}`, `"tank_gal":14}],"line_ups":[{"name":"a","valves":{"1":"open","2":"shut","3":"to the gun"},"supply":["a"],"return":"a"},{"name":"b","valves":{"1":"shut","2":"open","3":"to the gun"},"supply":["b"],"return":"b"}]}`, 1)
	for _, row := range []struct {
		lines, lawn string
		to          byte
		want        string
	}{
		{valves + hoseOf("b"), "Alder", 'a', `wear: Eyewear and gloves on, and what else the label asks (common practice, no source).
valves: Turn supply and return to a: valve 1 open, valve 2 shut. Leave valve 3 to the gun. [lined_up]
nozzle: Open the lid of b and hold the nozzle inside it, above the liquid, never in it.
push: Push 1.86 gal (45 s) into b. [pushed_back]
tint: The tint comes at 1.72 gal (41 s), not before 1.36 gal (33 s) and not after 2.25 gal (54 s). It is not the end: go on. None by then: let go, and look at the valves.
nozzle: Half of it is new now: over to a pail, the nozzle above the liquid there too. Log what becomes of it.
push: Push 0.47 gal (11 s) into a pail. [pushed_back]
nozzle: It is nearly all new now: over to the lid of a, the nozzle above the liquid there too.
push: Push 1.63 gal (39 s) into a. [pushed_back]
clean: Clean at 3.20 gal (77 s), give or take 0.77 gal (with 1.25 on the smear); what was never timed may be more, so go on to 3.96 gal (95 s). Let go of the trigger there: under 0.01 fl oz of the old liquid is left.`},
		{strings.Replace(loadedLines, `,"flow_gpm":2.5`, "", 1) + hoseOf("b") + `{"fact":"lined_up","supply":["a"],"return":"a"}`, "Alder", 'a', `wear: Eyewear and gloves on, and what else the label asks (common practice, no source).
nozzle: Open the lid of b and hold the nozzle inside it, above the liquid, never in it.
push: Push 1.86 gal into b. [pushed_back]
tint: The tint comes at 1.72 gal, not before 1.36 gal and not after 2.25 gal. It is not the end: go on. None by then: let go, and look at the valves.
nozzle: Half of it is new now: over to a pail, the nozzle above the liquid there too. Log what becomes of it.
push: Push 0.47 gal into a pail. [pushed_back]
nozzle: It is nearly all new now: over to the lid of a, the nozzle above the liquid there too.
push: Push 1.63 gal into a. [pushed_back]
clean: Clean at 3.20 gal, give or take 0.76 gal (without the smear in the hose: its bore, its length or the flow is not known); what was never timed may be more, so go on to 3.96 gal. Let go of the trigger there: under 0.01 fl oz of the old liquid is left.`},
		{loadedLines + hoseOf("b"), "Fir", 'b', ""},
		{loadedLines + hoseOf("b") + `{"fact":"lined_up","supply":["a"],"return":"a"}`, "Fir", 'b', "valves: Turn supply and return to b. [lined_up]"},
	} {
		b := play(t, row.lines)
		var got []string
		for _, s := range Steps(b, Intent{Lawn: row.lawn}, row.to) {
			line := s.Kind + ": " + s.Text
			for _, f := range s.Facts {
				line += " [" + f.Name() + "]"
			}
			got = append(got, line)
		}
		if text := strings.Join(got, "\n"); text != row.want {
			t.Errorf("%s\nand should be\n%s", text, row.want)
		}
	}
}
