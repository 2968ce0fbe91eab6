package tui

import (
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/setup"
	"example.com/tintline/tui/theme"
)

// lawnField is a text that is kept of a lawn.
type lawnField struct {
	id, words, hint string
	of              func(l *core.Lawn) *string
}

var lawnFields = []lawnField{
	{"gate", "gate", "how to get in: where it is, which latch; blank: nothing is known", func(l *core.Lawn) *string { return &l.Gate }},
	{"dog", "dog", "what is known of it; blank: none is known", func(l *core.Lawn) *string { return &l.Dog }},
	{"phone", "phone", "a number; blank: none", func(l *core.Lawn) *string { return &l.Phone }},
	{"always", "always", "what holds at each visit; blank: nothing", func(l *core.Lawn) *string { return &l.Notes }},
	{"since", "known since", "the date from which on all that was laid there is in the book: 2026-01-01", func(l *core.Lawn) *string { return &l.KnownSince }},
}

func (m *Model) fieldRow(l *core.Lawn, f lawnField) row {
	t, words := theme.Base, *f.of(l)
	if words == "" {
		t, words = theme.Dim, "nothing is known"
		if f.id == "since" {
			words = "from its first entry on, " + m.book.KnownSince(l.LawnName)
		}
	}
	return row{id: f.id, line: line{left: []span{m.cell(theme.Strong, f.words, 12), {t, m.g.clean(words)}}}}
}

// lawnOffer is what Enter does with a row.
func (m *Model) lawnOffer(id string) (offer, small string) {
	zone, isZone := strings.CutPrefix(id, rowZone)
	may, isMay := strings.CutPrefix(id, rowMay)
	switch {
	case isMay:
		return "show what may go on " + may + ", and why", ""
	case isZone:
		return "change the area or the grass of " + zone, "w says how it grows, s what lies beside it"
	case strings.HasPrefix(id, rowCaution):
		return "change this own note, or take it back", "j adds one"
	case id == rowOlder:
		return "read older entries", ""
	case id == "":
		return "", ""
	}
	for _, f := range lawnFields {
		if f.id == id {
			return "change what is known: " + f.words, "i writes a note"
		}
	}
	return "show entry " + id + " whole", "i writes a note"
}

func (m *Model) pickLawn(id string) tea.Cmd {
	if lawn, list := strings.CutPrefix(id, rowOpen); list {
		return m.turnToLawn(lawn)
	}
	l := m.book.Lawn(m.subject.lawn)
	if l == nil {
		return nil
	}
	if id == rowOlder {
		return m.pullLawn(len(m.pulled.entries) + entriesAPage)
	}
	if n, ok := strings.CutPrefix(id, rowCaution); ok {
		i, _ := strconv.Atoi(n)
		return m.openForm(setup.Caution, setup.CautionAt(i))
	}
	if zone, ok := strings.CutPrefix(id, rowMay); ok {
		return m.openMay(zone)
	}
	if zone, ok := strings.CutPrefix(id, rowZone); ok {
		m.openZone(l, zone)
		return nil
	}
	for _, f := range lawnFields {
		if f.id == id {
			m.openField(l, f)
			return nil
		}
	}
	for _, e := range m.historyOf(l.LawnName) {
		if e.Seq == entryOf(id) {
			m.looked = looked{e}
			return m.goTo(pageEntry)
		}
	}
	return nil
}

// changed is a lawn as it is, to be changed.
func changed(l *core.Lawn) *core.Lawn {
	c := *l
	c.Zones = append([]core.Zone(nil), l.Zones...)
	return &c
}

func (m *Model) openField(l *core.Lawn, f lawnField) {
	m.openLine(textLine{
		prompt: l.LawnName + ", " + f.words, was: *f.of(l), hint: f.hint,
		read: func(_ *Model, said string) ([]core.Fact, error) {
			c := changed(l)
			*f.of(c) = strings.TrimSpace(said)
			return onlyFact(c, nil)
		},
	})
}

func (m *Model) openZone(l *core.Lawn, zone string) {
	z, _ := l.Zone(zone)
	m.openLine(textLine{
		prompt: "zone " + zone + " of " + l.LawnName, was: z.Area.Text() + " sqft",
		hint: "its area: 4000, or 4000 sqft; a grass behind it changes that too: 4000 tall fescue",
		read: func(_ *Model, said string) ([]core.Fact, error) { return onlyFact(readZone(l, zone, said)) },
	})
}

// readZone reads an area, and behind it a grass if that changes too.
func readZone(l *core.Lawn, zone, said string) (core.Fact, error) {
	c := changed(l)
	words := strings.Fields(said)
	for n := len(words); n > 0; n-- {
		area, err := measure.ReadArea(strings.Join(words[:n], " "), "sqft")
		if err != nil {
			continue
		}
		typed := strings.Join(words[n:], " ")
		grass, known := label.ReadGrass(typed)
		if typed != "" && !known {
			return nil, slip("\""+typed+"\" is not a known grass.", "Nearest known names: "+strings.Join(label.NearestGrasses(typed), ", ")+".")
		}
		for i := range c.Zones {
			if c.Zones[i].Name == zone {
				c.Zones[i].Area = area
				if typed != "" {
					c.Zones[i].Grass = grass
				}
			}
		}
		return c, nil
	}
	_, err := measure.ReadArea(said, "sqft")
	return nil, err
}

// putInLawn puts the lawn in today, at the end of the visits planned.
func (m *Model) putInLawn() tea.Cmd { return m.enter(m.book.Day().PutIn(m.subject.lawn, "")) }

// openNote writes something down about the lawn.
func (m *Model) openNote() tea.Cmd {
	lawn := m.subject.lawn
	m.openLine(textLine{
		prompt: "note on " + lawn, hint: "what the next one to come here should know",
		read: func(_ *Model, said string) ([]core.Fact, error) {
			return onlyFact(&core.Noted{Lawn: lawn, Text: strings.TrimSpace(said)}, nil)
		},
	})
	return nil
}
