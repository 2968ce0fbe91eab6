package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

func rainFree(e label.Entry) measure.Maybe[float64] { return e.RainFree }

// noInversion is 1 where the label entry forbids spraying under an inversion.
func noInversion(e label.Entry) measure.Maybe[float64] {
	return measure.Maybe[float64]{V: 1, Known: e.NoInversion == label.Yes}
}

const inversionSigns = "extension teaching on inversions: clear night, hardly any wind, dew or ground fog, dust or smoke that hangs"

// inversion: signs that were seen are a stop where a label entry forbids it, else an ask. It is a matter of drops.
func (s *situation) inversion(w *core.WeatherAt) (Finding, bool) {
	if !s.wet || w.Inversion != label.Yes {
		return Finding{}, false
	}
	f := Finding{
		Weight: Ask, About: aboutInversion, Ground: GroundExtension, Source: inversionSigns,
		Says: "Signs of an inversion were seen: fine drops hang in the air and travel.",
		Do:   "Wait until smoke rises and the wind is steady, or skip.",
	}
	if forbid := s.ownLimits(false, noInversion); len(forbid) > 0 {
		f.byLabel(Stop, forbid, "")
		f.Limit = core.Maybe[float64]{}
		f.Says = fmt.Sprintf("Signs of an inversion were seen; the label entry of %s forbids spraying under one.", names(forbid))
	}
	return f, true
}

func names(list []ownLimit) string {
	var out []string
	for _, l := range list {
		out = append(out, l.of.ProductName)
	}
	return strings.Join(out, " and ")
}

// rain: sooner than a label entry's hours is a stop; sooner than the setting an ask, where liquid is laid.
func (s *situation) rain(w *core.WeatherAt) (Finding, bool) {
	f := Finding{About: aboutRain, Unit: "h", Figured: w.RainFree, Do: "Wait until the rain is through, or skip."}
	if short := broken(s.ownLimits(true, rainFree), w.RainFree, true); len(short) > 0 {
		f.byLabel(Stop, short, "")
		f.Says = fmt.Sprintf("Rain in %s h; the label entry of %s asks for %s h without%s.", mph(w.RainFree.V), f.Product, mph(short[0].v), others(short, ""))
		return f, true
	}
	least := s.b.Setting(core.RainFreeMinH)
	if !s.wet || !w.RainFree.Known || w.RainFree.V >= least {
		return f, false
	}
	f.Weight, f.Ground, f.Limit, f.Source = Ask, GroundSetting, core.Known(least), s.b.SettingSource(core.RainFreeMinH)
	f.Says = fmt.Sprintf("Rain in %s h, sooner than %s h.", mph(w.RainFree.V), mph(least))
	return f, true
}

// drying is a note on the wet-bulb depression: the guide is made for booms with finer drops than a hose gun's.
func (s *situation) drying(w *core.WeatherAt) (Finding, bool) {
	d := DeltaT(&w.Weather)
	if !s.wet || !d.Known {
		return Finding{}, false
	}
	f := Finding{Weight: Note, About: aboutDrying, Unit: "C", Figured: d, Ground: GroundSetting}
	var setting string
	switch {
	case d.V < s.b.Setting(core.DeltaTLowC):
		setting = core.DeltaTLowC
		f.Says = "below %s: drops live long, as under an inversion."
		f.Do = "Look at smoke or dust, and keep the drops coarse."
	case d.V > s.b.Setting(core.DeltaTHighC):
		setting = core.DeltaTHighC
		f.Says = "above %s: drops dry before they are taken up; the guide for booms advises against spraying."
		f.Do = "Keep the drops coarse, or wait for damper air."
	case d.V >= s.b.Setting(core.DeltaTCarefulC):
		setting = core.DeltaTCarefulC
		f.Says = "from %s on drops dry fast."
		f.Do = "Keep the drops coarse."
	default:
		return f, false
	}
	limit := s.b.Setting(setting)
	f.Limit, f.Source = core.Known(limit), s.b.SettingSource(setting)
	f.Says = fmt.Sprintf("Wet-bulb depression %.1f C, ", d.V) + fmt.Sprintf(f.Says, mph(limit))
	return f, true
}

// notLookedAt is one ask for all that a limit needs and nobody looked at.
func (s *situation) notLookedAt(w *core.WeatherAt) (Finding, bool) {
	f := Finding{Weight: Ask, About: aboutLook, Cure: ActWeather, Ground: GroundLabel}
	var look, why []string
	var has wants
	miss := func(what string, known bool, limits []ownLimit, words string) {
		if known || len(limits) == 0 {
			return
		}
		look = append(look, what)
		if strings.Contains(words, "%") {
			words = fmt.Sprintf(words, mph(limits[0].v))
		}
		has.add(limits[0].of.ProductName, words)
		if f.Source == "" {
			f.Source = labelSource(limits[0].of)
		}
	}
	if !w.Wind.Known {
		look = append(look, "the wind")
		f.Ground, f.Source, f.Unit = GroundPractice, windRecord, "mph"
	}
	hot, cold := s.ownLimits(false, tempMax), s.ownLimits(true, tempMin)
	miss("the temperature", w.Temp.Known, hot, "a limit of %s F")
	if len(hot) == 0 {
		miss("the temperature", w.Temp.Known, cold, "a limit of %s F")
	}
	miss("the forecast high", forecastHigh(s.b, w, s.in.At).Known, hot, "a limit of %s F")
	if age := ForecastAge(w, s.in.At); w.ForecastHigh.Known && !forecastHigh(s.b, w, s.in.At).Known && len(hot) > 0 {
		why = append(why, fmt.Sprintf("the last forecast is %.0f h old", age.V))
	}
	miss("the hours to rain", w.RainFree.Known, s.ownLimits(true, rainFree), "%s h without rain")
	if s.wet && w.Wind.Known && w.Wind.V.MPH() < s.b.Setting(core.WindNoteBelowMPH) {
		miss("signs of an inversion", w.Inversion != "", s.ownLimits(false, noInversion), "a ban under an inversion")
	}
	if len(look) == 0 {
		return f, false
	}
	f.Do = "Look at " + list(look) + " and log " + them(look) + "."
	f.Says = unseen(w, look) + because(append(has.sentences(), why...))
	return f, true
}

// unseen is what was not looked at, as a sentence without its stop.
func unseen(w *core.WeatherAt, look []string) string {
	switch {
	case w.Weather == (core.Weather{}):
		return "No weather is logged"
	case len(look) == 1 && look[0] == "the wind":
		return "The wind is not known"
	}
	return "Not looked at: " + list(look)
}

// wants are limits by the product whose label entry has them.
type wants []struct {
	product string
	limits  []string
}

func (w *wants) add(product, limit string) {
	for i := range *w {
		one := &(*w)[i]
		if one.product != product {
			continue
		}
		if !hasText(one.limits, limit) {
			one.limits = append(one.limits, limit)
		}
		return
	}
	*w = append(*w, struct {
		product string
		limits  []string
	}{product, []string{limit}})
}

func (w wants) sentences() []string {
	var out []string
	for _, one := range w {
		out = append(out, fmt.Sprintf("the label entry of %s has %s", one.product, list(one.limits)))
	}
	return out
}

// because joins grounds to the sentence before them.
func because(why []string) string {
	if len(why) == 0 {
		return "."
	}
	return "; " + strings.Join(why, "; ") + "."
}

func them(list []string) string {
	if len(list) == 1 && list[0] != "the hours to rain" && list[0] != "signs of an inversion" {
		return "it"
	}
	return "them"
}

// list is "a, b and c".
func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
