package tui

import "testing"

const firOpen = `{"fact":"loaded","into":"b","volume_gal":100,"mix":"fescue, bluegrass","for":"gun"}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["77 Fir Lane"]}` + firLaid

const ohioAndNextDoor = `
{"fact":"setting","name":"state","value":"OH"}
{"fact":"neighbour","lawn":"77 Fir Lane","name":"Next Door","phone":"555-0117","calls":2,"register":"own_request"}`

// TestOwedNoticesAreLoggedByEnter: what is owed stands first; Enter logs it, and a call that failed has a key of its own. After two of
// them the note on the door is what is to be done (7 Pa. Code 128.112 has two calls).
func TestOwedNoticesAreLoggedByEnter(t *testing.T) {
	c := climbIn(t, firOpen+ohioAndNextDoor).size(100, 60)
	c.press("g", "n", "n").sees("1 neighbour to tell, 1 sign to put up, 1 notice to leave", "Call Next Door (555-0117) about 77 Fir Lane", "Going back onto the lawn")
	c.press("x").sees("1 call failed").press("x").sees("2 calls failed", "Leave a note on the door of Next Door")
	c.press("enter").sees("Put up the sign at 77 Fir Lane.").press("enter").sees("Signs that stand", "Leave the notice at 77 Fir Lane.").press("enter")
	c.sees("Nothing is owed")
	if got := c.facts(); got != "told told told signed told" {
		t.Errorf("logged: %s", got)
	}
	c.press("v").sees("Notice of treatment", "1-800-222-1222", "the label in hand decides")
}

// TestANeighbourIsEnteredInOneLine: what is wrong with it stays open with what was typed.
func TestANeighbourIsEnteredInOneLine(t *testing.T) {
	c := climbIn(t, firOpen).size(100, 60)
	c.press("g", "n", "n", "o").typed("Over the Way, 555-0118, x ft").press("enter").sees(`"x ft" is no distance.`).press("esc")
	c.press("o").typed("Over the Way, 555-0118, 40 ft, 24 h, has bees").press("enter").sees("Choose another date for 77 Fir Lane: too late to tell Over the Way.", "at least 24 h ahead")
	if got := c.facts(); got != "neighbour" {
		t.Errorf("logged: %s", got)
	}
	c.press("l").typed("smoke").press("enter").sees(`"smoke" is no way of a contact.`).press("esc")
	c.press("l").typed("text failed on Monday").press("enter").sees("Over the Way")
}

var noticeSituations = []situated{
	{"notices_owed", func(t *testing.T) *cab {
		return climbIn(t, firOpen+ohioAndNextDoor).press("g", "n", "n").press("x")
	}},
	{"notices_notice", func(t *testing.T) *cab { return climbIn(t, firOpen+ohioAndNextDoor).press("g", "n", "n", "v") }},
}
