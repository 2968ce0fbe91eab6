package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// loadsPage lists the tanks with what is left and what is to be loaded.
func loadsPage() *pageSpec {
	const p = pageLoads
	spec := &pageSpec{
		page: p, key: "o", title: "Load the truck", words: "what goes into which tank, with a list to tick",
		show: (*Model).showLoads, pick: (*Model).pickTank, keys: letterKeys(p, (*Model).isCompartment),
	}
	spec.keys = append(spec.keys, opening(pageKey(p, "l", "in already", "log a load that is in the tank already, without a list", func(m *Model) tea.Cmd {
		if id := m.chosen(); !strings.HasPrefix(id, toHopper) {
			m.openLine(m.loadLine(id, false))
		}
		return nil
	}, func(m *Model) bool { return m.book.Rig() != nil && !strings.HasPrefix(m.chosen(), toHopper) })))
	return spec
}

// toHopper begins the id of a hopper's row.
const toHopper = "hopper/"

// tankWidths are those of a row of the list of tanks.
type tankWidths struct{ name, left, room int }

func (m *Model) loadWidths() tankWidths {
	const middle, letter, least = 76, 3, 12
	c := tankWidths{left: 8, room: 8}
	if m.w < middle {
		c.left, c.room = 7, 7
	}
	c.name = min(max(m.w/4, least), m.w-tableMarks-letter-c.left-c.room-2)
	return c
}

func (m *Model) showLoads() sheet {
	c := m.loadWidths()
	out := sheet{about: m.told(theme.Base, "Enter plans a load, or opens the sheet of one that is planned.")}
	out.rows = append(out.rows, heading(span{theme.Dim, "   "}, m.cell(theme.Dim, "holds", c.name), m.cellRight(theme.Dim, "left", c.left), m.cellRight(theme.Dim, "room", c.room)))
	p := m.book.Plumbing()
	for i := range p.Compartments {
		t := &p.Compartments[i]
		l := string(t.Letter)
		mark := span{theme.Compartment(t.Letter, m.book.RigCompartment(t.Letter).Colour), l}
		out.rows = append(out.rows, m.loadRows(mark, l, m.holdsWords(l, &t.Tank), &t.Tank, c)...)
	}
	for i := range p.Tanks {
		t := &p.Tanks[i]
		out.rows = append(out.rows, m.loadRows(span{theme.Base, " "}, t.Name, t.Name, &t.Tank, c)...)
	}
	for i := range p.Hoppers {
		h := &p.Hoppers[i]
		words := h.Name + ", hopper"
		out.rows = append(out.rows, row{id: toHopper + h.Name, line: line{left: []span{
			{theme.Base, "   "}, m.cell(theme.Strong, words, c.name), m.cellRight(theme.Strong, measure.DryAmount(h.Mass()).Text(), c.left), m.cellRight(theme.Base, measure.DryAmount(h.Room()).Text(), c.room),
		}}})
	}
	id := m.chosenAmong(out.rows)
	switch hopper, dry := strings.CutPrefix(id, toHopper); {
	case dry:
		out.offer = "pour into the hopper of " + hopper
	case m.book.LoadPlan(id) != nil:
		out.offer, out.small = "the sheet of what goes into "+id, m.inWords(m.book.LoadPlan(id))
	case id != "":
		out.offer, out.small = "plan a load into "+id, "it becomes a list to tick; l logs what is in already"
	}
	return out
}

// holdsWords name what stands in a compartment.
func (m *Model) holdsWords(letter string, t *fluid.Tank) string {
	switch mix := m.book.MixIn(letter); {
	case t.Drawable() == 0:
		return "empty"
	case mix != "":
		return mix
	}
	return m.book.RigCompartment(letter[0]).Name
}

// loadRows are a tank, and below it what is to be loaded where the row has no room for it.
func (m *Model) loadRows(mark span, id, name string, t *fluid.Tank, c tankWidths) []row {
	const wide = 100
	l := line{left: []span{
		mark,
		{theme.Base, "  "},
		m.cell(theme.Strong, name, c.name),
		m.cellRight(theme.Strong, t.Liquid.Volume.Text(), c.left), m.cellRight(theme.Base, t.Room().Text(), c.room),
	}}
	plan := m.book.LoadPlan(id)
	if plan == nil {
		return []row{{id: id, line: l}}
	}
	words := planWords(plan) + ", " + m.inWords(plan)
	if m.w >= wide {
		l.left = append(l.left, span{theme.Next, " " + m.g.clean(words)})
		return []row{{id: id, line: l, now: true}}
	}
	out := []row{{id: id, line: l, now: true}}
	for _, s := range m.g.wrap(m.g.clean("to load: "+words), m.w-tableMarks-tableMarks) {
		out = append(out, row{line: text(theme.Next, "   "+s)})
	}
	return out
}

// planWords are a load in short: "150.0 gal of warm weed for gun".
func planWords(p *core.LoadPlanned) string {
	words := p.Volume.Text() + " gal"
	switch {
	case p.Mix != "":
		words += " of " + p.Mix
	case len(p.Parts) == 0:
		words += " of water"
	}
	if p.For != "" {
		words += " for " + p.For
	}
	return words
}

// inWords say how many items are ticked: "1 of 3 in".
func (m *Model) inWords(p *core.LoadPlanned) string {
	items := m.book.LoadItems(p)
	n := 0
	for _, i := range items {
		if i.Done {
			n++
		}
	}
	return fmt.Sprintf("%d of %d in", n, len(items))
}

func (m *Model) pickTank(id string) tea.Cmd {
	hopper, dry := strings.CutPrefix(id, toHopper)
	switch {
	case dry:
		m.openLine(m.hopperLine(hopper))
		return nil
	case m.book.LoadPlan(id) == nil:
		m.openLine(m.loadLine(id, true))
		return nil
	}
	cmd := m.goTo(pageLoad)
	m.subject.tank = id
	m.on[pageLoad] = placeOn{chosen: m.nextItem("")}
	return cmd
}
