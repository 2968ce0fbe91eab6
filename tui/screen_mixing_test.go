package tui

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// tinted is the morning with a tint in the book.
const tinted = morning + `
{"fact":"product","name":"Example Blue","form":"liquid","kind":"tint","grasses":["all_turf"],"package_fl_oz":32,"price_usd":30}
{"fact":"loaded","into":"a","volume_gal":20,"parts":[{"product":"Example Warm","amount_fl_oz":16},{"product":"Example Blue","amount_fl_oz":40}]}`

// mixingSituations are the pages of the tank lid.
var mixingSituations = []situated{
	{"mixing_load", func(t *testing.T) *cab {
		return climbIn(t, emptyTruck).press("g", "y", "l", "x").type_("80 gal bermuda, zoysia for gun")
	}},
	{"mixing_topup", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "t", "a") }},
	{"mixing_topup_ride_on", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "t", "a", "h") }},
	{"mixing_topup_planned", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "t", "a", "enter") }},
	{"mixing_topup_line", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "t", "a", "x").typed("250 gal") }},
	{"mixing_dilute", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "i", "a") }},
	{"mixing_stretch", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "r", "a") }},
	{"mixing_blend", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "n", "b", "a") }},
	{"mixing_blend_end", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "n", "b", "a", "pgdown", "pgdown") }},
	{"mixing_jug", func(t *testing.T) *cab {
		return climbIn(t, tinted).press("g", "y", "j", "x").type_("Example Blue, 4 loads")
	}},
	{"mixing_jug_unknown", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "j") }},
	{"mixing_use_up", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "u", "a", "x").type_("2 gal") }},
	{"mixing_tint", func(t *testing.T) *cab { return climbIn(t, tinted).press("g", "y", "k", "a") }},
	{"mixing_rinse", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "w", "b") }},
}

// A top-up is worked out from what is in the tank, planned with Enter, ticked, and books only what was added.
func TestATopUpIsPlannedAndTicked(t *testing.T) {
	c := climbIn(t, morning).press("g", "y").sees("what fills a compartment at the strength meant").press("t").sees("Top up")
	c.press("a").sees("a to 300.0 gal of bermuda, zoysia for gun", "add Example Warm 80.0 fl oz", "Enter  plan 100.0 gal into a")
	c.press("enter").sees("the list of what goes into a").press("enter").sees("0 of 11 done")
	c.press(strings.Fields(strings.Repeat("enter ", 15))...).sees("loaded 100.0 gal")
	if got := c.facts(); got != "load_planned"+strings.Repeat(" ticked", 11)+" loaded" {
		t.Errorf("logged: %s", got)
	}
	f, ok := c.logged().(*core.Loaded)
	if !ok || f.Volume != measure.Gallons(100) || len(f.Parts) != 1 || c.book().MixIn("a") != "bermuda, zoysia" {
		t.Errorf("%+v", f)
	}
}

// What is typed changes the answer; what cannot be stays in the line with what is wrong, and z forgets it.
func TestAFigureIsChanged(t *testing.T) {
	c := climbIn(t, morning).press("g", "y", "t", "a", "x").type_("150").sees("It is to be filled to 150.0 gal, but 200.0 gal are in it already.", "least 200.0 gal")
	c.press("esc", "x").type_("fog").sees(`"fog" is neither a name of the book`)
	c.press("esc", "x").type_("240 gal").sees("a to 240.0 gal", "add Example Warm 32.0 fl oz")
	c.press("h").sees("for ride-on").press("z").seesNot("a to 240.0 gal")
	if c.facts() != "" {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestABlendTakesTwoLetters(t *testing.T) {
	c := climbIn(t, morning).press("g", "y", "n", "b").sees("of b into").press("a").sees("of b into a", "STOP").press("c").sees("of c into")
	if c.facts() != "" {
		t.Errorf("logged: %s", c.facts())
	}
}

// Without a rig each page says what to do, and no key fails.
func TestTheLidWithoutARig(t *testing.T) {
	for _, p := range mixingTitles {
		c := climbIn(t, noBook, func(o *Options) { o.Book = core.NewBook(1) }).press("g", "y", p.key)
		c.press("a", "x", "h", "z", "enter")
		if s := c.screen(); !strings.Contains(s, ".") {
			t.Errorf("%s:\n%s", p.kind, s)
		}
	}
}

// A blend that was run over is logged from its page, after a yes.
func TestABlendIsLogged(t *testing.T) {
	c := climbIn(t, morning).press("g", "y", "n", "b", "a", "down").sees("log that it was run over")
	a, b := c.book().Plumbing().Compartment('a').Liquid.Volume, c.book().Plumbing().Compartment('b').Liquid.Volume
	c.press("enter")
	if got := c.facts(); got != "" {
		t.Fatalf("logged before the yes: %s", got)
	}
	c.press("y")
	f, ok := c.logged().(*core.Dumped)
	if !ok || f.Volume.V <= 0 {
		t.Fatalf("%+v", c.logged())
	}
	p := c.book().Plumbing()
	if sum := p.Compartment('a').Liquid.Volume + p.Compartment('b').Liquid.Volume; sum != a+b || p.Compartment('a').Liquid.Volume == a {
		t.Errorf("a %s, b %s", p.Compartment('a').Liquid.Volume.Text(), p.Compartment('b').Liquid.Volume.Text())
	}
}
