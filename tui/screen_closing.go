package tui

import (
	"fmt"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/closing"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// closeRow is the row that closes the day.
const closeRow = "close"

// closingPage leads through the end of the day. Each step is an entry of its own; Enter does the first that is not done.
func closingPage() *pageSpec {
	const p = pageClosing
	return &pageSpec{
		page: p, under: pageEvening, key: "k", title: "Close the day", words: "gauges, true-up, meters, what stays overnight",
		show: (*Model).showClosing, pick: (*Model).pickClosing,
		enter: (*Model).enterClosing,
		keys: []binding{
			pageKey(p, "n", "pass over", "leave the step chosen undone", (*Model).passStep, func(m *Model) bool {
				id := m.chosen()
				return id != "" && id != closeRow && m.book.Day().Open
			}),
			opening(pageKey(p, "o", "poured out", "what went out of a tank, and where: b 12 to pad", (*Model).openPoured, func(m *Model) bool { return m.book.Day().Open && !m.busy() })),
			opening(pageKey(p, "i", "meters", "odometer 48213 engine 812 pump 344; the last figures are enough", func(m *Model) tea.Cmd { m.openMeters(); return nil }, func(m *Model) bool { return !m.busy() && m.book.Rig() != nil })),
			pageKey(p, "r", "records", "the records of the day, and what is missing in them", func(m *Model) tea.Cmd { return m.goTo(pageRecords) }, (*Model).everOpened),
			pageKey(p, "s", "signs", "the signs and notices that are owed", func(m *Model) tea.Cmd { return m.goTo(pageNotices) }, (*Model).everOpened),
		},
	}
}

// enterClosing begins with the gauges, if they are what comes first.
func (m *Model) enterClosing() tea.Cmd {
	m.passedOver, m.on[pageClosing] = nil, placeOn{}
	if steps := closing.Steps(m.book); len(steps) > 0 && steps[0].Kind == closing.Gauge && !m.busy() {
		m.openGauges(steps)
	}
	return nil
}

func (m *Model) showClosing() sheet {
	if !m.book.Day().Open {
		return sheet{rows: m.wrapped(theme.Base, "No day is open.")}
	}
	steps, open := closing.Steps(m.book), closing.Open(m.book, core.At(m.at))
	out := sheet{}
	cautioned := false
	for i := range steps {
		s := &steps[i]
		says := s.Says
		if s.More != "" {
			says += "; " + s.More
		}
		r := row{line: line{left: []span{{theme.Base, "  " + m.g.fit(m.g.clean(says), m.w-tableMarks-3)}}}}
		if s.Then != "" && !m.passedOver[s.ID()] {
			r.id, r.line.left[0] = s.ID(), span{theme.Strong, m.g.fit(m.g.clean(says), m.w-tableMarks-1)}
		}
		if s.Kind == closing.Stays && !cautioned {
			cautioned = true
			out.rows = append(out.rows, sectionRow("stays overnight"))
		}
		out.rows = append(out.rows, r)
	}
	if cautioned {
		out.rows = append(out.rows, m.wrapped(theme.Dim, closing.StandingCaution)...)
	}
	if len(open) > 0 {
		out.rows = append(out.rows, sectionRow("does not add up, or is not done"))
		for _, o := range open {
			out.rows = append(out.rows, m.wrapped(theme.Ask, o)...)
		}
	}
	out.rows = append(out.rows, blankRow(), row{id: closeRow, line: text(theme.Strong, "close the day")})
	out.offer, out.small = m.closingOffer(steps, m.chosenAmong(out.rows), len(open))
	return out
}

// closingOffer is what Enter does with the row chosen.
func (m *Model) closingOffer(steps []closing.Step, id string, open int) (offer, small string) {
	if id == closeRow {
		if open > 0 {
			return "close the day all the same, with a reason", "a day that is closed cannot be opened again"
		}
		return "close the day", "a day that is closed cannot be opened again"
	}
	for i := range steps {
		if steps[i].ID() == id {
			return steps[i].Then, "n passes over it"
		}
	}
	return "", ""
}

func (m *Model) passStep() tea.Cmd {
	next := map[string]bool{m.chosen(): true} // made anew: models before this one keep theirs
	for id := range m.passedOver {
		next[id] = true
	}
	m.passedOver = next
	m.on[pageClosing] = placeOn{}
	return nil
}

func (m *Model) pickClosing(id string) tea.Cmd {
	if m.busy() || !m.book.Day().Open {
		return nil
	}
	m.on[pageClosing] = placeOn{} // what comes next is chosen once this is done
	if id == closeRow {
		return m.closeDay()
	}
	steps := closing.Steps(m.book)
	for i := range steps {
		s := &steps[i]
		switch {
		case s.ID() != id:
		case len(s.Log) > 0:
			return m.enter(s.Log...)
		case s.Kind == closing.Gauge:
			m.openGauges(steps[i:])
		case s.Kind == closing.Meters:
			m.openMeters()
		}
	}
	return nil
}

// closeDay asks before it closes, for a reason where something does not add up.
func (m *Model) closeDay() tea.Cmd {
	m.closeLine()
	at := core.At(m.at)
	if len(closing.Open(m.book, at)) == 0 {
		m.put(question{facts: []core.Fact{closing.Close(m.book, at, "", "")}, words: "close the day; it cannot be opened again"})
		return nil
	}
	m.openLine(textLine{
		prompt: "close all the same because", hint: "type it, or its number", choices: []string{"known", "looked at, not found", "seen to tomorrow"},
		read: func(m *Model, said string) ([]core.Fact, error) {
			if blank(said) {
				return nil, slip("Something does not add up, and the close has no reason.", "Say why it is closed all the same.")
			}
			return []core.Fact{closing.Close(m.book, core.At(m.at), strings.TrimSpace(said), "")}, nil
		},
	})
	return nil
}

// openGauges asks for the readings of all compartments that are due, in one line.
func (m *Model) openGauges(steps []closing.Step) {
	var letters []string
	for i := range steps {
		if steps[i].Kind == closing.Gauge && !m.passedOver[steps[i].ID()] {
			letters = append(letters, steps[i].Of)
		}
	}
	m.openLine(textLine{
		prompt: "gauges of " + strings.Join(letters, " ") + " read", tells: true,
		hint: "gallons in that order, as 151 62; - for one that was not read; a mark as mark 3",
		read: func(m *Model, said string) ([]core.Fact, error) { return m.readGauges(letters, said) },
	})
}

// readGauges reads a figure for each letter; "mark 3" is one figure.
func (m *Model) readGauges(letters []string, said string) ([]core.Fact, error) {
	var parts []string
	for _, w := range strings.Fields(strings.ReplaceAll(said, ",", " ")) {
		if n := len(parts); n > 0 && parts[n-1] == "mark" {
			parts[n-1] += " " + w
			continue
		}
		parts = append(parts, w)
	}
	if len(parts) == 0 || len(parts) > len(letters) {
		return nil, slip(fmt.Sprintf("%d readings for %d gauges.", len(parts), len(letters)), "Type one for each of "+strings.Join(letters, ", ")+", or - for one that was not read.")
	}
	var out []core.Fact
	for i, said := range parts {
		if said == "-" {
			continue
		}
		f, err := m.readReading(letters[i][0], said)
		if err != nil {
			return nil, err
		}
		out = append(out, f)
	}
	return out, nil
}

// openMeters asks what the meters say.
func (m *Model) openMeters() {
	hint := "odometer 48213 engine 812.4 pump 344"
	if words := m.meterWords(); words != "" {
		hint = words + "; their last figures are enough"
	}
	m.openLine(textLine{prompt: "meters", hint: hint, tells: true, read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(readMeters(m.book.Meters(), said)) }})
}

