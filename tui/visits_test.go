package tui

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

// route lists the lawns of the day with their states.
func (c *cab) route() string {
	var out []string
	for _, v := range c.book().Day().Visits {
		out = append(out, v.Lawn+" "+v.State)
	}
	return strings.Join(out, ", ")
}

func TestVisitsAreMovedAndTakenOut(t *testing.T) {
	c := climbIn(t, morning).press("g", "v").down("12 Fir Lane").press("u").sees("booked still to do today: 77 Fir Lane, 12 Fir Lane, 418 Alder")
	c.press("u").sees("booked still to do today: 12 Fir Lane, 77 Fir Lane")
	c.press("u") // it is the first
	c.press("n").down("14 Cedar Court").press("n")
	if got := len(c.disk.entries); got != 3 {
		t.Errorf("%d changes of the route", got)
	}
	c.press("x").sees("take 14 Cedar Court out of the day").press("esc")
	c.press("x", "y").seesNot("14 Cedar")
	c.press("esc", "esc").sees("arrived at 77 Fir Lane", "12 Fir Lane")
	if got := c.facts(); got != "routed routed routed routed" {
		t.Errorf("logged: %s", got)
	}
}

func TestVisitIsBegunAndLeftFromItsRow(t *testing.T) {
	c := climbIn(t, morning).press("g", "v").down("31 Maple").press("enter").sees("booked arrived at 31 Maple Drive", "leave 31 Maple Drive")
	c.down("12 Fir Lane").press("enter").sees("NOT BOOKED", "The visit at 31 Maple Drive is not ended yet.")
	c.down("31 Maple").press("enter").sees("booked left 31 Maple Drive", "open the page of 31 Maple Drive").press("enter").sees("Lawn", "8,800 sq ft")
	c.press("esc").sees("Visits of the day").press("esc").sees("visit 1 of 9")
}

func TestVisitIsBegunAsAnotherKind(t *testing.T) {
	for _, tc := range []struct{ typed, then, says, kind, cause string }{
		{"1", "", "arrived at 12 Fir Lane", core.Round, ""},
		{"2", "3", "arrived at 12 Fir Lane, call-back: brown spots", core.CallBack, "brown spots"},
		{"call-back", "white clover", "call-back: white clover", core.CallBack, "white clover"},
		{"3", "", "first visit", core.First, ""},
		{"Spot", "", "arrived at 12 Fir Lane, spot", core.Spot, ""},
		{"5", "", "to look only", core.LookOnly, ""},
	} {
		c := climbIn(t, morning).press("g", "v").down("12 Fir Lane").press("k").sees("1 round", "5 look only").type_(tc.typed)
		if tc.then != "" {
			c.press("enter").sees("has no cause").type_(tc.then)
		}
		c.sees("booked", tc.says)
		if v := c.book().Day().Visiting(); v == nil || v.Kind != tc.kind || v.Cause != tc.cause {
			t.Errorf("%s: %+v", tc.typed, v)
		}
	}
	c := climbIn(t, morning).press("g", "v", "k").type_("walk").sees("walk", "That is no kind of visit.").press("esc", "k").type_("2").press("esc")
	if c.facts() != "" {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestKindAndArrivalOfTheVisitThatIsOn(t *testing.T) {
	c := climbIn(t, morning).press("enter", "g", "v").press("t").type_("9:30").sees("put right", "arrived at 77 Fir Lane at 09:30")
	c.press("k").type_("2").type_("1").sees("now, 09:30", "call-back: weeds are back")
	if v := c.book().Day().Visiting(); v.Kind != core.CallBack || v.Begun.Clock() != "09:30" {
		t.Errorf("%+v", v)
	}
	c.press("t").type_("11:00").sees("later than now", "11:00").press("esc")
	c.press("t").type_("soon").sees("is no time of day", "soon").press("esc").press("t").press("enter").sees("Nothing is typed.")
}

func TestArrivedEarlierThanThePress(t *testing.T) {
	c := climbIn(t, morning).press("g", "v").down("77 Fir").press("t").type_("9:35").sees("booked arrived at 77 Fir Lane at 09:35")
	if v := c.book().Day().Visiting(); v.Begun.Clock() != "09:35" {
		t.Errorf("begun at %s", v.Begun.Clock())
	}
}

func TestVisitIsSkippedFromItsRow(t *testing.T) {
	c := climbIn(t, morning).press("g", "v").down("9 Oak").press("s").sees("skip 9 Oak Street because", "1 gate").type_("2").sees("skipped: dog")
	if !strings.Contains(c.route(), "9 Oak Street skipped") {
		t.Error(c.route())
	}
}

func TestVisitIsCarriedOverAndPutInAgain(t *testing.T) {
	c := climbIn(t, morning).press("g", "v").down("9 Oak").press("o").sees("carry 9 Oak Street over because", "1 no time")
	c.press("enter").sees("Nothing is typed.").type_("wet soon 2026-05-01").sees("does not come after", "wet soon 2026-05-01").press("esc")
	c.press("o").type_("2 2026-06-02").sees("carried over", "still owed")
	if o := c.book().OwedAt("9 Oak Street"); o == nil || o.Reason != "wet" || o.Until != "2026-06-02" || len(o.Zones) != 2 {
		t.Errorf("owed: %+v", o)
	}
	c.down("front 3,000 + strip 800 sq ft, wet").sees("put 9 Oak Street in today").press("enter").sees("it is planned today already")
	if !strings.HasSuffix(c.route(), "14 Cedar Court planned, 9 Oak Street planned") {
		t.Error(c.route())
	}
	c.down("9 Oak Street").press("esc").sees("77 Fir Lane")
}

func TestPartOfAZoneIsCarriedOver(t *testing.T) {
	c := climbIn(t, atAlder).press("enter", "l").type_("front 1000 sqft").press("g", "v", "o")
	c.type_("pool wet").sees("carried over", "back 3,400 sq ft").press("enter")
	o := c.book().OwedAt("418 Alder Court")
	if o == nil || len(o.Zones) != 2 || o.Zones[0].Area.Text() != "3,000" {
		t.Fatalf("owed: %+v", o)
	}
	c = climbIn(t, atAlder).press("enter", "g", "v").press("o").type_("back gate").sees("418 Alder Court: back 3,400 sq ft, gate")
	c.press("o").type_("back gate").sees("Nothing is left to do on back.")
}

func TestClosedDayIsOnlyRead(t *testing.T) {
	c := climbIn(t, atAlder+"\n"+`{"fact":"day_closed"}`).press("g", "v").sees("2026-05-28 is closed", "418 Alder Court")
	c.press("enter", "k", "t", "s", "o", "u", "n", "x", "y")
	if c.facts() != "" || c.model().open {
		t.Errorf("logged: %s", c.facts())
	}
	c.press("l").sees("Lawn")
}

func TestPartOfAZoneNowAndTheRestCarriedOver(t *testing.T) {
	c := climbIn(t, morning).press("enter", "l").type_("3000 sqft")
	c.sees("2,200 sq ft of all is left at 77 Fir Lane", "v carries it over")
	c.press("v").sees("carry over 2,200 sq ft of all because").type_("1").sees("booked")
	if got := c.facts(); got != "visit_begun sprayed carried_over visit_done" {
		t.Errorf("logged: %s", got)
	}
	if owed := c.book().Owed(); len(owed) != 1 || owed[0].Zones[0].Area.SquareFeet() != 2200 {
		t.Errorf("owed: %+v", owed)
	}
}
