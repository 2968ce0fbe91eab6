package tui

import (
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
)

// ticks lets the wall clock run on while the stop watch ticks.
func (c *cab) ticks(d time.Duration) *cab {
	c.t.Helper()
	for end := c.at.Add(d); c.at.Before(end); {
		c.wait(countEvery).send(clocked{c.model().test.turn})
	}
	return c
}

// timedRun times a run over the course; the driver takes a second for each key.
func (c *cab) timedRun(d time.Duration) *cab {
	return c.press("enter").wait(d - time.Second).press("enter")
}

// threeRuns is the page with three runs of the gun.
func threeRuns(t *testing.T) *cab {
	c := climbIn(t, morning).press("g", "y", "o")
	return c.timedRun(77 * time.Second).timedRun(79 * time.Second).timedRun(78 * time.Second)
}

// calibrateSituations are those of a catch test.
var calibrateSituations = []situated{
	{"calibrate", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "o") }},
	{"calibrate_run", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "y", "o").timedRun(77 * time.Second).press("enter").wait(41 * time.Second)
	}},
	{"calibrate_to_catch", threeRuns},
	{"calibrate_catching", func(t *testing.T) *cab { return threeRuns(t).press("enter").wait(30 * time.Second) }},
	{"calibrate_stop", func(t *testing.T) *cab { return threeRuns(t).press("enter").wait(79 * time.Second) }},
	{"calibrate_caught_line", func(t *testing.T) *cab { return threeRuns(t).press("enter").wait(79 * time.Second).press("enter") }},
	{"calibrate_result", func(t *testing.T) *cab {
		return threeRuns(t).press("enter").wait(79 * time.Second).press("enter").type_("1.7 gal 40 psi")
	}},
	{"calibrate_apart", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "y", "o", "l").type_("70 78 86 s 1.6 gal")
	}},
	{"calibrate_far_off", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "y", "o", "l").type_("77 79 78 s 5.25 gal").press("enter")
	}},
	{"calibrate_accepted", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "y", "o", "l").type_("77 79 78 s 1.7 gal").press("enter")
	}},
	{"calibrate_ride_on", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "y", "o", "h", "l").type_("40 s 6 6.1 7.4 fl oz 200 ft x 80 in rated 0.07 gpm")
	}},
	{"calibrate_spreader", func(t *testing.T) *cab {
		return climbIn(t, morning+spreading(t)).press("g", "y", "o", "h", "h", "p").press("l").type_("1.5 lb on 100 ft x 3 ft pans 2 5 6 5 2 apart 12 in")
	}},
}

func TestACatchTestByTheWatch(t *testing.T) {
	bells := 0
	c := climbIn(t, morning, func(o *Options) { o.Bell = func() { bells++ } })
	c.press("g", "y").sees("Calibrate").press("o").sees("Mark a course of 200 ft; one run covers 5 ft", "start run 1")
	c.press("enter").sees("run 1 of gun", "stop the watch").ticks(77*time.Second).press("enter").sees("start run 2", "mean 7")
	c.timedRun(79*time.Second).timedRun(78*time.Second).sees("catch for 78.", "start")
	c.press("enter").sees("s to go").ticks(77 * time.Second)
	if bells != 0 {
		t.Errorf("%d bells before the end", bells)
	}
	c.ticks(2 * time.Second).sees("let go of the trigger").ticks(time.Second)
	if bells != 1 {
		t.Errorf("%d bells at the end", bells)
	}
	c.press("enter").sees("caught in 78 s").type_("1.7 gal 40 psi").sees("accept: it is the rate in force", "per cent more")
	if c.facts() != "" {
		t.Fatalf("logged before it is accepted: %s", c.facts())
	}
	c.press("enter").sees("booked", "by the test of 2026-05-28", "start run 1")
	if c.facts() != "calibrated" {
		t.Fatalf("logged: %s", c.facts())
	}
	f := c.disk.entries[0].What.(*core.Calibrated)
	if f.Accepted != core.Yes || len(f.Runs) != 3 || f.PSI.V != 40 || f.CaughtFor.Known {
		t.Errorf("%+v", f)
	}
	if got := c.book().Applicator("gun").Delivery.GalPer1000(); got < 1.699 || got > 1.701 {
		t.Errorf("the gun lays %g", got)
	}
}

