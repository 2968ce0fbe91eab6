package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// phase is how far a guided changeover has come.
type phase int

const (
	phaseLook    phase = iota // what would happen; nothing is logged
	phaseReady                // the valves are set; at the lid
	phaseDelay                // the count-down has not begun yet
	phaseRunning              // the trigger is pulled
	phaseStopped              // what was pushed waits to be logged
)

// turning is a guided changeover. Times are of the wall clock: a count of ticks would stand still while the machine
// sleeps.
type turning struct {
	to     byte // the compartment to turn to
	phase  phase
	look   check.Turn        // what it would come to
	plan   *check.Changeover // of look; kept while it is under way
	steps  []check.Step
	flow   core.Maybe[measure.Flow]
	err    error
	key    turningKey // what look and steps were asked for
	began  time.Time  // when the trigger is, or was, to be pulled
	ran    time.Duration
	pushed core.Maybe[measure.Volume] // typed in the place of the seconds
	tint   core.Maybe[float64]        // seconds until it was seen
	rang   int                        // how many bells were rung
	turn   int                        // of the ticks
}

type turningKey struct {
	answers answersKey
	to      byte
}

// counted is a tick of the count-down.
type counted struct{ turn int }

const countEvery = 200 * time.Millisecond

// changePage guides a changeover, from the dry run to what is logged.
func changePage() *pageSpec {
	const p = pageChange
	spec := &pageSpec{
		page: p, key: "n", title: "Change over", words: "dry run, then guided at the tank lid with a count-down",
		enter: (*Model).openChange, show: (*Model).showChange, pick: func(m *Model, _ string) tea.Cmd { return m.nextPhase() },
	}
	for l := byte('a'); l <= 'f'; l++ {
		b := pageKey(p, string(l), "", "", func(m *Model) tea.Cmd { m.turn = turning{to: l}; return nil }, func(m *Model) bool {
			return m.turn.phase == phaseLook && m.book.Plumbing().Compartment(l) != nil
		})
		spec.keys = append(spec.keys, b)
	}
	running := func(m *Model) bool { return m.turn.phase == phaseRunning }
	spec.keys = append(
		spec.keys,
		pageKey(p, "t", "tint", "the tint is seen now; go on until clean", (*Model).tintNow, func(m *Model) bool { return running(m) && !m.turn.tint.Known }),
		pageKey(p, "z", "no tint", "no tint came: the valves are not where the book says", (*Model).tintMissed, func(m *Model) bool {
			return (running(m) || m.turn.phase == phaseStopped) && m.progress().Late && !m.turn.tint.Known
		}),
		opening(pageKey(p, "l", "type it", "type the seconds or the gallons pushed", (*Model).typePushed, func(m *Model) bool {
			return m.turn.plan != nil && (m.turn.phase == phaseStopped || m.turn.phase == phaseReady)
		})),
	)
	return spec
}

// openChange begins with the compartment that is proposed, else the one lined up.
func (m *Model) openChange() tea.Cmd {
	if m.turn.phase > phaseReady { // it runs on
		return nil
	}
	to := m.inUse()
	if s := m.got.next.LineUp.Supply; m.got.next.Act == check.ActLineUp && len(s) == 1 {
		to = s[0]
	}
	m.turn = turning{to: to}
	return nil
}

// ponder asks the check what turning there would do, if that is not known.
func (m *Model) ponder() {
	t := &m.turn
	k := turningKey{m.got.key, t.to}
	if t.phase > phaseReady || t.key == k || t.to == 0 {
		return
	}
	t.key, t.look, t.plan, t.steps, t.err = k, check.Turn{}, nil, nil, nil
	in := check.Intent{With: m.onHose(), At: core.At(m.at), Lawn: m.got.lawn, Zones: m.got.left}
	if a := m.book.Applicator(in.With); a != nil {
		t.flow = a.Flow
	}
	if in.Lawn == "" {
		t.err = slip("There is no lawn ahead to judge by.", "Go by gallons: push the hose's volume and three times the pump's dead volume.")
		return
	}
	if t.look, t.err = check.WhatIf(m.book, in, t.to); t.err == nil {
		t.plan, t.steps = t.look.Changeover, check.Steps(m.book, in, t.to)
	}
}

// onHose is the applicator that hangs on the hose: the chosen one, or the first.
func (m *Model) onHose() string {
	if a := m.applicator(); a != nil && a.Tank == 0 && a.Sprays() {
		return a.Name
	}
	return check.FirstApplicator(m.book)
}

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

// nextPhase is Enter: one step on.
func (m *Model) nextPhase() tea.Cmd {
	t := &m.turn
	switch t.phase {
	case phaseLook:
		return m.turnValves()
	case phaseReady:
		if !t.flow.Known {
			m.typePushed()
			return nil
		}
		t.phase = phaseDelay
		t.began = m.at.Add(time.Duration(m.book.Setting(core.StartDelayS) * float64(time.Second)))
		return m.count()
	case phaseDelay:
		t.phase, t.began = phaseRunning, m.at
		return m.count()
	case phaseRunning:
		t.ran, t.phase = t.elapsed(m.at), phaseStopped
		t.turn++
		return nil
	}
	return m.logPushed()
}

