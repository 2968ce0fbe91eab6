package check

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

func wayOf(c *Changeover, name string) Way {
	for _, w := range c.Ways {
		if w.Name == name {
			return w
		}
	}
	return Way{}
}

// Arithmetic for a hose of 1.7212 gal and a cell of 0.2 gal that hold b, no bypass: see TestWhatIf for the new way. All of it
// into b brings 3.96 - 1.72 - 0.2 gal of a; what goes into a pail keeps all but e^-3 of the cell out of a.
func TestWaysOfTheTail(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+`{"fact":"lined_up","supply":["a"],"return":"a"}`)
	c := AllWays(b, Intent{Lawn: "Alder", At: clock})
	if len(c.Ways) != 3 {
		t.Fatalf("%+v", c.Ways)
	}
	for _, row := range []struct {
		way            string
		newOld, oldNew float64
		in             byte
		weight         Weight
		chosen         bool
	}{
		{WayNew, 0.0389, 0.0999 + 0.1, 'a', Ask, false},
		{WayOld, c.PushBack.Gallons() - 1.7212 - 0.2, 0.1, 'b', Stop, false},
		{WayPail, 0.0389, 0.2*math.Exp(-3) + 0.1, 'a', Note, true},
	} {
		w := wayOf(c, row.way)
		if math.Abs(w.NewOld.Gallons()-row.newOld) > 0.003 || math.Abs(w.OldNew.Gallons()-row.oldNew) > 0.003 || w.In != row.in || w.Weight != row.weight || w.Chosen != row.chosen {
			t.Errorf("%s: %.4f gal new in the old, %.4f old in the new, want %.4f and %.4f: %+v", row.way, w.NewOld.Gallons(), w.OldNew.Gallons(), row.newOld, row.oldNew, w)
		}
	}
	// Of what a would hold of b: its share of b's strength at the gun's delivery, of the lowest rate (Contamination in
	// package hydraulics; mesotrione is mixed at 1.5 of its lowest rate). Asked from 0.001 of it.
	w := wayOf(c, WayNew)
	if want := w.OldNew.Gallons() / 198.1 * 1.47; math.Abs(w.Share-want) > 0.00003 || math.Abs(w.Load-w.Share/0.001) > 1e-9 || w.Worst != "C1" || w.On != "Alder" {
		t.Errorf("share %.6f, want %.6f: %+v", w.Share, want, w)
	}
	if quick := ToClean(b, Intent{Lawn: "Alder", At: clock}); fmt.Sprint(quick.Legs) != fmt.Sprint(c.Legs) {
		t.Errorf("legs %v, looked at closely %v", quick.Legs, c.Legs)
	}
	// Where nothing is asked about, nothing is wasted, and the tail goes into the new compartment.
	more(t, b, `{"fact":"setting","name":"trace_a_ask","value":1}`)
	c = AllWays(b, Intent{Lawn: "Alder", At: clock})
	if w := c.Way(); w == nil || w.Name != WayNew || len(c.Legs) != 2 || c.Legs[1].Into != 'a' {
		t.Errorf("%+v", c)
	}
	if quick := ToClean(b, Intent{Lawn: "Alder", At: clock}); fmt.Sprint(quick.Legs) != fmt.Sprint(c.Legs) {
		t.Errorf("legs %v, looked at closely %v", quick.Legs, c.Legs)
	}
}

// smallTank is b as a compartment of 30 gal that holds 24; what is asked about is set so that a few round trips do not
// reach it at once.
func smallTank(t *testing.T) *core.Book {
	t.Helper()
	return play(t, strings.Replace(rigLines, `"capacity_gal":160`, `"capacity_gal":30`, 1)+`
{"fact":"loaded","into":"a","volume_gal":200,"mix":"W","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":24,"mix":"C","for":"gun"}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":8}
{"fact":"setting","name":"trace_a_ask","value":0.03}
{"fact":"setting","name":"trace_a_stop","value":0.5}`)
}

