package tui

import (
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
)

// passes lets the wall clock run on while the count-down ticks.
func (c *cab) passes(d time.Duration) *cab {
	c.t.Helper()
	for end := c.at.Add(d); c.at.Before(end); {
		c.wait(countEvery).send(counted{c.model().turn.turn})
	}
	return c
}

func TestChangeoverAtTheLid(t *testing.T) {
	bells := 0
	c := climbIn(t, atAlder, func(o *Options) { o.Bell = func() { bells++ } })
	c.press("t").sees("Change over", "if you turned supply and return to a", "STOP", "go to the tank lid")
	if got := c.facts(); got != "" {
		t.Fatalf("looking logged %s", got)
	}
	c.press("enter").sees("Eyewear and gloves", "hold the nozzle inside", "above the liquid", "count-down begins in 10 s")
	c.press("enter").sees("until you pull the trigger").passes(9*time.Second).sees("until you pull the trigger", "start now")
	if bells != 0 {
		t.Errorf("%d bells before the start", bells)
	}
	c.passes(2*time.Second).sees("into b", "s until tint, s until clean", "stop: the trigger is let go", "t when the tint comes")
	if bells != 1 {
		t.Errorf("%d bells at the start", bells)
	}
	c.passes(41 * time.Second).sees("the new liquid comes, not clean yet")
	c.press("t").sees("tint seen after 4", "It is not clean yet")
	c.passes(5 * time.Second).sees("into a")
	c.passes(32*time.Second).sees("clean enough for the lawn ahead", "let go of the trigger")
	if bells != 4 { // start, arrival, the other place, clean
		t.Errorf("%d bells in all", bells)
	}
	c.press("enter").sees("stopped after", "Enter logs it")
	c.press("enter").sees("booked")
	if got := c.facts(); got != "pushed_back pushed_back tint_seen" {
		t.Errorf("logged: %s", got)
	}
	c.press("esc").sees("Spray").seesNot("STOP")
}

// TestTintIsNotTheEnd: cut off at the tint, the verdict is what it was.
func TestTintIsNotTheEnd(t *testing.T) {
	c := climbIn(t, atAlder)
	before := c.model().got.report.Verdict
	c.press("t", "enter", "enter").passes(10*time.Second + 42*time.Second)
	c.press("t", "enter", "enter", "esc").sees("STOP")
	if after := c.model().got.report.Verdict; after != before {
		t.Errorf("the verdict was %v and is %v", before, after)
	}
}

func TestSecondsTypedAfterwards(t *testing.T) {
	c := climbIn(t, atAlder).press("t", "enter", "l").type_("-3 s").sees("pushed: -3 s")
	c.press("esc", "l").type_("63 s").sees("pushed 1.86 gal into b, then 0.77 gal into a").press("enter").sees("booked")
	if got := c.facts(); got != "pushed_back pushed_back" {
		t.Errorf("logged: %s", got)
	}
}

func TestNoTintByTheUpperBand(t *testing.T) {
	c := climbIn(t, atAlder).press("t", "enter", "enter").passes(10*time.Second + 30*time.Second).seesNot("z:")
	c.passes(30 * time.Second).sees("No tint seen? z: the valves are not where the book says.")
	c.press("z").sees("booked")
	c.press("esc").sees("STOP", "valves")
	f := c.disk.entries[0].What.(*core.TintSeen)
	if len(c.disk.entries) != 1 || f.Missed != "yes" || !f.Seconds.Known {
		t.Errorf("logged: %+v", f)
	}
}

func TestChangeoverKeepsWhatItCounted(t *testing.T) {
	c := climbIn(t, atAlder).press("t", "enter", "enter").passes(40 * time.Second)
	c.press("esc").sees("STOP").press("t").sees("until clean").press("enter", "esc", "t").sees("stopped after")
}

// TestDryRunOfEveryCompartment: looking at another compartment logs nothing and leaves the book as it is.
func TestDryRunOfEveryCompartment(t *testing.T) {
	c := climbIn(t, atAlder)
	before := c.book().StateDigest()
	for _, l := range []string{"a", "b", "c"} {
		c.press("t", l).sees("if you turned supply and return to " + l).press("esc")
	}
	if c.book().StateDigest() != before || len(c.disk.entries) != 0 {
		t.Error("looking changed the book")
	}
}

func TestBigFiguresFit(t *testing.T) {
	c := climbIn(t, atAlder)
	m := c.model()
	for w := 1; w < 200; w += 3 {
		for h := 1; h < 60; h += 2 {
			lines := m.bigLines("120 12.64", w, h)
			if len(lines) > 1 && (len(lines) > h || cells(lines[0]) > w) {
				t.Fatalf("%d by %d: %d by %d", w, h, cells(lines[0]), len(lines))
			}
		}
	}
	if got := strings.Join(m.bigLines("7", 6, 5), "|"); !strings.HasPrefix(got, "██████|    ██|") {
		t.Error(got)
	}
}
