package tui

import (
	"fmt"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// counted is a tick of the count-down.
type counted struct{ turn int }

// countEvery keeps it to five frames a second.
const countEvery = 200 * time.Millisecond

func (m *Model) progress() check.Progress {
	if m.turn.plan == nil || !m.turn.flow.Known {
		return check.Progress{}
	}
	return check.Running(m.turn.plan, m.turn.flow.V, m.turn.elapsed(m.at).Seconds())
}

func (t *turning) elapsed(now time.Time) time.Duration {
	if t.phase == phaseStopped {
		return t.ran
	}
	return max(now.Sub(t.began), 0)
}

// move draws the line as it would stand now, while something is pushed through it and until that is logged.
func (m *Model) move() {
	t := &m.turn
	switch {
	case t.plan == nil || t.phase < phaseSweep || t.phase == phaseDelay:
		t.line = check.Line{}
	case t.phase == phaseSweep:
		t.line = check.LineSwept(m.book, t.plan, t.elapsed(m.at).Seconds())
	case t.phase == phaseStopped && t.pushed.Known:
		t.line = check.LineAfter(m.book, t.plan, t.pushed.V)
	default:
		t.line = check.LineAfter(m.book, t.plan, m.progress().Gone)
	}
}

// logPushed logs what was pushed and, if it was seen, the tint. The tint is not the end: it changes no verdict.
func (m *Model) logPushed() tea.Cmd {
	t := &m.turn
	v := t.pushed.V
	if !t.pushed.Known {
		v = m.progress().Gone
	}
	facts := check.Pushed(t.plan, v)
	if t.told() > 0 {
		facts = append(facts, &core.TintSeen{Seconds: t.seen[0], HalfSeconds: t.seen[1], FullSeconds: t.seen[2], Hose: t.plan.Hose})
	}
	if len(facts) == 0 {
		m.status = status{kind: saysStop, what: "Nothing was pushed.", do: "Esc leaves it, or type the seconds or the gallons."}
		return nil
	}
	m.turn = turning{to: t.to}
	return m.enter(facts...)
}

// count ticks while there is a figure that changes.
func (m *Model) count() tea.Cmd {
	m.turn.turn++
	return m.after(countEvery, counted{m.turn.turn})
}

// onCounted moves the count-down on and rings at the start, as the new liquid comes if that is to be seen, as the push
// changes its place and when it is clean; and when the bypass has washed the cell.
func (m *Model) onCounted(c counted) tea.Cmd {
	t := &m.turn
	if c.turn != t.turn || t.phase != phaseSweep && t.phase != phaseDelay && t.phase != phaseRunning {
		return nil
	}
	due := 0
	if t.phase == phaseDelay && !m.at.Before(t.began) {
		t.phase = phaseRunning
	}
	if t.phase == phaseRunning {
		due = 1 + m.bellsDue()
	}
	over := m.progress().Stage == check.StageClean
	if over && m.status.kind == saysChosen {
		m.status = status{} // that it is not clean yet
	}
	if t.phase == phaseSweep {
		if over = m.sweepLeft() <= 0; over {
			due = 1
		}
	}
	var again tea.Cmd
	if !over { // after that no figure changes
		again = m.count()
	}
	if due > t.rang {
		t.rang = due
		return tea.Batch(again, m.ring())
	}
	return again
}

// bellsDue is how many marks have been passed.
func (m *Model) bellsDue() int {
	p, n := m.progress(), 0
	if p.Gone >= m.turn.plan.Arrives && m.turn.plan.Tint != core.BetweenAlike {
		n++
	}
	if legs := len(m.turn.plan.Legs); legs > 1 {
		n += p.Leg
	}
	if p.Stage == check.StageClean {
		n++
	}
	return n
}

// told is how many moments of the colour were told.
func (t *turning) told() int {
	n := 0
	for n < tints && t.seen[n].Known {
		n++
	}
	return n
}

// tintLabel says what the next press means; the names are as wide, so that the keys behind keep their places.
func (m *Model) tintLabel() string {
	names := [tints]string{"tint", "half", "full"}
	if c := m.turn.plan; c != nil && c.Tint == core.TowardsClear {
		names = [tints]string{"fade", "half", "gone"}
	}
	return names[min(m.turn.told(), tints-1)]
}

func (m *Model) tintNow() tea.Cmd {
	t := &m.turn
	words := [tints]string{"tint seen", "half of the colour", "full colour"}
	if t.plan.Tint == core.TowardsClear {
		words = [tints]string{"the colour fades", "half of the colour is gone", "the last of the colour is gone"}
	}
	n, s := t.told(), t.elapsed(m.at).Round(time.Second).Seconds()
	t.seen[n] = core.Known(s)
	m.status = status{kind: saysChosen, what: words[n] + " after " + wholeWords(s) + " s", do: "It is not clean yet: go on."}
	if m.progress().Stage == check.StageClean {
		m.status.do = ""
	}
	return nil
}

// sweepLeft is how many seconds the bypass has still to run.
func (m *Model) sweepLeft() float64 {
	w := m.turn.plan.Way()
	if w == nil {
		return 0
	}
	return max(w.RunS-m.turn.elapsed(m.at).Seconds(), 0)
}

// endSweep logs how long the bypass ran, and that the return is turned now. What is left to push is asked of the book anew.
func (m *Model) endSweep() tea.Cmd {
	t := &m.turn
	ran := max(t.elapsed(m.at).Round(time.Second).Seconds(), 1)
	m.turn = turning{to: t.to, phase: phaseReady, turn: t.turn + 1}
	return m.enter(&core.Ran{Seconds: core.Known(ran), Pump: core.PumpOn}, &core.LinedUp{Supply: []byte{t.to}, Return: t.to})
}

// tintMissed logs that no tint came until now: the check makes a stop of it. The pushes are not logged with it: what
// went through the nozzle came from somewhere else than the book would say, and a gauge reading finds it.
func (m *Model) tintMissed() tea.Cmd {
	s := m.turn.elapsed(m.at).Round(time.Second).Seconds()
	hose := m.turn.plan.Hose
	m.turn = turning{to: m.turn.to}
	return m.enter(&core.TintSeen{Seconds: core.Known(s), Missed: "yes", Hose: hose})
}

// typePushed takes the seconds or the gallons by hand.
func (m *Model) typePushed() tea.Cmd {
	m.openLine(textLine{
		prompt: "pushed", hint: "62 s or 2.6 gal",
		read: func(m *Model, said string) ([]core.Fact, error) {
			v, err := m.readPushed(said)
			if err == nil && v <= 0 {
				err = slip("Nothing would be pushed.", "Type more than 0: 62 s or 2.6 gal.")
			}
			if err != nil {
				return nil, err
			}
			m.turn.pushed, m.turn.phase = core.Known(v), phaseStopped
			m.turn.turn++
			return nil, nil
		},
	})
	return nil
}

// readPushed reads gallons, or seconds at the flow of the gun: what came in them, air aside.
func (m *Model) readPushed(said string) (measure.Volume, error) {
	v, err := measure.ReadVolume(said, "gal")
	if err == nil {
		return v, nil
	}
	s, wrong := measure.ReadSeconds(said)
	switch {
	case wrong != nil:
		return 0, err
	case !m.turn.flow.Known:
		return 0, slip("The flow of the gun is not in the book, so seconds cannot be turned into gallons.", "Type gallons.")
	}
	return check.Running(m.turn.plan, m.turn.flow.V, s).Gone, nil
}

func (m *Model) pushWords(v measure.Volume) string {
	words := ""
	for i, f := range check.Pushed(m.turn.plan, v) {
		if p, ok := f.(*core.PushedBack); ok {
			if i > 0 {
				words += ", then "
			}
			words += fmt.Sprintf("%s gal into %s", p.Volume.Text(), check.Leg{Into: p.Into, To: p.To}.Place())
		}
	}
	return words
}
