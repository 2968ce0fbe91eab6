package tui

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

// spreading is the truck of the tests with a spreader and a hopper on the ride-on, and dry product for both.
func spreading(t testing.TB) string {
	rig := strings.SplitN(truck(t), "\n", 2)[0]
	return "\n" + strings.Replace(rig, `"tank_gal":14}`, `"tank_gal":14,"hopper_lb":120},{"name":"spreader","kind":"spreader","hopper_lb":50}`, 1) + `
{"fact":"product","name":"Example Food","form":"dry","kind":"fertiliser","grasses":["all_turf"],"rate_low_lb_per_1000_sqft":2,"rate_high_lb_per_1000_sqft":4}
{"fact":"product","name":"Example Lime","form":"dry","kind":"lime","grasses":["tall_fescue"]}
{"fact":"mix","name":"food","parts":[{"product":"Example Food","rate_lb_per_1000_sqft":3}]}`
}

// atAlderWithFood is the visit at 418 Alder Court, clean and ready, with 30 lb in the spreader.
func atAlderWithFood(t testing.TB) string {
	return morning + spreading(t) + `
{"fact":"loaded","into":"spreader","mix":"food","parts":[{"product":"Example Food","amount_lb":30}]}
{"fact":"visit_begun","lawn":"418 Alder Court"}`
}

func TestSpreadWithOneKey(t *testing.T) {
	c := climbIn(t, atAlderWithFood(t)).press("h", "h")
	c.sees("spreading with spreader", "spread 22.2 lb of Example Food on front + back", "spreader: Example Food", "30 of 50 lb")
	c.press("enter").sees("booked", "spread 418 Alder Court front + back: 22.2 lb of Example Food").sees("leave 418 Alder Court")
	c.press("u", "y").sees("spread 22.2 lb of Example Food on front + back")
	c.press("h").sees("spraying with gun").seesNot("leave 418 Alder Court")
	if got := c.facts(); got != "spread struck" {
		t.Errorf("logged: %s", got)
	}
}

func TestAnotherWeightIsLogged(t *testing.T) {
	c := climbIn(t, atAlderWithFood(t)).press("h", "h")
	c.press("l").sees("spread on front + back with spreader").type_("front 11 lb").sees("booked", "11.0 lb of Example Food", "on back")
	c.press("l").type_("three").sees("three")
	c.press("esc", "l").type_("3000 sqft").sees("9.00 lb of Example Food with spreader", "3,000 sq ft, by area")
	f := c.disk.entries[1].What.(*core.Spread)
	if f.By != core.ByArea || strings.Join(f.Zones, " ") != "back" {
		t.Errorf("%+v", f)
	}
}

func TestHopperIsLoadedFromTheCab(t *testing.T) {
	c := climbIn(t, morning+spreading(t))
	c.press("p").sees("50 lb PRODUCT ride-on loads it").type_("25 lb Example Food spreader").sees("booked", "loaded the hopper of spreader: 25.0 lb Example Food", "25 of 50 lb")
	c.press("p").type_("5 spreader").sees("30 of 50 lb")
	c.press("p").type_("60 lb food ride-on").sees("loaded the hopper of ride-on with food: 60.0 lb Example Food", "60 of 120 lb")
	c.press("p").type_("5 ride-on").sees("filled ride-on with 5.00 gal")
	c.press("p").type_("10 lb Example Lime spreader").sees("Example Lime does not go").press("esc")
	c.press("p").type_("30 lb spreader").sees("20.00 lb").press("esc")
	if got := c.facts(); got != "loaded loaded loaded filled" {
		t.Errorf("logged: %s", got)
	}
}

func TestRideOnInOnePass(t *testing.T) {
	c := climbIn(t, morning+spreading(t)+`
{"fact":"loaded","into":"ride-on","volume_gal":10,"mix":"bermuda, zoysia","for":"ride-on"}
{"fact":"loaded","into":"ride-on","mix":"food","parts":[{"product":"Example Food","amount_lb":60}]}
{"fact":"visit_begun","lawn":"418 Alder Court"}`)
	c.press("h").sees("spraying and spreading with ride-on", "sprayed 2.22 gal and spread 22.2 lb of Example Food on front + back")
	c.press("h").sees("spraying only, with ride-on", "sprayed 2.22 gal on front + back").seesNot("22.2 lb")
	c.press("h").sees("spreading only, with ride-on", "spread 22.2 lb of Example Food on front + back").seesNot("2.22 gal")
	c.press("l").sees("spread on front + back with ride-on").press("esc")
	c.press("h", "h").sees("spraying with gun").press("h").sees("spraying and spreading with ride-on")
	c.press("enter").sees("booked", "leave 418 Alder Court")
	if got := c.facts(); got != "sprayed spread" {
		t.Errorf("logged: %s", got)
	}
	c.press("u").sees("strike").press("y").sees("sprayed 2.22 gal and spread 22.2 lb")
	c.press("l").type_("front 11 lb").sees("11.0 lb of Example Food with ride-on")
}

func TestWeightNotKnownIsAsked(t *testing.T) {
	c := climbIn(t, morning+spreading(t)+`
{"fact":"loaded","into":"spreader","parts":[{"product":"Example Lime","amount_lb":40}]}
{"fact":"visit_begun","lawn":"77 Fir Lane"}`).press("h", "h")
	c.sees("type how much Example Lime went on all").press("enter").sees("spread on all with spreader").type_("26").sees("26.0 lb of Example Lime")
}

func TestSpreadIsPutRight(t *testing.T) {
	c := climbIn(t, atAlderWithFood(t)).press("h", "h", "enter", "g", "j").press("o").sees("7,400 sqft").type_("20 lb")
	c.sees("20.0 lb")
	if h := c.book().Plumbing().Hopper("spreader"); h.Mass().Pounds() != 10 {
		t.Errorf("%.2f lb are left", h.Mass().Pounds())
	}
}

// TestHopperRowsAtEverySize: the driver checks that each screen is square; what the hopper holds is never lost.
func TestHopperRowsAtEverySize(t *testing.T) {
	c := climbIn(t, atAlderWithFood(t)).press("h", "h")
	for w := leastWidth; w <= 200; w += 7 {
		for _, h := range []int{leastHeight, 24, 40, 60} {
			c.size(w, h).sees("30 of 50")
		}
	}
}
