package tui

import (
	"strings"
	"testing"

	"example.com/tintline/core/label"
	"example.com/tintline/core/setup"
)

// wholeLabel is a next version with every field of a label.
const wholeLabel = `
{"fact":"product","name":"Example Cool","form":"liquid","kind":"herbicide","actives":[{"name":"mesotrione","lb_per_gal":4,"most_year_lb_per_acre":0.5}],"grasses":["kentucky_bluegrass","tall_fescue"],"rate_low_fl_oz_per_acre":4,"rate_high_fl_oz_per_acre":8,"rates":[{"grasses":["kentucky_bluegrass"],"low_fl_oz_per_acre":4,"high_fl_oz_per_acre":5}],"most_application_fl_oz_per_acre":8,"most_year_fl_oz_per_acre":16,"most_times":3,"days_between":14,"temp_max_f":85,"rain_free_h":1,"no_inversion":"yes","reentry":"keep off until it has dried","new_turf_days":28,"water_ft":25,"no_bloom":"no","none":["temp_min","reseed_days","wind_max"],"signal":"caution","restricted":"no","sites":["residential lawns"],"mixing_class":"sc","price_usd":320,"package_gal":0.5,"nitrogen_pct":0,"density_lb_per_gal":9.6}`

// offeredTicks fills the form of a product up to the grasses that the reference offers for its active.
func (c *cab) offeredTicks() *cab {
	return c.typed("Example Second").press("enter", "right", "right", "enter").typed("5").press("enter", "enter").typed("mesotrione 4 lb/gal").press("pgdown")
}

// TestTicksThatTheReferenceOffers: grasses that sources which were read call tolerant are ticked and marked, nothing is
// that was recalled, and what is unticked is not in the entry.
func TestTicksThatTheReferenceOffers(t *testing.T) {
	c := climbIn(t, morning).size(120, 40).opens((*Model).formProduct).offeredTicks()
	c.sees("Ticked and marked reference", "Confirm each from the label", "[x] Kentucky bluegrass, reference", "[ ] common bermudagrass", "[ ] all turf")
	want := label.PrefillGrasses([]string{"mesotrione"})
	if got := c.model().form.said["grasses"]; got != strings.Join(want, setup.Joint) || len(want) == 0 {
		t.Errorf("ticked are %s, offered %v", got, want)
	}
	for _, g := range []string{"all_turf", "bermudagrass_common", "zoysiagrass"} {
		if strings.Contains(c.model().form.said["grasses"], g) {
			t.Errorf("%s is ticked", g)
		}
	}
	// Another active: what was proposed goes with it.
	c.press("pgup").press("down", "down", "down", "down", "ctrl+u").typed("own: x 5%").press("pgdown").sees("[ ] Kentucky bluegrass").seesNot("[x]")
	c.press("pgup").press("down", "down", "down", "down", "ctrl+u").typed("mesotrione 4 lb/gal").press("pgdown").sees("[x] Kentucky bluegrass, reference")
	// Left and opened again, it is proposed anew.
	c.press("esc").opens((*Model).formProduct).press("pgup").press("down", "down", "down", "down", "ctrl+u").typed("own: x 5%").press("pgdown").sees("[ ] Kentucky bluegrass").seesNot("[x]")
	c.press("pgup").press("down", "down", "down", "down", "ctrl+u").typed("mesotrione 4 lb/gal").press("pgdown")
	c.tapOn("Kentucky bluegrass, reference").press("enter")
	p := c.book().Product("Example Second")
	if p == nil || p.Label.Lists("kentucky_bluegrass") || len(p.Label.Grasses) != len(want)-1 {
		t.Errorf("%+v, offered %v", p, want)
	}
}

// TestAnUnknownActiveInAForm: the form says the nearest names and how to enter one that is not known.
func TestAnUnknownActiveInAForm(t *testing.T) {
	c := climbIn(t, morning).opens((*Model).formProduct).typed("x").press("enter", "right", "enter").typed("2").press("enter", "enter")
	c.typed("mesotrion 4 lb/gal").press("enter").sees("own: mesotrion", "mesotrione")
}

// TestTheLabelIsChangedFromItsPage: what stands is shown, what is changed is the next version, all else stays.
func TestTheLabelIsChangedFromItsPage(t *testing.T) {
	c := climbIn(t, morning).size(120, 40).press("g", "p", "down", "enter")
	before := c.book().Product("Example Cool").Label
	c.press("i").sees("The label of Example Cool, page 1 of 7", "triclopyr 4 lb/gal", "00000-2", "0.2 fl oz per 1000 sqft")
	c.press("down", "down", "down", "down").typed("21").press("pgdown").sees("[x] tall fescue", "[x] Kentucky bluegrass")
	c.press("pgdown", "pgdown").sees("highest temp, F").typed("none").press("pgdown", "pgdown", "pgdown").sees("page 7 of 7").press("pgdown")
	h := c.book().Products()[1]
	if c.facts() != "product" || len(h.Versions) != 2 {
		t.Fatalf("logged %s: %d versions", c.facts(), len(h.Versions))
	}
	now := h.Now().Label
	if now.DaysBetween.V != 21 || !now.NoneOnLabel(label.LimitTempMax) {
		t.Errorf("%+v", now)
	}
	now.DaysBetween, now.None = before.DaysBetween, before.None
	if now.RateHigh != before.RateHigh || now.RateLow != before.RateLow || strings.Join(now.Grasses, ",") != strings.Join(before.Grasses, ",") || now.Registration != before.Registration {
		t.Errorf("it was\n%+v and is\n%+v", before, now)
	}
	c.sees("One product", "Example Cool").size(120, 60).press("pgdown", "pgdown").sees("version 2", "between two visits 21 days, was blank", "version 1").size(120, 40)

	// From any page, all of them as they stand.
	c.press("i", "pgdown", "pgdown").typed("5 fl oz/acre").press("ctrl+s")
	if h := c.book().Products()[1]; len(h.Versions) != 3 || h.Now().Label.RateLow.Text() != "0.115 fl oz per 1,000 sq ft" || h.Now().Label.DaysBetween.V != 21 {
		t.Errorf("%d versions, %+v", len(h.Versions), h.Now().Label)
	}
	c.press("i", "pgdown", "pgdown").typed("9 fl oz").press("pgdown", "ctrl+s").sees("names no area").press("esc", "i").press("pgup", "pgup", "pgup", "esc")
	c.m = func() Model { m := c.model(); m.drafts = map[string]draft{}; return m }()

	// Nothing changed is no version.
	c.press("i").press("pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown").sees("nothing was changed")
	if len(c.book().Products()[1].Versions) != 3 {
		t.Error("a version came of nothing")
	}
}

// TestTheRecipeIsChangedFromItsPage: the target of a product is entered on the page of its mix.
func TestTheRecipeIsChangedFromItsPage(t *testing.T) {
	c := climbIn(t, morning).press("g", "x", "enter", "i").sees("The mix bermuda, zoysia", "Example Warm", "1.2 fl oz per 1000 sqft")
	c.typed("9 fl oz/1000 sq ft").press("pgdown").sees("is above the label's most, 1.50")
	c.press("ctrl+u").typed("1.4 fl oz/1000 sq ft").press("enter").typed("white clover").press("pgdown")
	p := c.book().Mix("bermuda, zoysia").Parts[0]
	if c.facts() != "mix" || p.Target != "white clover" || p.Rate.Text() != "1.40 fl oz per 1,000 sq ft" {
		t.Errorf("logged %s: %+v", c.facts(), p)
	}
}
