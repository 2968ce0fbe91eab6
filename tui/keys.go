package tui

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core/check"
)

// act is what a key asks for.
type act int

const (
	actNone act = iota
	actTake
	actDo
	actYes
	actNext
	actSkip
	actLog
	actPush
	actGauge
	actWeather
	actSame
	actOther
	actStrike
	actHelp
	actQuit
	actBack   // closes a line, a page, a question
	actSend   // enters the line
	actAgain  // gives the journal once more what it did not take
	actChoose // a numbered answer of the line: by its figure, typed, or by a tap
	actHold
	actFind
	actMenu
	actPick // Enter on a page
	actUp
	actDown
	actPageUp
	actPageDown
	actRow // a row of a page: by a tap
	actRun // what a key of one page does
	actFormNext
	actFormRest
	actFormLog
	actFormBefore
	actFormUp
	actFormDown
	actFormLeft
	actFormRight
	actFormTick
	actFormMore  // what a list does not show: by a tap
	actFormField // a field or an option of a form: by a tap
	actSuspend
	actChange
	actTip
	actRest
	actFindings
	actCard
)

// side says which hand a key belongs to: the left one picks the liquid, the right one does the rest.
type side int

const (
	leftHand side = iota
	rightHand
)

// binding is a key with all that is to be known about it.
type binding struct {
	key.Binding
	act    act
	letter byte // actTake: the compartment
	side   side
	long   string // for the page that lists all keys
	on     func(m *Model) bool

	page     page // actRun: the page whose key it is
	run      func(m *Model) tea.Cmd
	line     bool                  // run opens a line of text
	unlisted bool                  // it stands in the page itself, not at the foot
	name     func(m *Model) string // what it is called now; nil: always the same
}

// target is what a tap on the key's place means.
func (b binding) target() tapTarget {
	t := tapTarget{act: b.act, letter: b.letter}
	if b.act == actRun {
		t.key = b.Keys()[0]
	}
	return t
}

// opensLine tells whether the key opens a line of text.
func (b binding) opensLine() bool {
	switch b.act {
	case actSkip, actRest, actLog, actPush, actGauge, actWeather, actFind:
		return true
	}
	return b.line
}

// inForm tells whether it is a key of a form.
func (b binding) inForm() bool { return b.act >= actFormNext && b.act <= actFormField }

// hidden takes a key out of the foot: it stands elsewhere on the screen.
func hidden(b binding) binding {
	b.unlisted = true
	return b
}

// opening marks a page's key as one that opens a line of text.
func opening(b binding) binding {
	b.line = true
	return b
}

// namedBy gives a key a name that changes with what it would do.
func namedBy(b binding, name func(m *Model) string) binding {
	b.name = name
	return b
}

func bind(a act, s side, keys []string, shown, label, long string, on func(m *Model) bool) binding {
	return binding{
		Binding: key.NewBinding(key.WithKeys(keys...), key.WithHelp(shown, label)),
		act:     a, side: s, long: long, on: on,
	}
}

// one is a binding of one key that is shown as it is.
func one(a act, k, label, long string, on func(m *Model) bool) binding {
	return bind(a, rightHand, []string{k}, k, label, long, on)
}

// newKeys declares every key of the program. Nothing is bound to m, to capitals or to digits outside a line of
// text: torn escape sequences end in them.
func newKeys(specs []*pageSpec) []binding {
	var out []binding
	for l := byte('a'); l <= 'f'; l++ {
		b := bind(actTake, leftHand, []string{string(l)}, string(l), "", "turn supply and return to this compartment", func(m *Model) bool {
			return m.inCab() && m.book.Plumbing().Compartment(l) != nil
		})
		b.letter = l
		out = append(out, b)
	}
	out = append(out, rightKeys()...)
	for _, s := range specs {
		out = append(out, s.keys...)
	}
	out = append(out, formBindings()...)
	return append(out, commonKeys()...)
}

