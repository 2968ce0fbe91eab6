package tui

import (
	"os"
	"strings"
	"testing"
)

// A reading that shows more than it may be off points to the page; Enter there asks where a limit is crossed, and y books it.
func TestTheLawnsAreTruedUp(t *testing.T) {
	text, err := os.ReadFile("../testdata/script/trueup.txtar")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(text), "-- day.jsonl --\n")
	day, _, _ := strings.Cut(rest, "-- want.txt --\n")
	c := truedCab(t, day).press("g", "y", "v")
	for _, size := range [][2]int{{80, 24}, {120, 40}} {
		t.Logf("%s", c.size(size[0], size[1]).screen())
	}
	c.size(80, 24).sees("True up", "3.20 gal more gone than was logged", "Oak, all", "12.0", "put the lawns right")
	c.press("enter").sees("book it")
	if got := c.facts(); strings.Contains(got, "trued_up") {
		t.Fatalf("booked without a yes: %s", got)
	}
	c.press("y").sees("trued up")
	if got := c.facts(); !strings.Contains(got, "trued_up") {
		t.Fatalf("logged: %s", got)
	}
}