func (m *Model) meterWords() string {
	var out []string
	now := m.book.Meters()
	for _, x := range []struct {
		name string
		of   core.Meter
	}{{"odometer", now.Odometer}, {"engine", now.Engine}, {"pump", now.Pump}} {
		if x.of.Last.Known {
			out = append(out, fmt.Sprintf("%s %v", x.name, x.of.Last.V))
		}
	}
	return strings.Join(out, ", ")
}

// readMeters reads figures with their names before them; without names they stand for those that were read before, odometer, engine, pump
// in that order. Whole figures that are shorter than the meter's are its last ones.
func readMeters(now core.Meters, said string) (core.Fact, error) {
	f := &core.Metered{}
	slots := []struct {
		name string
		to   *core.Maybe[float64]
		last core.Meter
	}{{"odometer", &f.Odometer, now.Odometer}, {"engine", &f.EngineHours, now.Engine}, {"pump", &f.PumpHours, now.Pump}}
	at, named := 0, false
	for _, w := range strings.Fields(strings.ReplaceAll(strings.ToLower(said), ",", "")) {
		if w == "changed" {
			f.Changed = "yes"
			continue
		}
		found := false
		for i := range slots {
			if strings.HasPrefix(slots[i].name, w) {
				at, named, found = i, true, true
			}
		}
		if found {
			continue
		}
		v, err := strconv.ParseFloat(w, 64)
		if err != nil {
			return nil, slip(fmt.Sprintf("%q is no figure and no meter.", w), "Type odometer 48213 engine 812.4 pump 344.")
		}
		for !named && at < len(slots) && !slots[at].last.Last.Known && (now != core.Meters{}) {
			at++
		}
		if at >= len(slots) {
			return nil, slip("There are more figures than meters.", "Name them: odometer 48213 engine 812.4 pump 344.")
		}
		*slots[at].to = core.Known(completed(w, v, slots[at].last))
		at, named = at+1, false
	}
	return f, nil
}

// completed puts the first figures of a meter before those typed, if these are fewer.
func completed(typed string, v float64, last core.Meter) float64 {
	whole, _, _ := strings.Cut(typed, ".")
	if !last.Last.Known || v >= last.Last.V {
		return v
	}
	step := 1.0
	for range whole {
		step *= 10
	}
	if step > last.Last.V {
		return v
	}
	full := float64(int64(last.Last.V/step))*step + v
	if full < last.Last.V {
		full += step
	}
	return full
}

// openPoured asks what went out of a tank, and where.
func (m *Model) openPoured() tea.Cmd {
	m.openLine(textLine{
		prompt: "poured out", hint: "a tank, gallons and where it went: b 12 to pad; ride-on 2 to labelled ground", tells: true,
		read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(m.readPoured(said)) },
	})
	return nil
}

func (m *Model) readPoured(said string) (core.Fact, error) {
	what, where, ok := strings.Cut(said, " to ")
	fields := strings.Fields(what)
	if !ok || len(fields) < 2 || blank(where) {
		return nil, slip("It is not said what went out and where.", "Type a tank, gallons and where it went, as in b 12 to pad.")
	}
	tank := strings.Join(fields[:len(fields)-1], " ")
	v, err := measure.ReadVolume(fields[len(fields)-1], "gal")
	if err != nil {
		return nil, err
	}
	from := "applicator/" + tank
	if len(tank) == 1 {
		from = "compartment/" + tank
	}
	return &core.Dumped{From: from, Volume: core.Known(v), To: "waste/" + strings.ReplaceAll(strings.TrimSpace(where), "/", " ")}, nil
}
