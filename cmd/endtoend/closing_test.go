//go:build unix

package endtoend

import (
	"path/filepath"
	"strings"
	"testing"
)

// The demo's day is closed by its page; the program is killed in the middle, and the close goes on where it stood.
func TestADayIsClosedByItsPage(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	late := []string{"TINTLINE_AT=2026-05-28T17:00:00-05:00"}
	c := start(t, small, late, "--book", book)
	c.see("visit 4 of 15")
	c.tap("gnk")
	c.see("Enter carry over what was not reached", "12 not reached")
	c.enter()
	c.see("booked", "Enter log what the gauge reads")
	c.kill()

	c = start(t, small, late, "--book", book)
	c.see("Enter close the day")
	c.enter()
	c.see("gauges of a b c read", "settles, stir it first")
	c.tap("- - 9999")
	c.enter()
	c.see("cannot say 9,999.0 gal")
	c.press("\x1b")
	c.see("Enter log what the gauge reads")
	c.tap("i")
	c.tap("odometer 48213 engine 812")
	c.enter()
	c.see("booked read the meters: engine 812 h, odometer 48213 mi")
	c.tap("nnn") // the gauges are left unread
	c.see("Enter close the day all the same, with a reason")
	c.enter()
	c.see("close all the same because")
	c.tap("no light to read by")
	c.enter()
	c.see("booked closed the day")
	c.press("q")
	if code := c.ended(); code != 0 {
		t.Errorf("exit %d", code)
	}
	log := must(t, "", "journal", "--json", "--book", book)
	for _, want := range []string{`"reason":"no light to read by"`, `"overnight":"a: `, "the gauge was not read since"} {
		if !strings.Contains(log, want) {
			t.Errorf("the journal has no %s", want)
		}
	}
}
