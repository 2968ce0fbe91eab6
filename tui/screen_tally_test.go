package tui

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"example.com/tintline/core"
	"example.com/tintline/core/tally"
)

// tapOn taps the first place where the words stand.
func (c *cab) tapOn(words string) *cab {
	c.t.Helper()
	for y, l := range strings.Split(c.screen(), "\n") {
		if x := strings.Index(l, words); x >= 0 {
			return c.tapAt(ansi.StringWidth(l[:x]), y)
		}
	}
	c.t.Fatalf("there is no %q to tap:\n%s", words, c.screen())
	return c
}

// twoLawns are two visits: 7.8 gal of b on 5,200 sq ft, then 11.1 gal of a on 7,400.
func twoLawns(t testing.TB) *cab { return climbIn(t, atAlder).press("enter", "enter", "enter") }

func TestTallyShowsThePrintedRows(t *testing.T) {
	c := twoLawns(t).press("g", "n", "t").size(120, 60)
	day := tally.Close(c.book(), core.Known(core.At(c.at)))
	for _, l := range strings.Split(day.Text(), "\n") {
		c.sees(strings.TrimRight(l, " "))
	}
	c.sees("2 lawns   12,600 sq ft   18.9 gal", "still open")
}

func TestTallyTurnsAWideTable(t *testing.T) {
	c := twoLawns(t).press("g", "n", "t").sees("to lawns      11.1    7.8")
	c.press("esc", "esc", "esc").sees("take from")
}

func TestTallyIsReadToItsEnd(t *testing.T) {
	c := twoLawns(t).size(60, 20).press("g", "n", "t").seesNot("front, common")
	for range 60 {
		c.press("down")
	}
	c.sees("front, common bermudagrass")
}

func TestTallyByTaps(t *testing.T) {
	c := twoLawns(t).tapOn("g pages").tapOn("n Close and records").tapOn("t Tally")
	c.tapOn("- by compartment").sees("+ by compartment, 5 rows", "bermuda, zoysia    11.1   7,400").seesNot("unexplained")
	c.tapOn("- by mix").tapOn("- by product").tapOn("- by applicator").tapOn("- by hour").sees("418 Alder Court")
	c.tapOn("+ by compartment").sees("unexplained")
	c.tapOn("Esc back").press("esc", "esc").sees("take from")
	if got := c.facts(); strings.Contains(got, "tally") || strings.HasSuffix(got, "gauge_read") {
		t.Errorf("logged: %s", got)
	}
}

func TestTallyWithoutADay(t *testing.T) {
	climbIn(t, "").press("g", "n", "t").sees("No day was opened yet")
}

func TestTallyOfAClosedDay(t *testing.T) {
	c := climbIn(t, morning)
	for range 9 {
		c.press("k").type_("3")
	}
	c.press("y").type_("1").press("esc", "g", "n", "t").sees("The day is closed.", "0 lawns")
}

func TestRowsOfTheTallyLeadOn(t *testing.T) {
	c := twoLawns(t).size(120, 60).press("g", "n", "t").tapOn("fescue, bluegrass").sees("One mix", "Example Cool").press("esc")
	c.tapOn("Example Warm").sees("One product", "metsulfuron-methyl").press("esc")
	c.tapOn("418 Alder Court ").sees("B. Example").press("esc").sees("The day is still open")
}

// TestTallyOfOtherDays goes back day by day and asks for spans.
func TestTallyOfOtherDays(t *testing.T) {
	c := climbIn(t, decade).size(80, 150).press("g", "n", "t")
	c.sees("2026-05-28", "still open")
	c.press("left").sees("2025-06-01", "1 lawn ", "2.00 gal")
	c.press("left").sees("2024-06-01", "8.00 gal", "by applicator", "by hour")
	c.press("left", "left").sees("No day was opened before 2023-05-01.")
	c.press("right").sees("2024-06-01")
	c.press("l").typed("5/1/2023 2025").press("enter").sees("2023-05-01 to 2025-06-01", "22.0 gal")
	c.press("right").sees("2026-05-28")
	c.press("l").typed("2025 2024").press("enter").sees("2025-01-01 to 2024-12-31 runs backwards.", "Write the earlier day first.")
	c.press("esc", "l").typed("2022").press("enter").sees("No day was opened from 2022-01-01 to 2022-12-31; the last one is 2026-05-28.")
	c.press("l").typed("all").press("enter").sees("2023-05-01 to 2026-05-28", "22.0 gal", "The last of these days is still open.")
	c.press("esc", "t").sees("The day is still open; the figures stand as of now.")
}