// A round trip is a changeover to b for Fir and back to a for Alder. With the tail in the new compartment, as it is today
// where nothing speaks against it, a small compartment comes to its threshold by and by: it is said when it does, and before
// it does the tail goes another way.
func TestSmallCompartmentAfterRoundTrips(t *testing.T) {
	asks := func(b *core.Book) bool {
		for _, f := range before(t, b, Intent{Lawn: "Fir", From: 'b'}).Findings {
			if f.Weight >= Ask && f.Part == PartCompartment && f.Product == "W1" {
				return true
			}
		}
		return false
	}
	trip := func(b *core.Book, legs func(c *Changeover) []Leg) (asked bool) {
		for _, side := range []struct {
			lawn string
			to   byte
		}{{"Fir", 'b'}, {"Alder", 'a'}} {
			c := AllWays(b, Intent{Lawn: side.lawn, From: side.to, At: clock})
			up := &core.LinedUp{Supply: []byte{side.to}, Return: side.to}
			if c == nil {
				log(t, b, up)
				continue
			}
			log(t, b, up)
			for _, l := range legs(c) {
				log(t, b, &core.PushedBack{Into: l.Into, To: l.To, Volume: l.Volume})
			}
			asked = asked || asks(b)
		}
		return asked
	}
	first := func(legs func(c *Changeover) []Leg) int {
		b := smallTank(t)
		for n := 1; n <= 12; n++ {
			if trip(b, legs) {
				return n
			}
		}
		return 0
	}
	same := func(name string) func(c *Changeover) []Leg {
		return func(c *Changeover) []Leg {
			if w := wayOf(c, name); len(w.Legs) > 0 {
				return w.Legs
			}
			return c.Legs
		}
	}
	old, always, chosen := first(same(WayOld)), first(same(WayNew)), first(func(c *Changeover) []Leg { return c.Legs })
	t.Logf("round trips until it is asked about: all into the old %d, always into the new %d, as chosen %d", old, always, chosen)
	if old == 0 || old > 3 {
		t.Errorf("all of it back into the old compartment is asked about after %d round trips, want at most three", old)
	}
	if always == 0 || always <= old || always > 3 {
		t.Errorf("with the tail in the new compartment it is asked about after %d round trips, all in the old after %d", always, old)
	}
	if chosen != 0 && chosen <= always {
		t.Errorf("as chosen it is asked about after %d round trips, without choosing after %d", chosen, always)
	}
}

// sweptRig is a rig with a pump of 7 gpm and a long return line: turned with the supply it brings much of b into a.
const sweptRig = `"pump_flow_gpm":7,"return_line_gal":0.6`

func TestSweptThroughTheBypass(t *testing.T) {
	b := play(t, strings.Replace(loadedLines, `"return_line_gal":0.1`, sweptRig, 1)+hoseOf("b"))
	in := Intent{Lawn: "Alder", From: 'a', At: clock}
	c := AllWays(b, in)
	w := wayOf(c, WaySwept)
	// T = 3 Vm/q_b + V_ret/q_b; turned together V_ret + Vm q_b/(q_b+q_g) of the old come in; held, the first V_ret of q_b T push
	// out what stood in the line, and of the other 3 Vm all but Vm (1 - e^-3) is new; with the gun shut q_b is the pump's
	// (mass balance).
	gone := 3*0.2 + 0.6
	if c.Order == nil || math.Abs(c.Order.HeldS-gone/7*60) > 0.01 || math.Abs(c.Order.Together.Gallons()-0.6-0.2*4.5/7) > 0.001 ||
		math.Abs(c.Order.Held.Gallons()-0.6+0.2*(1-math.Exp(-3))) > 0.001 {
		t.Fatalf("%+v", c.Order)
	}
	if math.Abs(w.RunS-c.Order.HeldS) > 1e-9 || math.Abs(w.NewOld.Gallons()-c.Order.Held.Gallons()) > 0.01 || w.OldNew > measure.Gallons(0.02) {
		t.Errorf("%+v", w)
	}
	together := wayOf(c, WayNew)
	if together.OldNew < measure.Gallons(0.7) || together.Weight < w.Weight {
		t.Errorf("together %+v, swept %+v", together, w)
	}
}

