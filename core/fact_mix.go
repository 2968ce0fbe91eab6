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
	w.codec.rate(7, "rate_low", &e.RateLow, &e.HasRateLow)
	w.codec.rate(8, "rate_high", &e.RateHigh, &e.HasRateHigh)
	w.quantity(9, "wind_max", "speed", (*int64)(&e.WindMax), &e.HasWindMax)
}

// Mix is a recipe: products, each with a rate per area. Base is the mix that it was made from; those of its products
// that Parts does not name are taken over when the mix is entered, unless Parts are said to be complete.
type Mix struct {
	MixName  string
	Parts    []MixPart
	Base     string
	Complete string // "yes": Parts are all of its products, as in every entry
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
	w.text(3, "base", &f.Base)
	w.text(4, "complete", &f.Complete)
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
