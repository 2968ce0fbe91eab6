package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/setup"
)

type statusKind int

const (
	saysNothing statusKind = iota
	saysBooked
	saysChosen
	saysRefused
	saysStop // a sentence that stands in the way
)

// status is what became of the last key.
type status struct {
	kind     statusKind
	what, do string
}

// question is one that only y answers: what it would log, and how it reads.
type question struct {
	facts []core.Fact
	words string
	typed bool           // the facts were typed: what stands against them is looked at again
	clock bool           // it is the clock that is asked about
	stop  *check.Finding // yes asks for a reason first
}

func (q question) open() bool { return len(q.facts) > 0 }

// put asks a question.
func (m *Model) put(q question) {
	m.ask, m.asked, m.status = q, m.at, status{}
}

// do carries out what a key or a tap asks for.
func (m *Model) do(b binding) tea.Cmd {
	switch b.act {
	case actQuit:
		return m.end()
	case actSuspend:
		return tea.Suspend
	case actHelp:
		return m.goTo(pageHelp)
	case actChange:
		return m.goTo(pageChange)
	case actCard:
		return m.goTo(pageCard)
	case actFindings:
		return m.goTo(pageFindings)
	case actHold:
		return m.holdOrGoOn()
	case actFind:
		return m.goTo(pageFind)
	case actMenu:
		return m.goTo(pageMenu)
	case actPick:
		return m.unlessHeld(actPick, m.pickRow)
	case actUp:
		m.moved(-1)
	case actDown:
		m.moved(1)
	case actPageUp:
		m.moved(-m.h / 2)
	case actPageDown:
		m.moved(m.h / 2)
	case actRun:
		return b.run(m)
	case actBack:
		m.leave()
	case actAgain:
		return m.tryAgain()
	case actSend:
		if !m.doubled() {
			return m.send()
		}
	case actDo:
		return m.unlessHeld(actDo, m.doNext)
	case actYes:
		if !m.hasty() {
			return m.answer()
		}
	case actFormNext, actFormRest, actFormLog, actFormBefore, actFormUp, actFormDown, actFormLeft, actFormRight, actFormTick:
		return m.doForm(b.act)
	default:
		return m.doInCab(b)
	}
	return nil
}

// doInCab carries out what a key of the cab screen asks for.
func (m *Model) doInCab(b binding) tea.Cmd {
	switch b.act {
	case actTake:
		return m.take(b.letter)
	case actOther:
		m.other()
	case actTip:
		return m.nextTip()
	case actStrike:
		m.putStrike()
	case actNext:
		return m.goOn()
	case actSame:
		w := m.book.Weather().Weather
		return m.enter(&w)
	case actLog:
		m.openAmount()
	case actPush:
		m.openPush()
	case actGauge:
		m.openGauge()
	case actWeather:
		m.openWeather()
	case actRest:
		m.openRest()
	case actSkip:
		m.openSkip()
	}
	return nil
}

func (m *Model) leave() {
	switch {
	case m.form != nil:
		m.closeForm()
	case m.follows():
		m.closeLine()
		m.sought = lookup{}
		m.goBack()
	case m.open:
		m.closeLine()
	case m.ask.open():
		m.ask = question{}
	default:
		m.goBack()
	}
}

// doNext does the act that the band proposes, or says why it cannot be done by Enter.
func (m *Model) doNext() tea.Cmd {
	p := m.got.next
	switch p.Act {
	case check.ActConfirm:
		m.status = status{kind: saysStop, what: m.shown(actDo) + " does nothing here", do: fmt.Sprintf("%s goes on in spite of it, %s skips.", m.shown(actYes), m.shown(actSkip))}
		return nil
	case check.ActCloseDay:
		return m.goTo(pageClosing)
	case check.ActWeather:
		m.openWeather()
		return nil
	case check.ActGrowth:
		m.openGrowth(m.got.lawn, p.GrowthOf)
		return nil
	case check.ActHold:
		if len(p.Facts) == 0 {
			m.openWeather()
			return nil
		}
	case check.ActOpenDay:
		if p.Why != "" { // the operator is not known
			m.openOperator()
			return nil
		}
	case check.ActNone:
		if next := setup.Next(m.book); next != "" {
			return m.openForm(next, "")
		}
		m.status = status{kind: saysStop, what: sentence(p.Why)}
		return nil
	}
	if len(p.Facts) > 0 {
		return m.enter(p.Facts...)
	}
	switch p.Act {
	case check.ActSpray, check.ActSpread:
		m.openAmount()
	case check.ActPushBack:
		m.openPush()
	default:
		m.status = status{kind: saysStop, what: sentence(p.Why)}
	}
	return nil
}

