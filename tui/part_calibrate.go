package tui

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/calib"
	"example.com/tintline/core/check"
	"example.com/tintline/core/yard"
	"example.com/tintline/tui/theme"
)

const testLabel = 12

// testAbout says what is tested, and what it is taken to lay until now.
func (m *Model) testAbout() []line {
	c := m.calibrationNow()
	words := m.test.applicator
	if m.test.product != "" {
		words += " with " + m.test.product
	}
	return append(m.told(theme.Strong, words), m.told(theme.Base, "now "+yard.RateWords(&c))...)
}

// calibrationNow is how the applicator that is tested stands.
func (m *Model) calibrationNow() check.Calibration {
	var out check.Calibration
	for _, c := range check.Calibrations(m.book, core.At(m.at)) {
		if c.Applicator == m.test.applicator && (out.Applicator == "" || c.Product == m.test.product) {
			out = c
		}
	}
	return out
}

// showTestSteps is what to do next, what was measured so far, and the last tests.
func (m *Model) showTestSteps() sheet {
	s := sheet{about: m.testAbout()}
	now := m.testStep()
	for i, words := range m.testSteps() {
		head := fmt.Sprintf("%d  ", i+1)
		mark := theme.Base
		if i == now {
			head, mark = fmt.Sprintf("%d%s ", i+1, string(m.g.supply)), theme.Strong
		}
		for j, l := range m.hanging(head, words) {
			if j == 0 {
				l.left[1].t = mark
			}
			s.rows = append(s.rows, l)
		}
	}
	s.rows = append(s.rows, m.measuredRows()...)
	s.rows = append(s.rows, m.testsBefore()...)
	s.offer, s.small = m.testOffer()
	return s
}

// testSteps are what is done in a test of the kind.
func (m *Model) testSteps() []string {
	t := &m.test
	ground := "Mark a course; type its length and the width that one run covers (o)."
	switch {
	case t.c.Plot > 0:
		ground = "Mark a plot of " + t.c.Plot.Text() + " sq ft."
	case t.c.Course > 0 && t.c.Swath > 0:
		ground = fmt.Sprintf("Mark a course of %s ft; one run covers %s ft of width.", figureWords(t.c.Course.Feet()), figureWords(t.c.Swath.Feet()))
	case t.grounded():
		ground = "Mark 1/128 acre: a square of 18 ft 5 in, or another course (o)."
	}
	need := m.book.CatchLimits().RunsMeant(t.c.Kind)
	switch t.c.Kind {
	case calib.Spreader:
		return []string{ground, "Weigh what is in the hopper, run the course, weigh again; type what was dropped."}
	case calib.RideOn:
		return []string{
			ground, fmt.Sprintf("Drive it at working speed: Enter starts the watch and stops it, %s.", timesWords(need)),
			"Stand still, pressure on: catch each nozzle for that time; the bell says stop.", "Type what each nozzle gave, in one line.",
		}
	}
	return []string{
		ground, fmt.Sprintf("Walk it as on a lawn, spraying water: Enter starts the watch and stops it, %s.", timesWords(need)),
		"Spray into a bucket for the mean time; the bell says stop.", "Type what was caught.",
	}
}

func timesWords(n int) string {
	switch n {
	case 0, 1:
		return "once"
	case 2:
		return "twice"
	}
	return strconv.Itoa(n) + " times"
}

// testStep is the step that is to be done now.
func (m *Model) testStep() int {
	t := &m.test
	switch {
	case !t.grounded():
		return 0
	case t.c.Kind == calib.Spreader || m.runsMissing() > 0 || m.uneven():
		return 1
	case t.held == 0:
		return 2
	}
	return 3
}

// uneven tells whether the runs differ by more than is allowed, before anything was caught.
func (m *Model) uneven() bool {
	t := &m.test
	return t.held == 0 && len(t.c.Runs) > 1 && m.runsMissing() == 0 && calib.Even(t.c.Runs, m.book.CatchLimits()) != nil
}

func (m *Model) testOffer() (offer, small string) {
	t := &m.test
	switch m.testStep() {
	case 0:
		return "type course and swath", ""
	case 1:
		if t.c.Kind == calib.Spreader {
			return "type what was dropped", "l types course and weight in one line"
		}
		if m.uneven() {
			return fmt.Sprintf("start run %d", len(t.c.Runs)+1), "the runs differ too much to catch for their mean; x takes one off"
		}
		return fmt.Sprintf("start run %d", len(t.c.Runs)+1), "Enter again stops it; l types the whole test in one line"
	case 2:
		return "catch for " + secondsWords(calib.Mean(t.c.Runs)) + " s: start", "the bell rings at the end; r times a run more"
	}
	return "type what was caught", ""
}

