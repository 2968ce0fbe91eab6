package core

import (
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// Product is the operator's label entry of a product; a later one of the same name is its next version.
type Product struct {
	ProductName string
	Label       label.Entry
}

// Kind of the fact.
func (*Product) Kind() Kind { return kindProduct }

// Name of the fact.
func (*Product) Name() string { return "product" }

func (f *Product) fields(w walker) {
	e := &f.Label
	w.text(1, "name", &f.ProductName)
	w.form(2, "form", &e.Form)
	w.text(3, "kind", &e.Kind)
	list(w, 4, "actives", &e.Actives, func(w walker, a *label.Active) {
		w.text(1, "name", &a.Name)
		w.number(2, "lb_per_gal", &a.PoundsPerGallon)
		w.number(3, "percent_by_weight", &a.PercentByWeight)
	})
	w.text(5, "registration", &e.Registration)
	w.texts(6, "grasses", &e.Grasses)
	low, high, wind := Maybe[measure.Rate]{e.RateLow, e.HasRateLow}, Maybe[measure.Rate]{e.RateHigh, e.HasRateHigh}, Maybe[measure.Speed]{e.WindMax, e.HasWindMax}
	w.maybeRate(7, "rate_low", &low)
	w.maybeRate(8, "rate_high", &high)
	w.maybeSpeed(9, "wind_max", &wind)
	e.RateLow, e.HasRateLow, e.RateHigh, e.HasRateHigh, e.WindMax, e.HasWindMax = low.V, low.Known, high.V, high.Known, wind.V, wind.Known
}

// Mix is a recipe: products, each with a rate per area.
type Mix struct {
	MixName string
	Parts   []MixPart
}

// MixPart is a product of a mix and how much of it goes on an area.
type MixPart struct {
	Product string
	Rate    measure.Rate
}

// Kind of the fact.
func (*Mix) Kind() Kind { return kindMix }

// Name of the fact.
func (*Mix) Name() string { return "mix" }

func (f *Mix) fields(w walker) {
	w.text(1, "name", &f.MixName)
	list(w, 2, "parts", &f.Parts, func(w walker, p *MixPart) {
		w.text(1, "product", &p.Product)
		w.rate(2, "rate", &p.Rate)
	})
}

// Rate of a product in the mix; false if it is not in it.
func (f *Mix) Rate(product string) (measure.Rate, bool) {
	for _, p := range f.Parts {
		if p.Product == product {
			return p.Rate, true
		}
	}
	return measure.Rate{}, false
}
