package core

import (
	"math"
	"strings"
	"testing"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

// pumped is the rig of these tests: a pump of 8 gpm, and compartments of 6 and 4 square feet side by side.
const pumped = `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","capacity_gal":300,"heel_gal":2,"plan_sqft":6},{"letter":"b","capacity_gal":60,"heel_gal":2,"plan_sqft":4},{"letter":"c","capacity_gal":90,"heel_gal":1}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":200},{"name":"left","inside_diameter_in":0.5,"length_ft":100}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":3},{"name":"ride-on","kind":"ride_on","hose":"reel","delivery_gal_per_1000_sqft":0.3,"tank_gal":14,"flow_gpm":9}],"pump_flow_gpm":8,"cross_inside_diameter_in":1.25,"cross_length_ft":6,"cross_loss":7.3}
{"fact":"product","name":"weed","form":"liquid","kind":"herbicide","actives":[{"name":"mesotrione","lb_per_gal":4}],"registration":"00000-2","grasses":["tall_fescue"],"rate_low_fl_oz_per_1000_sqft":0.1,"rate_high_fl_oz_per_1000_sqft":0.2}
{"fact":"mix","name":"C","parts":[{"product":"weed","rate_fl_oz_per_1000_sqft":0.15}]}
{"fact":"lawn","name":"77 Fir","zones":[{"name":"all","grass":"tall_fescue","area_sqft":5200}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["77 Fir"]}
{"fact":"loaded","into":"a","volume_gal":100,"mix":"C","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":30}
{"fact":"lined_up","supply":["a"],"return":"a"}
`

func gallonsIn(b *Book, letter byte) float64 {
	return b.Plumbing().Compartment(letter).Liquid.Volume.Gallons()
}

func about(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %.6g, not %.6g (within %.2g)", what, got, want, tolerance)
	}
}

func last(b *Book) Fact { return b.Since()[len(b.Since())-1].What }

func TestBypassIsFilledIn(t *testing.T) {
	b := play(t, NewBook(1), pumped)
	for _, row := range []struct {
		line string
		want Maybe[measure.Volume]
	}{
		{`{"fact":"pushed_back","into":"a","volume_gal":3}`, Known(5 * measure.USGallon)},
		{`{"fact":"pushed_back","into":"a","volume_gal":3,"bypass_gal":1}`, Known(measure.USGallon)},
		{`{"fact":"pushed_back","into":"a","volume_gal":3,"bypass_gal":0}`, Known(measure.Volume(0))},
		{`{"fact":"pushed_back","into":"a","volume_gal":3,"hose":"left"}`, Maybe[measure.Volume]{}}, // no gun hangs on it
		{`{"fact":"filled","applicator":"ride-on","volume_gal":3}`, Known(5 * measure.USGallon)},
		{`{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"gallons","volume_gal":1.5}`, Known(measure.Gallons(2.5))},
		{`{"fact":"sprayed","lawn":"77 Fir","applicator":"ride-on","by":"gallons","volume_gal":1.5}`, Maybe[measure.Volume]{}},
	} {
		play(t, b, row.line)
		var got Maybe[measure.Volume]
		switch f := last(b).(type) {
		case *PushedBack:
			got = f.Bypass
		case *Filled:
			got = f.Bypass
		case *Sprayed:
			got = f.Bypass
		}
		if got != row.want {
			t.Errorf("%s: bypass %v, not %v", row.line, got, row.want)
		}
	}
}

