package tui

import (
	"errors"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/setup"
)

// draft is a form that was left before it was logged: what was typed is kept.
type draft struct {
	said     setup.Answers
	start    setup.Answers // what stood there to begin with
	page, at int
}

// openForm opens a form of the set-up on the page that is open. about names what it is about, as the lawn of a
// zone.
func (m *Model) openForm(name, about string) tea.Cmd {
	def, ok := setup.For(name, about, m.book)
	if !ok || m.trouble != nil {
		return nil
	}
	f := &form{def: def, said: def.Start(), fresh: true}
	if d, left := m.drafts[draftOf(def)]; left {
		for k, v := range d.said {
			if p, _ := def.Field(k); p != nil && v != d.start[k] { // the book may have changed since
				f.said[k] = v
			}
		}
		f.page = min(d.page, len(def.Pages)-1)
		f.at = min(d.at, len(f.asks())-1)
	}
	f.def.Arrive(f.page, f.said)
	m.form, m.status = f, status{}
	return nil
}

// The forms that other pages open.
func (m *Model) formProduct() tea.Cmd         { return m.openForm(setup.Product, "") }
func (m *Model) formLawn() tea.Cmd            { return m.openForm(setup.Lawn, "") }
func (m *Model) formZone(lawn string) tea.Cmd { return m.openForm(setup.Zone, lawn) }
func (m *Model) formMix(base string) tea.Cmd  { return m.openForm(setup.Mix, base) }
func (m *Model) formLabel() tea.Cmd           { return m.openForm(setup.Label, m.subject.product) }
func (m *Model) formRecipe() tea.Cmd          { return m.openForm(setup.Recipe, m.subject.mix) }

func draftOf(def setup.Form) string { return def.Title }

// closeForm leaves the form; what was typed stands there when it is opened again.
func (m *Model) closeForm() {
	f := m.form
	f.read()
	f.def.Withdraw(f.said)
	m.drafts[draftOf(f.def)] = draft{f.said, f.def.Start(), f.page, f.at}
	m.form = nil
}

// inForm tells whether a form has the keys.
func (m *Model) inForm() bool { return m.form != nil && m.fits() && !m.quitting && !m.form.sent }

// longForm is from how many pages on a form can be logged from each of them.
const longForm = 3

// inLongForm tells whether pages that lie ahead can be left as they stand.
func (m *Model) inLongForm() bool {
	return m.inForm() && len(m.form.def.Pages) >= longForm && m.form.page < len(m.form.def.Pages)-1
}

// asksFor tells whether the field with the keys is of a kind.
func (m *Model) asksFor(kind func(d *setup.Field) bool) bool {
	return m.inForm() && kind(m.form.asked())
}

func isTicks(d *setup.Field) bool  { return d.Many }
func isChoice(d *setup.Field) bool { return len(d.Options) > 0 && !d.Long && !d.Many }

// dressForm gives the form the window as it is now.
func (m *Model) dressForm() {
	if m.form == nil || !m.fits() {
		return
	}
	body := m.formBody()
	if l := (formLook{m.renderer, m.themeName, body.w, body.h, m.g}); l != m.form.drawn {
		m.form.build(l)
	}
}

// goField gives the keys to a field of the page.
func (m *Model) goField(at int) {
	f := m.form
	f.at, f.wrong, f.fresh = at, "", true
	f.build(f.drawn)
}

// goPage turns to a page of the form.
func (m *Model) goPage(page, at int) {
	f := m.form
	f.page = page
	f.def.Arrive(page, f.said)
	if at < 0 {
		at = len(f.asks()) - 1
	}
	m.goField(at)
}

// formNext is Enter: the next field, the next page, or all of it into the journal.
func (m *Model) formNext() tea.Cmd {
	f := m.form
	f.commit()
	if err := f.asked().Check(f.said); err != nil {
		m.formWrong(err)
		return nil
	}
	if f.at < len(f.asks())-1 {
		m.goField(f.at + 1)
		return nil
	}
	return m.formRest()
}

// formRest takes the rest of the page as it stands.
func (m *Model) formRest() tea.Cmd {
	f := m.form
	f.commit()
	if err := f.def.CheckPage(f.page, f.said); err != nil {
		m.formWrong(err)
		return nil
	}
	if f.page < len(f.def.Pages)-1 {
		m.goPage(f.page+1, 0)
		return nil
	}
	return m.formLog()
}

// formLog takes all pages as they stand.
func (m *Model) formLog() tea.Cmd {
	f := m.form
	f.commit()
	facts, err := f.def.Facts(m.book, core.At(m.at), f.said)
	if err != nil {
		m.formWrong(err)
		return nil
	}
	if len(facts) == 0 {
		m.closeForm()
		m.status = status{kind: saysChosen, what: "nothing was changed"}
		return nil
	}
	f.sent = true
	return m.enter(facts...)
}

