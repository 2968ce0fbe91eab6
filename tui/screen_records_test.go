package tui

import "testing"

const firLaid = "\n" + `{"fact":"sprayed","lawn":"77 Fir Lane","applicator":"gun","by":"gallons","volume_gal":4}`

// TestAnInspectorIsShownAnApplication: the page lists the day at once; another day, a lawn or a product is a line away.
func TestAnInspectorIsShownAnApplication(t *testing.T) {
	c := climbIn(t, decade+firLaid).size(80, 60)
	c.press("g", "n", "r").sees("2026-05-28", "77 Fir Lane", "Example Cool", "no state is set")
	c.press("enter").sees("One record", "R. Example", "registration number", "mix put down", "4 gal").press("esc")
	c.press("left").sees("2025-06-01").press("left").sees("2024-06-01")
	c.press("l").typed("2023 cool").press("enter").sees("1 row;", "2023-05-01")
	c.press("l").typed("fir").press("enter").sees("4 rows", "2026-05-28", "2023-05-01")
	c.press("l").typed("nowhere").press("enter").sees(`No lawn, customer or product has "nowhere" in its name.`)
	c.press("esc", "l").typed("2025 2024").press("enter").sees("2025-01-01 to 2024-12-31 runs backwards.")
}

// TestMissingFieldsAreFilledForTheDay: what the rule of the state asks for is filled once for all.
func TestMissingFieldsAreFilledForTheDay(t *testing.T) {
	c := climbIn(t, `{"fact":"setting","name":"state","value":"OH"}`+"\n"+decade+firLaid).size(100, 60)
	c.press("g", "n", "r").sees("a field is missing that the rule of OH asks for")
	c.press("enter").sees("missing", "supervisor", "Ohio: OAC 901:5-11-10(A)(2)").press("esc")
	c.press("i").typed("mood good").press("enter").sees(`"mood" is no field that can be filled.`).press("esc")
	c.press("i").typed("Supervisor none").press("enter").press("i").typed("helpers none").press("enter")
	c.press("enter").sees("supervisor          none").press("i").typed("target clover").press("enter").sees("target              clover")
	if got := c.facts(); got != "recorded recorded recorded" {
		t.Errorf("logged: %s", got)
	}
}
