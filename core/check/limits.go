package check

import (
	"fmt"

	"example.com/tintline/core"
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
		l := Limit{Of: p.ProductName, Ground: GroundLabel, Source: labelSource(p), Says: "wind limit blank: not checked"}
		if p.Label.HasWindMax {
			l.Says = "wind at most " + mph(p.Label.WindMax.MPH()) + " mph"
		}
		out = append(out, l)
	}
	for _, s := range []struct{ name, says string }{
		{core.WindStopMPH, "stop: wind over %g mph"},
		{core.WindAskMPH, "ask: wind over %g mph"},
		{core.WindNoteBelowMPH, "note: wind under %g mph, its direction wanders"},
		{core.RainFreeMinH, "hold: rain sooner than in %g h"},
		{core.WeatherAskMin, "ask: looked more than %g min ago"},
		{core.WeatherOldMin, "not known: looked more than %g min ago"},
	} {
		out = append(out, Limit{Ground: GroundSetting, Source: b.SettingSource(s.name), Says: fmt.Sprintf(s.says, b.Setting(s.name))})
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
