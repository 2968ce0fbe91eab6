package tui

import "testing"

// TestAnotherThanTheProposedIsChosen: two mixes fit; the one that stands since the lawn before is chosen by its own key.
func TestAnotherThanTheProposedIsChosen(t *testing.T) {
	const leftOnC = morning + `
{"fact":"lined_up","supply":["c"],"return":"c"}
{"fact":"pushed_back","into":"b","volume_gal":4}
{"fact":"visit_begun","lawn":"77 Fir Lane"}
{"fact":"sprayed","lawn":"77 Fir Lane","applicator":"gun","by":"area"}
{"fact":"visit_done","lawn":"77 Fir Lane"}
{"fact":"visit_begun","lawn":"418 Alder Court"}`
	c := climbIn(t, leftOnC).sees("Enter  turn supply and return to a")
	c.press("c").sees("Spray", "from c").seesNot("turn supply")
	c.press("c").sees("Supply and return are on c already.")
	if got := c.facts(); got != "lined_up" {
		t.Errorf("logged: %s", got)
	}
}

// TestTypedBetweenTwoEnters: a slow machine reads them at once, and what was typed between them says that they are two.
func TestTypedBetweenTwoEnters(t *testing.T) {
	c := climbIn(t, "").send(stroke("enter"))
	for _, r := range "R. Example" {
		c.wait(1e6).send(stroke(string(r)))
	}
	c.wait(1e6).send(stroke("enter")).sees("booked opened the day")
}
