package tui

import "testing"

func TestLawnOfTheDayOpens(t *testing.T) {
	c := climbIn(t, fullDay).press("g", "l").sees("12 Fir Lane   C. Example   555-0112", "visit 3: now", "left side, the latch is high", "new sod", "3.00 gal on 2,000 sq ft by gun")
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
