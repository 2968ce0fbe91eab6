package tui

import (
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// plumbed is the morning on a truck whose pump, agitation and pressures are in the book.
func plumbed(t testing.TB) string {
	rig := strings.Split(truck(t), "\n")[0]
	for _, r := range [][2]string{
		{`"cell_gal":0.2`, `"cell_gal":0.2,"pump_flow_gpm":10,"pump_psi":120`},
		{`"flow_gpm":2.5}`, `"flow_gpm":2.5,"needs_psi":40}`},
		{`"heel_gal":2},{"letter":"b"`, `"heel_gal":2,"agitation":"paddle","tint":"none"},{"letter":"b"`},
		{`"heel_gal":2},{"letter":"c"`, `"heel_gal":2,"agitation":"jet","tint":"blue"},{"letter":"c"`},
	} {
		if !strings.Contains(rig, r[0]) {
			t.Fatal("the truck has changed: ", r[0])
		}
		rig = strings.Replace(rig, r[0], r[1], 1)
	}
	return rig + "\n" + morning
}

// pushing is a changeover to a that is half done: some of what was pushed went into b.
const pushing = `
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"b","volume_gal":1.2}`

// plumbingSituations are those of pipes, pressures and charts.
var plumbingSituations = []situated{
	{"gauge_chart_filled", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "g", "c", "n", "enter").type_("1").type_("2.5")
	}},
	{"gauge_chart_backwards", func(t *testing.T) *cab {
		return climbIn(t, morning+charted(t)).press("g", "g", "a", "n", "n").type_("9")
	}},
	{"gauge_chart_by_shape", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "g", "a", "n", "s").type_("obround 48 x 36 x 47 in, mark every 4 in")
	}},
	{"plumbing", func(t *testing.T) *cab { return climbIn(t, plumbed(t)+pushing).press("g", "i") }},
	{"plumbing_end", func(t *testing.T) *cab { return climbIn(t, plumbed(t)+pushing).press("g", "i", "pgdown", "pgdown") }},
	{"plumbing_two_open", func(t *testing.T) *cab {
		return climbIn(t, plumbed(t)+`
{"fact":"lined_up","supply":["a","b"],"return":"a"}`).press("g", "i")
	}},
	{"plumbing_ran_line", func(t *testing.T) *cab {
		c := climbIn(t, plumbed(t)+`
{"fact":"loaded","into":"b","volume_gal":40,"mix":"fescue, bluegrass","for":"gun"}
{"fact":"lined_up","supply":["a"],"return":"b"}`).press("g", "i", "r")
		return c.typed("6 min")
	}},
	{"plumbing_drained", func(t *testing.T) *cab { return climbIn(t, plumbed(t)+pushing).press("g", "i", "o").type_("1") }},
	{"rig_line_up", func(t *testing.T) *cab {
		return tipped(t).press("g", "r").goesTo("line_up/from a", "down").press("enter")
	}},
	{"gauge_tank", func(t *testing.T) *cab {
		return climbIn(t, morning+charted(t)).press("g", "g", "a", "n", "t").typed("6")
	}},
	{"rig_cross", func(t *testing.T) *cab { return tipped(t).press("g", "r").goesTo("cross/", "down").press("enter") }},
	{"rig_plumbing", func(t *testing.T) *cab { return tipped(t).press("g", "r").goesTo("plumbing/", "down").press("enter") }},
	{"pressure_weight", func(t *testing.T) *cab { return climbIn(t, plumbed(t)).press("g", "i", "g", "w").typed("5/8") }},
	{"pressure", func(t *testing.T) *cab { return climbIn(t, plumbed(t)).press("g", "i", "g") }},
	{"pressure_measured", func(t *testing.T) *cab {
		return climbIn(t, plumbed(t)).press("g", "i", "g", "enter").type_("2.5 110 50")
	}},
	{"pressure_line_is_wrong", func(t *testing.T) *cab {
		return climbIn(t, plumbed(t)).press("g", "i", "g", "enter").type_("2.5 50 110")
	}},
}

func (c *cab) logged() core.Fact {
	c.t.Helper()
	if len(c.disk.entries) == 0 {
		c.t.Fatalf("nothing was logged:\n%s", c.screen())
	}
	return c.disk.entries[len(c.disk.entries)-1].What
}