// measuredRows are what was measured so far.
func (m *Model) measuredRows() []row {
	c := &m.test.c
	var out []row
	if len(c.Runs) > 0 {
		words := runWords(c.Runs) + " s, mean " + secondsWords(calib.Mean(c.Runs))
		t, spread := theme.Base, 100*calib.SpreadOf(c.Runs)
		if len(c.Runs) > 1 {
			words += fmt.Sprintf(", the farthest %.1f per cent off", spread)
		}
		if most := m.book.CatchLimits().SpreadPct; spread > most {
			t = theme.Stop
			words += fmt.Sprintf("; %g are allowed: x takes a run off, r times another", most)
		}
		out = append(out, m.behind("", span{theme.Strong, "runs"}, testLabel, t, words)...)
	}
	if m.test.held > 0 {
		out = append(out, m.behind("", span{theme.Strong, "caught for"}, testLabel, theme.Base, secondsWords(m.test.held)+" s")...)
	}
	if c.PSI.Known {
		out = append(out, m.behind("", span{theme.Strong, "pressure"}, testLabel, theme.Base, figureWords(c.PSI.V)+" psi")...)
	}
	return out
}

// testsBefore are the last tests of the applicator.
func (m *Model) testsBefore() []row {
	c := m.calibrationNow()
	if len(c.Tests) == 0 {
		return nil
	}
	out := []row{sectionRow("tests before")}
	for _, t := range c.Tests {
		out = append(out, m.behind("", span{theme.Strong, t.At.Date()}, testLabel, theme.Base, yard.TestWords(m.book, t))...)
	}
	return out
}

// showTimed is the watch while a run is timed.
func (m *Model) showTimed() sheet {
	return sheet{
		about: m.told(theme.Strong, fmt.Sprintf("run %d of %s", len(m.test.c.Runs)+1, m.test.applicator)),
		offer: "stop the watch: the end of the course", small: "x stops it and keeps nothing",
		body: m.bigBody(placed(wholeWords(m.testSeconds()), "1000"), "s over the course"),
	}
}

// showCatching counts down to the end of the catch.
func (m *Model) showCatching() sheet {
	left := m.catchLeft()
	s := sheet{
		about: m.told(theme.Strong, "catch what "+m.test.applicator+" gives, for "+secondsWords(calib.Mean(m.test.c.Runs))+" s"),
		offer: "stop the watch: nothing runs into the bucket any more", small: "x stops it and keeps nothing",
	}
	big, unit := placed(wholeWords(left), "1000"), "s to go"
	if left <= 0 {
		big, unit = "STOP", "let go of the trigger, "+secondsWords(-left)+" s over"
		if -left > 3 {
			unit += ": the time of the watch counts"
		}
	}
	s.body = m.bigBody(big, unit)
	return s
}

// showTested is what the test comes to.
func (m *Model) showTested() sheet {
	s := sheet{about: m.testAbout()}
	t, err := m.trial(core.Yes)
	if err != nil {
		what, do := sentences(err)
		s.rows = append(m.wrapped(theme.Stop, what), m.wrapped(theme.Base, do)...)
		s.rows = append(s.rows, m.measuredRows()...)
		s.offer, s.small = "", "x takes the last off; r times a run more; l types it anew"
		return s
	}
	mood, words := theme.Strong, calib.RateText(t.Fact.Delivery.V)
	if t.Fact.Flow.Known {
		words += ", " + t.Fact.Flow.V.Text()
	}
	if d := t.Drift; d.Known {
		if d.V.Same() {
			words += ": as meant"
		} else {
			words += ": " + d.V.Words() + " than the " + calib.RateText(d.V.Meant) + " meant"
		}
		if d.V.Weight != calib.Within {
			mood = theme.Stop
		}
	}
	s.about = append(s.about, m.told(mood, words)...)
	working := t.Result.V.Working
	if t.Drift.Known {
		working = append(append([]string(nil), working...), t.Drift.V.Working...)
	}
	if t.Drift.Known && !t.Drift.V.Same() { // what to do comes before how it is known
		for _, w := range append([]string{t.Drift.V.Dose()}, t.Back.Working...) {
			s.rows = append(s.rows, m.hanging("", w)...)
		}
		s.rows = append(s.rows, sectionRow("working"))
	}
	for _, w := range working {
		s.rows = append(s.rows, m.hanging("", w)...)
	}
	s.offer, s.small = "accept: it is the rate in force from now on", "n keeps it as a note; x takes the catch off"
	return s
}

// runWords are the runs as they stand on the watch.
func runWords(runs []float64) string {
	var out []string
	for _, s := range runs {
		out = append(out, secondsWords(s))
	}
	return strings.Join(out, ", ")
}

func secondsWords(s float64) string { return strconv.FormatFloat(s, 'f', 1, 64) }

// figureWords is a figure without zeros at its end.
func figureWords(f float64) string { return strconv.FormatFloat(f, 'g', 5, 64) }

// dueKeys says which keys lead to the page of catch tests.
func (m *Model) dueKeys() string {
	return fmt.Sprintf(" (%s %s %s)", m.shown(actMenu), m.specOf(pageMorning).key, m.specOf(pageCalibrate).key)
}
