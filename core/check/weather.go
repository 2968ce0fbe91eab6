package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// What a finding of the weather is about: one reason opens one of them.
const (
	aboutLook        = "look" // what was not looked at
	aboutAge         = "age"
	aboutWind        = "wind"
	aboutTemperature = "temperature"
	aboutInversion   = "inversion"
	aboutRain        = "rain"
	aboutDrying      = "drying"
)

const windRecord = "record of wind at each application"

// weatherRule: while the day is on hold that is a stop, and all that is said of the weather. Else one finding for each
// thing that is looked at, the strictest of label entries and settings deciding; what a limit needs and nobody looked at is
// one ask.
func weatherRule(s *situation) []Finding {
	if h := s.b.Day().Hold; h != nil {
		return []Finding{held(h)}
	}
	w := s.b.Weather()
	if w == nil {
		w = &core.WeatherAt{At: s.in.At}
	}
	var out []Finding
	add := func(f Finding, found bool) {
		if found {
			f.Part = PartDay
			out = append(out, f)
		}
	}
	old, isOld := s.oldWeather(w)
	add(old, isOld)
	add(s.wind(w))
	add(s.heat(w))
	add(s.inversion(w))
	add(s.rain(w))
	add(s.drying(w))
	if !isOld || !w.Wind.Known { // an old one is looked at again anyhow
		add(s.notLookedAt(w))
	}
	return out
}

func (s *situation) oldWeather(w *core.WeatherAt) (Finding, bool) {
	age := s.in.At.MinutesSince(w.At)
	ask, old := s.b.Setting(core.WeatherAskMin), s.b.Setting(core.WeatherOldMin)
	f := Finding{
		Weight: Ask, About: aboutAge, Cure: ActWeather, Figured: core.Known(age), Unit: "min", Ground: GroundSetting,
		Limit: core.Known(ask), Source: s.b.SettingSource(core.WeatherAskMin), Do: "Look again and log it.",
	}
	switch {
	case age < 0:
		f.Says = "The last observation is later than the clock."
		f.Do = "Set the clock right, or look again and log it."
	case age > old:
		f.Limit, f.Source = core.Known(old), s.b.SettingSource(core.WeatherOldMin)
		f.Says = fmt.Sprintf("The last observation is %.0f min old: the weather is not known.", age)
	case age > ask:
		f.Says = fmt.Sprintf("The last observation is %.0f min old.", age)
	default:
		return f, false
	}
	return f, true
}

func windMax(e label.Entry) measure.Maybe[float64] {
	return measure.Maybe[float64]{V: e.WindMax.MPH(), Known: e.HasWindMax}
}

func (s *situation) wind(seen *core.WeatherAt) (Finding, bool) {
	if !seen.Wind.Known {
		return Finding{}, false
	}
	w := seen.Wind.V.MPH()
	f := Finding{About: aboutWind, Figured: core.Known(w), Unit: "mph", Ground: GroundSetting}
	over := broken(s.ownLimits(false, windMax), f.Figured, false)
	if len(over) > 0 && over[0].v <= s.b.Setting(core.WindStopMPH) {
		f.byLabel(Stop, over, "")
		f.Says = fmt.Sprintf("Wind %s mph; the label entry of %s allows %s%s.", mph(w), over[0].of.ProductName, mph(over[0].v), others(over, ""))
		f.Do = "Wait for the wind to drop, or skip."
		return f, true
	}
	low, look := s.lowWind(&seen.Weather)
	for _, step := range []struct {
		setting string
		weight  Weight
		hit     bool
		says    string
		do      string
	}{
		{core.WindStopMPH, Stop, w > s.b.Setting(core.WindStopMPH), "Wind %s mph, over %s.", "Wait for the wind to drop, or skip."},
		{core.WindAskMPH, Ask, w > s.b.Setting(core.WindAskMPH), "Wind %s mph, over %s.", "Look what lies downwind before you go on."},
		{core.WindNoteBelowMPH, Note, w < s.b.Setting(core.WindNoteBelowMPH), "Wind %s mph, under %s: " + low, look},
	} {
		if step.hit {
			limit := s.b.Setting(step.setting)
			f.Weight, f.Limit, f.Source = step.weight, core.Known(limit), s.b.SettingSource(step.setting)
			f.Says, f.Do = fmt.Sprintf(step.says, mph(w), mph(limit)), step.do
			return f, true
		}
	}
	return f, false
}

// lowWind is what is said of hardly any wind, by what was seen of an inversion.
func (s *situation) lowWind(w *core.Weather) (says, do string) {
	switch w.Inversion {
	case label.No:
		return "its direction wanders.", "Look where it turns while you spray; no signs of an inversion were seen."
	case label.Yes:
		return "its direction wanders, and signs of an inversion were seen.", "Wait until the air moves."
	}
	return "its direction wanders, and the air may be inverted.", "Look at smoke or dust: does it hang or move in a sheet?"
}

func mph(v float64) string { return fmt.Sprintf("%.3g", v) }

// byLabel makes a finding one of the strictest of the limits that are broken.
func (f *Finding) byLabel(weight Weight, over []ownLimit, unit string) {
	p := over[0].of
	f.Weight, f.Ground, f.Source = weight, GroundLabel, labelSource(p)
	f.Product, f.Active = p.ProductName, p.Label.Words()
	f.Limit = core.Known(over[0].v)
	if unit != "" {
		f.Unit = unit
	}
}

// others names the products whose limits are broken too: ", that of Y 12".
func others(over []ownLimit, unit string) string {
	var out []string
	for _, o := range over[1:] {
		out = append(out, fmt.Sprintf(", that of %s %s%s", o.of.ProductName, mph(o.v), unit))
	}
	return strings.Join(out, "")
}
