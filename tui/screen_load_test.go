package tui

import (
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// emptyTruck is a day with nothing loaded.
const emptyTruck = `{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["77 Fir Lane","418 Alder Court"]}
{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":64}`

// loadPlanned is a load of a, of which the water is in.
const loadPlanned = `
{"fact":"load_planned","into":"a","volume_gal":80,"mix":"bermuda, zoysia","for":"gun"}
{"fact":"ticked","list":"load/a","item":"water"}`

func TestAnEmptyTruckSaysHowToLoad(t *testing.T) {
	c := climbIn(t, emptyTruck).sees("no mix for it is aboard (g o loads).", "Load a compartment first")
	c.press("enter").sees("STOP", "Load a compartment first, then open its supply (g o loads).")
	c.press("g", "o", "b").sees("empty", "plan a load into b").press("enter").sees("load into b", "2 fescue, bluegrass")
	c.type_("2").sees("gallons of fescue, bluegrass into b", "1 fill it up: 160.0 gal").type_("60 gal")
	c.sees("to load: 60.0 gal of fescue, bluegrass for gun, 0 of 2 in")
	c.press("enter").sees("0 of 11 done", "Enter  protective equipment: done")
	c.press("enter").sees("Enter  say where it is mixed").press("enter").type_("home yard").sees("place of mixing: home yard", "Enter  air gap: done")
	c.press("enter", "enter").type_("1200").sees("water meter before: 1,200.0 gal", "Enter  water: done")
	c.press("enter", "enter", "enter", "enter", "enter").sees("Enter  type what the water meter shows").press("enter").sees("1260.0_").press("enter")
	c.sees("The meter gave 60.0 gal for 60.0 gal of water.", "Enter  cap and label: done")
	c.press("enter", "enter").sees("booked loaded 60.0 gal", "at home yard; meter 1,200.0 to 1,260.0 gal", "60.0    100.0")
	c.press("esc", "b").sees("tall fescue").seesNot("g o loads")
	if got := c.facts(); got != "visit_begun load_planned"+strings.Repeat(" ticked", 11)+" loaded lined_up" {
		t.Errorf("logged: %s", got)
	}
	c.size(80, 24)
	if left := c.book().Plumbing().Compartment('b').Liquid.Volume; left != measure.Gallons(60) {
		t.Errorf("b holds %s gal", left.Text())
	}
}

// again is the cab as it is found when the program is started again.
func (c *cab) again(t *testing.T) *cab {
	t.Helper()
	book := core.NewBook(1)
	for _, e := range append(append([]core.Entry(nil), c.old...), c.disk.entries...) {
		if err := book.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
	return climbIn(t, noBook, func(o *Options) { o.Book = book })
}

func TestTicksAreKept(t *testing.T) {
	c := climbIn(t, morning+loadPlanned).press("g", "o").sees("the sheet of what goes into a", "1 of 2 in").press("enter")
	c.sees("1 of 11 done", "[x]     39.8 gal water first", "Enter  protective equipment: done").press("enter", "up").sees("protective equipment is not done after all")
	c.press("enter").sees("1 of 11 done").press("down", "down", "down", "down").sees("Enter  water is not done after all", "the setting water_first_pct")
	c.press("enter").sees("0 of 11 done", "Enter  water: done").press("enter").sees("Enter  agitator on: done").press("enter", "enter")
	c.sees("[x]   64.0 fl oz Example Warm", "Enter  containers rinsed: done")
	c.again(t).press("g", "o", "enter").sees("3 of 11 done", "Enter  protective equipment: done", "[x]     39.8 gal water first")
}

// threeProducts is a load of products that never met in the book of these tests.
const threeProducts = `
{"fact":"load_planned","into":"c","volume_gal":20,"parts":[{"product":"Example Warm","amount_fl_oz":16},{"product":"Example Iron","amount_oz":26},{"product":"Example Cool","amount_fl_oz":2}],"for":"gun"}`

// jarFailedBefore is a jar of two of them.
const jarFailedBefore = `
{"fact":"jar_tested","products":["Example Iron","Example Cool"],"result":"failed","signs":["clumps"],"note":"at 60 F"}`

// ofThree is the sheet of that load.
func ofThree(t *testing.T, before string) *cab {
	t.Helper()
	return climbIn(t, morning+before+threeProducts).press("g", "o", "c", "enter")
}

// allIn is a sheet on which all is done, and the meter gave too much.
func allIn(t *testing.T) *cab {
	t.Helper()
	c := climbIn(t, morning+loadPlanned+`
{"fact":"ticked","list":"load/a","item":"do/place","place":"home yard"}
{"fact":"ticked","list":"load/a","item":"do/meter_before","meter_gal":1000}`)
	return c.press("g", "o", "enter", "enter", "enter", "enter", "enter", "enter", "enter", "enter").type_("1085").press("enter")
}

// TestALoadOfThreeProducts: no more than 25 presses, the figure of a meter besides, from the cab screen to the load that is
// booked; the program is closed in the middle of it.
func TestALoadOfThreeProducts(t *testing.T) {
	c := climbIn(t, morning+`
{"fact":"loaded","into":"b","volume_gal":1,"place":"home yard","meter_after_gal":1000}`+threeProducts)
	presses := 0
	press := func(keys ...string) *cab { presses += len(keys); return c.press(keys...) }
	press("g", "o", "c", "enter").sees("0 of 16 done").press("down").sees("Example Warm with Example Iron", "In a quart of the water you use", "warm").press("up")
	press("enter", "enter").sees("1 mixed").sees("2 go on without a jar")
	press("1", "enter").sees("[x] jar test", "mixed at home yard, as last time")
	press("enter", "enter", "enter").sees("meter before, gal: 1000.0")
	press("enter", "enter", "enter", "enter")
	c.sees("8 of 16 done", "Enter  stirred after Example Warm: done")
	c = c.again(t)
	c.press("g", "o", "c", "enter").sees("8 of 16 done")
	if p := c.book().LoadPlan("c"); p.Place != "home yard" || p.MeterBefore.V.Text() != "1,000.0" {
		t.Errorf("%+v", p)
	}
	press("enter", "enter", "enter", "enter", "enter", "enter").sees("type what the water meter shows")
	press("enter").sees("1019.9").press("enter")
	presses++
	press("enter", "enter").sees("booked loaded 20.0 gal", "at home yard; meter 1,000.0 to")
	if presses > 25 {
		t.Errorf("%d presses for a load of three products; 25 at most", presses)
	}
	if !c.book().Met("Example Iron", "Example Cool") || len(c.book().NotToMix([]string{"Example Iron", "Example Cool"})) > 0 {
		t.Error("the pair did not meet, or is not to be mixed")
	}
}

// TestAPairThatIsNotToBeMixed: a mark is a stop on the sheet and at the booking, and can be taken back; so is a jar that failed.
func TestAPairThatIsNotToBeMixed(t *testing.T) {
	c := climbIn(t, morning+threeProducts).size(120, 40).press("g", "o", "c", "enter").press("n").sees("1 not to be mixed: Example Warm with Example Iron")
	c.type_("1;turns to gel").sees("STOP Example Iron and Example Warm are marked as not to be mixed. Turns to gel. Do not load it")
	for range 20 {
		c.press("down")
	}
	c.sees("loaded in spite of the stop: 20.0 gal into c").press("enter").sees("y").press("esc")
	if c.book().LoadPlan("c") == nil {
		t.Error("a stop was passed by one key")
	}
	c.press("n").sees("1 may be mixed after all: Example Warm with Example Iron").type_("1").seesNot("STOP")
	c.press("j").type_("failed lumps").sees("\"lumps\" is no sign of a jar that failed.").press("esc")
	c.press("j").type_("failed clumps, warm").sees("STOP The jar of Example Cool, Example Iron and Example Warm failed on", "clumps and warm.")
	c.press("j").type_("mixed").seesNot("STOP")
	if got := c.facts(); got != "jar_tested jar_tested jar_tested jar_tested" {
		t.Errorf("logged: %s", got)
	}
}

func TestALoadThatIsNotAllTickedAsks(t *testing.T) {
	c := climbIn(t, morning+loadPlanned).press("g", "o", "enter").press(strings.Fields(strings.Repeat("down ", 24))...)
	c.sees("loaded all the same: 80.0 gal into a", "1 of 11 done; it asks first")
	c.press("enter").sees("loaded all the same, with 1 of 11 done").press("esc")
	if c.facts() != "" {
		t.Errorf("logged: %s", c.facts())
	}
	c.press("enter").wait(time.Second).press("y").sees("loaded 80.0 gal", "No load is planned for a").press("esc").sees("280.0")
}

func TestAPlanIsTakenBack(t *testing.T) {
	c := climbIn(t, morning+loadPlanned).press("g", "o", "enter", "z").sees("take the plan for a back").wait(time.Second).press("y")
	c.sees("No load is planned for a")
	if c.facts() != "load_planned" || c.book().LoadPlan("a") != nil {
		t.Errorf("logged: %s; the plan is %+v", c.facts(), c.book().LoadPlan("a"))
	}
}

// TestLoadLines reads what is typed into one line; the tank is chosen on the page.
func TestLoadLines(t *testing.T) {
	for _, row := range []struct{ down, said, want string }{
		{"", "50 gal bermuda, zoysia for gun", `{"into":"a","volume_gal":50,"parts":[{"product":"Example Warm","amount_fl_oz":40}],"mix":"bermuda, zoysia","for":"gun"}`},
		{"", "50 Bermuda, Zoysia", `{"into":"a","volume_gal":50,"parts":[{"product":"Example Warm","amount_fl_oz":40}],"mix":"bermuda, zoysia","for":"gun"}`},
		{"", "20", `{"into":"a","volume_gal":20,"parts":[{"product":"Example Warm","amount_fl_oz":16}],"mix":"bermuda, zoysia","for":"gun"}`},
		{"down", "40 water", `{"into":"b","volume_gal":40}`},
		{"down", "1 1/2 gal water", `{"into":"b","volume_gal":1.5}`},
		{"down down down", "5 gal iron, any grass", `{"into":"ride-on","volume_gal":5,"parts":[{"product":"Example Iron","amount_oz":33.33333333}],"mix":"iron, any grass","for":"ride-on"}`},
		{"down down down", "5 gal Example Iron 3 oz + example cool 2", `{"into":"ride-on","volume_gal":5,"parts":[{"product":"Example Iron","amount_oz":3},{"product":"Example Cool","amount_fl_oz":2}]}`},
	} {
		c := climbIn(t, morning).press("g", "o").press(strings.Fields(row.down)...).press("l").type_(row.said)
		l, err := core.DecodeLine([]byte(`{"fact":"loaded",` + row.want[1:]))
		if err != nil {
			t.Fatal(err)
		}
		if len(c.disk.entries) != 1 {
			t.Errorf("%q logged %q:\n%s", row.said, c.facts(), c.screen())
			continue
		}
		got, want := c.disk.entries[0].What.(*core.Loaded), l.Fact.(*core.Loaded)
		if got.Into != want.Into || got.Volume != want.Volume || got.Mix != want.Mix || got.For != want.For || len(got.Parts) != len(want.Parts) {
			t.Errorf("%q logged %+v, want %+v", row.said, got, want)
			continue
		}
		for i := range want.Parts {
			if d := got.Parts[i].Amount.N - want.Parts[i].Amount.N; got.Parts[i].Product != want.Parts[i].Product || d < -1_000_000 || d > 1_000_000 {
				t.Errorf("%q: part %d is %+v, want %+v", row.said, i, got.Parts[i], want.Parts[i])
			}
		}
	}
}

func TestLoadLinesThatAreWrongStayOpen(t *testing.T) {
	for said, want := range map[string]string{
		"150 gal bermuda, zoysia": "150.00 gal more do not fit",
		"50 gal wram weed":        "neither a mix of the book, nor water, nor products",
		"5 gal Example Iron 3 qt": "Example Iron 3 qt",
		"water":                   "gallons of water into a",
		"":                        "Nothing is typed.",
	} {
		c := climbIn(t, morning).size(120, 40).press("g", "o", "enter").type_(said).sees(want)
		if c.facts() != "" || !c.model().open {
			t.Errorf("%q logged %q", said, c.facts())
		}
	}
}

func TestLoadByTapsAlone(t *testing.T) {
	c := climbIn(t, morning).tapOn("g pages").tapOn("Load the truck").tapOn("ride-on").tapOn("Enter  plan a load")
	c.tapOn("3 iron, any grass").tapOn("Enter log it").tapOn("1 fill it up").tapOn("Enter log it").sees("14.0 gal of iron, any grass for ride-on")
	c.tapOn("ride-on  ").tapOn("Enter  protective").tapOn("Enter  say where").tapOn("Enter log it").tapOn("Enter  air gap").tapOn("Enter  type what").tapOn("Enter log it")
	for _, item := range []string{"water", "agitator on", "Example Iron", "containers rinsed", "rest of the water"} {
		c.tapOn("Enter  " + item)
	}
	c.tapOn("Enter  type what").tapOn("Enter log it").tapOn("Enter  cap and label").tapOn("Enter  loaded: 14.0 gal into ride-on")
	c.sees("booked loaded 14.0 gal").tapOn("Esc back")
	if got := c.facts(); got != "load_planned"+strings.Repeat(" ticked", 11)+" loaded" {
		t.Errorf("logged: %s", got)
	}
}

// hoppers is the truck with a spreader, and a hopper on the ride-on.
func hoppers(t testing.TB) string {
	rig := strings.Split(truck(t), "\n")[0]
	const tank = `"tank_gal":14}`
	if !strings.Contains(rig, tank) {
		t.Fatal("the truck has changed")
	}
	return "\n" + strings.Replace(rig, tank, `"tank_gal":14,"hopper_lb":50},{"name":"spreader","kind":"spreader","hopper_lb":40}`, 1)
}

func TestPourIntoAHopper(t *testing.T) {
	c := climbIn(t, morning+hoppers(t)).press("g", "o").sees("ride-on, hopper", "spreader, hopper", "40.0 lb")
	for range 5 {
		c.press("down")
	}
	c.sees("pour into the hopper of spreader").seesNot("in already").press("enter").sees("1 Example Iron")
	c.type_("1").sees("weight of Example Iron into spreader", "1 fill it up: 40.0 lb").type_("2 lb 4 oz").sees("2.25 lb", "37.8 lb")
	c.press("enter").type_("60 lb Example Iron").sees("do not fit").press("esc", "enter").type_("3 lb").sees("5.25 lb")
	c.press("enter").type_("Example Warm").sees("Example Warm", "1 Example Iron").press("esc")
	if got := c.facts(); got != "loaded loaded" {
		t.Errorf("logged: %s", got)
	}
	f := c.disk.entries[0].What.(*core.Loaded)
	if f.Into != "spreader" || f.Volume != 0 || len(f.Parts) != 1 || f.Parts[0].Amount.Text() != "2.25 lb" {
		t.Errorf("logged %+v", f)
	}
}
