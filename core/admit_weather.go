package core

import (
	"fmt"
	"strings"
	"time"
	"unicode/utf8"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// winds are the directions a wind may come from.
var winds = strings.Fields("N NNE NE ENE E ESE SE SSE S SSW SW WSW W WNW NW NNW calm variable")

// longestSource bounds the name of who made a forecast, in letters.
const longestSource = 60

func admitWeather(f *Weather) error {
	if f.Wind.Known && (f.Wind.V < 0 || f.Wind.V > measure.MPH(150)) {
		return refuse("Give 0 to 150 mph.", "The wind is %s.", f.Wind.V.Text())
	}
	if f.WindFrom != "" && !containsText(winds, f.WindFrom) {
		return refuse("Write one of "+strings.Join(winds, " ")+".", "%q is no direction.", f.WindFrom)
	}
	for _, m := range []struct {
		what      string
		unit      string
		v         Maybe[float64]
		low, high float64
	}{
		{"temperature", "degrees Fahrenheit", f.Temp, -60, 140},
		{"relative humidity", "per cent", f.Humidity, 0, 100},
		{"time without rain", "h", f.RainFree, 0, 1000},
		{"high of the forecast", "degrees Fahrenheit", f.ForecastHigh, -60, 140},
	} {
		if m.v.Known && (m.v.V < m.low || m.v.V > m.high) {
			return refuse(fmt.Sprintf("Give %g to %g.", m.low, m.high), "The %s is %g %s.", m.what, m.v.V, m.unit)
		}
	}
	if !f.Wind.Known && f.WindFrom == "" && !f.Temp.Known && !f.Humidity.Known && !f.RainFree.Known && f.Inversion == "" {
		return refuse("Give at least the wind.", "The observation says nothing.")
	}
	return admitForecast(f)
}

func admitForecast(f *Weather) error {
	if n := utf8.RuneCountInString(f.ForecastSource); n > longestSource {
		return refuse(fmt.Sprintf("Give up to %d letters.", longestSource), "The source of the forecast has %d letters.", n)
	}
	if f.ForecastAt != "" {
		if _, err := time.Parse("15:04", f.ForecastAt); err != nil || len(f.ForecastAt) != 5 {
			return refuse("Write it as in 06:10.", "%q is no time of day at which a forecast was made.", f.ForecastAt)
		}
	}
	if f.Inversion != "" && f.Inversion != label.Yes && f.Inversion != label.No {
		return refuse("Write yes or no, or leave it out.", "Signs of an inversion cannot be %q.", f.Inversion)
	}
	return nil
}
