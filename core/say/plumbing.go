package say

import (
	"fmt"

	"example.com/tintline/core"
)

func ran(f *core.Ran) string {
	s := "the valves stood so"
	if f.Seconds.Known {
		s += " for " + number(f.Seconds.V) + " s"
	}
	s += ", pump " + f.Pump
	for _, d := range f.Drawn {
		s += fmt.Sprintf("; %s gal of %c went round", d.Volume.Text(), d.From)
	}
	for _, l := range f.Levelled {
		s += fmt.Sprintf("; %s gal ran from %c to %c", l.Volume.Text(), l.From, l.To)
	}
	return s
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