func TestSprayingWithTheReturnElsewhereMovesLiquid(t *testing.T) {
	b := play(t, NewBook(1), pumped+`{"fact":"lined_up","supply":["a"],"return":"b"}
{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"gallons","volume_gal":6}`)
	about(t, "a", gallonsIn(b, 'a'), 100-16, 1e-6)
	about(t, "b", gallonsIn(b, 'b'), 30+10, 1e-6)
	str := b.Strangers('b')
	// 10 gal came: 0.1 of the line and, of the cell's 0.2, 0.2*10/16 are first water.
	if len(str) != 1 || str[0].From != 'a' || str[0].Mix != "C" {
		t.Fatalf("%+v", str)
	}
	about(t, "what is not b's own", str[0].Now.Gallons(), 10-0.1-0.125, 1e-6)
	if str[0].In != str[0].Now {
		t.Errorf("%+v", str[0])
	}
	play(t, b, `{"fact":"dumped","from":"compartment/b","volume_gal":20,"to":"waste/yard"}`)
	str = b.Strangers('b')
	about(t, "after half of b is gone", str[0].Now.Gallons(), 9.775/2, 1e-6)
	about(t, "in all", str[0].In.Gallons(), 9.775, 1e-6)
	play(t, b, `{"fact":"rinsed","compartment":"b","water_gal":18,"to":"waste/yard"}`)
	str = b.Strangers('b')
	about(t, "after a rinse", str[0].Now.Gallons(), 9.775/2*2/38, 1e-6)
	about(t, "in all after a rinse", str[0].In.Gallons(), 9.775/2*2/38, 1e-6)
}

func TestStrangersOfAnEarlierBatch(t *testing.T) {
	b := play(t, NewBook(1), pumped+`{"fact":"dumped","from":"compartment/a","volume_gal":98,"to":"waste/yard"}
{"fact":"loaded","into":"a","volume_gal":50}`)
	str := b.Strangers('a')
	if len(str) != 1 || str[0] != (Stranger{From: 'a', Mix: "C", Now: 2 * measure.USGallon, In: 2 * measure.USGallon}) {
		t.Errorf("the heel of the old batch: %+v", str)
	}
	if before, after := b.StateDigest(), b.Clone().StateDigest(); before != after {
		t.Error("a clone has another digest")
	}
}

func TestRanByTheBook(t *testing.T) {
	level := `{"fact":"lined_up","supply":["a","b"],"return":"a"}` + "\n"
	for _, row := range []struct {
		name, lines, ran string
		a, b, within     float64
		source           string
	}{
		{"one supply, the return on it", "", `{"fact":"ran","seconds":60,"pump":"on"}`, 100, 30, 1e-9, "what goes round changes no volume"},
		{"return elsewhere", `{"fact":"lined_up","supply":["a"],"return":"b"}`, `{"fact":"ran","seconds":60,"pump":"on"}`, 92, 38, 1e-6, "8 gpm for a minute"},
		{"pump off, one supply", "", `{"fact":"ran","seconds":60,"pump":"off"}`, 100, 30, 0, "nothing moves"},
		// 100 gal on 6 sq ft stand 26.74 in high, 30 gal on 4 sq ft 12.03 in: 14.7 in. By the closed form of two suctions open
		// (start 11.5 gpm) 10.0 gal run in the first minute, 22.0 gal in all.
		{"pump off, two supplies, a minute", level, `{"fact":"ran","seconds":60,"pump":"off"}`, 90.0, 40.0, 0.2, "closed form, computed apart: 10.0 gal"},
		{"pump off, two supplies, until level", level, `{"fact":"ran","seconds":3600,"pump":"off"}`, 78, 52, 1e-3, "both at 20.85 in: 130 gal on 10 sq ft"},
	} {
		b := play(t, NewBook(1), pumped+row.lines)
		play(t, b, row.ran)
		about(t, row.name+": a", gallonsIn(b, 'a'), row.a, row.within)
		about(t, row.name+": b", gallonsIn(b, 'b'), row.b, row.within)
		if s := b.Plumbing().Sum(); s.Volume != 0 || len(s.Holds) != 0 {
			t.Errorf("%s: the sum is %v", row.name, s)
		}
	}
}

