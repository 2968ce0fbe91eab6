package core

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core/measure"
)

// withPlan is the day of setUp with a load planned for c: 40 gal of W for the gun cover 26,667 sq ft at 1.5 gal per
// 1,000 sq ft (arithmetic).
const withPlan = setUp + `{"fact":"load_planned","into":"ride-on","volume_gal":2,"parts":[{"product":"cool weed","amount_fl_oz":1}]}
{"fact":"load_planned","into":"c","volume_gal":40,"mix":"W","for":"gun"}
`

func listed(b *Book, into string) string {
	plan := b.LoadPlan(into)
	if plan == nil {
		return "no plan"
	}
	var out []string
	for _, i := range b.LoadItems(plan) {
		s := i.Item + " " + i.Amount.Text()
		if i.Done {
			s += " done"
		}
		out = append(out, s)
	}
	return strings.Join(out, ", ")
}

func TestLoadPlanListsWaterAndProducts(t *testing.T) {
	b := play(t, NewBook(1), withPlan)
	var tanks []string
	for _, p := range b.LoadPlans() {
		tanks = append(tanks, p.Into)
	}
	if got := strings.Join(tanks, " "); got != "c ride-on" {
		t.Errorf("plans for %s", got)
	}
	// 26.667 x 1.2 fl oz = 32 fl oz, 0.25 gal; 26.667 x 2 oz = 53.3 oz (arithmetic)
	if got := listed(b, "c"); got != "water 39.8 gal, warm weed 32.0 fl oz, iron 3.33 lb" {
		t.Error(got)
	}
	water := b.LoadItems(b.LoadPlan("c"))[0].Amount
	if got := measure.Volume(water.N).Gallons(); got < 39.7499 || got > 39.7501 {
		t.Errorf("%.5f gal of water", got)
	}
	if got := listed(b, "ride-on"); got != "water 1.99 gal, cool weed 1.00 fl oz" {
		t.Error(got)
	}
}

func TestTicksSurviveAndEndWithTheLoad(t *testing.T) {
	without := play(t, NewBook(1), setUp).StateDigest()
	b := play(t, NewBook(1), withPlan)
	planned := b.StateDigest()
	if planned == without {
		t.Error("a plan does not change the state digest")
	}
	play(t, b, `{"fact":"ticked","list":"load/c","item":"iron"}
{"fact":"ticked","list":"load/c","item":"water"}`)
	if b.StateDigest() == planned {
		t.Error("a tick does not change the state digest")
	}
	if got := listed(b, "c"); got != "water 39.8 gal done, warm weed 32.0 fl oz, iron 3.33 lb done" {
		t.Error(got)
	}
	if got := fmt.Sprint(b.Ticks("load/c")); got != "[iron water]" {
		t.Error(got)
	}
	for _, row := range []struct{ line, says string }{
		{`{"fact":"ticked","list":"load/c","item":"water"}`, "water is ticked already on the list of c."},
		{`{"fact":"ticked","list":"load/c","item":"warm weed","undo":"yes"}`, "warm weed is not ticked on the list of c."},
		{`{"fact":"ticked","list":"load/c","item":"warm weed","undo":"no"}`, `The tick says "no" under undo.`},
		{`{"fact":"ticked","list":"load/c","item":"cool weed"}`, `The load for c has no item "cool weed".`},
	} {
		if p := refused(t, b, row.line); p.What != row.says {
			t.Errorf("%s says %s", row.line, p.What)
		}
	}
	play(t, b, `{"fact":"ticked","list":"load/c","item":"water","undo":"yes"}
{"fact":"ticked","list":"load/c","item":"iron","undo":"yes"}`)
	if b.StateDigest() != planned {
		t.Error("ticks taken back leave something")
	}
	play(t, b, `{"fact":"ticked","list":"load/c","item":"water"}
{"fact":"ticked","list":"load/c","item":"warm weed"}
{"fact":"ticked","list":"load/c","item":"iron"}`)
	if !b.LoadTicked(b.LoadPlan("c")) || b.LoadTicked(b.LoadPlan("ride-on")) {
		t.Error("what is all ticked is not told")
	}
	plan := b.LoadPlan("c")
	mustEnter(t, b, LoadedFrom(plan))
	if b.LoadPlan("c") != nil || len(b.Ticks("load/c")) > 0 {
		t.Error("the load did not end the plan")
	}
	if got := b.Plumbing().Compartment('c').Liquid.Volume; got != measure.Gallons(40) || b.MixIn("c") != "W" {
		t.Errorf("c holds %s gal of %q", got.Text(), b.MixIn("c"))
	}
	if b.LoadPlan("ride-on") == nil {
		t.Error("the other plan went with it")
	}
	balanced(t, b)
}

func TestPlanIsChangedAndTakenBack(t *testing.T) {
	b := play(t, NewBook(1), withPlan+`{"fact":"ticked","list":"load/ride-on","item":"cool weed"}
{"fact":"ticked","list":"load/ride-on","item":"water"}
{"fact":"load_planned","into":"ride-on","volume_gal":3,"parts":[{"product":"cool weed","amount_fl_oz":1}]}`)
	if got := listed(b, "ride-on"); got != "water 2.99 gal, cool weed 1.00 fl oz done" {
		t.Errorf("what the new plan takes as much of stays ticked: %s", got)
	}
	play(t, b, `{"fact":"load_planned","into":"ride-on"}
{"fact":"load_planned","into":"c"}`)
	if b.StateDigest() != play(t, NewBook(1), setUp).StateDigest() {
		t.Error("plans taken back leave something")
	}
}

// A struck plan takes its ticks with it, and they are offered.
func TestStrikeOfAPlan(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	before := b.StateDigest()
	plan := mustEnter(t, b, &LoadPlanned{Into: "c", Volume: measure.Gallons(40)})
	tick := mustEnter(t, b, &Ticked{List: "load/c", Item: WaterItem})
	p := mustRefuse(t, b, &Struck{Of: int64(plan)}, "No load is planned for c")
	if !strings.Contains(p.Do, fmt.Sprintf("also %d", tick)) {
		t.Error(p.Do)
	}
	mustEnter(t, b, &Struck{Of: int64(plan), Also: []int64{int64(tick)}})
	if b.StateDigest() != before {
		t.Error("a struck plan leaves something")
	}
}

// A plan for a tank that a later rig does not have ends.
func TestPlanForATankThatIsGone(t *testing.T) {
	b := play(t, NewBook(1), setUp+`{"fact":"load_planned","into":"c","volume_gal":9}`)
	rig := *b.Rig()
	rig.Compartments = rig.Compartments[:2]
	mustEnter(t, b, &rig)
	if len(b.LoadPlans()) > 0 || b.LoadPlan("c") != nil {
		t.Error("the plan for c is still there")
	}
}