func TestWhatTheValvesDidIsShownBeforeItIsLogged(t *testing.T) {
	c := climbIn(t, plumbed(t)+`
{"fact":"lined_up","supply":["a"],"return":"b"}`).size(120, 40).press("g", "i").sees("The return leads to b while a feeds the pump", "10.0 gal of a run into b through the return")
	c.press("r").typed("45 s").sees("would log", "7.50 gal of a").seesNot("booked")
	if len(c.disk.entries) != 0 {
		t.Fatal("logged before Enter")
	}
	c.press("enter").wait(time.Second)
	f := c.logged().(*core.Ran)
	if f.Pump != core.PumpOn || f.Seconds != core.Known(45.0) || len(f.Drawn) != 1 || f.Drawn[0].Volume != measure.Gallons(7.5) {
		t.Errorf("%+v", f)
	}
	if got := c.book().Plumbing().Compartment('b').Liquid.Volume; got < measure.Gallons(107) {
		t.Errorf("b holds %s gal", got.Text())
	}
	c.sees("of a, bermuda, zoysia in it")
}

func TestOverflowIsSaidBeforeItHappens(t *testing.T) {
	c := climbIn(t, plumbed(t)+`
{"fact":"lined_up","supply":["a"],"return":"b"}`).press("g", "i", "r").typed("10 min")
	c.sees("b is full after", "gal run over")
	if len(c.disk.entries) != 0 {
		t.Error("logged before Enter")
	}
	c.press("enter").sees("would run over", "book it").press("enter")
	if len(c.disk.entries) != 0 {
		t.Error("Enter answered")
	}
	c.wait(time.Second).press("y").sees("booked")
	if v := c.book().Plumbing().Outside[core.Overflow].Volume; v <= 0 {
		t.Errorf("%s gal ran over", v.Text())
	}
}

func TestTwoOpenSuppliesLevelOut(t *testing.T) {
	c := climbIn(t, plumbed(t)+`
{"fact":"lined_up","supply":["a","b"],"return":"a"}`).press("g", "i").sees("2 supplies are open", "run from a to b by their levels")
	c.press("r").type_("off 2 min").sees("booked")
	f := c.logged().(*core.Ran)
	if f.Pump != core.PumpOff || len(f.Levelled) != 1 || f.Levelled[0].From != 'a' || len(f.Drawn) != 0 {
		t.Errorf("%+v", f)
	}
}

func TestNonsenseOnTheLinesOfThePlumbing(t *testing.T) {
	for _, row := range []struct{ key, said, want string }{
		{"r", "", "time"},
		{"r", "0 s", "more than 0"},
		{"r", "999 h", "86,400"},
		{"r", "-5", "less than nothing"},
		{"r", "5 gal", "gal"},
		{"r", "1e400", ""},
		{"o", "", "Where it went"},
		{"o", "99 gal pail", "cannot run out"},
		{"o", "x", `"x" is no compartment`},
		{"o", "2", ""},
		{"o", "5000", "Where it went"},
		{"i", "", "Nothing is typed"},
		{"i", "0 gal", "Nothing would be rinsed"},
		{"i", "999 gal", "do not fit"},
		{"i", "water", ""},
		{"i", "5 gal to b", "where it comes from"},
		{"p", "", "Nothing is typed"},
		{"p", "0 pail", "0"},
		{"p", "9999 gal pail", "can give"},
		{"p", "2 gal z", ""},
	} {
		c := climbIn(t, plumbed(t)).press("g", "i", row.key).type_(row.said)
		if row.said == "2" { // the second of the places
			continue
		}
		if c.facts() != "" || !c.model().open {
			t.Errorf("%s %q logged %q\n%s", row.key, row.said, c.facts(), c.screen())
			continue
		}
		if row.want != "" && !strings.Contains(c.screen(), row.want) && !strings.Contains(c.model().line.wrong, row.want) {
			t.Errorf("%s %q says %q, want %q", row.key, row.said, c.model().line.wrong, row.want)
		}
		if row.said != "" && !strings.Contains(c.screen(), row.said) {
			t.Errorf("%s %q is gone from the line", row.key, row.said)
		}
	}
}

func TestHoseIsDrainedAndCompartmentsAreEmptiedAndRinsed(t *testing.T) {
	c := climbIn(t, plumbed(t)).press("g", "i", "enter").sees("the hose reel ran out into", "1 pail", "2 compartment a").typed("1").sees("would log: ran 1.72 gal").press("enter")
	if f := c.logged().(*core.Dumped); f.From != "hose/reel" || f.To != "waste/pail" {
		t.Errorf("%+v", f)
	}
	c.sees("1.72 gal of air").press("b", "enter").type_("60 gal c").sees("not fit")
	c.press("ctrl+u").type_("5 gal roadside")
	if f := c.logged().(*core.Dumped); f.From != "compartment/b" || f.To != "waste/roadside" || f.Volume != core.Known(measure.Gallons(5)) {
		t.Errorf("%+v", f)
	}
	c.press("c", "i").type_("5 gal to pail")
	if f := c.logged().(*core.Rinsed); f.Compartment != 'c' || f.Water != measure.Gallons(5) || f.To != "waste/pail" {
		t.Errorf("%+v", f)
	}
	c.press("b", "i").type_("3")
	if f := c.logged().(*core.Rinsed); f.Compartment != 'b' || f.Water != measure.Gallons(3) || f.To != "" {
		t.Errorf("%+v", f)
	}
	c.press("p").type_("2.6 pail")
	if f := c.logged().(*core.PushedBack); f.To != "waste/pail" || f.Into != 0 || f.Volume != measure.Gallons(2.6) {
		t.Errorf("%+v", f)
	}
}

