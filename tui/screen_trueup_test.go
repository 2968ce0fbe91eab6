package tui

import (
	"strconv"
	"strings"
	"testing"
)

// The page tells what the last reading showed, and Enter books it; what crosses a limit is asked about first.
func TestTheLawnsAreTruedUp(t *testing.T) {
	c := climbIn(t, atAlder+`
{"fact":"sprayed","lawn":"418 Alder Court","applicator":"gun"}`)
	letter := ""
	var left float64
	for _, l := range c.book().Day().Laid {
		for _, d := range l.Drew {
			letter = string(d.Letter)
			left = c.book().Plumbing().Compartment(d.Letter).Liquid.Volume.Gallons()
		}
	}
	if letter == "" {
		t.Fatal("nothing was drawn")
	}
	c.press("g", "g", letter, "enter")
	c.type_(strconv.FormatFloat(left-8, 102, 1, 64)+" gal").sees("booked", "True up the lawns: g y v.")
	c.press("esc", "esc", "esc", "g", "y", "v")
	for _, size := range [][2]int{{80, 24}, {120, 40}} {
		t.Logf("%s", c.size(size[0], size[1]).screen())
	}
	c.size(80, 24).sees("True up", "8.00 gal more gone than was logged", "418 Alder Court", "put the lawns right")
	c.press("enter")
	if got := c.facts(); !strings.Contains(got, "trued_up") {
		c.sees("book it").press("y")
	}
	c.sees("was trued up already")
	if got := c.facts(); !strings.Contains(got, "trued_up") {
		t.Fatalf("logged: %s", got)
	}
}