func TestACatchTestInOneLine(t *testing.T) {
	c := climbIn(t, morning).press("g", "y", "o", "l").type_("77 79 78 s 1.7 gal").sees("1.7 gal per 1,000 sq ft")
	before := c.book().Applicator("gun").Delivery
	c.press("n").sees("booked", "a note")
	if c.facts() != "calibrated" || c.book().Applicator("gun").Delivery != before {
		t.Errorf("logged %s", c.facts())
	}
}

func TestACatchTestThatCannotCount(t *testing.T) {
	c := climbIn(t, morning).press("g", "y", "o", "l").type_("70 78 86 s 1.6 gal").sees("one lies 10.3 per cent off", "Walk the course again")
	c.press("enter").sees("one lies 10.3 per cent off")
	if c.facts() != "" {
		t.Errorf("logged %s", c.facts())
	}
	c.press("x", "x").sees("start run 3").press("l").type_("nonsense").sees(`"nonsense" is not known here.`).press("esc")
	c.press("l").type_("77 79 78 s 9 gal").press("enter").sees("book it", "Look at course, swath and catch")
	if c.facts() != "" {
		t.Errorf("logged before the answer: %s", c.facts())
	}
	c.wait(time.Second).press("y").sees("booked", "start run 1")
	if c.facts() != "calibrated" {
		t.Errorf("logged %s", c.facts())
	}
}

// TestACatchTestSurvivesThePage: what was measured stays while one looks elsewhere, and the watch goes by the wall clock.
func TestACatchTestSurvivesThePage(t *testing.T) {
	c := climbIn(t, morning).press("g", "y", "o").timedRun(77 * time.Second).press("enter").wait(20 * time.Second)
	began := c.model().test.began
	c.press("esc", "esc", "esc").wait(50*time.Second).press("g", "y", "o").sees("run 2 of gun").press("enter").sees("77.0, ")
	if got := c.model().test.c.Runs; len(got) != 2 || got[1] < 70 || got[1] > c.at.Sub(began).Seconds() {
		t.Errorf("runs %v", got)
	}
	c.press("x").sees("start run 2").press("enter").wait(200 * time.Millisecond).press("enter").sees("less than 3 s")
}

func TestACatchTestOfOthers(t *testing.T) {
	c := climbIn(t, morning+spreading(t)).press("g", "y", "o", "h").sees("ride-on", "type course and swath")
	c.press("enter").type_("200 ft x 80 in").sees("Drive it at working speed", "start run 1")
	c.press("l").type_("40 s 6 6.1 7.4 fl oz rated 0.07 gpm").sees("Nozzle 3")
	c.press("h").sees("spreader").press("p", "o").type_("100 ft x 3 ft").press("enter").type_("1.5 lb").sees("5 lb per 1,000 sq ft")
	for range 20 {
		c.press("h", "p")
	}
	if strings.Contains(c.screen(), "problem") {
		t.Error(c.screen())
	}
}

// TestADueCatchTestIsSaidBeforeTheDay: where Enter opens the day, once, and not at the lawns.
func TestADueCatchTestIsSaidBeforeTheDay(t *testing.T) {
	const tested = `{"fact":"calibrated","applicator":"gun","accepted":"yes","delivery_gal_per_1000_sqft":1.7,"at":"2026-05-10T08:00:00-05:00"}
{"fact":"day_opened","date":"2026-05-10","operator":"R. Example","route":["77 Fir Lane"],"at":"2026-05-10T08:10:00-05:00"}
{"fact":"day_closed","at":"2026-05-10T17:00:00-05:00"}`
	c := climbIn(t, tested).sees("Open the day", "the last catch test is 18 days old; 7 are meant. (g y o)")
	c.press("g", "r").size(120, 40).sees("by the test of 2026-05-10").press("esc", "g", "y", "o").sees("gun", "13.3 per cent more")
	climbIn(t, tested+"\n"+morning).sees("Drive to").seesNot("is 18 days old")
}

// Runs that differ by more than is allowed are not caught for: the next run is proposed, and x takes one off.
func TestUnevenRunsAreWalkedAgain(t *testing.T) {
	c := climbIn(t, morning).press("g", "y", "o").type_("200 ft x 5 ft").press("enter")
	c = c.timedRun(79 * time.Second).timedRun(78 * time.Second).timedRun(40 * time.Second)
	c.sees("start run 4", "differ too much").press("x").sees("start run 3").timedRun(77 * time.Second).sees("catch for 78.")
}