// answer is y: to the question that stands open, else to the heaviest finding, else to closing the day.
func (m *Model) answer() tea.Cmd {
	if m.ask.open() {
		return m.answerAsk()
	}
	if f, found := m.toAnswer(); found {
		return m.answerTo(f)
	}
	if m.got.next.Act == check.ActCloseDay {
		cmd := m.goTo(pageClosing)
		return tea.Batch(cmd, m.closeDay())
	}
	return nil
}

// saidYes is the reason of an ask that was answered.
const saidYes = "asked, and answered yes"

// answerTo is yes to an ask; for a stop it asks for a reason.
func (m *Model) answerTo(f check.Finding) tea.Cmd {
	if f.Weight == check.Stop {
		m.openReason(f)
		return nil
	}
	return m.enter(check.GoOn(f, m.got.lawn, saidYes)...)
}

func (m *Model) answerAsk() tea.Cmd {
	q := m.ask
	m.ask, m.status = question{}, status{}
	switch {
	case q.stop != nil:
		m.openReason(*q.stop)
		m.line.after = question{facts: q.facts, words: q.words, typed: true}
		return nil
	case q.clock:
		return m.enqueue(q.facts)
	case q.typed:
		return m.bookTyped(q.facts, true)
	}
	return m.enter(q.facts...)
}

// bookTyped enters what was typed. What looks like a slip is asked about; what a stop stands against needs a reason
// for each of them, and then a yes: no Enter logs it.
func (m *Model) bookTyped(facts []core.Fact, sure bool) tea.Cmd {
	at := core.At(m.at)
	for _, f := range facts {
		if stop, stands := check.StandsAgainst(m.book, at, f); stands {
			m.put(question{facts: facts, words: "book in spite of the stop: " + factWords(facts), typed: true, stop: &stop})
			m.status = status{kind: saysStop, what: stop.Says, do: stop.Unlawful()}
			return nil
		}
		if sure {
			continue
		}
		if words, do, doubtful := check.Doubt(m.book, at, f); doubtful {
			m.put(question{facts: facts, words: "book it: " + factWords(facts), typed: true})
			m.status = status{kind: saysStop, what: words, do: do}
			return nil
		}
	}
	return m.enter(facts...)
}

// take turns supply and return to a compartment. Where they stand on it already it is entered all the same if it
// fits and another one is proposed: then the operator has chosen it for this lawn.
func (m *Model) take(letter byte) tea.Cmd {
	up := m.book.Plumbing().LineUp
	choose := m.got.next.Act == check.ActLineUp && strings.IndexByte(string(m.got.fits), letter) >= 0
	if string(up.Supply) == string(letter) && up.Return == letter && !m.busy() && !choose {
		m.status = status{kind: saysStop, what: fmt.Sprintf("Supply and return are on %c already.", letter)}
		return nil
	}
	return m.enter(&core.LinedUp{Supply: []byte{letter}, Return: letter})
}

// other chooses the next applicator.
func (m *Model) other() {
	all := m.choices()
	a := m.applicator()
	for i, n := range all {
		if a != nil && n.name == a.Name && (n.only == m.only || i+1 == len(all) || all[i+1].name != a.Name) {
			next := all[(i+1)%len(all)]
			m.with, m.only = next.name, next.only
			break
		}
	}
	if a = m.applicator(); a != nil {
		what, do := m.chosenWords(a)
		m.status = status{kind: saysChosen, what: what, do: do}
	}
}

// nextTip fits the next tip of the applicator.
func (m *Model) nextTip() tea.Cmd {
	a := m.applicator()
	t, _ := m.book.NextTip(a.Name)
	return m.enter(&core.Fitted{Applicator: a.Name, Tip: t.Name})
}

// goOn leaves the lawn, or arrives at the next one.
func (m *Model) goOn() tea.Cmd {
	if m.got.visiting {
		return m.enter(&core.VisitDone{Lawn: m.got.lawn})
	}
	return m.enter(&core.VisitBegun{Lawn: m.got.lawn})
}

// putStrike asks whether the last action is to be struck.
func (m *Model) putStrike() {
	last := m.got.last
	f := &core.Struck{Reason: "slip"}
	facts := make([]core.Fact, 0, len(last))
	for i, e := range last {
		if i == 0 {
			f.Of = int64(e.Seq)
		} else {
			f.Also = append(f.Also, int64(e.Seq))
		}
		facts = append(facts, e.What)
	}
	m.put(question{facts: []core.Fact{f}, words: "strike " + last[0].At.Clock() + " " + factWords(facts)})
}

// valves echoes a change of line-up with the positions that the rig's set-up names for it.
func (m *Model) valves(entries []core.Entry) string {
	for _, e := range entries {
		if g, read := e.What.(*core.GaugeRead); read {
			return m.trueUpWords(g.Compartment)
		}
		f, ok := e.What.(*core.LinedUp)
		if !ok {
			continue
		}
		if l := m.book.LineUpOf(f.Supply, f.Return); l != nil && len(l.Valves) > 0 {
			return "Set the valves: " + valveWords(l.Valves)
		}
	}
	return ""
}