// Where what the grass of b does not tolerate little of goes into b, the swept way is taken; its steps are logged as they are
// said, and then nothing is left to push.
func TestSweptWayIsTakenAndEnough(t *testing.T) {
	b := play(t, strings.NewReplacer(`"return_line_gal":0.1`, sweptRig, `"name":"W1","form":"liquid","kind":"herbicide","actives":[{"name":"sulfosulfuron","percent_by_weight":75}]`,
		`"name":"W1","form":"liquid","kind":"insecticide"`).Replace(loadedLines)+hoseOf("b"))
	in := Intent{Lawn: "Alder", At: clock}
	steps := Steps(b, in, 'a')
	var words []string
	for _, s := range steps {
		words = append(words, s.Text)
	}
	all := strings.Join(words, "\n")
	if !strings.Contains(all, "Gun shut: turn the supply to a and leave the return on b for 10 s") || !strings.Contains(all, "Turned together 0.73 gal of b would come into a") {
		t.Fatalf("%s", all)
	}
	for _, s := range steps {
		log(t, b, s.Facts...)
	}
	if up := b.Plumbing().LineUp; string(up.Supply) != "a" || up.Return != 'a' {
		t.Errorf("the valves stand on %s and %c", up.Supply, up.Return)
	}
	in.From = 'a'
	if c := ToClean(b, in); c != nil {
		t.Errorf("still %s to push: %s", c.PushBack.Text(), c.Why)
	}
	if f := find(before(t, b, Intent{Lawn: "Alder"}), "trace"); f != nil && f.Weight >= Ask {
		t.Errorf("%+v", f)
	}
}

// The second hose is pushed and logged under its name, whatever the first one holds.
func TestChangeoverOfTheSecondHose(t *testing.T) {
	lines := strings.NewReplacer(`"length_ft":300}]`, `"length_ft":300},{"name":"left","inside_diameter_in":0.5,"length_ft":100}]`,
		`{"name":"ride-on"`, `{"name":"lance","kind":"gun","hose":"left","delivery_gal_per_1000_sqft":1.6,"flow_gpm":3},{"name":"ride-on"`).Replace(loadedLines)
	b := play(t, lines+hoseOf("b")+`{"fact":"pushed_back","into":"b","volume_gal":6,"hose":"left"}`)
	in := Intent{Lawn: "Alder", With: "lance", From: 'a', At: clock}
	c := ToClean(b, in)
	if c == nil || c.Hose != "left" || math.Abs(c.Arrives.Gallons()-1.02) > 0.01 {
		t.Fatalf("%+v", c)
	}
	if first := ToClean(b, Intent{Lawn: "Alder", From: 'a', At: clock}); first.Hose != "" || math.Abs(first.Arrives.Gallons()-1.72) > 0.01 {
		t.Errorf("%+v", first)
	}
	turn, err := WhatIf(b, in, 'a')
	if err != nil || turn.Cannot != nil || turn.Pushed == nil || turn.Pushed.Verdict >= Ask {
		t.Fatalf("%v %+v", err, turn)
	}
	for _, f := range Pushed(c, c.PushBack) {
		if f.(*core.PushedBack).Hose != "left" {
			t.Errorf("%+v", f)
		}
	}
	for _, s := range Steps(b, in, 'a') {
		log(t, b, s.Facts...)
	}
	if c := ToClean(b, in); c != nil {
		t.Errorf("still %s to push", c.PushBack.Text())
	}
	if c := ToClean(b, Intent{Lawn: "Alder", From: 'a', At: clock}); c == nil || c.Arrives < measure.Gallons(1.7) {
		t.Errorf("the first hose was not pushed: %+v", c)
	}
}

func TestOverflowIsSaidBefore(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+`{"fact":"gauge_read","compartment":"b","volume_gal":159}
{"fact":"lined_up","supply":["a"],"return":"a"}`)
	c := ToClean(b, Intent{Lawn: "Alder", At: clock})
	if o := c.Overflow; o == nil || o.Letter != 'b' || math.Abs(o.Room.Gallons()-1) > 0.01 || math.Abs(o.Over.Gallons()-0.86) > 0.01 || c.Into != 0 {
		t.Fatalf("%+v", c)
	}
	f := find(before(t, b, Intent{Lawn: "Alder"}), "grass")
	if !strings.Contains(f.Do, "b has room for 1.00 gal: 1.86 gal into it would run over by 0.86 gal.") {
		t.Errorf("%s", f.Do)
	}
	// Two gallons of room take the plug, though not all that is pushed.
	more(t, b, `{"fact":"gauge_read","compartment":"b","volume_gal":158}`)
	if c = ToClean(b, Intent{Lawn: "Alder", At: clock}); c.Into != 'b' || c.Overflow != nil || wayOf(AllWays(b, Intent{Lawn: "Alder", At: clock}), WayOld).Cannot == "" {
		t.Errorf("%+v", c)
	}
}