// With the pump running the higher one gives all of the 8 gpm and more: liquid is pushed into the lower one.
func TestRanWithTheHigherOnePushing(t *testing.T) {
	b := play(t, NewBook(1), pumped+`{"fact":"lined_up","supply":["a","b"],"return":"a"}
{"fact":"ran","seconds":60,"pump":"on"}`)
	f := last(b).(*Ran)
	if len(f.Drawn) == 0 || f.Drawn[0].From != 'a' || len(f.Levelled) != 1 || f.Levelled[0].To != 'b' {
		t.Fatalf("%+v", f)
	}
	var drawn measure.Volume
	for _, d := range f.Drawn {
		drawn += d.Volume
	}
	about(t, "drawn", drawn.Gallons(), 8, 1e-6)
	about(t, "pushed into b", f.Levelled[0].Volume.Gallons(), gallonsIn(b, 'b')-30, 1e-6)
	if v := f.Levelled[0].Volume.Gallons(); !(v > 3 && v < 10) {
		t.Errorf("%g gal were pushed into the lower one in a minute", v)
	}
	// The levels are not known of c: each gives half, and what gravity does stands beside it.
	b = play(t, NewBook(1), pumped+`{"fact":"loaded","into":"c","volume_gal":80}
{"fact":"lined_up","supply":["c","b"],"return":"b"}
{"fact":"ran","seconds":30,"pump":"on"}`)
	f = last(b).(*Ran)
	if len(f.Drawn) != 2 || f.Drawn[0].Volume != 2*measure.USGallon || f.Drawn[1].Volume != 2*measure.USGallon || len(f.Levelled) != 1 {
		t.Errorf("%+v", f)
	}
}

// What finds no room runs over: it is conserved, and said before.
func TestRanOver(t *testing.T) {
	b := play(t, NewBook(1), pumped+`{"fact":"gauge_read","compartment":"b","volume_gal":56}
{"fact":"lined_up","supply":["a"],"return":"b"}`)
	es, err := b.Prepare("x", Moment{}, &Ran{Seconds: Known(60.0), Pump: PumpOn})
	if err != nil {
		t.Fatal(err)
	}
	into, over, after := b.RanOver(es[0].What.(*Ran))
	if into != 'b' {
		t.Errorf("into %c", into)
	}
	about(t, "over", over.Gallons(), 4, 1e-6)
	about(t, "after", after, 30, 1e-3)
	play(t, b, `{"fact":"ran","seconds":60,"pump":"on"}`)
	about(t, "b", gallonsIn(b, 'b'), 60, 1e-9)
	about(t, "run over", b.Plumbing().Outside[Overflow].Volume.Gallons(), 4, 1e-6)
	if s := b.Plumbing().Sum(); s.Volume != 0 || len(s.Holds) != 0 {
		t.Errorf("the sum is %v", s)
	}
}

func TestRefusalsOfThePlumbing(t *testing.T) {
	elsewhere := `{"fact":"lined_up","supply":["a"],"return":"b"}` + "\n"
	for _, row := range []struct{ lines, line, what, do string }{
		{"", `{"fact":"pushed_back","volume_gal":1}`, "No compartment is named.", "Name one of"},
		{"", `{"fact":"pushed_back","into":"a","to":"waste/pail","volume_gal":1}`, "into compartment a and to waste/pail", "one of the two"},
		{"", `{"fact":"pushed_back","to":"pail","volume_gal":1}`, `"pail" is no place`, "waste/NAME"},
		{"", `{"fact":"pushed_back","into":"a","volume_gal":1,"hose":"right"}`, `There is no hose "right".`, "The rig has reel, left."},
		{"", `{"fact":"pushed_back","into":"a","volume_gal":1,"bypass_gal":-1}`, "The bypass is -1.00 gal.", "Give 0 to"},
		{"", `{"fact":"pushed_back","into":"b","volume_gal":31}`, "Compartment b holds 30.0 of 60.0 gal", "Give at most 30.00 gal"},
		{elsewhere, `{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"gallons","volume_gal":20}`, "Compartment b would run over by 3.33 gal: 33.3 gal come through the return, and it has room for 30.0 gal.", "Turn the return back first"},
		{elsewhere, `{"fact":"pushed_back","into":"b","volume_gal":12}`, "Compartment b holds 30.0 of 60.0 gal", "Give at most"},
		{elsewhere, `{"fact":"sprayed","lawn":"77 Fir","applicator":"ride-on","by":"gallons","volume_gal":0.1,"bypass_gal":2}`, "lays from a tank of its own", "Leave the bypass out."},
		{`{"fact":"loaded","into":"a","volume_gal":196}` + "\n" + `{"fact":"lined_up","supply":["a","b"],"return":"a"}`, `{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"gallons","volume_gal":20}`, "Compartment a would run over by 2.67 gal: 33.3 gal come through the return, more than is drawn from it, and it has room for 4.00 gal.", "Turn the return back first"},
		{`{"fact":"lined_up","supply":[]}`, `{"fact":"ran","seconds":60,"pump":"on"}`, "No compartment is open by the book", "lined_up"},
		{"", `{"fact":"ran","seconds":60,"pump":"yes"}`, "said by", "Write on or off."},
		{"", `{"fact":"ran","seconds":0,"pump":"on"}`, "The time is 0 s.", "Give more than 0"},
		{elsewhere, `{"fact":"ran","seconds":9,"pump":"on","drawn":[{"from":"a","volume_gal":200}]}`, "Compartment a can give 98.0 gal by the book", "Read its gauge"},
		{`{"fact":"lined_up","supply":["a"]}`, `{"fact":"ran","seconds":9,"pump":"on","drawn":[{"from":"a","volume_gal":2}]}`, "the return leads nowhere", "Log first"},
		{"", `{"fact":"ran","seconds":9,"pump":"off","levelled":[{"from":"a","to":"a","volume_gal":2}]}`, "from a to itself", "Name two"},
		{"", strings.Replace(strings.TrimSpace(strings.Split(strings.TrimSpace(pumped), "\n")[0]), `"pump_flow_gpm":8`, `"pump_flow_gpm":2.5`, 1), "gun gives 3.00 gpm, more than the pump, which gives 2.50 gpm.", "Correct one of the two"},
		{"", strings.Replace(strings.TrimSpace(strings.Split(strings.TrimSpace(pumped), "\n")[0]), `"pump_flow_gpm":8`, `"pump_flow_gpm":0`, 1), "The flow of the pump is 0.00 gpm.", "Give more than 0"},
	} {
		b := play(t, NewBook(1), pumped+row.lines)
		if p := refused(t, b, row.line); !strings.Contains(p.What, row.what) || !strings.Contains(p.Do, row.do) {
			t.Errorf("%s\nsays %s\n%s", row.line, p.What, p.Do)
		}
	}
}

