package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/tui/theme"
)

// settingsPage lists what can be set, each with its value, what is allowed and where the default comes from.
func settingsPage() *pageSpec {
	const p = pageSettings
	return &pageSpec{
		page: p, key: "h", title: "Settings", words: "limits and looks: value, range, source and default",
		show: (*Model).showSettings, pick: (*Model).openSetting,
		keys: []binding{
			pageKey(p, "o", "default", "the setting that is chosen back to its default", (*Model).backToDefault, (*Model).chosenIsSet),
			sunKey(p),
		},
	}
}

// sunKey changes between the themes for sun and for night.
func sunKey(p page) binding {
	return pageKey(p, "z", "sun/night", "light screen for the sun, dark one for the night", func(m *Model) tea.Cmd {
		to := theme.Sun
		if m.themeName == theme.Sun {
			to = theme.Night
		}
		return m.enter(&core.Setting{SettingName: core.Theme, Value: to})
	}, func(m *Model) bool { return !m.themeFixed })
}

func settingNamed(name string) (core.SettingRow, bool) {
	for _, r := range core.Settings() {
		if r.Name == name {
			return r, true
		}
	}
	return core.SettingRow{}, false
}

// settingValue is what is in force; set tells whether the operator set it.
func (m *Model) settingValue(r core.SettingRow) (value string, set bool) {
	if v, ok := m.book.SettingText(r.Name); ok {
		return v, true
	}
	if r.Name == core.Theme {
		return m.themeName, false // what the terminal was opened with
	}
	if r.Text {
		return noText, false
	}
	return r.DefaultText(), false
}

// noText stands where a setting that is a text has none.
const noText = "none"

// settingName is a setting's name as words. The unit has a column of its own and is left out, but not where what is left could be taken
// for another setting.
func settingName(r core.SettingRow) string {
	words, short := settingWords(r)
	for _, other := range core.Settings() {
		if _, theirs := settingWords(other); other.Name != r.Name && strings.HasPrefix(theirs+" ", short+" ") {
			return words
		}
	}
	return short
}

// settingWords is the name as words, whole and without the unit.
func settingWords(r core.SettingRow) (whole, short string) {
	whole = strings.ReplaceAll(r.Name, "_", " ")
	return whole, strings.TrimSuffix(strings.TrimSuffix(whole, " "+strings.ToLower(r.Unit)), " pct")
}

func (m *Model) showSettings() sheet {
	const name, value, unit, wide = 20, 6, 8, 60
	head := []span{m.cell(theme.Dim, "setting", name), m.cellRight(theme.Dim, "value", value), m.cell(theme.Dim, "", unit)}
	if m.w >= wide {
		head = append(head, m.cell(theme.Dim, "allowed", 20))
	}
	rows := []row{heading(head...)}
	for _, r := range core.Settings() {
		v, set := m.settingValue(r)
		t, by := theme.Base, ""
		if set {
			t, by = theme.Strong, "set by you"
		}
		if r.Text {
			rows = append(rows, row{id: r.Name, line: line{left: []span{m.cell(t, settingName(r), name), m.cell(t, v, m.w-name-4)}}})
			continue
		}
		l := line{left: []span{m.cell(t, settingName(r), name), m.cellRight(t, v, value), m.cell(theme.Base, r.Unit, unit)}}
		if m.w >= wide {
			l.left = append(l.left, m.cell(theme.Base, strings.TrimSuffix(r.Allowed(), " ("+r.Unit+")"), 20), span{theme.Note, by})
		}
		rows = append(rows, row{id: r.Name, line: l})
	}
	out := sheet{rows: rows, offer: "type another value", small: "it holds from the next entry on"}
	if r, ok := settingNamed(m.chosenAmong(rows)); ok {
		out.about = append(m.told(theme.Base, sentence(r.Words)), m.told(theme.Dim, m.settingGround(r))...)
		out.offer = "change " + settingName(r)
	}
	return out
}

// settingGround is where the default comes from; of a text, the whole of it.
func (m *Model) settingGround(r core.SettingRow) string {
	if !r.Text {
		return "Default " + r.DefaultText() + ": " + sentence(r.Source)
	}
	v, set := m.settingValue(r) // what can be a text is a rule of the place, or a note on one
	if !set {
		return "Nothing is set. " + sentence(r.Source)
	}
	return v + " (set by the operator; local rules decide)."
}

func (m *Model) chosenIsSet() bool {
	_, set := m.book.SettingText(m.chosen())
	return set && !m.busy()
}

func (m *Model) backToDefault() tea.Cmd {
	return m.enter(&core.Setting{SettingName: m.chosen(), Value: core.DefaultSetting})
}

// openSetting opens a line for the value.
func (m *Model) openSetting(name string) tea.Cmd {
	r, ok := settingNamed(name)
	if !ok {
		return nil
	}
	l := textLine{
		prompt: settingName(r), hint: r.Allowed() + "; or default", choices: r.Options,
		read: func(_ *Model, said string) ([]core.Fact, error) {
			said = strings.TrimSpace(said)
			if said == "" {
				return nil, slip("Nothing is typed.", "Type "+r.Allowed()+"; Esc leaves it.")
			}
			if r.Unit != "" {
				said = strings.TrimSpace(strings.TrimSuffix(said, r.Unit))
			}
			return onlyFact(&core.Setting{SettingName: r.Name, Value: said}, nil)
		},
	}
	switch was, set := m.settingValue(r); {
	case len(r.Options) > 0:
		l.hint = ""
	case set || !r.Text:
		l.was = was
	}
	m.openLine(l)
	return nil
}

// wearBook puts the theme on that the book says; where it says nothing, the one that the screen began with.
func (m *Model) wearBook() {
	name := m.firstTheme
	if set, ok := m.book.SettingText(core.Theme); ok {
		name = set
	}
	if !m.themeFixed && name != m.themeName {
		m.wear(name)
	}
}
