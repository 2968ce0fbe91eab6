package setup

import (
	"errors"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// fullRig has parts whose figures are no round ones.
func fullRig(t *testing.T) *core.Book {
	b := core.NewBook(1)
	enter(t, b, []core.Fact{&core.Rig{
		RigName: "truck 3", Cell: 757_082_357, ReturnLine: 378_541_179,
		Compartments: []core.RigCompartment{
			{Letter: 'a', Name: "warm", Colour: "yellow", Capacity: 1_135_623_535_201, Heel: 7_570_823_569, Marks: []core.GaugeMark{{Mark: "E", Volume: 0}, {Mark: "F", Volume: 1_135_623_535_201}}},
			{Letter: 'b', Colour: "teal", Capacity: 605_665_885_441},
			{Letter: 'c', Capacity: 340_687_060_561},
		},
		Hoses: []core.RigHose{{Name: "reel", Bore: core.Known(measure.Length(9525)), Length: core.Known(measure.Length(91_440_001))}, {Name: "short", Volume: 192_222_942}},
		Applicators: []core.Applicator{
			{Name: "gun", Type: core.Gun, Hose: "reel", Delivery: measure.GalPer1000(1.4999), Flow: core.Known(measure.GPM(2.50001)), Tips: []core.Tip{{Name: "04", PSI: core.Known(40.0), Delivery: measure.GalPer1000(1.01)}}},
			{Name: "ride-on", Type: core.RideOn, Hose: "reel", Delivery: measure.GalPer1000(0.3), Tank: 52_995_764_976, Hopper: 45_359_237_001},
			{Name: "spreader", Type: core.Spreader, Hopper: 27_215_542_200},
		},
		LineUps: []core.NamedLineUp{{Name: "a to a", Supply: []byte{'a'}, Return: 'a', Valves: map[string]string{"suction": "left"}}},
	}}, nil)
	return b
}

// TestAPartThatIsNotChangedStaysAsItIs, to the last unit, though the fields show rounded figures.
func TestAPartThatIsNotChangedStaysAsItIs(t *testing.T) {
	b := fullRig(t)
	for _, f := range [][2]string{{Pump, ""}, {Plumbing, ""}, {Compartment, "a"}, {Compartment, "b"}, {Compartment, "c"}, {Hose, "reel"}, {Hose, "short"}, {Applicator, "gun"}, {Applicator, "ride-on"}, {Applicator, "spreader"}, {Tip, "gun/04"}, {LineUp, "a to a"}, {Gauge, "a"}, {Cross, ""}, {Reel, "reel"}} {
		facts, err := answer(t, f[0], f[1], b, nil)
		if err != nil {
			t.Errorf("%v: %v", f, err)
			continue
		}
		if len(facts) != 0 {
			t.Errorf("%v changed the rig:\n%+v\n%+v", f, facts[0], b.Rig())
		}
	}
}

func TestPartsAreChangedAndAdded(t *testing.T) {
	b := fullRig(t)
	for _, f := range []struct {
		form, about string
		said        Answers
	}{
		{Pump, "", Answers{"cell": "0.3", "return_line": "0.2", "rig": "truck 4"}},
		{Compartment, "b", Answers{"name": "cool", "capacity": "150", "heel": "1.5", "colour": "blue", "marks": "E 0; 1/2 80; F 150"}},
		{Compartment, "", Answers{"capacity": "30"}},
		{Hose, "short", Answers{"hose": "1/2 x 50"}},
		{Hose, "", Answers{"hose": "2 gal", "name": "long"}},
		{Applicator, "gun", Answers{"lays": "2", "flow": "", "on": "long"}},
		{Applicator, "", Answers{"name": "backpack", "kind": "backpack", "lays": "1", "tank": "4"}},
		{Tip, "gun/04", Answers{"lays": "1.2", "psi": "45", "flow": "2"}},
		{Tip, "gun/", Answers{"name": "06", "lays": "1.8"}},
		{Tip, "spreader/", Answers{"name": "gate 5", "lays": "3.5"}},
	} {
		facts, err := answer(t, f.form, f.about, b, f.said)
		if err != nil {
			t.Fatalf("%s %q: %v", f.form, f.about, err)
		}
		enter(t, b, facts, nil)
	}
	r := b.Rig()
	gun, pack, spreader := r.Applicators[0], r.Applicators[3], r.Applicators[2]
	for _, ok := range []bool{
		r.RigName == "truck 4", r.Cell.Text() == "0.30", r.ReturnLine.Text() == "0.20",
		r.Compartments[1].Name == "cool", r.Compartments[1].Capacity.Text() == "150.0", r.Compartments[1].Heel.Text() == "1.50", len(r.Compartments[1].Marks) == 3,
		len(r.Compartments) == 4, r.Compartments[3].Letter == 'd',
		r.Hoses[1].Volume.Text() == "0.51", r.Hoses[2].Volume.Text() == "2.00",
		gun.Hose == "long", !gun.Flow.Known, len(gun.Tips) == 2, gun.Tips[0].PSI.V == 45, gun.Tips[1].Name == "06",
		pack.Tank.Text() == "4.00", pack.Hose == "reel",
		spreader.Tips[0].Delivery.Kind == measure.Dry,
	} {
		if !ok {
			t.Fatalf("%+v", r)
		}
	}
}

func TestPartsThatAreWrong(t *testing.T) {
	b := fullRig(t)
	for _, r := range []struct {
		form, about, key, said string
		what, do               string
	}{
		{Compartment, "a", "capacity", "", "Nothing is typed", "10,000 gal"},
		{Compartment, "a", "marks", "E", "has not both", "E 0; 1/2 80"},
		{Compartment, "a", "marks", "E 5; F 5", "stands for", "lowest up"},
		{Compartment, "a", "heel", "301", "The heel of a", "less than the capacity"},
		{Hose, "reel", "hose", "2", "2 gal in the hose, or a bore of 2 in?", "Type 2 gal"},
		{Applicator, "gun", "lays", "", "Nothing is typed", "1,000 sq ft"},
		{Applicator, "gun", "spreader_hopper", "5", "is a gun and has no hopper", "ride_on or spreader"},
		{Tip, "gun/04", "psi", "2000", "out of range", "1,000 psi"},
		{Tip, "gun/04", "lays", "2 lb per acre", "is a weight", "more than 0"},
		{Tip, "spreader/", "lays", "2 gal per acre", "is a volume", "more than 0"},
	} {
		said := Answers{r.key: r.said}
		if strings.HasSuffix(r.about, "/") {
			said["name"] = "one"
		}
		_, err := answer(t, r.form, r.about, b, said)
		var two interface{ Sentences() (string, string) }
		what, do := "", ""
		var p *core.Problem
		switch {
		case errors.As(err, &two):
			what, do = two.Sentences()
		case errors.As(err, &p):
			what, do = p.What, p.Do
		}
		if err == nil || !strings.Contains(what, r.what) || !strings.Contains(do, r.do) {
			t.Errorf("%s %s %s %q: %q %q (%v)", r.form, r.about, r.key, r.said, what, do, err)
		}
	}
}

func TestPartsAreTakenAway(t *testing.T) {
	b := fullRig(t)
	for _, r := range []struct {
		part, about string
		ok          bool
	}{{Compartment, "c", true}, {Compartment, "a", false}, {Hose, "short", true}, {Hose, "none", false}, {Applicator, "spreader", true}, {Tip, "gun/04", true}, {Tip, "gun/05", false}, {Pump, "", false}} {
		got, ok := Without(b, r.part, r.about)
		if ok != r.ok {
			t.Errorf("%s %s: %v", r.part, r.about, ok)
		}
		if ok {
			_, err := b.Prepare("x", at, got)
			if holds := r.part == Hose; (err != nil) != holds { // its first water
				t.Errorf("%s %s: %v", r.part, r.about, err)
			}
		}
	}
	if n := len(b.Rig().Applicators[0].Tips); n != 1 {
		t.Error("the book's own rig was changed")
	}
}
