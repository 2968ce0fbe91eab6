package tui

import "testing"

func TestWhatLooksLikeASlipIsAsked(t *testing.T) {
	c := climbIn(t, morning).press("enter")
	c.press("o").type_("b 41").sees("The gauge of b says 41.0 gal", "book it: gauge of b: 41.0 gal").press("esc")
	if got := c.facts(); got != "visit_begun" {
		t.Fatalf("logged: %s", got)
	}
	c.press("o").type_("b 41").press("enter").sees("book it").press("y").sees("booked gauge of b")
	c.press("l").type_("3.5").sees("times what gun lays").press("y")
	c.press("l").type_("7.8").sees("that went down there in").press("esc") // with it one dose, over the label
	if got := c.facts(); got != "visit_begun gauge_read sprayed" {
		t.Errorf("logged: %s", got)
	}
}

// TestBookedInSpiteOfAStop: what went down is booked with a reason for the stop, and neither Enter books it.
func TestBookedInSpiteOfAStop(t *testing.T) {
	c := climbIn(t, atAlder).press("l").type_("front 6.2")
	c.sees("book in spite of the stop", "A reason does not make it lawful.")
	c.press("enter", "l", "k", "a").sees("book in spite of the stop")
	c.press("y").sees("go on in spite of grass, Example Cool", "because").type_("3").sees("book in spite of the stop: sprayed 418 Alder Court front")
	if got := c.facts(); got != "overridden" {
		t.Fatalf("logged: %s", got)
	}
	c.press("enter").sees("book in spite of the stop").press("y").sees("booked sprayed 418 Alder Court front")
	if got := c.facts(); got != "overridden sprayed" {
		t.Errorf("logged: %s", got)
	}
}

func TestOverdoseNeedsAReasonToo(t *testing.T) {
	c := climbIn(t, morning).press("enter", "l").type_("60")
	c.press("y").sees("because").press("esc").seesNot("booked sprayed")
	if got := c.facts(); got != "visit_begun" {
		t.Errorf("logged: %s", got)
	}
}
