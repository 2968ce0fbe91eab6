package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/label"
	"example.com/tintline/core/say"
	"example.com/tintline/tui/theme"
)

// The rows of the page of the weather that log something.
const (
	rowLook = "look"
	rowSame = "same"
	rowHold = "hold"

	rowLimit = "limit/" // with its place in the list
)

// weatherPage shows what was looked at today, what it is held against, and whether the day waits.
func weatherPage() *pageSpec {
	const p = pageWeather
	open := func(m *Model) bool { return m.book.Day().Open && !m.busy() }
	run := func(id string) func(m *Model) tea.Cmd { return func(m *Model) tea.Cmd { return m.pickWeather(id) } }
	return &pageSpec{
		page: p, key: "w", title: "Weather", words: "looked today, its limits, on hold for wind or rain",
		enter: func(m *Model) tea.Cmd { m.on[p] = placeOn{}; return nil },
		show:  (*Model).showWeather, pick: (*Model).pickWeather,
		keys: []binding{
			opening(pageKey(p, "i", "look", "log what the weather is now", run(rowLook), open)),
			pageKey(p, "j", "same", "looked again, it is unchanged", run(rowSame), func(m *Model) bool { return open(m) && m.book.Weather() != nil }),
			opening(pageKey(p, "w", "hold", "put the day on hold, for wind or rain", run(rowHold), func(m *Model) bool { return open(m) && m.book.Day().Hold == nil })),
			pageKey(p, "w", "go on", "on hold: go on with the day", run(rowHold), func(m *Model) bool { return open(m) && m.book.Day().Hold != nil }),
		},
	}
}

func (m *Model) showWeather() sheet {
	d := m.book.Day()
	s := sheet{about: append([]line{m.weather(m.w)}, m.airLines()...)}
	if d.Hold != nil {
		s.about = append(s.about, text(theme.Stop, fmt.Sprintf(" ON HOLD for %s since %s ", m.g.clean(d.Hold.Cause), d.Hold.Since.Clock())))
	}
	if !d.Open {
		s.about = append(s.about, text(theme.Base, " no day is open: the weather is logged once it is"))
	} else {
		s.rows = m.weatherActs()
	}
	s.rows = append(s.rows, m.lookedRows()...)
	s.rows = append(s.rows, m.limitRows()...)
	s.offer, s.small = m.weatherOffer(m.chosenAmong(s.rows))
	return s
}

// airLines are what else is known of the air: the forecast with who made it and how old it is, signs of an inversion, and
// the wet-bulb depression.
func (m *Model) airLines() []line {
	w := m.book.Weather()
	if w == nil {
		return nil
	}
	var parts []string
	if w.ForecastHigh.Known || w.ForecastSource != "" || w.ForecastAt != "" {
		words := say.Forecast(&w.Weather)
		if age := check.ForecastAge(w, core.At(m.at)); age.Known {
			words += ", " + wholeWords(age.V) + " h old"
		}
		parts = append(parts, words)
	}
	switch w.Inversion {
	case label.Yes:
		parts = append(parts, "signs of an inversion")
	case label.No:
		parts = append(parts, "no signs of an inversion")
	}
	if d := check.DeltaT(&w.Weather); d.Known {
		parts = append(parts, fmt.Sprintf("wet-bulb depression %.1f C", d.V))
	}
	if len(parts) == 0 {
		return nil
	}
	return m.told(theme.Base, strings.Join(parts, "; "))
}

// weatherActs are what can be logged.
func (m *Model) weatherActs() []row {
	act := func(id, key, words string) row {
		return row{id: id, line: line{left: []span{{theme.Key, key}, {theme.Base, "  " + words}}}}
	}
	out := []row{act(rowLook, "i", "look again and log it")}
	if m.book.Weather() != nil {
		out = append(out, act(rowSame, "j", "looked again, it is unchanged"))
	}
	if m.book.Day().Hold != nil {
		return append(out, act(rowHold, "w", "go on with the day"))
	}
	return append(out, act(rowHold, "w", "put the day on hold"))
}

// lookedRows are the observations since the last close, newest first.
func (m *Model) lookedRows() []row {
	out := []row{blankRow(), sectionRow("looked")}
	all := m.book.Written()
	for i := len(all) - 1; i >= 0; i-- {
		f, ok := all[i].Stands.(*core.Weather)
		if !ok {
			continue
		}
		out = append(out, row{id: fmt.Sprint(all[i].Seq), now: true, line: line{left: []span{
			m.cell(theme.Dim, all[i].At.Clock(), 5), {theme.Base, m.g.clean(strings.TrimPrefix(say.Fact(f), "weather: "))},
		}}})
	}
	if len(out) == 2 {
		out = append(out, row{line: text(theme.Base, "not looked at yet")})
	}
	return out
}

// limitRows are what the weather is held against.
func (m *Model) limitRows() []row {
	of := min(22, m.w/4)
	out := []row{blankRow(), sectionRow("held against, with what is lined up")}
	for i, l := range check.WeatherLimits(m.book) {
		name := l.Of
		if name == "" {
			name = groundWords(l.Ground)
		}
		out = append(out, row{id: fmt.Sprint(rowLimit, i), line: line{left: []span{
			m.cell(theme.Strong, name, of), {theme.Base, m.g.clean(l.Says)},
		}}})
	}
	return out
}

func (m *Model) weatherOffer(id string) (offer, small string) {
	for i, l := range check.WeatherLimits(m.book) {
		if id == fmt.Sprint(rowLimit, i) {
			return "say where it comes from", l.Source
		}
	}
	switch {
	case m.busy() || id == "":
		return "", ""
	case id == rowLook:
		return "log what the weather is now", "wind, from, temperature; also humidity, rain, forecast, inversion"
	case id == rowSame:
		return "looked again: unchanged", "it is logged anew, with the time of now"
	case id == rowHold && m.book.Day().Hold == nil:
		return "put the day on hold", "asks what for"
	case id == rowHold:
		return "go on with the day", sentence(m.got.next.Why)
	}
	return "show entry " + id + " whole", ""
}

func (m *Model) pickWeather(id string) tea.Cmd {
	switch id {
	case rowLook:
		m.openWeather()
	case rowSame:
		w := m.book.Weather().Weather
		return m.enter(&w)
	case rowHold:
		return m.holdOrGoOn()
	default:
		for i, l := range check.WeatherLimits(m.book) {
			if id == fmt.Sprint(rowLimit, i) {
				m.status = status{kind: saysChosen, what: l.Says + ": " + l.Source}
			}
		}
		if w, ok := m.written(entryOf(id)); ok {
			m.looked = looked{logged{w.Entry, w.StruckBy}}
			return m.goTo(pageEntry)
		}
	}
	return nil
}
