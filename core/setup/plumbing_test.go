package setup

import (
	"reflect"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// TestPlumbingIsPutIn: what the form asks goes into the rig in force, and the rest stays to the last unit.
func TestPlumbingIsPutIn(t *testing.T) {
	b := fullRig(t)
	was := *b.Rig()
	facts, err := answer(t, Plumbing, "", b, Answers{
		"pump_flow": "8", "pump_psi": "150", "suction": "0.1", "dead_legs": "second reel=0.2; fill line=0.1 gal", "gun_psi": "40",
		"tint_a": "none", "tint_b": "blue", "agitation_a": core.Paddle, "agitation_c": core.Jet,
	})
	enter(t, b, facts, err)
	r := b.Rig()
	for i, ok := range []bool{
		r.PumpFlow.Known && r.PumpFlow.V == measure.GPM(8), r.PumpPSI == core.Known(150.0), r.Suction == measure.Gallons(0.1),
		len(r.DeadLegs) == 2 && r.DeadLegs[0] == core.DeadLeg{Name: "second reel", Volume: measure.Gallons(0.2)} && r.DeadLegs[1].Name == "fill line",
		r.Applicators[0].PSI == core.Known(40.0), !r.Applicators[1].PSI.Known,
		r.Compartments[0].Tint == core.NoTint, r.Compartments[1].Tint == "blue", r.Compartments[2].Tint == "",
		r.Compartments[0].Agitation == core.Paddle, r.Compartments[1].Agitation == "", r.Compartments[2].Agitation == core.Jet,
		r.Cell == was.Cell && r.ReturnLine == was.ReturnLine && r.RigName == was.RigName,
		reflect.DeepEqual(r.Hoses, was.Hoses) && reflect.DeepEqual(r.LineUps, was.LineUps),
		r.Compartments[0].Capacity == was.Compartments[0].Capacity && reflect.DeepEqual(r.Compartments[0].Marks, was.Compartments[0].Marks),
		r.Applicators[0].Flow == was.Applicators[0].Flow && reflect.DeepEqual(r.Applicators[0].Tips, was.Applicators[0].Tips),
		b.Plumbing().Cell.Size == r.Cell+measure.Gallons(0.1)+measure.Gallons(0.2)+measure.Gallons(0.1),
	} {
		if !ok {
			t.Errorf("answer %d is not in the rig: %+v", i, r)
		}
	}
	facts, err = answer(t, Plumbing, "", b, nil)
	if err != nil || len(facts) != 0 {
		t.Errorf("the form as it stands changes %+v (%v)", facts, err)
	}
	facts, err = answer(t, Plumbing, "", b, Answers{"pump_flow": "", "pump_psi": "", "suction": "", "dead_legs": "", "gun_psi": "", "tint_a": "", "tint_b": "", "agitation_a": "", "agitation_c": ""})
	enter(t, b, facts, err)
	if r := *b.Rig(); r.PumpFlow.Known || r.PumpPSI.Known || r.Suction != 0 || len(r.DeadLegs) != 0 || r.Applicators[0].PSI.Known || r.Compartments[1].Tint != "" || r.Compartments[2].Agitation != "" {
		t.Errorf("taken away, and still %+v", r)
	}
}

// TestPlumbingSaysWhatIsWrong at the field where it is.
func TestPlumbingSaysWhatIsWrong(t *testing.T) {
	b := fullRig(t)
	for _, c := range []struct{ field, said, says string }{
		{"pump_flow", "0", "out of range"},
		{"pump_flow", "2", "gun gives 2.50 gpm, more than the pump"},
		{"pump_psi", "2000", "psi"},
		{"suction", "much", "much"},
		{"dead_legs", "fill line", "is no branch with its gallons"},
		{"dead_legs", "fill line=0", "out of range"},
		{"dead_legs", "x=1; x=2", "stands twice"},
		{"agitation_a", "spoon", "cannot be chosen"},
		{"tint_a", strings.Repeat("b", 90), "90"},
	} {
		facts, err := answer(t, Plumbing, "", b, Answers{c.field: c.said})
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %q: %v (%d facts)", c.field, c.said, err, len(facts))
		}
	}
	if _, ok := For(Plumbing, "", core.NewBook(1)); ok {
		t.Error("plumbing of no rig")
	}
}

// TestPlumbingIsWhole: every field can be left blank, and says what may be answered.
func TestPlumbingIsWhole(t *testing.T) {
	f, ok := For(Plumbing, "", fullRig(t))
	if !ok {
		t.Fatal("no form")
	}
	for _, p := range f.Pages {
		for _, d := range p.Fields {
			if d.Words == "" || len(d.Words) > 22 || d.Help == "" || d.Allowed == "" {
				t.Errorf("field %q is not whole", d.Key)
			}
			if err := d.Check(Answers{}); err != nil {
				t.Errorf("%s cannot be left blank: %v", d.Key, err)
			}
		}
	}
}
