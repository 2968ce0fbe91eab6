package tui

import (
	"errors"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/say"
)

// pending is an action that waits for its turn.
type pending struct {
	facts []core.Fact
}

// wroteTurn is what came back from the journal.
type wroteTurn struct {
	id      string // of the action
	entries []core.Entry
	words   string
	err     error
}

// busy tells whether an action is on its way to the disk or waits for it.
func (m *Model) busy() bool { return m.writing || len(m.queue) > 0 }

// enter puts an action into the queue. A clock that went back is asked about first; forms do not mind it.
func (m *Model) enter(facts ...core.Fact) tea.Cmd {
	if len(facts) == 0 || m.trouble != nil {
		return nil
	}
	if words, do, back := check.ClockBack(m.book, core.At(m.at)); back && !m.busy() && m.form == nil {
		m.put(question{facts: facts, words: "book it with this time: " + factWords(facts), clock: true})
		m.status = status{kind: saysStop, what: words, do: do}
		return nil
	}
	return m.enqueue(facts)
}

func (m *Model) enqueue(facts []core.Fact) tea.Cmd {
	m.queue = append(m.queue[:len(m.queue):len(m.queue)], pending{facts})
	if !m.writing {
		m.status = status{}
	}
	return m.write()
}

func factWords(facts []core.Fact) string {
	words := say.Fact(facts[0])
	for _, f := range facts[1:] {
		words += "; " + say.Fact(f)
	}
	return words
}

// write sends the oldest action that waits to the journal, one at a time: two commands would race, and the
// journal's order is the truth. It is admitted now, not when the key was pressed; refused, it changes nothing.
func (m *Model) write() tea.Cmd {
	for !m.writing && m.trouble == nil && len(m.queue) > 0 {
		next := m.queue[0]
		m.queue = m.queue[1:]
		id := m.newID()
		entries, err := m.book.Prepare(id, core.At(m.at), next.facts...)
		if err != nil {
			m.refused(err)
			continue
		}
		m.writing = true
		full := make([]core.Fact, 0, len(entries)) // with what follows from the book
		for _, e := range entries {
			full = append(full, e.What)
		}
		words, j := factWords(full), m.journal
		m.onItsWay = words
		return guarded(func() tea.Msg {
			return wrote{wroteTurn{id, entries, words, j.Append(id, entries)}}
		})
	}
	if m.quitting && !m.busy() {
		return m.end()
	}
	return nil
}

// onWrote is the only place where the book changes: after the disk has it.
func (m *Model) onWrote(w wroteTurn) tea.Cmd {
	m.writing = false
	if w.err != nil {
		return m.notKept(w)
	}
	for _, e := range w.entries {
		if err := m.book.Apply(e); err != nil {
			w.entries = nil // the disk has them: trying again would not help
			w.err = err
			return m.notKept(w)
		}
	}
	if m.trouble != nil {
		m.trouble, m.failed, m.page = nil, wroteTurn{}, pageCab
	}
	m.wearBook()
	m.onLeft(w.entries)
	m.status = status{kind: saysBooked, what: w.words, do: m.valves(w.entries)}
	var copied tea.Cmd
	if closesDay(w.entries) {
		copied = m.keepDaily()
	}
	if m.form != nil && m.form.sent {
		m.formLogged()
	}
	return tea.Batch(m.write(), copied, m.asks())
}

// notKept shows what is wrong with the journal. The action and what waits behind it are kept for another try.
func (m *Model) notKept(w wroteTurn) tea.Cmd {
	m.trouble, m.failed = w.err, w
	m.page, m.back, m.open, m.form, m.ask = pageTrouble, nil, false, nil, question{}
	if m.quitting {
		return m.end()
	}
	return nil
}

// canTryAgain tells whether there is an action that the journal has not taken.
func (m *Model) canTryAgain() bool {
	return m.trouble != nil && len(m.failed.entries) > 0 && !m.writing
}

// tryAgain gives the action to the journal once more, under the same id: written twice it stands there once.
func (m *Model) tryAgain() tea.Cmd {
	if !m.canTryAgain() {
		return nil
	}
	w, j := m.failed, m.journal
	m.writing, m.onItsWay = true, w.words
	return guarded(func() tea.Msg {
		w.err = j.Append(w.id, w.entries)
		return wrote{w}
	})
}

// onLeft takes the first applicator again once a lawn is left: what was chosen was chosen for it.
func (m *Model) onLeft(entries []core.Entry) {
	for _, e := range entries {
		switch e.What.(type) {
		case *core.VisitDone, *core.VisitSkipped:
			m.with = ""
		}
	}
}

// refused shows why an action could not have happened.
func (m *Model) refused(err error) {
	what, do := sentences(err)
	m.status = status{kind: saysRefused, what: what, do: do}
	if m.form != nil && m.form.sent {
		m.form.sent = false
		m.formWrong(err)
	}
	if m.quitting {
		m.left = err
	}
}

// sentences are what is wrong and what to do about it.
func sentences(err error) (what, do string) {
	var two interface{ Sentences() (what, do string) }
	var hint interface {
		error
		Hint() string
	}
	var p *core.Problem
	var t *measure.Trouble
	switch {
	case errors.As(err, &two):
		return two.Sentences()
	case errors.As(err, &t):
		return t.Error(), t.Do()
	case errors.As(err, &p):
		return p.What, p.Do
	case errors.As(err, &hint):
		return hint.Error(), hint.Hint()
	}
	return err.Error(), ""
}
