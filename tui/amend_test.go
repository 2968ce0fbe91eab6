package tui

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

// TestARecordIsAmendedByKeys: of a closed day, with a reason; the first value stays beside it.
func TestARecordIsAmendedByKeys(t *testing.T) {
	c := climbIn(t, decade).size(100, 60).press("g", "n", "r", "left", "enter").sees("One record", "2025-06-01")
	c.press("o").typed("target clover").press("enter").sees("It is not said why.")
	c.press("esc", "o").typed("target clover because it was clover").press("enter")
	f, ok := c.disk.entries[len(c.disk.entries)-1].What.(*core.Amended)
	if !ok || f.Date != "2025-06-01" || f.Who != "R. Example" || f.Why != "it was clover" || f.Changes[0].Is != "clover" {
		t.Fatalf("logged %+v", f)
	}
	c.press("esc", "l").typed("2025").press("enter", "enter").sees("amended", "target: clover, first nothing; by R. Example")
	if !strings.Contains(c.screen(), "target              clover") {
		t.Error("the record does not say what it was amended to")
	}
}
