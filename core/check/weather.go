package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// weatherRule: while the day is on hold that is a stop, and all that is said of the weather. No observation, or an old one, is an ask; wind over the product's limit, or over the lowest of
// label and setting, is a stop; wind that swings or drops is asked or noted.
func weatherRule(s *situation) []Finding {
	if h := s.b.Day().Hold; h != nil {
		return []Finding{held(h)}
	}
	w := s.b.Weather()
	if w == nil {
		return []Finding{{
			Weight: Ask, Part: PartDay, Ground: GroundPractice, Source: "record of wind at each application", Unit: "min",
			Says: "No weather is logged.", Do: "Look at the wind and log it.",
		}}
	}
	var out []Finding
	if f, found := s.oldWeather(w); found {
		out = append(out, f)
	}
	if !w.Wind.Known {
		return append(out, Finding{
			Weight: Ask, Part: PartDay, Ground: GroundPractice, Source: "record of wind at each application", Unit: "mph",
			Says: "The wind is not known.", Do: "Look at the wind and log it.",
		})
	}
	if f, found := s.wind(w.Wind.V); found {
		out = append(out, f)
	}
	return out
}

func (s *situation) oldWeather(w *core.WeatherAt) (Finding, bool) {
	age := s.in.At.MinutesSince(w.At)
	ask, old := s.b.Setting(core.WeatherAskMin), s.b.Setting(core.WeatherOldMin)
	f := Finding{
		Weight: Ask, Part: PartDay, Figured: core.Known(age), Unit: "min", Ground: GroundSetting,
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

func (s *situation) wind(w measure.Speed) (Finding, bool) {
	f := Finding{Part: PartDay, Figured: core.Known(w.MPH()), Unit: "mph", Ground: GroundSetting}
	prod := s.lowestWindLimit()
	stop := s.b.Setting(core.WindStopMPH)
	if prod != nil && prod.Label.WindMax.MPH() <= stop && w > prod.Label.WindMax {
		f.Weight, f.Ground, f.Source = Stop, GroundLabel, labelSource(prod)
		f.Product, f.Active = prod.ProductName, prod.Label.Words()
		f.Limit = core.Known(prod.Label.WindMax.MPH())
		f.Says = fmt.Sprintf("Wind %s mph; the label entry of %s allows %s.", mph(w.MPH()), prod.ProductName, mph(prod.Label.WindMax.MPH()))
		f.Do = "Wait for the wind to drop, or skip."
		return f, true
	}
	for _, step := range []struct {
		setting string
		weight  Weight
		hit     bool
		says    string
		do      string
	}{
		{core.WindStopMPH, Stop, w.MPH() > stop, "Wind %s mph, over %s.", "Wait for the wind to drop, or skip."},
		{core.WindAskMPH, Ask, w.MPH() > s.b.Setting(core.WindAskMPH), "Wind %s mph, over %s.", "Look what lies downwind before you go on."},
		{core.WindNoteBelowMPH, Note, w.MPH() < s.b.Setting(core.WindNoteBelowMPH), "Wind %s mph, under %s: its direction wanders, and the air may be inverted.", "Look at smoke or dust: does it hang or move in a sheet?"},
	} {
		if step.hit {
			limit := s.b.Setting(step.setting)
			f.Weight, f.Limit, f.Source = step.weight, core.Known(limit), s.b.SettingSource(step.setting)
			f.Says, f.Do = fmt.Sprintf(step.says, mph(w.MPH()), mph(limit)), step.do
			return f, true
		}
	}
	return f, false
}

func mph(v float64) string { return fmt.Sprintf("%.3g", v) }

// lowestWindLimit is the product, of those that would leave the nozzle or are meant to, whose label entry
// has the lowest wind limit.
func (s *situation) lowestWindLimit() *core.Product {
	var low *core.Product
	for _, k := range append(s.dosed(), s.dryKeys()...) {
		p := s.b.ProductByKey(k)
		if p.Label.HasWindMax && (low == nil || p.Label.WindMax < low.Label.WindMax) {
			low = p
		}
	}
	return low
}
