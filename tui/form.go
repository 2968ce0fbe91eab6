package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/huh"
	"github.com/charmbracelet/lipgloss"

	"example.com/tintline/core/setup"
	"example.com/tintline/tui/theme"
)

// form is a form of the set-up while it is open. huh edits and draws the fields of one page; no other file knows it.
// Keys go to it as they came. The commands that it answers with are dropped: they blink cursors and ask for the
// size of the window, and where to go next is decided by act_form.go.
type form struct {
	def   setup.Form
	said  setup.Answers
	page  int
	at    int // the field that has the keys, on its page
	wrong string
	fresh bool // the first letter typed takes the place of a starting value
	sent  bool // on its way to the disk

	hu     *huh.Form
	fields []huh.Field
	text   []string   // what huh writes into, by field
	ticks  [][]string // the same where any number may be chosen
	drawn  formLook
}

// formLook is all that decides how a form is drawn.
type formLook struct {
	r    *lipgloss.Renderer
	name string // of the theme
	w, h int
	g    *glyphs
}

const (
	formLabel  = 22
	formFrame  = 7 // cells of a choice besides label and answer
	longestSay = 300
)

func (f *form) asks() []setup.Field { return f.def.Pages[f.page].Fields }

// asked is the field that has the keys.
func (f *form) asked() *setup.Field { return &f.asks()[f.at] }

// build makes the fields of the page anew from what was said.
func (f *form) build(l formLook) {
	f.drawn = l
	asks := f.asks()
	f.fields, f.text, f.ticks = make([]huh.Field, len(asks)), make([]string, len(asks)), make([][]string, len(asks))
	look := formTheme(l)
	for i := range asks {
		f.fields[i] = f.field(i, look)
	}
	f.hu = huh.NewForm(huh.NewGroup(f.fields...)).WithShowHelp(false).WithShowErrors(false).
		WithTheme(look).WithKeyMap(formKeys()).WithWidth(l.w).WithHeight(l.h)
	_ = f.hu.Init()
	for range f.at {
		_ = f.hu.NextField()
	}
}

func (f *form) field(i int, look *huh.Theme) huh.Field {
	d := f.asks()[i]
	label := padRight(d.Words+f.star(&d), formLabel) + " "
	f.text[i] = f.said[d.Key]
	options := make([]huh.Option[string], 0, len(d.Options))
	for _, o := range d.Options {
		words := f.drawn.g.clean(o.Words)
		if isChoice(&d) {
			words = f.drawn.g.fit(words, f.drawn.w-formLabel-formFrame)
		}
		options = append(options, huh.NewOption(words, o.Value))
	}
	switch {
	case d.Many:
		f.ticks[i] = d.Chosen(f.text[i])
		return huh.NewMultiSelect[string]().Options(options...).Filterable(false).Value(&f.ticks[i]).Height(f.listRows())
	case d.Long:
		options = append([]huh.Option[string]{huh.NewOption("none chosen yet", "")}, options...)
		return huh.NewSelect[string]().Title(d.Words).Options(options...).Value(&f.text[i]).Filtering(true).Height(f.listRows())
	case len(d.Options) > 0:
		own := *look
		own.Focused.PrevIndicator = look.Focused.Title.SetString(label + "< ")
		own.Blurred.PrevIndicator = look.Blurred.Title.SetString(label + "< ")
		return huh.NewSelect[string]().Inline(true).Options(options...).Value(&f.text[i]).WithTheme(&own)
	}
	return huh.NewInput().Inline(true).Prompt("").Title(label).CharLimit(longestSay).Value(&f.text[i])
}

// listRows is how many rows a list has; where it is longer, the last one says so.
func (f *form) listRows() int {
	if f.hasMore() {
		return f.drawn.h - 1
	}
	return f.drawn.h
}

// hasMore tells whether the list that is the page is longer than its place: options, what is typed, and none.
func (f *form) hasMore() bool {
	d := f.asked()
	return (d.Long || d.Many) && len(d.Options)+2 > f.drawn.h
}

// more moves down a list by as much as is in sight.
func (f *form) more() {
	for range max(f.drawn.h-2, 1) {
		f.pass(tea.KeyMsg{Type: tea.KeyDown})
	}
}

// star marks a starting value that still stands and was not measured on this rig.
func (f *form) star(d *setup.Field) string {
	if d.Source != "" && f.said[d.Key] == d.Start {
		return " *"
	}
	return ""
}