// A pail takes what is pushed out, and it is counted.
func TestPushIntoAPail(t *testing.T) {
	b := play(t, NewBook(1), pumped+`{"fact":"pushed_back","to":"waste/pail","volume_gal":2,"hose":"left"}`)
	about(t, "in the pail", b.Plumbing().Outside[fluid.WastePlace("pail")].Volume.Gallons(), 2, 1e-9)
	about(t, "a", gallonsIn(b, 'a'), 98, 1e-9)
	if s := b.Plumbing().Sum(); s.Volume != 0 || len(s.Holds) != 0 {
		t.Errorf("the sum is %v", s)
	}
}

// Whatever the valves and however long, nothing is lost and nothing leaves a compartment that it does not hold.
func TestRanLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := NewBook(1)
		for _, line := range strings.Split(strings.TrimSpace(pumped), "\n") {
			if err := enter(b, line); err != nil {
				t.Fatal(err)
			}
		}
		up := &LinedUp{Supply: []byte(rapid.SampledFrom([]string{"a", "b", "c", "ab", "ba", "bc", "abc"}).Draw(t, "supply")), Return: rapid.SampledFrom([]byte{0, 'a', 'b', 'c'}).Draw(t, "return")}
		for range 3 {
			f := &Ran{Seconds: Known(rapid.Float64Range(0.1, 4000).Draw(t, "s")), Pump: rapid.SampledFrom([]string{PumpOn, PumpOff}).Draw(t, "pump")}
			es, err := b.Prepare("x", Moment{}, up, f)
			if err != nil {
				t.Fatal(err)
			}
			for _, e := range es {
				if err := b.Apply(e); err != nil {
					t.Fatal(err)
				}
			}
			p := b.Plumbing()
			if s := p.Sum(); s.Volume != 0 || len(s.Holds) != 0 {
				t.Fatalf("the sum is %v", s)
			}
			for i := range p.Compartments {
				if c := &p.Compartments[i]; c.Liquid.Volume < 0 || c.Liquid.Volume > c.Capacity || c.Flows.Unexplained != 0 {
					t.Fatalf("%c: %+v of %d", c.Letter, c.Flows, c.Capacity)
				}
				var now measure.Volume
				for _, x := range b.Strangers(p.Compartments[i].Letter) {
					if x.Now < 0 || x.Now > x.In {
						t.Fatalf("%+v", x)
					}
					now += x.Now
				}
				if now > p.Compartments[i].Liquid.Volume {
					t.Fatalf("%d of strangers in %d", now, p.Compartments[i].Liquid.Volume)
				}
			}
		}
	})
}

