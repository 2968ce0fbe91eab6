package check

import (
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// withPump is the rig of the rows with a pump flow, and with plan areas for a and b.
var withPump = strings.NewReplacer(
	`"capacity_gal":300,`, `"capacity_gal":300,"plan_sqft":10,`,
	`"capacity_gal":160,`, `"capacity_gal":160,"plan_sqft":8,`,
	`"delivery_gal_per_1000_sqft":0.2,"tank_gal":14}]`, `"delivery_gal_per_1000_sqft":0.2,"tank_gal":14}],"pump_flow_gpm":7,"cross_inside_diameter_in":1.25,"cross_length_ft":6,"cross_loss":7.3`,
).Replace(loadedLines)

// Each row is a line-up and what is said of it. a holds 200 gal on 10 sq ft, 32.1 in; b 100 gal on 8 sq ft, 20.1 in: 12.0 in.
func TestWhatAWrongValveDoes(t *testing.T) {
	for _, row := range []struct {
		name, lines string
		up          fluid.LineUp
		weight      Weight
		says        []string
		source      string
	}{
		{
			"two supplies, levels known", withPump,
			fluid.LineUp{Supply: []byte("ab"), Return: 'a'},
			Stop,
			[]string{
				"2 supplies are open: each gives 1.2 gal a minute to the gun, and a levels out into b: 10.4 gal a minute now, 9.60 gal in a minute, 33.3 gal in all after 384 s.",
				"After a minute b would give",
				"per cent of the lowest rate of W1.", "With the pump running at 7.00 gpm it is 6.3 gal a minute, pushed into b.", "log how long it ran",
			},
			"hydraulics reference example: 12 in, 1 1/4 in, 6 ft, loss 7.3 give 10.4 gpm; A_r = 80/18 sq ft times 12 in is 33.3 gal",
		},
		{
			"two supplies, by the settings", loadedLines,
			fluid.LineUp{Supply: []byte("ab"), Return: 'a'},
			Stop,
			[]string{"and a levels out into b: roughly "},
			"200 of 300 gal and 100 of 160 gal stand 16 and 15 in of 24",
		},
		{
			"two supplies, level", withPump + `{"fact":"gauge_read","compartment":"a","volume_gal":125}`,
			fluid.LineUp{Supply: []byte("ab"), Return: 'a'},
			Stop,
			[]string{"and the compartments level out by themselves. If it stood so"},
			"100/8 is 125/10",
		},
		{
			"return elsewhere, by the pump", withPump,
			fluid.LineUp{Supply: []byte("a"), Return: 'b'},
			Stop,
			[]string{
				"The return leads to b while a feeds the pump: about 4.5 gal a minute of a would run into b, 7.0 with the gun shut.",
				"b runs over after 13 min, a would be dry after 28.", "After a minute b would give 5.2 per cent of the lowest rate of W1.", "log how long it ran",
			},
			"7 less 2.5; 60 gal of room at 4.5; 198 gal at 7; 4.5/104.5 of 1.2 times the lowest rate is 5.2 per cent at the gun's delivery",
		},
		{
			"return into one that is all but full", withPump + `{"fact":"gauge_read","compartment":"b","volume_gal":159.7}`,
			fluid.LineUp{Supply: []byte("a"), Return: 'b'},
			Stop,
			[]string{"b runs over after 4 s, a would be dry after 28 min."},
			"0.3 gal of room at 4.5 gpm",
		},
		{
			"return elsewhere, by the setting", loadedLines,
			fluid.LineUp{Supply: []byte("c"), Return: 'a'},
			Stop,
			[]string{"about 5.0 gal a minute of c would run into a.", "c is dry after 6.5 min."},
			"49 gal at 2.5 and 5 gpm",
		},
		{
			"return nowhere", withPump,
			fluid.LineUp{Supply: []byte("a")},
			Note,
			[]string{"no agitation, and 4.5 gal a minute of bypass have to go somewhere."},
			"7 less 2.5",
		},
	} {
		f, found := LineUpIf(play(t, row.lines), row.up)
		if !found || f.Weight != row.weight || f.Source == "" {
			t.Errorf("%s: %+v", row.name, f)
			continue
		}
		for _, says := range row.says {
			if !strings.Contains(f.Says, says) {
				t.Errorf("%s says\n%s\nwithout %q (%s)", row.name, f.Says, says, row.source)
			}
		}
	}
}

// What the finding foretells for a minute is what the entry moves.
func TestWhatIsForetoldIsWhatTheEntryMoves(t *testing.T) {
	b := play(t, withPump+`{"fact":"lined_up","supply":["a","b"],"return":"a"}`)
	_, _, run, ok := b.Levelling([]byte("ab"))
	if !ok {
		t.Fatal("they stand level")
	}
	before := b.Plumbing().Compartment('b').Liquid.Volume
	more(t, b, `{"fact":"ran","seconds":60,"pump":"off"}`)
	if got, want := b.Plumbing().Compartment('b').Liquid.Volume-before, run.Moved(60).Volume(); got != want {
		t.Errorf("%s gal ran into b, %s were foretold", got.Text(), want.Text())
	}
	b = play(t, withPump+`{"fact":"lined_up","supply":["a"],"return":"b"}`)
	s := &situation{b: b, with: b.Applicator("gun"), up: b.Plumbing().LineUp, lawn: &core.Lawn{}}
	flow, _ := s.bypassFlow()
	gun := measure.GPM(2.5)
	room := b.Plumbing().Compartment('b').Room()
	more(t, b, `{"fact":"pushed_back","to":"waste/pail","volume_gal":2.5}`) // a minute of the gun
	moved := room - b.Plumbing().Compartment('b').Room()
	if want := flow.Over(gun.Seconds(measure.Gallons(2.5))); math.Abs(float64(moved-want)) > 5 {
		t.Errorf("%s gal went through the bypass, %s were foretold", moved.Text(), want.Text())
	}
}

// The closed form of both open, in the ledger: half from each, all of the return to a.
func TestStrengthWithBothOpen(t *testing.T) {
	b := play(t, withPump+`{"fact":"lined_up","supply":["a","b"],"return":"a"}`)
	p := b.Plumbing().Sketch()
	p.Cell.Size, p.Cell.Liquid, p.Return.Size, p.Return.Liquid = 0, fluid.Liquid{}, 0, fluid.Liquid{}
	key, _ := b.ProductKey("W1")
	of := func(l byte) hydraulics.Held {
		c := p.Compartment(l)
		return hydraulics.Held{Volume: hydraulics.Of(c.Liquid.Volume), Strength: float64(c.Liquid.Strength(key))}
	}
	want, wantB, _ := hydraulics.BothOpen{A: of('a'), B: of('b'), Pump: 7, Bypass: 4.5, Share: 0.5}.After(4)
	p.Draw("reel", measure.Gallons(10), measure.Gallons(18))
	if got := of('a'); math.Abs(float64(got.Volume-want.Volume)) > 1e-6 || math.Abs(got.Strength/want.Strength-1) > 1e-4 {
		t.Errorf("a is %+v, by the closed form %+v", got, want)
	}
	if got := of('b'); math.Abs(float64(got.Volume-wantB.Volume)) > 1e-6 {
		t.Errorf("b is %+v, by the closed form %+v", got, wantB)
	}
}
