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
	phaseSweep                // the bypass washes the cell, the gun is shut
	phaseDelay                // the count-down has not begun yet
	phaseRunning              // the trigger is pulled
	phaseStopped              // what was pushed waits to be logged
)

// turning is a guided changeover. Times are of the wall clock: a count of ticks would stand still while the machine
// sleeps.
type turning struct {
	to     byte // the compartment to turn to
	way    string
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
	seen   [tints]core.Maybe[float64] // seconds until the first of the colour was seen, half of it, all of it
	rang   int                        // how many bells were rung
	turn   int                        // of the ticks
	line   check.Line                 // what would stand in the line now, while it is timed
}

// tints is how many moments of the colour can be told: first, half, full.
const tints = 3

type turningKey struct {
	answers answersKey
	to      byte
	way     string
}

// changePage guides a changeover, from the dry run to what is logged.
func changePage() *pageSpec {
	const p = pageChange
	spec := &pageSpec{
		page: p, title: "Change over", words: "dry run, then guided at the tank lid with a count-down",
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
		namedBy(pageKey(p, "t", "tint", "the first of the colour is seen now; again at half, and at the full colour; go on until clean", (*Model).tintNow, func(m *Model) bool {
			return running(m) && m.turn.told() < tints && m.turn.plan.Tint != core.BetweenAlike
		}), (*Model).tintLabel),
		pageKey(p, "z", "no tint", "no tint came: the valves are not where the book says", (*Model).tintMissed, func(m *Model) bool {
			return (running(m) || m.turn.phase == phaseStopped) && m.progress().Late && m.turn.told() == 0
		}),
		pageKey(p, "w", "another way", "the next way for the mixed tail", (*Model).otherWay, func(m *Model) bool {
			return m.turn.phase <= phaseReady && m.turn.plan != nil && len(m.turn.plan.Ways) > 1
		}),
		opening(pageKey(p, "l", "type it", "type the seconds or the gallons pushed", (*Model).typePushed, func(m *Model) bool {
			return m.turn.plan != nil && (m.turn.phase == phaseStopped || m.turn.phase == phaseReady && !m.sweepsFirst())
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

// ponder asks the check what turning there would do, if that is not known. With no lawn ahead it is judged by those of the
// route, or by strength.
func (m *Model) ponder() {
	t := &m.turn
	k := turningKey{m.got.key, t.to, t.way}
	if t.phase > phaseReady || t.key == k || t.to == 0 {
		return
	}
	t.key, t.look, t.plan, t.steps, t.err = k, check.Turn{}, nil, nil, nil
	in := check.Intent{With: m.onHose(), At: core.At(m.at), Lawn: m.got.lawn, Zones: m.got.left, Way: t.way}
	if a := m.book.Applicator(in.With); a != nil {
		t.flow = a.Flow
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

// nextPhase is Enter: one step on.
func (m *Model) nextPhase() tea.Cmd {
	t := &m.turn
	switch t.phase {
	case phaseLook:
		return m.turnValves()
	case phaseReady:
		switch {
		case m.sweepsFirst():
			t.phase, t.began, t.rang, m.status = phaseSweep, m.at, 0, status{}
			return m.count()
		case m.busy(): // what it takes is known when the book has the valves
			return nil
		case !t.flow.Known:
			m.typePushed()
			return nil
		}
		t.phase, t.rang, m.status = phaseDelay, 0, status{}
		t.began = m.at.Add(time.Duration(m.book.Setting(core.StartDelayS) * float64(time.Second)))
		return m.count()
	case phaseSweep:
		return m.endSweep()
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

// turnValves logs the line-up, unless it stands already, and goes to the lid. Where the bypass washes the cell first the
// return stays where it is.
func (m *Model) turnValves() tea.Cmd {
	t := &m.turn
	if t.to == 0 || t.look.To == 0 || (m.isLinedUp(t.to) && t.plan == nil) {
		return nil
	}
	if t.plan != nil {
		t.phase = phaseReady
	}
	now, up := m.book.Plumbing().LineUp, core.LinedUp{Supply: []byte{t.to}, Return: t.to}
	if m.sweepsFirst() {
		up.Return = now.Return
	}
	if string(now.Supply) == string(up.Supply) && now.Return == up.Return {
		return nil
	}
	return m.enter(&up)
}

// sweepsFirst tells whether the way chosen lets the bypass wash the cell before anything is pushed.
func (m *Model) sweepsFirst() bool {
	w := m.turn.plan.Way()
	return w != nil && w.RunS > 0
}

// otherWay chooses the next way that can be gone. Valves that are turned for another way are looked at again.
func (m *Model) otherWay() tea.Cmd {
	t := &m.turn
	at := 0
	for i, w := range t.plan.Ways {
		if w.Chosen {
			at = i
		}
	}
	for n := 1; n < len(t.plan.Ways); n++ {
		w := t.plan.Ways[(at+n)%len(t.plan.Ways)]
		if w.Cannot == "" {
			t.way, t.phase = w.Name, phaseLook
			return nil
		}
	}
	m.status = status{kind: saysChosen, what: "There is no other way that can be gone."}
	return nil
}

func (m *Model) isLinedUp(l byte) bool {
	up := m.book.Plumbing().LineUp
	return string(up.Supply) == string(l) && up.Return == l
}

// showChange is the page in its phase.
func (m *Model) showChange() sheet {
	m.ponder()
	switch t := &m.turn; t.phase {
	case phaseReady:
		return m.showReady()
	case phaseSweep:
		return m.showSweep()
	case phaseDelay, phaseRunning:
		return m.showRunning()
	case phaseStopped:
		v, how := t.pushed.V, " typed: "+t.pushed.V.Text()+" gal"
		if !t.pushed.Known {
			v = m.progress().Gone
			how = " stopped after " + wholeWords(t.ran.Seconds()) + " s, " + v.Text() + " gal"
		}
		return sheet{
			about: []line{text(theme.Strong, how), m.pipe(m.w), text(theme.Base, " "+check.LittleText(t.plan.LeftAt(v))+" of the old liquid is left, by this figure")},
			rows:  m.wrapped(theme.Base, "Type the seconds or the gallons if the clock ran on while nothing came. Esc leaves this page and keeps the figure."),
			offer: "pushed " + m.pushWords(v), small: "Enter logs it",
		}
	}
	return m.showLook()
}
