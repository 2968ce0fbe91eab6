package check

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// changing is a changeover from b to a that is under way: the hose holds b.
const changing = `{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"visit_begun","lawn":"Alder"}
`

// The hose holds 1.7212 gal (pi/4 d^2 L), half is 0.1386 gal later (ln 2 of 0.2). Twice the root of the squares of 10
// per cent of the hose, half of that part of the cell and 3 per cent of the flow is 0.3875: 2.2474 gal (arithmetic).
const tintBy = 2.2474

func TestNoTintByTheUpperBoundIsAStop(t *testing.T) {
	for _, row := range []struct {
		name, line string
		weight     Weight
		says, do   string
	}{
		{"far", `{"fact":"tint_seen","volume_gal":2.4,"missed":"yes"}`, Stop, "No tint by 2.40 gal: the valves are not where the book says.", "Look at the valves"},
		{"not yet", `{"fact":"tint_seen","volume_gal":2.24,"missed":"yes"}`, Note, "No tint by 2.24 gal yet.", "by 2.25 gal it has to come"},
		{"just", `{"fact":"tint_seen","volume_gal":2.25,"missed":"yes"}`, Stop, "It had to come by 2.25 gal.", ""},
		{"by the clock", `{"fact":"tint_seen","seconds":58,"missed":"yes"}`, Stop, "No tint by 2.44 gal", ""}, // 58.5 s of 2.5 gpm
		{"the clock shows whole seconds", `{"fact":"tint_seen","seconds":54,"missed":"yes"}`, Stop, "No tint by 2.27 gal", ""},
		{"soon by the clock", `{"fact":"tint_seen","seconds":41,"missed":"yes"}`, Note, "No tint by 1.73 gal yet.", ""},
		{"gallons before seconds", `{"fact":"tint_seen","volume_gal":1,"seconds":90,"missed":"yes"}`, Note, "No tint by 1.00 gal yet.", ""},
		{"the farthest counts", `{"fact":"tint_seen","volume_gal":2.4,"missed":"yes"}
{"fact":"tint_seen","volume_gal":1,"missed":"yes"}`, Stop, "No tint by 2.40 gal", ""},
		{"seen later", `{"fact":"tint_seen","volume_gal":2.4,"missed":"yes"}
{"fact":"tint_seen","volume_gal":2.9}`, Stop, "No tint by 2.40 gal", ""},
		{"seen", `{"fact":"tint_seen","volume_gal":2.9}`, None, "", ""},
		{"turned again", `{"fact":"tint_seen","volume_gal":2.4,"missed":"yes"}
{"fact":"lined_up","supply":["a"],"return":"a"}`, None, "", ""},
		{"pushed since", `{"fact":"tint_seen","volume_gal":2.4,"missed":"yes"}
{"fact":"pushed_back","into":"b","volume_gal":2.4}`, Stop, "No tint by", "What was pushed since came from somewhere else"},
	} {
		b := play(t, loadedLines+hoseOf("b")+changing+row.line)
		f := find(before(t, b, Intent{Lawn: "Alder"}), "line_up")
		if row.weight == None {
			if f != nil {
				t.Errorf("%s: %+v", row.name, f)
			}
			continue
		}
		if f == nil || f.Weight != row.weight || f.Part != PartRig || !strings.Contains(f.Says, row.says) || !strings.Contains(f.Do, row.do) || f.Source == "" {
			t.Errorf("%s: %+v", row.name, f)
			continue
		}
		if math.Abs(f.Limit.V-tintBy) > 0.0002 {
			t.Errorf("%s: the bound is %.4f gal", row.name, f.Limit.V)
		}
		if now, found := LineUpNow(b); !found || now.Says != f.Says {
			t.Errorf("%s: the valves alone say %+v", row.name, now)
		}
	}
}

func TestMissedTintWithoutAFlowIsAnAsk(t *testing.T) {
	b := play(t, strings.Replace(loadedLines, `,"flow_gpm":2.5`, "", 1)+hoseOf("b")+changing+`{"fact":"tint_seen","seconds":90,"missed":"yes"}`)
	if f := find(before(t, b, Intent{Lawn: "Alder"}), "line_up"); f == nil || f.Weight != Ask || !strings.Contains(f.Do, "by 2.25 gal it has to come") {
		t.Errorf("%+v", f)
	}
}

