package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

func tempMax(e label.Entry) measure.Maybe[float64] { return e.TempMax }
func tempMin(e label.Entry) measure.Maybe[float64] { return e.TempMin }

// heat judges the reading and the forecast high against the label entries, then against the settings: labels speak of the
// moment, but a lawn sprayed in the cool of the morning stands the same day's heat.
func (s *situation) heat(w *core.WeatherAt) (Finding, bool) {
	hot, cold := s.ownLimits(false, tempMax), s.ownLimits(true, tempMin)
	high := forecastHigh(s.b, w, s.in.At)
	f := Finding{About: aboutTemperature, Unit: "F", Figured: w.Temp}
	if over := broken(hot, w.Temp, false); len(over) > 0 {
		f.byLabel(Stop, over, "")
		f.Says = fmt.Sprintf("%s F; the label entry of %s allows at most %s%s.", mph(w.Temp.V), f.Product, mph(over[0].v), others(over, ""))
		f.Do = "Wait for a cooler hour, or skip."
		return f, true
	}
	if under := broken(cold, w.Temp, true); len(under) > 0 {
		f.byLabel(Stop, under, "")
		f.Says = fmt.Sprintf("%s F; the label entry of %s asks for at least %s%s.", mph(w.Temp.V), f.Product, mph(under[0].v), others(under, ""))
		f.Do = "Wait until it is warmer, or skip."
		return f, true
	}
	if over := broken(hot, high, false); len(over) > 0 {
		f.byLabel(Ask, over, "")
		f.Figured = high
		f.Says = fmt.Sprintf("The forecast high is %s F%s; the label entry of %s allows at most %s%s.", mph(high.V), forecastBy(&w.Weather), f.Product, mph(over[0].v), others(over, ""))
		f.Do = "Read what the label says of the hours after, or choose a cooler day."
		return f, true
	}
	return s.heatBySetting(f, w, high)
}

// heatBySetting asks about herbicides above the setting, whatever the label entries allow.
func (s *situation) heatBySetting(f Finding, w *core.WeatherAt, high core.Maybe[float64]) (Finding, bool) {
	herbicide := false
	for _, k := range s.reaching("") {
		herbicide = herbicide || isHerbicide(s.b.ProductByKey(k).Label)
	}
	ask, strong := s.b.Setting(core.TempAskF), s.b.Setting(core.TempStrongF)
	f.Figured = w.Temp
	what := fmt.Sprintf("%s F", mph(w.Temp.V))
	if high.Known && (!w.Temp.Known || high.V > w.Temp.V) {
		f.Figured = high
		what = fmt.Sprintf("The forecast high is %s F%s", mph(high.V), forecastBy(&w.Weather))
	}
	if !herbicide || !f.Figured.Known || f.Figured.V <= ask {
		return f, false
	}
	f.Weight, f.Ground, f.Limit, f.Source = Ask, GroundSetting, core.Known(ask), s.b.SettingSource(core.TempAskF)
	f.Says = fmt.Sprintf("%s, over %s: a herbicide injures turf more easily.", what, mph(ask))
	f.Do = "Read what the label says of heat, or choose a cooler day."
	if f.Figured.V >= strong {
		f.Says += fmt.Sprintf(" The usual label sentence advises against it at %s F.", mph(strong))
		f.Source += "; " + s.b.SettingSource(core.TempStrongF)
	}
	return f, true
}

// forecastHigh is the high that was forecast; unknown where the forecast is older than the setting allows. One whose hour
// is not said is taken.
func forecastHigh(b *core.Book, w *core.WeatherAt, at core.Moment) core.Maybe[float64] {
	if age := ForecastAge(w, at); age.Known && age.V > b.Setting(core.ForecastOldH) {
		return core.Maybe[float64]{}
	}
	return w.ForecastHigh
}

// ForecastAge is how many hours ago a forecast was made; unknown where its hour is not said. An hour later than that of
// the observation is one of the day before.
func ForecastAge(w *core.WeatherAt, at core.Moment) core.Maybe[float64] {
	made, ok := minuteOfDay(w.ForecastAt)
	seen, known := minuteOfDay(w.At.Clock())
	if !ok || !known {
		return core.Maybe[float64]{}
	}
	before := (seen - made + 24*60) % (24 * 60)
	return core.Known((float64(before) + at.MinutesSince(w.At)) / 60)
}

// minuteOfDay reads "06:10".
func minuteOfDay(clock string) (int, bool) {
	var h, m int
	if n, err := fmt.Sscanf(clock, "%d:%d", &h, &m); n != 2 || err != nil {
		return 0, false
	}
	return h*60 + m, true
}

// forecastBy is who made a forecast and when, as far as it is said: " (county airport, 06:10)".
func forecastBy(w *core.Weather) string {
	switch {
	case w.ForecastSource == "":
		return " (source not said)"
	case w.ForecastAt == "":
		return " (" + w.ForecastSource + ", hour not said)"
	}
	return " (" + w.ForecastSource + ", " + w.ForecastAt + ")"
}