func TestStrainersAreCleanedByEnterAlone(t *testing.T) {
	c := climbIn(t, plumbed(t)+pushing).press("g", "i", "t").sees("strainers opened and cleaned").press("enter").wait(time.Second)
	if f := c.logged().(*core.Cleaned); f.What != core.Strainers || f.Text != "" {
		t.Errorf("%+v", f)
	}
	c.goesTo("strainers", "down").seesNot("not opened").sees("a has had 0 of 3 rinses")
	c.press("enter").type_("both bowls")
	if f := c.logged().(*core.Cleaned); f.Text != "both bowls" {
		t.Errorf("%+v", f)
	}
}

func TestAChartIsFilledMarkByMark(t *testing.T) {
	c := climbIn(t, morning).press("g", "g", "c", "n").sees("The gauge has no marks yet").press("enter").sees("at 2 gal the mark of c says")
	c.slow = true
	c.type_("1").sees("at 4 gal").slow = false
	c.catchUp()
	if c.facts() != "marked" {
		t.Errorf("a mark waits: %q", c.facts())
	}
	c.type_("2").type_("next").sees("at 8 gal").type_("3 at 9 gal").sees("at 10 gal").type_("3").sees("no longer 9.00 gal")
	c.press("esc")
	var got []string
	for _, k := range c.book().RigCompartment('c').Marks {
		got = append(got, k.Mark+" "+k.Volume.Text())
	}
	if s := strings.Join(got, ", "); s != "1 2.00, 2 4.00, 3 10.0" {
		t.Errorf("the chart is %s", s)
	}
	c.goesTo("2", "down").press("x").sees("take mark 2 off the chart of c").press("enter").wait(time.Second).press("y")
	if n := len(c.book().RigCompartment('c').Marks); n != 2 {
		t.Errorf("%d marks", n)
	}
	c.press("n").sees("at 4 gal").type_("2").sees("at 6 gal")
}

