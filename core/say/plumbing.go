package say

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

func ran(f *core.Ran) string {
	s := "the valves stood so"
	if f.Seconds.Known {
		s += " for " + measure.SecondsText(f.Seconds.V) + " s"
	}
	s += ", pump " + f.Pump
	if len(f.Drawn)+len(f.Levelled) == 0 {
		return s + ": nothing moved"
	}
	for _, d := range f.Drawn {
		s += fmt.Sprintf("; the pump sent %s gal of %c through the return", d.Volume.Text(), d.From)
	}
	for _, l := range f.Levelled {
		s += fmt.Sprintf("; %s gal ran from %c to %c", l.Volume.Text(), l.From, l.To)
	}
	return s
}

func pushedBack(f *core.PushedBack) string {
	s := "pushed back " + f.Volume.Text() + " gal"
	if f.Hose != "" {
		s += " through the hose " + f.Hose
	}
	if f.To != "" {
		s += " into " + Place(fluid.Place(f.To))
	} else {
		s += " into " + string(f.Into)
	}
	return s + bypass(f.Bypass)
}

// bypass is what went round meanwhile; nothing where it was not reckoned.
func bypass(v core.Maybe[measure.Volume]) string {
	if !v.Known || v.V == 0 {
		return ""
	}
	return ", " + v.V.Text() + " gal through the bypass"
}

func cleaned(f *core.Cleaned) string {
	s := "opened and cleaned the " + f.What
	if f.Text != "" {
		s += ": " + f.Text
	}
	return s
}

func marked(f *core.Marked) string {
	if !f.Volume.Known {
		return fmt.Sprintf("gauge of %c: mark %s is taken off the chart", f.Compartment, f.Mark)
	}
	return fmt.Sprintf("gauge of %c: mark %s stands for %s gal", f.Compartment, f.Mark, f.Volume.V.Text())
}
