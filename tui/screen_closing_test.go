package tui

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

// metersRead is a day before, on which the meters were read.
const metersRead = `{"fact":"day_opened","date":"2026-05-27","operator":"R. Example"}
{"fact":"metered","odometer_mi":48102,"engine_h":806}
{"fact":"day_closed"}
`

// TestADayIsClosedInTwentyFivePresses counts every key that is pressed from the cab screen on, typed figures included: three gauges, two
// true-ups, odometer and hours, and the close.
func TestADayIsClosedInTwentyFivePresses(t *testing.T) {
	c := climbIn(t, metersRead+strings.Replace(morning, `["77 Fir Lane","418 Alder Court","12 Fir Lane","9 Oak Street","31 Maple Drive","5 Birch Row","60 Elm Street","2 Willow Way","14 Cedar Court"]`, `["77 Fir Lane","418 Alder Court"]`, 1)+`
{"fact":"visit_begun","lawn":"77 Fir Lane"}
{"fact":"sprayed","lawn":"77 Fir Lane","applicator":"gun","by":"area"}
{"fact":"visit_done","lawn":"77 Fir Lane"}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"b","volume_gal":2}
{"fact":"visit_begun","lawn":"418 Alder Court"}
{"fact":"sprayed","lawn":"418 Alder Court","applicator":"gun","by":"area"}
{"fact":"visit_done","lawn":"418 Alder Court"}`).sees("close the day")
	presses := 0
	press := func(keys ...string) {
		presses += len(keys)
		c.press(keys...)
	}
	figures := func(s string) {
		presses += len(s)
		c.typed(s)
	}
	press("enter")
	c.sees("gauges of a b c read", "stays overnight", "may settle")
	figures("178 96 40")
	press("enter")
	c.sees("put the lawns right by it")
	press("enter", "enter")
	c.sees("meters, last: odometer 48102 mi, engine 806 h")
	press("enter")
	figures("213 812")
	press("enter")
	c.sees("close the day")
	press("enter")
	if c.model().open { // the readings are far off, so that a reason is asked for
		press("1", "enter")
	} else {
		press("y")
	}
	if got := c.facts(); !strings.HasSuffix(got, "day_closed") {
		t.Fatalf("logged: %s", got)
	}
	if presses > 25 {
		t.Errorf("%d presses", presses)
	}
	m := c.book().Meters()
	if m.Odometer.Last.V != 48213 || m.Engine.Last.V != 812 || m.Odometer.Run != 111 {
		t.Errorf("the meters are %+v", m)
	}
	f := c.disk.entries[len(c.disk.entries)-1].What.(*core.DayClosed)
	if f.Overnight == "" || !strings.Contains(f.Overnight, "a: 178.0 gal of bermuda, zoysia") {
		t.Errorf("closed with %+v", f)
	}
	t.Logf("%d presses, closed with %q, open %q", presses, f.Reason, f.Open)
}

// TestAClosePassesOverAndCarriesOver: what was not reached is carried over in one entry each; a step can be left.
func TestAClosePassesOverAndCarriesOver(t *testing.T) {
	c := twoLawns(t).press("g", "n", "k").sees("7 not reached: 12 Fir Lane", "carry over what was not reached")
	c.press("enter").sees("gauge of a: booked").press("n").sees("log what the gauge reads").press("n", "n")
	c.sees("odometer and hour meter: never read").press("n").press("enter").sees("close all the same because")
	c.press("enter").sees("the close has no reason").typed("no light to read by").press("enter")
	f := c.disk.entries[len(c.disk.entries)-1].What.(*core.DayClosed)
	if f.Reason != "no light to read by" || len(f.Open) != 3 || f.Open[0] != "a: the gauge was not read since it was last drawn from or filled" {
		t.Errorf("closed with %+v", f)
	}
	if n := strings.Count(c.facts(), "carried_over"); n != 7 || len(c.book().Owed()) != 7 {
		t.Errorf("%d carried over, %d owed", n, len(c.book().Owed()))
	}
}

// TestPouredOutOnTheClose: what went out of a tank goes to a named place.
func TestPouredOutOnTheClose(t *testing.T) {
	c := twoLawns(t).press("g", "n", "k", "o").typed("b 12").press("enter").sees("It is not said what went out and where.")
	c.press("esc", "o").typed("b 12 to labelled ground").press("enter")
	f, ok := c.disk.entries[len(c.disk.entries)-1].What.(*core.Dumped)
	if !ok || f.From != "compartment/b" || f.To != "waste/labelled ground" {
		t.Errorf("logged %+v", f)
	}
}

// TestMetersByTheirLastFigures reads what is typed at a meter.
func TestMetersByTheirLastFigures(t *testing.T) {
	was := core.Meters{Odometer: core.Meter{Last: core.Known(48102.0)}, Engine: core.Meter{Last: core.Known(806.4)}}
	for _, c := range []struct {
		said             string
		odometer, engine float64
		wrong            string
	}{
		{"213 812", 48213, 812, ""},
		{"48213 812.4", 48213, 812.4, ""},
		{"050", 49050, 0, ""}, // the next thousand
		{"engine 7", 0, 807, ""},
		{"e 8.5 o 48,300", 48300, 808.5, ""},
		{"many", 0, 0, `"many" is no figure and no meter.`},
		{"1 2 3 4", 0, 0, "There are more figures than meters."},
	} {
		f, err := readMeters(was, c.said)
		if err != nil || c.wrong != "" {
			if what, _ := sentences(err); what != c.wrong {
				t.Errorf("%s: %q", c.said, what)
			}
			continue
		}
		if m := f.(*core.Metered); m.Odometer.V != c.odometer || m.EngineHours.V != c.engine {
			t.Errorf("%s: %+v", c.said, m)
		}
	}
}
