package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/tui/theme"
)

// visit is the lawn that all of the screen is about. Where there is little room, what the eye can do without goes
// first: the rate, the zones where none is done yet, the area, the gaps.
func (m *Model) visit(w int) line {
	l := m.book.Lawn(m.got.lawn)
	if l == nil {
		return text(theme.Strong, m.noVisit())
	}
	where := " to "
	if m.got.visiting {
		where = " at "
	}
	plan := m.got.report.Plan
	area, gallons := l.Area().Text()+" sq ft", ""
	if plan.Area > 0 {
		area, gallons = plan.Area.Text()+" sq ft", lays(plan)
	}
	rate := ""
	if a := m.applicator(); a != nil && plan.Area > 0 {
		rate = m.g.clean(a.Name) + " " + m.rate(a)
	}
	zones := m.zoneWords(l)
	hazards := ""
	if h := hazardWords(l.Zones); h != "" {
		hazards = "! " + m.g.clean(h)
	}
	grass := m.g.clean(grassWords(l.Zones))
	part := len(m.got.left) > 0 && len(m.got.left) < len(l.Zones)
	sure := "" // zones that must be named: some are done, others are not
	if part {
		sure = zones
	}
	name := m.g.clean(l.LawnName)
	for _, f := range []struct {
		gap                              string
		zones, hazards, area, rate, name string
		grass                            string
	}{
		{"   ", zones, hazards, area, rate, name, grass},
		{"   ", zones, hazards, area, "", name, grass},
		{"   ", sure, hazards, area, "", name, grass},
		{"  ", sure, hazards, area, "", name, grass},
		{"  ", sure, hazards, "", "", name, grass},
		{"  ", sure, "", "", "", name, grass},
	} {
		left := f.name + gapped(f.gap, f.grass)
		about := gapped(f.gap, f.zones) + gapped(f.gap, f.hazards)
		right := gapped("  ", f.area) + gapped("  ", f.rate)
		n := len(where) + cells(left) + cells(about) + cells(right) + len("  ") + cells(gallons) + 1
		if n <= w {
			return line{
				left:  []span{{theme.Dim, where}, {theme.Strong, left}, {theme.Base, about}},
				right: []span{{theme.Base, right}, {theme.Strong, gapped("  ", gallons) + " "}},
			}
		}
	}
	return m.tightVisit(w, where, name, grass, sure, gallons)
}

// tightVisit shares what room there is between the lawn's name and its grass.
func (m *Model) tightVisit(w int, where, name, grass, zones, gallons string) line {
	right := gapped("  ", gallons) + " "
	room := w - len(where) - cells(right)
	const leastGrass = 9
	forName := min(cells(name), max(room*3/5, room-2-cells(grass)))
	about := gapped("  ", zones)
	if zones == "" || cells(about) > room-forName {
		about = ""
		if room-forName >= leastGrass+2 {
			about = gapped("  ", grass)
		}
	}
	left := m.g.fit(name, forName)
	return line{
		left:  []span{{theme.Dim, where}, {theme.Strong, left}, {theme.Base, m.g.fit(about, room-cells(left))}},
		right: []span{{theme.Strong, right}},
	}
}

// noVisit says why there is no lawn to be about.
func (m *Model) noVisit() string {
	d := m.book.Day()
	switch {
	case d.Open:
		return " all visits are done"
	case d.Date != "":
		return " last day " + d.Date + ", " + m.g.clean(d.Operator)
	}
	return fmt.Sprintf(" no day yet; %d lawns in the book", len(m.book.Lawns()))
}

// zoneWords names the zones that are left, else all.
func (m *Model) zoneWords(l *core.Lawn) string {
	zones := l.ZoneNames()
	if len(m.got.left) > 0 {
		zones = m.got.left
	}
	return m.g.clean(joined(zones))
}

// weather is what was seen of it, and how long ago.
func (m *Model) weather(w int) line {
	seen := m.book.Weather()
	if seen == nil {
		return line{left: []span{{theme.Dim, " weather "}, {theme.Strong, "not looked at yet today"}}}
	}
	age := ageWords(seen.At, m.at)
	looked := []string{"looked " + seen.At.Clock() + ", " + age, age}
	for _, f := range []struct {
		label, gap, humid string
		looked            int
	}{{" weather ", "   ", "humidity ", 0}, {" weather ", "  ", "humidity ", 0}, {" weather ", "  ", "", 0}, {" ", "  ", "", 0}, {" ", "  ", "", 1}} {
		items := weatherItems(seen, f.humid)
		right := "  " + looked[f.looked] + " "
		room := w - cells(f.label) - cells(right)
		for f.looked > 0 && len(items) > 1 && cells(strings.Join(items, f.gap)) > room {
			items = items[:len(items)-1] // the wind stays
		}
		if words := strings.Join(items, f.gap); cells(words) <= room || f.looked > 0 {
			return line{left: []span{{theme.Dim, f.label}, {theme.Strong, words}}, right: []span{{theme.Base, right}}}
		}
	}
	return line{}
}

// weatherItems are wind, temperature, humidity, rain and the high of the forecast, as far as they are known.
func weatherItems(w *core.WeatherAt, humid string) []string {
	var out []string
	switch {
	case w.Wind.Known:
		out = append(out, strings.TrimSpace("wind "+w.Wind.V.Text()+" "+w.WindFrom))
	case w.WindFrom != "":
		out = append(out, "wind from "+w.WindFrom)
	}
	after := "%"
	if humid == "" {
		after = "% humid"
	}
	for _, f := range []struct {
		v            core.Maybe[float64]
		before, unit string
	}{{w.Temp, "", " F"}, {w.Humidity, humid, after}, {w.RainFree, "rain in ", " h"}, {w.ForecastHigh, "high ", " F"}} {
		if f.v.Known {
			out = append(out, f.before+wholeWords(f.v.V)+f.unit)
		}
	}
	if w.Inversion == label.Yes {
		out = append(out, "inversion")
	}
	return out
}

// unchecked names what the verdict does not rest on.
func (m *Model) unchecked(w, rows int) []line {
	words := "nothing was asked: there is no lawn ahead"
	switch {
	case m.got.visiting && len(m.got.left) == 0:
		words = "nothing more to ask here: every zone is logged"
	case m.got.lawn != "":
		words = "what the label entries do not say; the label in your hand decides"
	}
	const label = " not checked "
	room := w - len(label) - 1
	if list := m.got.report.NotChecked; len(list) > 0 {
		words = m.g.clean(strings.Join(list, "; "))
		if len(m.g.wrap(words, room)) > rows { // what, without why
			short := make([]string, len(list))
			for i, s := range list {
				short[i], _, _ = strings.Cut(s, " (")
			}
			words = m.g.clean(strings.Join(short, "; "))
		}
	}
	wrapped := m.g.wrap(words, room)
	if len(wrapped) > rows {
		wrapped[rows-1] = m.g.fitWords(strings.Join(wrapped[rows-1:], " "), room)
		wrapped = wrapped[:rows]
	}
	var out []line
	for i, s := range wrapped {
		head := label
		if i > 0 {
			head = strings.Repeat(" ", len(label))
		}
		out = append(out, line{left: []span{{theme.Dim, head}, {theme.Base, s}}})
	}
	return out
}