// rightKeys are the right hand's keys of the cab screen.
func rightKeys() []binding {
	return []binding{
		bind(actDo, rightHand, []string{"enter"}, "Enter", "do it", "do the act that stands in the band", (*Model).canDo),
		one(actYes, "y", "yes", "answer an ask; go on in spite of a stop, with a reason; close the day", (*Model).canAnswer),
		one(actNext, "n", "next", "leave this lawn now; on the road: arrived at the next one", (*Model).canGo),
		one(actSkip, "k", "skip", "skip this lawn and say why", (*Model).canGo),
		one(actRest, "v", "rest", "leave this lawn, carry over what is left of it to another day, and say why", func(m *Model) bool {
			return m.canLog() && len(m.got.rest) > 0
		}),
		one(actLog, "l", "log", "log another amount: 11.5, 6200 sqft, gauge 151 140, front 6.2; 22 lb", (*Model).canLog),
		one(actPush, "p", "push", "pushed through the hose: 2.6, 62 s, 2.6 b, 2.6 pail, 5 ride-on; or tint 48 s half 55 s full 70 s; 50 lb PRODUCT spreader loads a hopper", (*Model).canTurn),
		one(actGauge, "o", "gauge", "log a gauge reading: b 62", (*Model).canTurn),
		one(actWeather, "i", "weather", "log the weather: 6 SW 64 45% 6h high 88 forecast NAME 6:10 inversion no", (*Model).canTurn),
		one(actSame, "j", "same", "looked again, the weather is unchanged", func(m *Model) bool {
			return m.canTurn() && m.book.Weather() != nil
		}),
		one(actOther, "h", "applicator", "spray or spread with the next applicator", func(m *Model) bool {
			return m.inCab() && len(m.choices()) > 1
		}),
		one(actTip, "r", "rate", "fit the next tip, or setting, on the applicator: another delivery rate", func(m *Model) bool {
			a := m.applicator()
			if a == nil || !m.canTurn() || m.busy() { // the next one is known when the book has the last
				return false
			}
			_, more := m.book.NextTip(a.Name)
			return more
		}),
		one(actStrike, "u", "strike", "strike the last thing logged", func(m *Model) bool {
			return m.inCab() && len(m.got.last) > 0
		}),
		one(actChange, "t", "turn", "change over, guided: dry run, valves, count-down at the tank lid", (*Model).canTurn),
		one(actHold, "w", "hold ", "put the day on hold, for wind or rain; on hold: go on with it", (*Model).canTurn),
		one(actFind, "s", "search", "look for a lawn, a product or a mix by three letters", (*Model).inCab),
		one(actCard, "x", "aboard", "for an emergency: what is aboard, and whom to call", (*Model).inCab),
		one(actFindings, "z", "found", "all findings whole, with ground and source, and what was not checked", (*Model).inCab),
		one(actMenu, "g", "pages", "all pages: visits, lawns, products, loads, tally and the others", (*Model).inCab),
		one(actHelp, "?", "keys", "this page", func(m *Model) bool { return m.page != pageHelp && m.free() }),
	}
}

