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
	c.press("enter", "enter", "enter", "enter").sees("booked loaded 60.0 gal", "60.0    100.0")
	c.press("esc", "b").sees("tall fescue").seesNot("g o loads")
	if got := c.facts(); got != "visit_begun load_planned ticked ticked loaded lined_up" {
		t.Errorf("logged: %s", got)
	}
	c.size(80, 24)
	if left := c.book().Plumbing().Compartment('b').Liquid.Volume; left != measure.Gallons(60) {
		t.Errorf("b holds %s gal", left.Text())
	}
}

func TestTicksAreKept(t *testing.T) {
	c := climbIn(t, morning+loadPlanned).press("g", "o").sees("the list of what goes into a", "1 of 2 in").press("enter")
	c.sees("[x]      79.5 gal  water", "[ ]    64.0 fl oz  Example Warm", "Enter  Example Warm is in")
	c.press("up").sees("water is not in after all").press("enter").sees("0 of 2 in", "Enter  water is in")
	c.press("enter").sees("Enter  Example Warm is in")
	book := core.NewBook(1) // as the program finds it when it is started again
	for _, e := range append(append([]core.Entry(nil), c.old...), c.disk.entries...) {
		if err := book.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
	climbIn(t, noBook, func(o *Options) { o.Book = book }).press("g", "o", "enter").
		sees("[x]      79.5 gal  water", "[ ]    64.0 fl oz  Example Warm", "1 of 2 in")
}

func TestALoadThatIsNotAllTickedAsks(t *testing.T) {
	c := climbIn(t, morning+loadPlanned).press("g", "o", "enter", "down", "down").sees("loaded all the same: 80.0 gal into a", "1 of 2 in; it asks first")
	c.press("enter").sees("loaded all the same, with 1 of 2 in").press("esc")
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
	c.tapOn("ride-on  ").tapOn("Enter  water").tapOn("Enter  Example Iron").tapOn("Enter  loaded: 14.0 gal into ride-on")
	c.sees("booked loaded 14.0 gal").tapOn("Esc back")
	if got := c.facts(); got != "load_planned ticked ticked loaded" {
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
