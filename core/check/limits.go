package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// Limit is a limit of the weather that holds now, whether it was reached or not.
type Limit struct {
	Of     string // the product whose label entry has it; empty: a setting
	Says   string
	Ground string
	Source string
}

// WeatherLimits lists what the weather is held against: the label entries of what is lined up, more than traces of
// it, then the settings.
func WeatherLimits(b *core.Book) []Limit {
	var out []Limit
	for _, p := range linedUp(b) {
		out = append(out, ofLabel(p)...)
	}
	for _, s := range []struct{ name, says string }{
		{core.WindStopMPH, "stop: wind over %g mph"},
		{core.WindAskMPH, "ask: wind over %g mph"},
		{core.WindNoteBelowMPH, "note: wind under %g mph, its direction wanders"},
		{core.RainFreeMinH, "ask, or hold: rain sooner than in %g h"},
		{core.TempAskF, "ask: a herbicide over %g F, now or by the forecast"},
		{core.TempStrongF, "the usual label sentence: not at %g F"},
		{core.DeltaTLowC, "note: wet-bulb depression under %g C"},
		{core.DeltaTCarefulC, "note: wet-bulb depression from %g C on"},
		{core.DeltaTHighC, "note: wet-bulb depression over %g C"},
		{core.WeatherAskMin, "ask: looked more than %g min ago"},
		{core.WeatherOldMin, "not known: looked more than %g min ago"},
		{core.ForecastOldH, "not known: a forecast of more than %g h ago"},
	} {
		out = append(out, Limit{Ground: GroundSetting, Source: b.SettingSource(s.name), Says: fmt.Sprintf(s.says, b.Setting(s.name))})
	}
	return out
}

// ofLabel lists the limits of a label entry, and in one line those that are blank.
func ofLabel(p *core.Product) []Limit {
	e := p.Label
	var out []Limit
	say := func(words string) {
		out = append(out, Limit{Of: p.ProductName, Ground: GroundLabel, Source: labelSource(p), Says: words})
	}
	if e.HasWindMax {
		say("wind at most " + mph(e.WindMax.MPH()) + " mph")
	}
	if e.TempMax.Known {
		say("at most " + mph(e.TempMax.V) + " F; a forecast high over it is asked about")
	}
	if e.TempMin.Known {
		say("at least " + mph(e.TempMin.V) + " F")
	}
	if e.RainFree.Known {
		say(mph(e.RainFree.V) + " h without rain")
	}
	if e.NoInversion == label.Yes {
		say("not under an inversion")
	}
	var none, blank []string
	for _, l := range weatherLimits {
		switch {
		case e.NoneOnLabel(l.limit):
			none = append(none, l.what)
		case !l.entered(e):
			blank = append(blank, l.what)
		}
	}
	if len(none) > 0 {
		say("none on the label: " + strings.Join(none, ", "))
	}
	if len(blank) > 0 {
		say("blank, not checked: " + strings.Join(blank, ", "))
	}
	return out
}

// linedUp lists the products in the compartments that feed the pump, each once.
func linedUp(b *core.Book) []*core.Product {
	var out []*core.Product
	seen := map[int32]bool{}
	for _, l := range b.Plumbing().LineUp.Supply {
		c := b.Plumbing().Compartment(l)
		if c == nil {
			continue
		}
		for _, p := range c.Liquid.Holds {
			if !seen[p.Key] && !isTrace(b, c, p.Key) {
				seen[p.Key] = true
				out = append(out, b.ProductByKey(p.Key))
			}
		}
	}
	return out
}