// commonKeys are those of pages, lines and questions, and those that work everywhere.
func commonKeys() []binding {
	return []binding{
		bind(actPick, rightHand, []string{"enter"}, "Enter", "do it", "", (*Model).canPick),
		bind(actUp, rightHand, []string{"up"}, "Up", "", "on a page: the row above", (*Model).canMove),
		bind(actDown, rightHand, []string{"down"}, "Down", "", "on a page: the row below", (*Model).canMove),
		hidden(bind(actPageUp, rightHand, []string{"pgup"}, "PgUp", "", "", (*Model).canMove)),
		hidden(bind(actPageDown, rightHand, []string{"pgdown"}, "PgDn", "", "", (*Model).canMove)),
		bind(actAgain, rightHand, []string{"enter"}, "Enter", "try again", "where an action could not be kept: keep it now", func(m *Model) bool { return m.fits() && m.canTryAgain() }),
		bind(actSend, rightHand, []string{"enter"}, "Enter", "log it", "", func(m *Model) bool { return m.fits() && m.open }),
		bind(actBack, rightHand, []string{"esc"}, "Esc", "leave it", "close a line, a question or a page", func(m *Model) bool {
			return m.fits() && (m.open || m.form != nil || m.page != pageCab && m.page != pageTrouble || m.ask.open())
		}),
		hidden(bind(actSuspend, rightHand, []string{"ctrl+z"}, "^Z", "", "back to the shell that started it; fg returns", func(m *Model) bool { return m.suspend })),
		bind(actQuit, rightHand, []string{"q", "ctrl+c"}, "q", "quit", "quit; what waits is written first", func(m *Model) bool { return !m.typing() }),
		bind(actQuit, rightHand, []string{"ctrl+c"}, "^C", "quit", "", func(m *Model) bool { return m.typing() }),
	}
}

// find is the enabled binding of a key.
func find(list []binding, k tea.KeyMsg) (binding, bool) {
	for _, b := range list {
		if key.Matches(k, b.Binding) {
			return b, true
		}
	}
	return binding{}, false
}

// enable works out which keys work now. The list is made anew: models before this one keep theirs.
func (m *Model) enable() {
	list := make([]binding, len(m.keys))
	copy(list, m.keys)
	for i := range list {
		list[i].SetEnabled(list[i].on(m))
		if list[i].name != nil {
			list[i].SetHelp(list[i].Help().Key, list[i].name(m))
		}
		switch list[i].act {
		case actDo:
			list[i].SetHelp(list[i].Help().Key, m.doLabel())
		case actHold:
			label := "hold "
			if m.book.Day().Hold != nil {
				label = "go on"
			}
			list[i].SetHelp(list[i].Help().Key, label)
		case actBack:
			label := "leave it"
			if !m.typing() && !m.ask.open() {
				label = "back"
			}
			list[i].SetHelp(list[i].Help().Key, label)
		case actSend:
			label := "log it"
			switch {
			case m.follows():
				label = "take it"
			case m.line.read == nil: // a further line asks for the rest
				label = "go on"
			}
			list[i].SetHelp(list[i].Help().Key, label)
		}
	}
	m.keys = list
}

// doLabel names what Enter does; both names are as wide, so that the keys behind it keep their places.
func (m *Model) doLabel() string {
	switch m.got.next.Act {
	case check.ActConfirm, check.ActNone:
		return "why? "
	}
	return "do it"
}

func (m *Model) inCab() bool {
	return m.page == pageCab && m.fits() && !m.typing() && !m.ask.open() && m.book.Rig() != nil && !m.quitting
}

// canMove tells whether a page has more rows than the one chosen.
func (m *Model) canMove() bool {
	const around = 3 // head, title and keys, at least
	return m.spec() != nil && (m.free() || m.follows()) && (len(m.picks()) > 1 || len(m.sheet.rows) > m.h-around)
}

// canDo tells whether Enter does something: not while an action is on its way, because the act that comes next
// is known only when the book has it.
func (m *Model) canDo() bool { return m.inCab() && !m.busy() }

func (m *Model) canAnswer() bool {
	if !m.fits() || m.typing() || m.busy() || m.quitting || m.page == pageTrouble {
		return false
	}
	if m.ask.open() {
		return true
	}
	if m.page != pageCab || m.book.Rig() == nil {
		return false
	}
	_, found := m.toAnswer()
	return found || m.got.next.Act == check.ActCloseDay
}

// canTurn tells whether something can be logged that needs no visit.
func (m *Model) canTurn() bool { return m.inCab() && m.book.Day().Open }

// canGo tells whether there is a visit to begin, to end or to skip.
func (m *Model) canGo() bool { return m.canTurn() && m.got.lawn != "" }

func (m *Model) canLog() bool { return m.canTurn() && m.book.Day().Visiting() != nil }
