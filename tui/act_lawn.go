package tui

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/setup"
	"example.com/tintline/tui/theme"
)

// openGrowth asks how the grass of zones stands now.
func (m *Model) openGrowth(lawn string, zones []string) {
	l := m.book.Lawn(lawn)
	if l == nil {
		return
	}
	on := joined(zones)
	if len(zones) == 0 || len(zones) == len(l.Zones) {
		on = "all of " + lawn
	}
	var choices []string
	for _, g := range label.Growths() {
		choices = append(choices, label.GrowthWords(g))
	}
	hint := "Since another day than today: 6 2026-05-01."
	if len(l.Zones) > 1 && len(zones) != 1 {
		hint += " Of one zone: " + l.Zones[0].Name + " 3."
	}
	m.openLine(textLine{
		prompt: "grass on " + on, choices: choices, extra: hint,
		read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(readGrowth(l, zones, said, m.at)) },
	})
}

// readGrowth reads zones, if any are named, a state of growth by its number or its first letters, and since when.
func readGrowth(l *core.Lawn, zones []string, said string, now time.Time) (core.Fact, error) {
	named, rest := readZones(said, l.ZoneNames())
	if len(named) > 0 {
		zones = named
	}
	words := strings.Fields(strings.ReplaceAll(rest, "_", " "))
	if len(words) == 0 {
		return nil, slip("Nothing is typed.", fmt.Sprintf("Type 1 to %d.", len(label.Growths())))
	}
	growth, used := growthOf(words)
	if growth == "" {
		return nil, slip(fmt.Sprintf("%q is no state of growth.", rest), fmt.Sprintf("Type 1 to %d, or the word.", len(label.Growths())))
	}
	f := &core.GrowthSeen{Lawn: l.LawnName, Zones: zones, Growth: growth, Since: now.Format(time.DateOnly)}
	switch since := strings.Join(words[used:], " "); {
	case since == "" || since == "today":
	default:
		d, err := time.Parse(time.DateOnly, since)
		if err != nil {
			return nil, slip(fmt.Sprintf("%q is no date.", since), "Type it as in "+f.Since+", or leave it out for today.")
		}
		if f.Since = since; d.After(now) {
			return nil, slip(since+" is still to come.", "Type a date that is past, or leave it out for today.")
		}
	}
	return f, nil
}

// growthOf is the state of growth that the first words name, and how many of them do.
func growthOf(words []string) (growth string, used int) {
	if n, err := strconv.Atoi(words[0]); err == nil {
		if n >= 1 && n <= len(label.Growths()) {
			return label.Growths()[n-1], 1
		}
		return "", 0
	}
	for _, g := range label.Growths() {
		for _, called := range []string{label.GrowthWords(g), strings.ReplaceAll(g, "_", " ")} {
			parts := strings.Fields(called)
			n := 0
			for n < len(words) && n < len(parts) && strings.HasPrefix(parts[n], strings.ToLower(words[n])) {
				n++
			}
			if n > 0 && (n == len(parts) || n == len(words)) && n > used {
				growth, used = g, n
			}
		}
	}
	return growth, used
}

// zoneChosen is the zone whose row is chosen on the page of a lawn, empty for another row.
func (m *Model) zoneChosen() string {
	zone, _ := strings.CutPrefix(m.chosen(), rowZone)
	if l := m.book.Lawn(m.subject.lawn); l != nil {
		if _, ok := l.Zone(zone); ok {
			return zone
		}
	}
	return ""
}

// growsKey asks how the zone chosen grows, or all of the lawn.
func (m *Model) growsKey() tea.Cmd {
	var zones []string
	if z := m.zoneChosen(); z != "" {
		zones = []string{z}
	}
	m.openGrowth(m.subject.lawn, zones)
	return nil
}

// moreKey opens what is known of the zone chosen, else of the first one.
func (m *Model) moreKey() tea.Cmd {
	zone := m.zoneChosen()
	if l := m.book.Lawn(m.subject.lawn); zone == "" && l != nil && len(l.Zones) > 0 {
		zone = l.Zones[0].Name
	}
	return m.openForm(setup.ZoneMore, setup.PlaceOf(m.subject.lawn, zone))
}

// cautionKey opens the form of an own note on the zone chosen, or on the lawn.
func (m *Model) cautionKey() tea.Cmd {
	return m.openForm(setup.Caution, setup.PlaceOf(m.subject.lawn, m.zoneChosen()))
}

// rowCaution is the row of an own note, with its place in the book's list.
const rowCaution = "caution/"

// cautionRows are the own notes that hold on a lawn: those about it, and those about every lawn.
func (m *Model) cautionRows(lawn string) []row {
	var out []row
	for i, c := range m.book.Cautions() {
		if c.Lawn != "" && c.Lawn != lawn {
			continue
		}
		for j, s := range m.g.wrap(m.g.clean(setup.CautionScope(c)+": "+c.Says), m.w-12) {
			r := row{line: line{left: []span{m.cell(theme.Strong, "", 5), {theme.Base, s}}}}
			if j == 0 {
				r.id = fmt.Sprint(rowCaution, i)
				r.left[0] = m.cell(theme.Strong, c.Weight, 5)
			}
			out = append(out, r)
		}
	}
	if len(out) == 0 {
		return nil
	}
	return append([]row{blankRow(), sectionRow("own notes")}, out...)
}

// lawnKeys are the keys of the page of a lawn by which something is entered about its grass.
func lawnKeys() []binding {
	onLawn := func(m *Model) bool { return m.book.Lawn(m.subject.lawn) != nil && !m.busy() }
	return []binding{
		opening(pageKey(pageLawn, "w", "grows", "say how the grass of the zone chosen stands, or of all", (*Model).growsKey, onLawn)),
		opening(pageKey(pageLawn, "s", "sites", "what lies beside the zone chosen, its growth and cultivar", (*Model).moreKey, onLawn)),
		opening(pageKey(pageLawn, "j", "own note", "an own note, stricter than label and reference", (*Model).cautionKey, onLawn)),
	}
}
