package say

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

func loadPlanned(f *core.LoadPlanned) string {
	if f.Volume == 0 {
		return "no load is planned for " + f.Into + " any more"
	}
	s := fmt.Sprintf("to load into %s: %s gal", f.Into, f.Volume.Text())
	if f.Mix != "" {
		s += " of " + f.Mix
	}
	if f.For != "" {
		s += " for " + f.For
	}
	var parts []string
	for _, p := range f.Parts {
		parts = append(parts, p.Amount.Text()+" "+p.Product)
	}
	if len(parts) > 0 {
		s += ": " + and(parts)
	}
	return s + filledWords(f.Place, f.MeterBefore, f.MeterAfter)
}

// filledWords say where a load is mixed and what the water meter gave.
func filledWords(place string, before, after core.Maybe[measure.Volume]) string {
	s := ""
	if place != "" {
		s += ", at " + place
	}
	switch {
	case before.Known && after.Known:
		s += fmt.Sprintf("; meter %s to %s gal", before.V.Text(), after.V.Text())
	case before.Known:
		s += "; meter before " + before.V.Text() + " gal"
	case after.Known:
		s += "; meter after " + after.V.Text() + " gal"
	}
	return s
}

// jarTested is what a jar came to, or a mark.
func jarTested(f *core.JarTested) string {
	s := and(f.Products)
	switch f.Result {
	default:
		return "jar test of " + s
	case core.JarMixed:
		s = "jar test of " + s + ": mixed"
	case core.JarFailed:
		s = "jar test of " + s + ": failed, " + and(f.Signs)
	case core.JarNotMixing:
		s = "marked as not to be mixed: " + s
	case core.JarMayMix:
		s = "no longer marked as not to be mixed: " + s
	}
	if f.Note != "" {
		s += "; " + f.Note
	}
	return s
}

func ticked(f *core.Ticked) string {
	if f.Undo == "yes" {
		return f.List + ": " + core.ItemWords(f.Item) + " is not done after all"
	}
	s := f.List + ": " + core.ItemWords(f.Item) + " is done"
	if f.Meter.Known {
		s += ", " + f.Meter.V.Text() + " gal"
	}
	if f.Place != "" {
		s += ", " + f.Place
	}
	return s
}