// turnValves logs the line-up, unless it stands already, and goes to the lid.
func (m *Model) turnValves() tea.Cmd {
	t := &m.turn
	if t.to == 0 || (m.isLinedUp(t.to) && t.plan == nil) {
		return nil
	}
	if t.plan != nil {
		t.phase = phaseReady
	}
	if m.isLinedUp(t.to) {
		return nil
	}
	return m.enter(&core.LinedUp{Supply: []byte{t.to}, Return: t.to})
}

func (m *Model) isLinedUp(l byte) bool {
	up := m.book.Plumbing().LineUp
	return string(up.Supply) == string(l) && up.Return == l
}

// logPushed logs what was pushed and, if it was seen, the tint. The tint is not the end: it changes no verdict.
func (m *Model) logPushed() tea.Cmd {
	t := &m.turn
	v := t.pushed.V
	if !t.pushed.Known {
		v = m.progress().Gone
	}
	facts := check.Pushed(t.plan, v)
	if t.tint.Known {
		facts = append(facts, &core.TintSeen{Seconds: t.tint})
	}
	if t.plan.Into == 0 || len(facts) == 0 {
		m.status = status{kind: saysStop, what: "No place of the rig can take it.", do: "Log where it went by a line: dumped."}
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

// onCounted moves the count-down on and rings at the start, as the new liquid comes, as the push changes its place and
// when it is clean.
func (m *Model) onCounted(c counted) tea.Cmd {
	t := &m.turn
	if c.turn != t.turn || t.phase != phaseDelay && t.phase != phaseRunning {
		return nil
	}
	due := 0
	if t.phase == phaseDelay && !m.at.Before(t.began) {
		t.phase = phaseRunning
	}
	if t.phase == phaseRunning {
		due = 1 + m.bellsDue()
	}
	var again tea.Cmd
	if m.progress().Stage != check.StageClean {
		again = m.count() // once it is clean no figure changes
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
	if p.Gone >= m.turn.plan.Arrives {
		n++
	}
	if len(m.turn.plan.Legs) > 1 && p.Turn == 0 {
		n++
	}
	if p.Stage == check.StageClean {
		n++
	}
	return n
}

func (m *Model) tintNow() tea.Cmd {
	m.turn.tint = core.Known(m.turn.elapsed(m.at).Round(time.Second).Seconds())
	m.status = status{kind: saysChosen, what: "tint seen after " + wholeWords(m.turn.tint.V) + " s", do: "It is not clean yet: go on."}
	return nil
}

// tintMissed logs that no tint came until now: the check makes a stop of it. The pushes are not logged with it: what
// went through the nozzle came from somewhere else than the book would say, and a gauge reading finds it.
func (m *Model) tintMissed() tea.Cmd {
	s := m.turn.elapsed(m.at).Round(time.Second).Seconds()
	m.turn = turning{to: m.turn.to}
	return m.enter(&core.TintSeen{Seconds: core.Known(s), Missed: "yes"})
}

// typePushed takes the seconds or the gallons by hand.
func (m *Model) typePushed() tea.Cmd {
	m.openLine(textLine{
		prompt: "pushed", hint: "62 s or 2.6 gal",
		read: func(m *Model, said string) ([]core.Fact, error) {
			v, err := m.readThrough(said, "")
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

func (m *Model) pushWords(v measure.Volume) string {
	words := ""
	for i, f := range check.Pushed(m.turn.plan, v) {
		if p, ok := f.(*core.PushedBack); ok {
			if i > 0 {
				words += ", then "
			}
			words += p.Volume.Text() + " gal into " + check.Leg{Into: p.Into, To: p.To}.Place()
		}
	}
	return words
}

// showChange is the page in its phase.
func (m *Model) showChange() sheet {
	m.ponder()
	switch t := &m.turn; t.phase {
	case phaseReady:
		return m.showReady()
	case phaseDelay, phaseRunning:
		return m.showRunning()
	case phaseStopped:
		v, how := t.pushed.V, " typed: "+t.pushed.V.Text()+" gal"
		if !t.pushed.Known {
			v = m.progress().Gone
			how = " stopped after " + wholeWords(t.ran.Seconds()) + " s, " + v.Text() + " gal"
		}
		return sheet{
			about: []line{text(theme.Strong, how)},
			rows:  m.wrapped(theme.Base, "Type the seconds or the gallons if the clock ran on while nothing came. Esc leaves this page and keeps the figure."),
			offer: "pushed " + m.pushWords(v), small: "Enter logs it",
		}
	}
	return m.showLook()
}
