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
	c := twoLawns(t).press("g", "t").size(120, 40)
	day := tally.Close(c.book(), core.Known(core.At(c.at)))
	for _, l := range strings.Split(day.Text(), "\n") {
		c.sees(strings.TrimRight(l, " "))
	}
	c.sees("2 lawns   12,600 sq ft   18.9 gal", "still open")
}

func TestTallyTurnsAWideTable(t *testing.T) {
	c := twoLawns(t).press("g", "t").sees("to lawns      11.1    7.8")
	c.press("esc").sees("take from")
}

func TestTallyIsReadToItsEnd(t *testing.T) {
	c := twoLawns(t).size(60, 20).press("g", "t").seesNot("front, common")
	for range 30 {
		c.press("down")
	}
	c.sees("front, common bermudagrass", "tally --date 2026-05-28")
}

func TestTallyByTaps(t *testing.T) {
	c := twoLawns(t).tapOn("g pages").tapOn("Tally of the day")
	c.tapOn("- by compartment").sees("+ by compartment, 5 rows", "bermuda, zoysia    11.1   7,400").seesNot("unexplained")
	c.tapOn("- by mix").tapOn("- by product").sees("418 Alder Court")
	c.tapOn("+ by compartment").sees("unexplained")
	c.tapOn("Esc back").sees("take from")
	if got := c.facts(); strings.Contains(got, "tally") || strings.HasSuffix(got, "gauge_read") {
		t.Errorf("logged: %s", got)
	}
}

func TestTallyWithoutADay(t *testing.T) {
	climbIn(t, "").press("g", "t").sees("No day was opened yet")
}

func TestTallyOfAClosedDay(t *testing.T) {
	c := climbIn(t, morning)
	for range 9 {
		c.press("k").type_("3")
	}
	c.press("y").press("g", "t").sees("The day is closed.", "0 lawns")
}

func TestRowsOfTheTallyLeadOn(t *testing.T) {
	c := twoLawns(t).size(120, 40).press("g", "t").tapOn("fescue, bluegrass").sees("One mix", "Example Cool").press("esc")
	c.tapOn("Example Warm").sees("One product", "metsulfuron-methyl").press("esc")
	c.tapOn("418 Alder Court ").sees("B. Example").press("esc").sees("Tally of the day")
}