// Two books whose return lines hold the same in another order will move other liquid: their digests differ. A journal
// without a reckoned bypass keeps its digest, which the stored journals hold.
func TestOrderInTheReturnLineIsInTheDigest(t *testing.T) {
	b := play(t, NewBook(1), pumped+`{"fact":"pushed_back","into":"a","volume_gal":0.02}`)
	c := b.Clone()
	if len(b.plumbing.Return.Charge) < 2 {
		t.Fatalf("the return line holds %v", b.plumbing.Return)
	}
	c.plumbing.Return.Charge = nil
	if b.StateDigest() == c.StateDigest() {
		t.Error("the order of the parcels is not in the digest")
	}
}

// A pump that was left running round two open compartments draws far more than they hold: what it draws comes back. At
// rest the one that the return leads to gives all of it, and stands higher by what its way to the pump costs: 8 gpm through
// 1.25 in, 3 ft and 3.65 velocity heads cost 3.59 in of water (Darcy-Weisbach and Colebrook, by hand). Of 130 gal on 6 and
// 4 sq ft that leaves 83.37 and 46.63 gal with the return on a, 72.63 and 57.37 gal with it on b.
func TestRanUntilAtRest(t *testing.T) {
	for _, row := range []struct {
		to, seconds string
		a, b        float64
	}{{"a", "3600", 83.366, 46.634}, {"a", "86400", 83.366, 46.634}, {"b", "3600", 72.634, 57.366}, {"b", "86400", 72.634, 57.366}, {"c", "86400", 2, 2}} {
		b := play(t, NewBook(1), pumped+`{"fact":"lined_up","supply":["a","b"],"return":"`+row.to+`"}`+"\n"+`{"fact":"ran","seconds":`+row.seconds+`,"pump":"on"}`)
		name := row.seconds + " s with the return on " + row.to
		about(t, name+": a", gallonsIn(b, 'a'), row.a, 0.003)
		about(t, name+": b", gallonsIn(b, 'b'), row.b, 0.003)
		if s := b.Plumbing().Sum(); s.Volume != 0 || len(s.Holds) != 0 {
			t.Errorf("%s: the sum is %v", name, s)
		}
		var drawn, other float64
		for _, d := range last(b).(*Ran).Drawn {
			drawn += d.Volume.Gallons()
			if row.to != string(d.From) {
				other += d.Volume.Gallons()
			}
		}
		if row.seconds == "3600" {
			about(t, name+": drawn", drawn, 480, 1e-3)
		}
		if row.to != "c" && other > 30 {
			t.Errorf("%s: %g gal were drawn from the other one, which gives no more than it loses until then", name, other)
		}
	}
}

// Until then it goes by the levels: the same two branches, integrated outside the program by fourth-order Runge-Kutta in
// steps of a quarter second, with Churchill's factor.
func TestRanOnTheWayToRest(t *testing.T) {
	for _, row := range []struct {
		to, seconds  string
		a, b, within float64
	}{
		{"a", "60", 94.090, 35.910, 0.03},
		{"b", "60", 87.351, 42.649, 0.03},
		{"c", "60", 86.567, 35.433, 0.03},
		{"a", "200", 86.403, 43.597, 0.1},
		{"b", "200", 75.234, 54.766, 0.1},
		{"c", "200", 65.464, 37.870, 0.1},
	} {
		b := play(t, NewBook(1), pumped+`{"fact":"lined_up","supply":["a","b"],"return":"`+row.to+`"}`+"\n"+`{"fact":"ran","seconds":`+row.seconds+`,"pump":"on"}`)
		about(t, row.seconds+" s with the return on "+row.to+": a", gallonsIn(b, 'a'), row.a, row.within)
		about(t, row.seconds+" s with the return on "+row.to+": b", gallonsIn(b, 'b'), row.b, row.within)
	}
}
