package label

import (
	"strings"

	"example.com/tintline/core/measure"
)

// byWeight is what a per cent by weight comes to for each unit of the product.
func (e Entry) byWeight(percent float64) measure.Maybe[float64] {
	switch {
	case e.Form == measure.Dry:
		return measure.Known(percent / 100)
	case e.Density.Known:
		return measure.Known(e.Density.V * percent / 100 * poundPerGallon)
	}
	return measure.Maybe[float64]{}
}

// nitrogenNames are names of an active by which its content is that of nitrogen itself.
var nitrogenNames = []string{"nitrogen", "n", "total nitrogen", "nitrogen (n)", "total nitrogen (n)"}

// nitrogenSources are what carries nitrogen: of a content of one of them it is not known how much is nitrogen.
var nitrogenSources = []string{"urea", "ammoni", "nitrate", "nitrogen", "triazone"}

// PhosphatePerProduct is how much phosphate (P2O5) is in one nanolitre of a liquid product or one nanogram of a dry one; unknown where
// the entry has no figure for it.
func (e Entry) PhosphatePerProduct() measure.Maybe[float64] {
	switch {
	case !e.Phosphate.Known:
		return measure.Maybe[float64]{}
	case e.Phosphate.V == 0:
		return measure.Known(0.0)
	}
	return e.byWeight(e.Phosphate.V)
}

// NitrogenPerProduct is how much nitrogen is in one nanolitre of a liquid product or one nanogram of a dry one, as
// PerProduct. A product that is neither a fertiliser nor holds a source of nitrogen has none; of one that is, a blank
// analysis leaves it unknown, unless the entry gives the content of nitrogen itself among its actives.
func (e Entry) NitrogenPerProduct() measure.Maybe[float64] {
	if e.Nitrogen.Known {
		if e.Nitrogen.V == 0 {
			return measure.Known(0.0)
		}
		return e.byWeight(e.Nitrogen.V)
	}
	source := strings.HasPrefix(strings.ToLower(e.Kind), "fertili") // either spelling
	for _, a := range e.Actives {
		name := strings.ToLower(strings.TrimSpace(a.Name))
		for _, n := range nitrogenNames {
			if name == n {
				return e.PerProduct(a)
			}
		}
		for _, n := range nitrogenSources {
			source = source || strings.Contains(name, n)
		}
	}
	if source {
		return measure.Maybe[float64]{}
	}
	return measure.Known(0.0)
}
