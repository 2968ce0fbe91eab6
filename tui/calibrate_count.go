package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core/calib"
)

// testSeconds is how long the watch has run, to a tenth of a second.
func (m *Model) testSeconds() float64 {
	return max(m.at.Sub(m.test.began), 0).Round(100 * time.Millisecond).Seconds()
}

func (m *Model) startRun() tea.Cmd { return m.startWatch(watchRun) }

// startCatch counts the time that the course takes.
func (m *Model) startCatch() tea.Cmd { return m.startWatch(watchCatch) }

func (m *Model) startWatch(w watch) tea.Cmd {
	m.test.watch, m.test.began, m.test.rang, m.status = w, m.at, false, status{}
	return m.clock()
}

// stopRun keeps the run. One too short to be a run is a key that was pressed twice.
func (m *Model) stopRun() tea.Cmd {
	const shortest = 3.0 // seconds; common practice, no source
	s := m.testSeconds()
	m.test.watch = watchOff
	if s < shortest {
		m.status = status{kind: saysChosen, what: "The run took less than 3 s: it is not counted."}
		return nil
	}
	m.test.c.Runs = append(append([]float64(nil), m.test.c.Runs...), s)
	m.test.held, m.test.c.Caught = 0, nil // another mean, another time to catch for
	return nil
}

// stopCatch keeps for how long it was caught. By the bell it is the mean of the runs; else what the watch says.
func (m *Model) stopCatch() tea.Cmd {
	const late = 3.0 // seconds that a hand takes after the bell; common practice, no source
	mean, s := calib.Mean(m.test.c.Runs), m.testSeconds()
	if s >= mean && s <= mean+late {
		s = mean
	}
	m.test.watch, m.test.held = watchOff, s
	m.openCaught()
	return nil
}

// takeOff stops the watch without keeping anything, else takes off the catch, else the last run.
func (m *Model) takeOff() tea.Cmd {
	t := &m.test
	switch {
	case t.watch != watchOff:
		t.watch = watchOff
	case len(t.c.Caught)+len(t.c.Weighed) > 0:
		t.c.Caught, t.c.Weighed, t.c.Pans = nil, nil, nil
		t.c.CaughtFor.Known = false
	case t.held > 0:
		t.held = 0
	case len(t.c.Runs) > 0:
		t.c.Runs = t.c.Runs[: len(t.c.Runs)-1 : len(t.c.Runs)-1]
	}
	return nil
}

// clock ticks while the watch runs.
func (m *Model) clock() tea.Cmd {
	m.test.turn++
	return m.after(countEvery, clocked{m.test.turn})
}

// onClocked moves the figures on, and rings once when the catch is to end.
func (m *Model) onClocked(c clocked) tea.Cmd {
	t := &m.test
	if c.turn != t.turn || t.watch == watchOff {
		return nil
	}
	again := m.clock()
	if t.watch == watchCatch && !t.rang && m.catchLeft() <= 0 {
		t.rang = true
		return tea.Batch(again, m.ring())
	}
	return again
}

// catchLeft is how many seconds are still to be caught.
func (m *Model) catchLeft() float64 {
	return time.Duration(calib.Mean(m.test.c.Runs)*float64(time.Second)).Seconds() - m.testSeconds()
}
