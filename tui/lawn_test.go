package tui

import (
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

func TestLawnOfTheDayOpens(t *testing.T) {
	c := climbIn(t, fullDay).press("g", "l").sees("12 Fir Lane   C. Example   555-0112", "visit 3: now", "left side, the latch is high", "3.00 gal on 2,000 sq ft by gun")
	c.size(80, 30).sees("new sod").size(80, 24)
	c.down("carried over: 12 Fir Lane").press("enter").sees("One entry", "Carried over: 12 Fir Lane: back 2,000 sq ft, wind.").press("esc").sees("show entry ")
	c.press("esc").sees("at 12 Fir Lane")
}

func TestLawnIsChanged(t *testing.T) {
	c := climbIn(t, fullDay).press("g", "l").down("left side").press("enter").sees("gate: left side").type_("none left").sees("booked lawn 12 Fir Lane")
	c.down("brown one").press("enter").send(stroke("backspace")).press("enter").sees("brown one, barks onl")
	c.down("always").press("enter", " ", "enter").down("front").press("enter").type_("3900").sees("3,900 sq ft")
	c.down("back").press("enter").type_("1800 sqft tall fescu").sees("not a known grass", "tall_fescue").press("esc", "enter").type_("1,800 sq ft zoysiagrass")
	l := c.book().Lawn("12 Fir Lane")
	if l.Gate != "none left" || l.Dog != "brown one, barks onl" || l.Notes != "" || l.Phone != "555-0112" {
		t.Errorf("%+v", l)
	}
	if f, b := l.Zones[0], l.Zones[1]; f.Area.Text() != "3,900" || f.Grass != "tall_fescue" || b.Area.Text() != "1,800" || b.Grass != "zoysiagrass" || len(f.Hazards) != 2 {
		t.Errorf("%+v", l.Zones)
	}
	before := c.book().StateDigest()
	c.down("front").press("enter").type_("lots").sees("lots").press("esc").press("enter").type_("0").sees("Give").press("esc")
	if c.book().StateDigest() != before {
		t.Error("a wrong line changed the lawn")
	}
}

func TestNoteOnALawn(t *testing.T) {
	c := climbIn(t, atAlder).press("g", "l", "i", "enter").sees("The note on 418 Alder Court is empty.").type_("sprinklers at 10").sees("booked note", "notes", "2026-05-28 sprinklers at 10")
	c.press("esc").sees("at 418 Alder Court")
}

func TestLawnsAreListedAndOneComesBack(t *testing.T) {
	c := climbIn(t, atAlder).press("g", "l").sees("418 Alder Court").press("o").sees("all lawns of the book").down("31 Maple").press("enter").sees("31 Maple Drive", "! pond")
	c.press("esc").sees("at 418 Alder Court")
	c.press("g", "v").down("9 Oak").press("l").sees("9 Oak Street").press("esc").sees("Visits of the day")
	climbIn(t, "").press("g", "l").sees("all lawns of the book")
}

func TestHistoryOfALawnAcrossDays(t *testing.T) {
	struck := "\n" + `{"fact":"visit_skipped","lawn":"418 Alder Court","reason":"gate"}` + "\n" + `{"fact":"struck","of":29,"reason":"slip","instead":{"fact":"visit_skipped","lawn":"418 Alder Court","reason":"dog"}}`
	c := climbIn(t, atAlder+struck+"\n"+`{"fact":"day_closed"}`).press("g", "l", "o").down("418 Alder").press("enter")
	c.down("struck: skipped 418 Alder Court: gate").down("put right: skipped 418 Alder Court: dog").press("enter").sees("Struck entry 29 (slip)", "Entry 30")
	c.press("esc").sees("history")

	lines := morning
	for range 220 {
		lines += "\n" + `{"fact":"noted","lawn":"77 Fir Lane","text":"again"}`
	}
	c = climbIn(t, lines+"\n"+`{"fact":"day_closed"}`).press("g", "l", "o").down("77 Fir").press("enter")
	c.down("older entries").press("enter").down("older entries").press("enter").down("lawn 77 Fir Lane: all")
	c.seesNot("older entries")
}

func TestNewLawnIsSetUpAndPutIn(t *testing.T) {
	c := climbIn(t, morning).press("g", "l", "n").sees("lawn").typed("7 Ash Close").press("enter").typed("3300").press("pgdown").typed("ta").press("enter").sees("booked lawn 7 Ash Close", "7 Ash Close")
	c.press("v").sees("booked still to do today", "visit 10: planned")
	c.press("z").typed("strip").press("esc", "esc", "g", "v").down("7 Ash Close").press("u").sees("9 7 Ash Close")
	if l := c.book().Lawn("7 Ash Close"); l == nil || l.Zones[0].Grass != "tall_fescue" {
		t.Errorf("%+v", l)
	}
}

func TestGrowthIsSaidOnTheLawnPage(t *testing.T) {
	c := climbIn(t, fullDay).press("g", "l")
	zone := func(name string) core.Zone { z, _ := c.book().Lawn("12 Fir Lane").Zone(name); return z }
	c.down("front").press("w").sees("grass on front: ", "1 growing", "6 newly seeded").type_("3").sees("booked 12 Fir Lane, front: dormant since 2026-05-28")
	if f, b := zone("front"), zone("back"); f.Growth != label.Dormant || f.GrowthSince != "2026-05-28" || b.Growth == label.Dormant {
		t.Errorf("%+v %+v", f, b)
	}
	c.down("555-0112").press("w").sees("grass on all of 12 Fir Lane: ").type_("back 6 2026-05-01").sees("booked 12 Fir Lane, back: newly seeded since 2026-05-01")
	c.press("w").type_("stressed").sees("booked 12 Fir Lane: stressed since 2026-05-28")
	c.press("w").type_("7").sees("\"7\" is no state of growth").press("esc").press("w").type_("1 2027-01-01").sees("still to come").press("esc")
	if f, b := zone("front"), zone("back"); f.Growth != label.Stressed || b.Growth != label.Stressed {
		t.Errorf("%+v %+v", f, b)
	}
	c.down("known since").press("enter").type_("2026-01-01").sees("known since  2026-01-01")
}

func TestGrowthIsReadByItsFirstLetters(t *testing.T) {
	l := &core.Lawn{LawnName: "Elm", Zones: []core.Zone{{Name: "front"}, {Name: "greens"}}}
	for said, want := range map[string]string{
		"growing": label.Growing, "green": label.GreeningUp, "greening up": label.GreeningUp, "dorm": label.Dormant, "s": label.Stressed, "newly sodded": label.Sodded, "greens newly seed": label.Seeded,
		"sodded": label.Sodded, "seeded 2026-05-01": label.Seeded, "2 today": label.GreeningUp, "": "", "growing fast": "", "0": "", "front": "", "sod": label.Sodded,
	} {
		f, err := readGrowth(l, nil, said, startTime)
		got := ""
		if err == nil {
			got = f.(*core.GrowthSeen).Growth
		}
		if got != want {
			t.Errorf("%q reads as %q, not as %q: %v", said, got, want, err)
		}
	}
}

func TestOwnNoteAndSitesOnTheLawnPage(t *testing.T) {
	c := climbIn(t, fullDay).press("g", "l").down("front").press("s").sees("What is known of front", "growth not said")
	c.press("right", "enter", "enter", "enter").typed("water 20 ft").press("enter").sees("for the application record").press("pgdown").sees("booked")
	z, _ := c.book().Lawn("12 Fir Lane").Zone("front")
	if len(z.Sites) != 1 || z.Sites[0].Feet.V != 20 || z.Growth != label.Growing {
		t.Errorf("%+v", z)
	}
	c.down("front").press("j").sees("Own note", "front of 12 Fir Lane").typed("Example Cool").press("enter", "enter", "enter", "enter").typed("browned in 2024").press("enter").sees("booked own note, stop", "browned in 2024")
	c.down("browned").press("enter").sees("front of 12 Fir Lane").press("right", "right", "right").sees("take it back").press("enter", "enter").sees("taken back").seesNot("own notes")
	if n := len(c.book().Cautions()); n != 0 {
		t.Errorf("%d own notes", n)
	}
}
