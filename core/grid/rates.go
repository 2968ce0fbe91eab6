package grid

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// RatesBeside sets the rates of the reference for each active of a product beside those that the label entry lays of it.
func RatesBeside(p *core.Product) []Told {
	var out []Told
	e := p.Label
	low := core.Maybe[measure.Rate]{V: e.RateLow, Known: e.HasRateLow}
	for _, a := range e.Actives {
		name := core.ActiveName(a.Name)
		out = append(out, Told{name, "this label entry lays " + laysWords(e.ActiveRate(a, low), e.ActiveRate(a, e.MostAnywhere()))})
		rows := label.RatesOf(name)
		for _, r := range rows {
			out = append(out, Told{"", RateRowWords(r)})
		}
		if len(rows) == 0 {
			out = append(out, Told{"", "the reference has no rate for it"})
		}
	}
	return out
}

func laysWords(low, high core.Maybe[measure.Rate]) string {
	switch {
	case low.Known && high.Known && low.V != high.V:
		return strings.TrimSuffix(perAcre(low.V), " lb per acre") + " to " + perAcre(high.V) + " of it"
	case high.Known:
		return "up to " + perAcre(high.V) + " of it"
	case low.Known:
		return "from " + perAcre(low.V) + " of it on"
	}
	return "an unknown amount of it: its content or the rates are blank"
}

// RateRowWords is a row of the reference on rates in one sentence, with its source.
func RateRowWords(r label.RateRow) string {
	words := r.Active
	if r.Formulation != "" {
		words += ", " + r.Formulation
	}
	var says []string
	add := func(s string) {
		if s != "" {
			says = append(says, s)
		}
	}
	add(span(r.RateLow, r.RateHigh, r.RateUnit))
	if r.PoundsLow.Known || r.PoundsHigh.Known {
		add(span(r.PoundsLow, r.PoundsHigh, "lb of it per acre"))
	}
	for _, f := range []struct {
		v             measure.Maybe[float64]
		before, after string
	}{
		{r.MostOnce, "at most ", " lb of it per acre at once"},
		{r.MostYear, "at most ", " lb of it per acre a year"},
		{r.DaysBetween, "", " days between"},
		{r.TempMax, "up to ", " F"},
		{r.RainFree, "", " h without rain"},
		{r.ReseedWeeks, "", " weeks before seeding"},
	} {
		if f.v.Known {
			add(fmt.Sprintf("%s%g%s", f.before, f.v.V, f.after))
		}
	}
	if r.Signal != "" {
		add("signal word " + strings.ToLower(r.Signal))
	}
	if len(says) > 0 {
		words += ": " + strings.Join(says, "; ")
	}
	return words + " (" + label.SourceWords(r.Source) + ")"
}

func span(low, high measure.Maybe[float64], unit string) string {
	switch {
	case low.Known && high.Known && low.V != high.V:
		return fmt.Sprintf("%g to %g %s", low.V, high.V, unit)
	case high.Known:
		return fmt.Sprintf("up to %g %s", high.V, unit)
	case low.Known:
		return fmt.Sprintf("from %g %s", low.V, unit)
	}
	return ""
}

// ActiveWords is an active of a label entry: its content, what it is, and who says so.
func ActiveWords(e label.Entry, a label.Active) string {
	words := a.Name
	switch {
	case a.PoundsPerGallon > 0:
		words += fmt.Sprintf(" %g lb per gal", a.PoundsPerGallon)
	case a.PercentByWeight > 0:
		words += fmt.Sprintf(" %g%% by weight", a.PercentByWeight)
	default:
		words += ", content blank: not checked"
	}
	if a.MostYear.Known {
		words += ", at most " + perAcre(a.MostYear.V) + " a year"
	}
	info, known := label.FindActive(a.Name)
	switch {
	case known:
		words += "; " + label.ClassWords(info.Class)
		if info.Group != "" && info.Group != "none" {
			words += ", " + info.Group
		}
		words += " (" + label.SourceWords(info.Source) + ")"
	case label.Nutrient(a.Name):
		words += "; plant food"
	default:
		words += "; the reference does not know it"
	}
	return words
}