// What a push-back does is priced in each place that it reaches, with what came in before.
func TestPlacesAreStruckUp(t *testing.T) {
	b := smallTank(t)
	turn, err := WhatIf(b, Intent{Lawn: "Fir", At: clock}, 'b')
	if err != nil {
		t.Fatal(err)
	}
	into := place(turn, 'b')
	if into.Lays.Product != "W1" || into.Lays.On != "Fir" || into.Lays.Share <= 0 || into.Sum <= 0 {
		t.Fatalf("%+v", into)
	}
	for _, s := range Steps(b, Intent{Lawn: "Fir", At: clock}, 'b') {
		log(t, b, s.Facts...)
	}
	x := float64(b.Plumbing().Compartment('b').Liquid.Strength(0))
	if got := x * b.Applicator("gun").Delivery.V / b.ProductByKey(0).Label.RateLow.V; math.Abs(got-into.Lays.Share) > 1e-9 {
		t.Errorf("%.6f of the lowest rate was foretold, it is %.6f", into.Lays.Share, got)
	}
	var sum measure.Volume
	for _, x := range b.Strangers('b') {
		sum += x.In
	}
	if math.Abs(sum.Gallons()-into.Sum.Gallons()) > 0.001 {
		t.Errorf("%s were to have come in of others, %s have", into.Sum.Text(), sum.Text())
	}
}

// What is proposed at the valves is what the steps say.
func TestSweptWayIsProposed(t *testing.T) {
	b := play(t, strings.NewReplacer(`"return_line_gal":0.1`, sweptRig, `"name":"W1","form":"liquid","kind":"herbicide","actives":[{"name":"sulfosulfuron","percent_by_weight":75}]`,
		`"name":"W1","form":"liquid","kind":"insecticide"`).Replace(loadedLines)+hoseOf("b")+`{"fact":"visit_begun","lawn":"Alder"}`)
	p := Propose(b, Intent{At: clock})
	if p.Act != ActLineUp || p.Words != "gun shut, turn the supply to a, leave the return on b for 10 s, then turn it" || len(p.Facts) != 3 {
		t.Fatalf("%+v", p)
	}
	log(t, b, p.Facts...)
	if p = Propose(b, Intent{At: clock}); p.Act != ActPushBack || !strings.HasSuffix(p.Words, "into a") {
		t.Fatalf("%+v", p)
	}
	log(t, b, p.Facts...)
	if c := ToClean(b, Intent{Lawn: "Alder", At: clock}); c != nil {
		t.Errorf("still %s to push", c.PushBack.Text())
	}
}

// The same mix at eight times the strength has no residue: what counts is how far it sets the other compartment's strength off.
// 0.2 gal, half of them from the return line, make 20 gal stronger by 7 x 0.2 / 20, 7 per cent where 5 are allowed (arithmetic).
func TestTailOfAStrongerMix(t *testing.T) {
	strong := func(gal float64) *core.Book {
		return play(t, rigLines+fmt.Sprintf(`
{"fact":"loaded","into":"a","volume_gal":%g,"mix":"W","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":100,"mix":"W","for":"ride-on"}
`, gal)+hoseOf("b")+`{"fact":"lined_up","supply":["a"],"return":"a"}`)
	}
	c := AllWays(strong(200), Intent{Lawn: "Alder", At: clock})
	if w := wayOf(c, WayNew); !w.Chosen || w.Weight != None || w.Worst != "W1" {
		t.Errorf("%+v", c.Ways)
	}
	c = AllWays(strong(20), Intent{Lawn: "Alder", At: clock})
	w := wayOf(c, WayNew)
	if w.Chosen || w.Weight != Ask || w.In != 'a' || math.Abs(w.Share-1-7*0.2/20) > 0.01 {
		t.Errorf("%+v", w)
	}
}