func TestAChartThatRunsBackwardsStaysTyped(t *testing.T) {
	c := climbIn(t, morning+charted(t)).press("g", "g", "a", "n", "n").sees("at 10 gal").type_("9").sees("would run backwards", "9")
	for _, row := range [][2]string{{"", "No mark is typed"}, {"2 at 9 x", ""}, {"2 at 999 gal", "cannot stand for"}, {"2 at -3", "less than nothing"}} {
		c.press("ctrl+u").type_(row[0])
		if !c.model().open || !strings.Contains(c.model().line.wrong, row[1]) || c.model().line.wrong == "" {
			t.Errorf("%q: %q", row[0], c.model().line.wrong)
		}
	}
	if c.facts() != "" {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestAChartByTheShapeIsConfirmed(t *testing.T) {
	c := climbIn(t, morning).press("g", "g", "a", "n", "s")
	for said, want := range map[string]string{
		"": "No shape", "round 3": "is no shape", "obround 0 x 44 x 60 in, mark every 4 in": "", "obround 48 x 36 x 47 in": "How far apart", "obround 48 x 36 x 47 in, mark every 0 in": "0 in apart",
		"obround 9 x 9 x 9 in, mark every 1 in": "The shape holds", "obround 48 x 36 x 47 in, mark every 0.01 in": "",
	} {
		c.press("ctrl+u").type_(said)
		if !c.model().open || c.model().line.wrong == "" || !strings.Contains(c.model().line.wrong, want) {
			t.Errorf("%q: %q", said, c.model().line.wrong)
		}
	}
	c.press("ctrl+u").type_("obround 48 x 36 x 47 in, mark every 4 in").sees("chart of a: 10 marks", "up to 36 in").press("enter")
	if c.facts() != "" {
		t.Fatalf("logged before y: %s", c.facts())
	}
	c.wait(time.Second).press("y").sees("booked")
	set := c.book().RigCompartment('a')
	if len(set.Marks) != 10 || set.MarkUnit != core.MarksInches {
		t.Errorf("%+v", set)
	}
	c.sees("mark, in", "36")
}

func TestAPairOfPressuresIsEntered(t *testing.T) {
	c := climbIn(t, plumbed(t)).press("g", "r").goesTo("hose/reel", "down").press("g").sees("hose reel, gun at 2.50 gpm", "48 lb filled", "short by").press("enter")
	for said, want := range map[string]string{"": "of 3 figures", "2.5 110": "2 of 3", "2.5 50 110": "take nothing", "0 110 50": "", "-2 110 50": "", "2.5 5000 50": "", "2.5 110 nan": ""} {
		c.press("ctrl+u").type_(said)
		if !c.model().open || c.model().line.wrong == "" || !strings.Contains(c.model().line.wrong, want) {
			t.Errorf("%q: %q", said, c.model().line.wrong)
		}
	}
	c.press("ctrl+u").type_("2.5 gpm 110 50").sees("by the pair of pressures", "60 psi along the hose")
	if h := c.book().Rig().Hoses[0]; h.PairPump != core.Known(110.0) || h.PairGun != core.Known(50.0) {
		t.Errorf("%+v", h)
	}
	c.press("enter").type_("none").sees("1.0 to 1.3 until")
}

func TestPlumbingByTapsAlone(t *testing.T) {
	c := climbIn(t, plumbed(t)).tapOn("g pages").tapOn("Plumbing").tapOn("o run out").tapOn("1 pail").tapOn("Enter  ").sees("booked ran 1.72 gal")
	c.tapOn("u line-ups").sees("stands now").tapOn("Esc back").tapOn("g pressure").sees("Pressure and weight")
	if c.facts() != "dumped" {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestNamedLineUpsAreChangedOnTheRigsPage(t *testing.T) {
	c := tipped(t).press("g", "r").goesTo("line_up/", "down").press("enter").sees("Add a line-up").typed("over").press("enter").typed("a").press("enter", "right", "right", "enter").typed("1=open; 2=shut").press("enter").wait(time.Second)
	l := c.book().Rig().LineUps
	if n := len(l); n != 3 || l[2].Name != "over" || string(l[2].Supply) != "a" || l[2].Return != 'b' || l[2].Valves["2"] != "shut" {
		t.Errorf("%+v\n%s", l, c.screen())
	}
	c.goesTo("line_up/over", "up").press("x").sees("take line-up over out of the rig").wait(time.Second).press("y")
	if n := len(c.book().Rig().LineUps); n != 2 {
		t.Errorf("%d line-ups", n)
	}
}

func TestTheGaugeOfATankIsMeasured(t *testing.T) {
	c := climbIn(t, morning+charted(t)).press("g", "g", "a", "n").sees("counts once the plan of the tank").press("t").typed("12").press("enter").typed("20").press("pgdown").wait(time.Second)
	set := c.book().RigCompartment('a')
	if !set.Plan.Known || !set.GaugeOff.Known || len(set.Marks) != 5 {
		t.Errorf("%+v\n%s", set, c.screen())
	}
	c.seesNot("counts once the plan of the tank").sees("2.99") // 12 sq ft, 20 in, 2 per cent: 12*144*20*0.02/231
	c.press("esc", "esc", "g", "i", "g", "w").typed("5/8").press("enter").typed("40").press("enter").sees("40 lb dry", "entered")
}

func TestApplicatorsHangOnAnotherHose(t *testing.T) {
	rig, rest, _ := strings.Cut(truck(t), "\n")
	const one = `"length_ft":300}`
	c := inRig(t, strings.Replace(rig, one, one+`,{"name":"short","inside_diameter_in":0.5,"length_ft":100}`, 1)+"\n"+strings.TrimSpace(rest))
	c.press("g", "r").goesTo("applicator/gun", "down").sees("on reel", "h next hose").press("h").sees("on short")
	if got := c.book().Applicator("gun").Hose; got != "short" {
		t.Errorf("the gun hangs on %q", got)
	}
	if f := c.logged().(*core.Fitted); f.Applicator != "gun" || f.Hose != "short" || f.Tip != "" {
		t.Errorf("%+v", f)
	}
	c = climbIn(t, strings.Replace(rig, one, one+`,{"name":"short","inside_diameter_in":0.5,"length_ft":100}`, 1)+"\n"+morning+"\n"+`{"fact":"fitted","applicator":"gun","hose":"short"}`)
	c.press("p").type_("2 pail").sees("booked")
	if f := c.logged().(*core.PushedBack); f.Hose != "short" {
		t.Errorf("pushed through %q", f.Hose)
	}
}

func TestTheTintIsTypedWithHalfAndFull(t *testing.T) {
	c := climbIn(t, plumbed(t)+pushing).press("p").type_("tint 41 s half 48 s full 60 s").wait(time.Second)
	if c.model().ask.open() {
		c.press("y")
	}
	f := c.logged().(*core.TintSeen)
	if f.Seconds != core.Known(41.0) || f.HalfSeconds != core.Known(48.0) || f.FullSeconds != core.Known(60.0) || f.Hose != "" {
		t.Errorf("%+v", f)
	}
	climbIn(t, plumbed(t)+pushing).press("p").type_("tint 41 s half soon").sees("half 55 s full 70 s")
}