// formWrong goes to the field that is wrong and says why.
func (m *Model) formWrong(err error) {
	f := m.form
	page, at := f.page, f.at
	var w *setup.Wrong
	if errors.As(err, &w) && w.Field != "" {
		if d, p := f.def.Field(w.Field); d != nil {
			for i := range f.def.Pages[p].Fields {
				if f.def.Pages[p].Fields[i].Key == w.Field {
					page, at = p, i
				}
			}
		}
	}
	m.goPage(page, at)
	what, do := sentences(err)
	f.wrong, f.fresh = join(what, do), false
}

// formUp and formDown move between the fields, and in a list between its options.
func (m *Model) formUp() {
	f := m.form
	switch {
	case f.asked().Long || f.asked().Many:
		f.pass(tea.KeyMsg{Type: tea.KeyUp})
	case f.at > 0:
		m.goField(f.at - 1)
	case f.page > 0:
		m.goPage(f.page-1, -1)
	}
}

func (m *Model) formDown() {
	f := m.form
	switch {
	case f.asked().Long || f.asked().Many:
		f.pass(tea.KeyMsg{Type: tea.KeyDown})
	case f.at < len(f.asks())-1:
		m.goField(f.at + 1)
	}
}

// formTapped is a tap on a field, or on an option of a list.
func (m *Model) formTapped(row string) {
	f := m.form
	for i, d := range f.asks() {
		switch {
		case d.Long:
			f.tapOption(row)
			return
		case d.Key == row && i == f.at && isChoice(&d):
			f.pass(tea.KeyMsg{Type: tea.KeyRight})
			return
		case d.Key == row:
			m.goField(i)
			return
		}
	}
}

// formLogged comes after the disk has what the form says: the next form that the book needs, or the page below.
func (m *Model) formLogged() {
	name := m.form.def.Name
	first := map[string]bool{setup.Rig: true, setup.Product: true, setup.Mix: true, setup.Lawn: true}
	delete(m.drafts, draftOf(m.form.def))
	m.form = nil
	if all := m.book.Lawns(); name == setup.Lawn && m.page == pageLawn && len(all) > 0 {
		m.subject.lawn, m.on[pageLawn] = all[len(all)-1].LawnName, placeOn{}
	}
	if next := setup.Next(m.book); first[name] && next != "" && m.book.Day().Date == "" {
		kept := m.status
		m.openForm(next, "")
		m.status = kept
	}
}

// doForm carries out a key of a form.
func (m *Model) doForm(a act) tea.Cmd {
	switch a {
	case actFormNext:
		if !m.doubled() {
			return m.formNext()
		}
	case actFormRest:
		if !m.doubled() {
			return m.formRest()
		}
	case actFormLog:
		if !m.doubled() {
			return m.formLog()
		}
	case actFormBefore:
		m.goPage(m.form.page-1, 0)
	case actFormUp:
		m.formUp()
	case actFormDown:
		m.formDown()
	case actFormLeft:
		m.form.pass(tea.KeyMsg{Type: tea.KeyLeft})
	case actFormRight:
		m.form.pass(tea.KeyMsg{Type: tea.KeyRight})
	case actFormTick:
		m.form.pass(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}})
	}
	return nil
}

// formBindings are the keys of a form.
func formBindings() []binding {
	on := func(kind func(d *setup.Field) bool) func(m *Model) bool {
		return func(m *Model) bool { return m.asksFor(kind) }
	}
	return []binding{
		bind(actFormNext, rightHand, []string{"enter"}, "Enter", "next", "", (*Model).inForm),
		bind(actFormRest, rightHand, []string{"pgdown"}, "PgDn", "page is right", "in a form: the rest of the page as it stands", (*Model).inForm),
		bind(actFormBefore, rightHand, []string{"pgup"}, "PgUp", "page before", "in a form: the page before", func(m *Model) bool {
			return m.inForm() && m.form.page > 0
		}),
		bind(actFormLog, rightHand, []string{"ctrl+s"}, "^S", "log it now", "in a long form: all pages as they stand", (*Model).inLongForm),
		bind(actFormUp, rightHand, []string{"up", "shift+tab"}, "Up", "", "", (*Model).inForm),
		bind(actFormDown, rightHand, []string{"down", "tab"}, "Down", "", "", (*Model).inForm),
		bind(actFormLeft, rightHand, []string{"left"}, "Left", "", "", on(isChoice)),
		bind(actFormRight, rightHand, []string{"right"}, "Right", "choose", "in a form: the next answer; Left: the one before", on(isChoice)),
		bind(actFormTick, rightHand, []string{" "}, "Space", "tick", "in a form: tick, or take the tick away", on(isTicks)),
	}
}