// formKeys leave to huh what moves within a field; all else is dealt with before it.
func formKeys() *huh.KeyMap {
	on := func(keys ...string) key.Binding { return key.NewBinding(key.WithKeys(keys...)) }
	k := &huh.KeyMap{}
	k.Select.Up, k.Select.Down, k.Select.Left, k.Select.Right = on("up"), on("down"), on("left"), on("right")
	k.Select.Next, k.Select.Submit = on("enter"), on("enter")
	k.MultiSelect.Up, k.MultiSelect.Down, k.MultiSelect.Toggle = on("up"), on("down"), on(" ")
	return k
}

func formTheme(l formLook) *huh.Theme {
	st := func(t theme.Token) lipgloss.Style { return theme.Style(l.r, l.name, t) }
	base := func(edge rune) lipgloss.Style {
		return st(theme.Base).BorderStyle(lipgloss.Border{Left: string(edge)}).BorderLeft(true).PaddingLeft(1)
	}
	t := &huh.Theme{FieldSeparator: st(theme.Base).SetString("\n")}
	t.Focused = huh.FieldStyles{
		Base: base(l.g.edge), Title: st(theme.Strong), SelectSelector: st(theme.Strong).SetString(string(l.g.supply) + " "),
		NextIndicator: st(theme.Strong).SetString(" >"), MultiSelectSelector: st(theme.Strong).SetString(string(l.g.supply) + " "),
		SelectedOption: st(theme.Strong), UnselectedOption: st(theme.Base),
		SelectedPrefix: st(theme.Strong).SetString("[x] "), UnselectedPrefix: st(theme.Base).SetString("[ ] "),
		TextInput: huh.TextInputStyles{
			Cursor: st(theme.Base), CursorText: st(theme.Strong), Text: st(theme.Strong), Prompt: st(theme.Strong), Placeholder: st(theme.Dim),
		},
	}
	t.Blurred = t.Focused
	t.Blurred.Base, t.Blurred.Title = base(' '), st(theme.Base)
	t.Blurred.SelectedOption, t.Blurred.NextIndicator = st(theme.Base), st(theme.Base).SetString(" >")
	t.Blurred.TextInput.Text, t.Blurred.TextInput.CursorText = st(theme.Base), st(theme.Base)
	return t
}

// pass gives a key to the field that has the keys.
func (f *form) pass(k tea.KeyMsg) {
	if k.Type == tea.KeyCtrlV {
		return // it would run a clipboard program
	}
	if k.Type == tea.KeyRunes || k.Type == tea.KeySpace {
		k.Runes = drawable(k.Runes)
		if len(k.Runes) == 0 {
			return
		}
		if d := f.asked(); f.fresh && f.said[d.Key] == d.Start && len(d.Options) == 0 {
			f.said[d.Key] = ""
			f.build(f.drawn)
		}
	}
	f.wrong, f.fresh = "", false
	_, _ = f.hu.Update(k)
	f.read()
}

// drawable leaves out what cannot stand on the screen in cells that all terminals agree about.
func drawable(runes []rune) []rune {
	var out []rune
	for _, r := range runes {
		if cellsOf(r) > 0 {
			out = append(out, r)
		}
	}
	return out
}

// read takes over what the fields say.
func (f *form) read() {
	for i, d := range f.asks() {
		if d.Many {
			f.said[d.Key] = strings.Join(f.ticks[i], setup.Joint)
		} else {
			f.said[d.Key] = f.text[i]
		}
	}
}

// commit takes the option under the cursor of a list that is looked through; none if no option has the letters.
func (f *form) commit() {
	list, ok := f.fields[f.at].(*huh.Select[string])
	if !ok || !f.asked().Long {
		return
	}
	f.text[f.at] = ""
	if v, found := list.Hovered(); found {
		f.text[f.at] = v
	}
	f.read()
}

// show draws the page: as many lines as there is room for.
func (f *form) show() []string { return strings.Split(f.hu.View(), "\n") }

// padRight fills plain words up to w cells.
func padRight(s string, w int) string { return s + strings.Repeat(" ", max(w-cells(s), 0)) }

// tapOption chooses an option of the list that is the page, or ticks it. The list stays where it is.
func (f *form) tapOption(value string) {
	d := f.asked()
	list, ok := f.fields[f.at].(*huh.MultiSelect[string])
	if !ok {
		f.said[d.Key] = value
		f.build(f.drawn)
		return
	}
	at, to := 0, 0
	on, _ := list.Hovered()
	for i, o := range d.Options {
		if o.Value == on {
			at = i
		}
		if o.Value == value {
			to = i
		}
	}
	for ; at < to; at++ {
		f.pass(tea.KeyMsg{Type: tea.KeyDown})
	}
	for ; at > to; at-- {
		f.pass(tea.KeyMsg{Type: tea.KeyUp})
	}
	f.pass(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}})
}
