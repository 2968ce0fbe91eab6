package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/calib"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// watch is what the stop watch of a catch test does.
type watch int

const (
	watchOff   watch = iota
	watchRun         // a run over the course is timed
	watchCatch       // what comes out is caught
)

// catching is a catch test as far as it has come. It stays when the page is left; what was typed is lost with the program.
type catching struct {
	applicator string
	product    string // of a spreader
	c          calib.Catch
	watch      watch
	began      time.Time // by the wall clock
	held       float64   // seconds of the catch that was timed; 0: none was
	rang       bool
	asked      bool // a question about it was on the screen
	turn       int  // of the ticks
}

// clocked is a tick of the stop watch.
type clocked struct{ turn int }

// calibratePage guides a catch test, from the course to what is logged.
func calibratePage() *pageSpec {
	const p = pageCalibrate
	still := func(m *Model) bool { return m.testing() && m.test.watch == watchOff }
	return &pageSpec{
		page: p, key: "o", under: pageMorning, title: "Calibrate", words: "a catch test by stop watch; rates in force, drift",
		enter: (*Model).enterCalibrate, show: (*Model).showCalibrate, pick: func(m *Model, _ string) tea.Cmd { return m.nextInTest() },
		keys: []binding{
			pageKey(p, "h", "next", "the next applicator", (*Model).nextTested, func(m *Model) bool { return still(m) && len(m.book.Rig().Applicators) > 1 }),
			pageKey(p, "p", "product", "the next dry product", (*Model).nextTestedProduct, func(m *Model) bool { return still(m) && m.test.c.Kind == calib.Spreader }),
			opening(pageKey(p, "o", "course", "course and swath, or a plot: 200 ft x 5 ft; 1000 sqft", func(m *Model) tea.Cmd { m.openCourse(); return nil }, still)),
			opening(pageKey(p, "l", "type it", "type the test, or part of it, in one line", func(m *Model) tea.Cmd { m.openTest(); return nil }, still)),
			pageKey(p, "r", "a run", "time a run more", (*Model).startRun, func(m *Model) bool { return still(m) && m.test.c.Kind != calib.Spreader && len(m.test.c.Runs) > 0 }),
			pageKey(p, "x", "take off", "take the last run or catch off again", (*Model).takeOff, func(m *Model) bool { return m.testing() && m.hasMeasured() }),
			pageKey(p, "n", "note", "keep it as a note: the rate in force stays", func(m *Model) tea.Cmd { return m.logTest(core.No) }, func(m *Model) bool { return still(m) && m.testCounts() && !m.busy() }),
		},
	}
}

// testing tells whether there is an applicator to test.
func (m *Model) testing() bool {
	return m.book.Rig() != nil && m.book.Applicator(m.test.applicator) != nil
}

func (m *Model) enterCalibrate() tea.Cmd {
	if m.book.Rig() == nil || len(m.book.Rig().Applicators) == 0 {
		return nil
	}
	if !m.testing() {
		m.beginTest(m.firstDue())
	}
	return nil
}

// firstDue is the first applicator of which a test is due, else the one chosen on the cab screen.
func (m *Model) firstDue() string {
	for _, c := range check.Calibrations(m.book, core.At(m.at)) {
		if len(c.Due) > 0 {
			return c.Applicator
		}
	}
	if a := m.applicator(); a != nil {
		return a.Name
	}
	return m.book.Rig().Applicators[0].Name
}

// beginTest begins with an applicator, on the course of its last test, else on a usual one.
func (m *Model) beginTest(applicator string) {
	a := m.book.Applicator(applicator)
	if a == nil {
		return
	}
	turn := m.test.turn + 1
	m.test = catching{applicator: applicator, turn: turn, c: calib.Catch{Kind: a.Type}}
	t := &m.test
	t.c.Course, t.c.Swath = calib.UsualGround(a.Type)
	last := m.book.Tests(applicator)
	for i := len(last) - 1; i >= 0; i-- {
		if was := last[i].Test.Catch(); was.Kind == a.Type && (was.Course > 0 || was.Plot > 0) {
			t.c.Course, t.c.Swath, t.c.Plot, t.c.Rated, t.product = was.Course, was.Swath, was.Plot, was.Rated, last[i].Test.Product
			break
		}
	}
	if a.Type == calib.Spreader && t.product == "" {
		t.product, _ = m.book.InHopper(applicator)
	}
}

func (m *Model) nextTested() tea.Cmd {
	all := m.book.Rig().Applicators
	for i := range all {
		if all[i].Name == m.test.applicator {
			m.beginTest(all[(i+1)%len(all)].Name)
			break
		}
	}
	return nil
}

// nextTestedProduct chooses the next dry product of the book, or none.
func (m *Model) nextTestedProduct() tea.Cmd {
	names := []string{""}
	for _, p := range m.book.Products() {
		if p.Now().Label.Form == measure.Dry {
			names = append(names, p.Name)
		}
	}
	for i, n := range names {
		if n == m.test.product {
			m.test.product = names[(i+1)%len(names)]
			return nil
		}
	}
	m.test.product = ""
	return nil
}

// grounded tells whether it is known over what the runs go. A backpack has the plot of the ounce method.
func (t *catching) grounded() bool {
	return t.c.Plot > 0 || t.c.Course > 0 && t.c.Swath > 0 || t.c.Kind == calib.Backpack && t.c.Course == 0
}

func (m *Model) runsMissing() int {
	return max(m.book.CatchLimits().RunsMeant(m.test.c.Kind)-len(m.test.c.Runs), 0)
}

