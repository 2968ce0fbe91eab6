package tui

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

// TestUpkeepByKeys: tasks to start with, one done with its cost, a task and a paper by one line each, a tick that stays.
func TestUpkeepByKeys(t *testing.T) {
	c := twoLawns(t).size(100, 60).press("g", "n", "u").sees("No task is set up yet.", "licence, certificates and insurance are not looked at").press("enter")
	c.sees("engine oil", "spark plug", "engine hours were never read", "check list: winter")
	c.press("i").typed("engine 812").press("enter").press("n").typed("reel chain every 7 days").press("enter").sees("reel chain")
	c.press("n").typed("reel chain").press("enter").sees("It is not said what is to be done, or when.").press("esc")
	c.press("n").typed("oil every 50 parsecs").press("enter").sees(`"parsecs" is no unit of an interval.`).press("esc")
	c.press("p").typed("turf licence 2026-06-10 number 00000-7 6 h").press("enter").sees("ends on 2026-06-10, in 13 days", "6 h of training")
	c.goesTo("task/reel chain", "down").press("enter").typed("14.50 new chain").press("enter").sees("booked upkeep done: reel chain; new chain; $14.50")
	c.goesTo("tick/winter/"+"drain tanks and pump and hose", "down").press("enter").sees("[x] drain tanks and pump and hose")
	c.press("w").typed("25 % 4 gal into 1.5 gal").press("enter").sees("18.2 % of propylene glycol", "near 22 F").press("esc")
	c.goesTo("paper/turf licence", "up").press("k").press("y")
	f := c.disk.entries[len(c.disk.entries)-1].What.(*core.Paper)
	if f.Retired != "yes" || len(c.book().Papers()) != 0 {
		t.Errorf("logged %+v", f)
	}
	if got := c.book().Ticks(core.CheckList("winter 2026")); strings.Join(got, ",") != "drain tanks and pump and hose" {
		t.Errorf("ticked %v", got)
	}
}
