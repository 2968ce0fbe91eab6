package tui

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

const weatherHint = "6 SW 64: wind mph, from, F; also 45% humidity, 6h until rain, high 88, forecast NAME 6:10, inversion no; calm"

const weatherForm = "Type wind, from, temperature: 6 SW 64; humidity as 45%, rain as 6h, high 88, forecast NAME 6:10, inversion yes or no."

// readWeatherNow reads an observation. A forecast that was logged today stands until another is typed: it has its own hour.
func (m *Model) readWeatherNow(said string) (core.Fact, error) {
	f, err := readWeather(said)
	if err != nil {
		return nil, err
	}
	now, before := f.(*core.Weather), m.book.Weather()
	if before != nil && !now.ForecastHigh.Known && now.ForecastSource == "" && now.ForecastAt == "" {
		now.ForecastHigh, now.ForecastSource, now.ForecastAt = before.ForecastHigh, before.ForecastSource, before.ForecastAt
	}
	return now, nil
}

// readWeather reads wind, direction and temperature; humidity carries a per cent sign and rain an h, the rest a word of its
// own before it.
func readWeather(said string) (core.Fact, error) {
	f := &core.Weather{}
	words := strings.Fields(strings.ReplaceAll(said, ",", " "))
	for len(words) > 0 {
		var n int
		var err error
		switch strings.ToLower(words[0]) {
		case "high":
			n, err = readHigh(f, words)
		case "forecast":
			n, err = readForecast(f, words)
		case "inversion":
			n, err = readInversion(f, words)
		default:
			n, err = 1, weatherWord(f, words[0])
		}
		if err != nil {
			return nil, err
		}
		words = words[n:]
	}
	seen := *f
	seen.ForecastHigh, seen.ForecastSource, seen.ForecastAt = core.Maybe[float64]{}, "", ""
	switch {
	case *f == (core.Weather{}):
		return nil, slip("Nothing is typed.", "Type the wind at least: 6 SW 64.")
	case seen == (core.Weather{}):
		return nil, slip("A forecast alone is no look at the weather.", "Type the wind too: 6 SW 64 high 88.")
	}
	return f, nil
}

// readHigh reads "high 88", which is the high of the day as forecast. It answers how many words it took.
func readHigh(f *core.Weather, words []string) (int, error) {
	if len(words) < 2 {
		return 0, slip("The high of the forecast is missing.", "Type it in F: high 88.")
	}
	figure := strings.TrimSuffix(strings.ToLower(words[1]), "f")
	n, err := strconv.ParseFloat(figure, 64)
	if err != nil || strings.Trim(figure, "+-.0123456789") != "" {
		return 0, slip(fmt.Sprintf("%q is no high of a forecast.", words[1]), "Type it in F: high 88.")
	}
	f.ForecastHigh = core.Known(n)
	return 2, nil
}

// readForecast reads "forecast NAME 6:10": who made it, in one word or several, and at which time of day. Either may be
// left out.
func readForecast(f *core.Weather, words []string) (int, error) {
	n := 1
	for ; n < len(words); n++ {
		w := strings.ToLower(words[n])
		if strings.Contains(w, ":") {
			at, err := time.Parse("15:04", w)
			if err != nil {
				return 0, slip(fmt.Sprintf("%q is no time of day.", words[n]), "Type who made the forecast and when: forecast NAME 6:10.")
			}
			f.ForecastAt = at.Format("15:04")
			n++
			break
		}
		if w == "high" || w == "inversion" || strings.ContainsAny(w[:1], "0123456789") {
			break
		}
		f.ForecastSource = strings.TrimSpace(f.ForecastSource + " " + words[n])
	}
	if n == 1 {
		return 0, slip("Who made the forecast is missing.", "Type it and when: forecast NAME 6:10.")
	}
	return n, nil
}

// readInversion reads "inversion yes": whether signs of one were seen.
func readInversion(f *core.Weather, words []string) (int, error) {
	if len(words) > 1 {
		if w := strings.ToLower(words[1]); w == label.Yes || w == label.No {
			f.Inversion = w
			return 2, nil
		}
	}
	return 0, slip("Whether signs of an inversion were seen is missing.", "Type inversion yes or inversion no.")
}

func weatherWord(f *core.Weather, w string) error {
	lower := strings.ToLower(w)
	figure := strings.TrimRight(lower, "%hfmp")
	n, err := strconv.ParseFloat(figure, 64)
	if strings.Trim(figure, "+-.0123456789") != "" {
		err = strconv.ErrSyntax // "nan" and "inf" are no weather
	}
	unit := lower[len(figure):]
	switch {
	case err == nil && unit == "%":
		f.Humidity = core.Known(n)
	case err == nil && unit == "h":
		f.RainFree = core.Known(n)
	case err == nil && unit == "f", err == nil && unit == "" && f.Wind.Known && !f.Temp.Known:
		f.Temp = core.Known(n)
	case err == nil && (unit == "mph" || unit == "") && !f.Wind.Known:
		wind, err := measure.ReadSpeed(figure, "mph")
		f.Wind = core.Known(wind)
		return err
	case err == nil:
		return slip(fmt.Sprintf("%q is one figure too many.", w), weatherForm)
	case lower == "calm":
		f.WindFrom = lower
		f.Wind = core.Known(measure.MPH(0))
	case lower == "variable":
		f.WindFrom = lower
	case strings.Trim(lower, "nesw") == "" && len(lower) <= 3:
		f.WindFrom = strings.ToUpper(w)
	default:
		return slip(fmt.Sprintf("%q is no figure and no direction.", w), weatherForm)
	}
	return nil
}

// weatherSaid is an observation as it would be typed.
func weatherSaid(w *core.Weather) string {
	var out []string
	if w.Wind.Known {
		out = append(out, strings.TrimSuffix(w.Wind.V.Text(), " mph"))
	}
	if w.WindFrom != "" {
		out = append(out, w.WindFrom)
	}
	for _, f := range []struct {
		v            core.Maybe[float64]
		before, unit string
	}{{w.Temp, "", "f"}, {w.Humidity, "", "%"}, {w.RainFree, "", "h"}, {w.ForecastHigh, "high ", ""}} {
		if f.v.Known {
			out = append(out, f.before+strconv.FormatFloat(f.v.V, 'f', -1, 64)+f.unit)
		}
	}
	if w.ForecastSource != "" || w.ForecastAt != "" {
		out = append(out, strings.Join(strings.Fields("forecast "+w.ForecastSource+" "+w.ForecastAt), " "))
	}
	if w.Inversion != "" {
		out = append(out, "inversion "+w.Inversion)
	}
	return strings.Join(out, " ")
}