// Valves that stand wrong by the book are said first; an applicator with a tank of its own does not care.
func TestMissedTintBesideOtherFindings(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+`{"fact":"lined_up","supply":["a"]}
{"fact":"tint_seen","volume_gal":2.4,"missed":"yes"}
{"fact":"loaded","into":"ride-on","volume_gal":10,"mix":"W","for":"ride-on"}`)
	if f := find(before(t, b, Intent{Lawn: "Alder"}), "line_up"); f == nil || f.Weight != Stop || !strings.Contains(f.Says, "No tint by") {
		t.Errorf("the note on the return hides the stop: %+v", f)
	}
	if f := find(before(t, b, Intent{Lawn: "Alder", With: "ride-on"}), "line_up"); f != nil {
		t.Errorf("the ride-on draws from its tank: %+v", f)
	}
	if f := find(before(t, b, Intent{Lawn: "Alder", From: 'b'}), "line_up"); f != nil {
		t.Errorf("with the valves turned to b there would be another tint: %+v", f)
	}
	more(t, b, `{"fact":"lined_up","supply":["a"],"return":"b"}
{"fact":"tint_seen","volume_gal":2.4,"missed":"yes"}`)
	if f := find(before(t, b, Intent{Lawn: "Alder"}), "line_up"); f == nil || !strings.Contains(f.Says, "would run into b") {
		t.Errorf("%+v", f)
	}
}

func TestAfterAMissedTintTheLineUpIsProposedAgain(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+changing+`{"fact":"tint_seen","volume_gal":2.4,"missed":"yes"}`)
	p := Propose(b, Intent{At: clock})
	if p.Act != ActLineUp || p.Words != "look at the valves, and set supply and return to a" {
		t.Fatalf("%+v", p)
	}
	reason := b.Clone()
	log(t, reason, &core.Overridden{Rule: "line_up", Lawn: "Alder", Reason: "no dye in a today"})
	if p := Propose(reason, Intent{At: clock}); p.Act != ActPushBack {
		t.Errorf("after a reason: %+v", p)
	}
	log(t, b, p.Facts...)
	if p := Propose(b, Intent{At: clock}); p.Act != ActPushBack {
		t.Errorf("after the line-up: %+v", p)
	}
}

// The tint is not the end: seeing it, early or late, changes neither the verdict nor what is to be pushed.
func TestTintSeenChangesNothing(t *testing.T) {
	rows := []string{changing, hoseOf("a"), "", changing + `{"fact":"pushed_back","into":"b","volume_gal":1.8}`, changing + `{"fact":"tint_seen","volume_gal":2.4,"missed":"yes"}`}
	for _, row := range ruleRows {
		rows = append(rows, row.lines)
	}
	stops := 0
	for _, lines := range rows {
		b := play(t, loadedLines+hoseOf("b")+lines)
		for _, lawn := range []string{"Alder", "Fir", "Gum"} {
			in := Intent{Lawn: lawn}
			was, clean, next := before(t, b, in), ToClean(b, in), Propose(b, Intent{At: clock})
			seen := b.Clone()
			for _, f := range []*core.TintSeen{{Seconds: core.Known(3.0)}, {Seconds: core.Known(45.0)}, {Volume: core.Known(measure.Gallons(9))}} {
				log(t, seen, f)
				if now := before(t, seen, in); !reflect.DeepEqual(now, was) {
					t.Errorf("%s: a tint seen makes %v of %v:\n%+v\n%+v", lines, now.Verdict, was.Verdict, now, was)
				}
				if now := ToClean(seen, in); !reflect.DeepEqual(now, clean) {
					t.Errorf("%s: a tint seen makes the changeover %+v, not %+v", lines, now, clean)
				}
				if now := Propose(seen, Intent{At: clock}); !reflect.DeepEqual(now, next) {
					t.Errorf("%s: a tint seen makes the proposal %+v, not %+v", lines, now, next)
				}
			}
			if was.Verdict == Stop {
				stops++
			}
		}
	}
	if stops < 10 {
		t.Errorf("only %d situations were stops: this test looks at little", stops)
	}
}

// What the count-down calls late and what the rule stops at is the same volume.
func TestLateIsWhereTheRuleStops(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+changing)
	c := ToClean(b, Intent{Lawn: "Alder"})
	if math.Abs(c.TintBy.Gallons()-tintBy) > 0.0002 || c.TintFrom >= c.Arrives || c.TintFrom <= 0 || !c.TintByS.Known || !c.TintFromS.Known {
		t.Fatalf("%+v", c)
	}
	flow := measure.GPM(2.5)
	for s := 30.0; s < 70; s++ {
		try := b.Clone()
		log(t, try, &core.TintSeen{Seconds: core.Known(s), Missed: "yes"})
		f := find(before(t, try, Intent{Lawn: "Alder"}), "line_up")
		// Whoever presses the key while the screen says late gets the stop, also where the seconds are cut to whole ones.
		if Running(c, flow, s+0.49).Late && f.Weight != Stop {
			t.Errorf("after %g s: late, and %+v", s, f)
		}
	}
}
