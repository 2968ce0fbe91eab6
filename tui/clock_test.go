package tui

import (
	"testing"
	"time"

	"example.com/tintline/core"
)

// TestClockSetBackIsAskedOnce: the clock goes back under the screen. What is booked next is asked about and named; y
// answers. After it nothing is asked, and the day stays the one that was opened.
func TestClockSetBackIsAskedOnce(t *testing.T) {
	for name, back := range map[string]time.Duration{"an hour": time.Hour, "two days": 48 * time.Hour, "a dead battery": 56 * 365 * 24 * time.Hour} {
		c := climbIn(t, "")
		c.press("enter").type_("R. Example").press("enter").sees("booked")
		day := c.book().Day().Date
		was, before := c.at, c.book().Seq()
		c.at = c.at.Add(-back)
		c.press("w").type_("rain").press("enter").sees("The clock says " + c.at.Format("2006-01-02"))
		c.wait(time.Second)
		if now := c.book().Seq(); now != before {
			t.Fatalf("%s: %d entries were booked unasked", name, now-before)
		}
		c.press("y").sees("booked")
		if now := c.book().Seq(); now == before || c.book().LastAt() != core.At(c.at) {
			t.Errorf("%s: %d entries, the last of %s", name, now-before, c.book().LastAt())
		}
		if d := c.book().Day(); d.Date != day || !d.Open {
			t.Errorf("%s: the day is %s", name, d.Date)
		}
		c.wait(time.Second)
		c.press("w").seesNot("The clock says").sees("booked") // on hold, and on again
		c.at = was.Add(time.Minute)
	}
}
