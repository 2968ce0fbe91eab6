package check

import (
	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// CircumstancesOf is what the book knows of a zone and of the day at a moment: that by which the reference decides which of
// its rows hold. What is not known is left open.
func CircumstancesOf(b *core.Book, z core.Zone, at core.Moment) label.Circumstances {
	c := label.Circumstances{Growth: z.Growth, Cultivar: z.Cultivar, TempF: hottest(b, at)}
	if !at.Zero() {
		c.Month = int(at.Time().Month())
	}
	return c
}

// hottest is the higher of the temperature as observed, if that is not too old (setting weather_old_min), and of the
// forecast high of the date, if that is not too old (setting forecast_old_h).
func hottest(b *core.Book, at core.Moment) core.Maybe[float64] {
	var out core.Maybe[float64]
	w := b.Weather()
	if w == nil {
		return out
	}
	take := func(t core.Maybe[float64]) {
		if t.Known && (!out.Known || t.V > out.V) {
			out = t
		}
	}
	if at.MinutesSince(w.At) <= b.Setting(core.WeatherOldMin) {
		take(w.Temp)
	}
	if w.At.Date() == at.Date() {
		take(forecastHigh(b, w, at))
	}
	return out
}