func (m *Model) hasMeasured() bool {
	c := &m.test.c
	return m.test.watch != watchOff || m.test.held > 0 || len(c.Runs)+len(c.Caught)+len(c.Weighed) > 0
}

// testDone tells whether all that a test needs was measured.
func (m *Model) testDone() bool {
	c := &m.test.c
	return m.test.grounded() && m.runsMissing() == 0 && len(c.Caught)+len(c.Weighed) > 0
}

// testCounts tells whether the book would take it.
func (m *Model) testCounts() bool {
	if !m.testDone() {
		return false
	}
	_, err := m.trial(core.No)
	return err == nil
}

// trial is the test as it would be entered.
func (m *Model) trial(accepted string) (check.Trial, error) {
	return check.Try(m.book, core.At(m.at), m.testFact(accepted))
}

func (m *Model) testFact(accepted string) *core.Calibrated {
	f := core.CalibratedOf(m.test.applicator, m.test.c)
	f.Product, f.Accepted = m.test.product, accepted
	return f
}

// nextInTest is Enter: one step on.
func (m *Model) nextInTest() tea.Cmd {
	t := &m.test
	switch {
	case !m.testing():
		return nil
	case t.watch == watchRun:
		return m.stopRun()
	case t.watch == watchCatch:
		return m.stopCatch()
	case !t.grounded():
		m.openCourse()
		return nil
	case m.testDone():
		return m.logTest(core.Yes)
	case t.c.Kind == calib.Spreader:
		m.openWeight()
		return nil
	case m.runsMissing() > 0:
		return m.startRun()
	case t.held > 0:
		m.openCaught()
		return nil
	}
	return m.startCatch()
}

// logTest enters the test. The next one begins on the same course.
func (m *Model) logTest(accepted string) tea.Cmd {
	f := m.testFact(accepted)
	if _, err := m.book.Prepare("", core.At(m.at), f); err != nil {
		what, do := sentences(err)
		m.status = status{kind: saysStop, what: what, do: do}
		return nil
	}
	cmd := m.bookTyped([]core.Fact{f}, false)
	if m.test.asked = m.ask.open(); !m.test.asked {
		m.beginAgain()
	}
	return cmd
}

// answered begins anew once a test about which a question was asked stands in the book.
func (m *Model) answered() {
	if !m.test.asked || m.ask.open() || m.busy() {
		return
	}
	m.test.asked = false
	if all := m.book.Tests(m.test.applicator); len(all) > 0 {
		last := all[len(all)-1].Test.Catch()
		last.Tip = m.test.c.Tip
		if last.Same(m.test.c) {
			m.beginAgain()
		}
	}
}

// beginAgain keeps the course and forgets what was measured.
func (m *Model) beginAgain() {
	was := m.test
	m.beginTest(was.applicator)
	m.test.c.Course, m.test.c.Swath, m.test.c.Plot, m.test.c.Rated, m.test.product = was.c.Course, was.c.Swath, was.c.Plot, was.c.Rated, was.product
}

// openCourse asks for course and swath, or for a plot.
func (m *Model) openCourse() {
	m.openLine(textLine{
		prompt: "course and swath of " + m.test.applicator, hint: "200 ft x 5 ft, or 1000 sqft, or the swath alone: x 6 ft",
		read: func(m *Model, said string) ([]core.Fact, error) { return nil, m.readTest(said) },
	})
}

// openTest asks for all of a test, or part of it, in one line.
func (m *Model) openTest() {
	m.openLine(textLine{
		prompt: "test of " + m.test.applicator, hint: calib.Allowed(m.test.c.Kind),
		read: func(m *Model, said string) ([]core.Fact, error) { return nil, m.readTest(said) },
	})
}

func (m *Model) openWeight() {
	m.openLine(textLine{
		prompt: "dropped on the course", hint: "1.5 lb, or several runs 1.5 1.6 lb, with pans 2 5 5 2 apart 12 in",
		read: func(m *Model, said string) ([]core.Fact, error) { return nil, m.readTest(said) },
	})
}

// openCaught asks for what was caught while the watch ran. A bare figure is gallons.
func (m *Model) openCaught() {
	hint := "5.25 gal, or two catches 5.2 5.3 gal, or with the pressure 5.25 gal 40 psi"
	if m.test.c.Kind == calib.RideOn {
		hint = "each nozzle: 15 15.5 16 fl oz, with the pressure: 40 psi"
	}
	m.openLine(textLine{
		prompt: "caught in " + wholeWords(m.test.held) + " s", hint: hint,
		read: func(m *Model, said string) ([]core.Fact, error) { return nil, m.readTest(said) },
	})
}

// readTest takes what was typed into the test.
func (m *Model) readTest(said string) error {
	if blank(said) {
		return slip("Nothing is typed.", "Type "+calib.Allowed(m.test.c.Kind)+".")
	}
	c, err := calib.ReadCatch(said, m.test.c)
	if err != nil {
		return err
	}
	if len(c.Caught) > 0 && len(m.test.c.Caught) == 0 && m.test.held > 0 && !c.CaughtFor.Known && m.test.held != calib.Mean(c.Runs) {
		c.CaughtFor = core.Known(m.test.held)
	}
	m.test.c = c
	return nil
}

// showCalibrate is the page as far as the test has come.
func (m *Model) showCalibrate() sheet {
	if !m.testing() {
		return sheet{rows: m.wrapped(theme.Base, "The book has no applicator to test yet.")}
	}
	m.answered()
	switch m.test.watch {
	case watchRun:
		return m.showTimed()
	case watchCatch:
		return m.showCatching()
	}
	if m.testDone() {
		return m.showTested()
	}
	return m.showTestSteps()
}
