package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/tally"
	"example.com/tintline/tui/theme"
)

// recordPage shows one record whole.
func recordPage() *pageSpec {
	const p = pageRecord
	return &pageSpec{
		page: p, title: "One record", show: (*Model).showRecord,
		keys: []binding{
			opening(pageKey(p, "i", "fill", "fill a field of this record: target clover", func(m *Model) tea.Cmd {
				r := m.recordChosen()
				return m.openRecorded(core.Recorded{Lawn: r.Lawn, Zone: r.Zone, Product: r.Product})
			}, func(m *Model) bool {
				r := m.recordChosen()
				return m.canFill() && r != nil && r.Date == m.book.Day().Date
			})),
			opening(pageKey(p, "o", "amend", "amend this record of a closed day: target clover because ...; gallons 6.5 because ...", (*Model).openAmend, func(m *Model) bool {
				r := m.recordChosen()
				return m.canFill() && r != nil && r.Date != m.book.Day().Date
			})),
			pageKey(p, "l", "lawn", "the page of the lawn", func(m *Model) tea.Cmd { return m.goToLawn(m.recordChosen().Lawn) }, func(m *Model) bool {
				r := m.recordChosen()
				return r != nil && m.book.Lawn(r.Lawn) != nil
			}),
		},
	}
}

// recordChosen is the record that was opened, nil if it is not there any more.
func (m *Model) recordChosen() *tally.Record {
	some, _, _ := m.recordsNow()
	for i := range some.list {
		if recordID(&some.list[i]) == m.subject.record {
			return &some.list[i]
		}
	}
	return nil
}

func (m *Model) showRecord() sheet {
	r := m.recordChosen()
	if r == nil {
		return sheet{rows: m.wrapped(theme.Base, "This record is not there any more: what it came from was struck or put right.")}
	}
	out := sheet{about: m.told(theme.Strong, r.Date+", "+r.Lawn+", "+r.Zone+": "+r.Product)}
	if missing := tally.MissingFor(m.book, r); len(missing) > 0 {
		out.rows = append(out.rows, m.fact(theme.Ask, "missing", titles(missing))...)
		out.rows = append(out.rows, blankRow())
	}
	cells := r.Cells()
	for _, f := range core.RecordFields() {
		says := cells[f.Key]
		if says == "" || f.Key == "pesticide" {
			continue
		}
		switch {
		case f.Kind == core.RecordNumber && f.Unit != "":
			says += " " + f.Unit
		case f.Key == "area":
			says += " sq ft"
		case f.Key == "mix_volume":
			says += " gal"
		}
		out.rows = append(out.rows, m.fact(theme.Base, f.Title, says)...)
	}
	for _, a := range r.Amended {
		out.rows = append(out.rows, m.fact(theme.Ask, "amended", a.Says())...)
	}
	state, _ := m.book.SettingText(core.State)
	for _, p := range tally.ProfilesOf(state) {
		if p.AppliesTo(r) {
			out.rows = append(out.rows, blankRow())
			out.rows = append(out.rows, m.wrapped(theme.Dim, p.Words())...)
		}
	}
	out.rows = append(out.rows, m.wrapped(theme.Dim, "What a rule asks for stands here as it was read; law changes, and the label and local rules decide.")...)
	return out
}

// openAmend asks what is otherwise on a record of a closed day, and why. Who works today amends it.
func (m *Model) openAmend() tea.Cmd {
	r := *m.recordChosen()
	some, _, _ := m.recordsNow()
	m.openLine(textLine{
		prompt: "amend", hint: "a field, what it is, because and why: target clover because ...; gallons 6.5 because ...; area 3000 because ...", tells: true,
		read: func(m *Model, said string) ([]core.Fact, error) {
			what, why, ok := strings.Cut(said, " because ")
			if !ok || blank(why) {
				return nil, slip("It is not said why.", "Write because and why: target clover because it was clover.")
			}
			key, value, err := readAmended(what)
			if err != nil {
				return nil, err
			}
			f, err := tally.Amending(some.list, &r, m.book.Day().Operator, why, [][2]string{{key, value}})
			if err != nil {
				return nil, err
			}
			return []core.Fact{f}, nil
		},
	})
	return nil
}

// readAmended parts a line into field and value; amounts are no fields that are filled, and can be amended.
func readAmended(said string) (key, value string, err error) {
	first, rest, _ := strings.Cut(strings.TrimSpace(said), " ")
	switch first {
	case "gallons", "gal", "amount", "area":
		return first, rest, nil
	}
	return readField(said)
}

func titles(fields []core.RecordField) string {
	var out []string
	for _, f := range fields {
		out = append(out, f.Title)
	}
	return strings.Join(out, ", ")
}

// openRecorded asks for a field and what is to stand in it.
func (m *Model) openRecorded(of core.Recorded) tea.Cmd {
	m.openLine(textLine{
		prompt: "fill", hint: "a field and what stands in it: supervisor none; target clover; wind_from SW", tells: true,
		read: func(m *Model, said string) ([]core.Fact, error) {
			f := of
			var err error
			f.Field, f.Value, err = readField(said)
			return []core.Fact{&f}, err
		},
		again: func(m *Model, _ []core.Fact) *textLine { return nil },
	})
	return nil
}

// readField parts a line into the field, by its key or its title, and what is behind it.
func readField(said string) (key, value string, err error) {
	said = strings.TrimSpace(said)
	best := ""
	for _, f := range core.RecordFields() {
		for _, name := range []string{f.Key, f.Title} {
			if rest, ok := cutFold(said, name); ok && len(name) > len(best) && f.Fill {
				best, key, value = name, f.Key, strings.TrimLeft(rest, " =:")
			}
		}
	}
	if key == "" {
		first, _, _ := strings.Cut(said, " ")
		return "", "", slip(fmt.Sprintf("%q is no field that can be filled.", first), "Begin with one, as in supervisor none, target clover, disposal none.")
	}
	return key, value, nil
}

// cutFold takes a name off the beginning of a text, whatever its letters' case, where a word ends.
func cutFold(s, name string) (string, bool) {
	if len(s) < len(name) || !strings.EqualFold(s[:len(name)], name) {
		return "", false
	}
	rest := s[len(name):]
	if rest != "" && !strings.ContainsAny(rest[:1], " =:") {
		return "", false
	}
	return rest, true
}
