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
		w.later()
		w.maybeRate(4, "most_year", &a.MostYear)
	})
	w.text(5, "registration", &e.Registration)
	w.texts(6, "grasses", &e.Grasses)
	w.codec.rate(7, "rate_low", &e.RateLow, &e.HasRateLow)
	w.codec.rate(8, "rate_high", &e.RateHigh, &e.HasRateHigh)
	w.quantity(9, "wind_max", "speed", (*int64)(&e.WindMax), &e.HasWindMax)
	f.limits(w)
	f.analysis(w)
}

// limits are what the label allows besides grasses and rates.
func (f *Product) limits(w walker) {
	e := &f.Label
	w.later()
	w.text(10, "signal", &e.Signal)
	w.text(11, "restricted", &e.Restricted)
	w.texts(12, "sites", &e.Sites)
	list(w, 13, "rates", &e.Rates, func(w walker, r *label.GrassRates) {
		w.texts(1, "grasses", &r.Grasses)
		w.maybeRate(2, "low", &r.Low)
		w.maybeRate(3, "high", &r.High)
	})
	w.maybeRate(14, "most_application", &e.Most)
	w.maybeRate(15, "most_year", &e.MostYear)
	w.maybeNumber(16, "most_times", &e.MostTimes)
	w.maybeNumber(17, "year_days", &e.YearDays)
	w.maybeNumber(18, "days_between", &e.DaysBetween)
	w.maybeNumber(19, "temp_max_f", &e.TempMax)
	w.maybeNumber(20, "temp_min_f", &e.TempMin)
	w.maybeNumber(21, "rain_free_h", &e.RainFree)
	w.text(22, "no_inversion", &e.NoInversion)
	w.text(23, "reentry", &e.Reentry)
	w.maybeNumber(24, "reseed_days", &e.ReseedDays)
	w.maybeNumber(25, "new_turf_days", &e.NewTurfDays)
	w.maybeNumber(26, "water_ft", &e.WaterFeet)
	w.text(27, "no_bloom", &e.NoBloom)
	w.texts(28, "none", &e.None)
}

// analysis is what it is made of, and what it costs.
func (f *Product) analysis(w walker) {
	e := &f.Label
	w.text(29, "mixing_class", &e.MixingClass)
	w.maybeMoney(30, "price", &e.Price)
	w.amount(31, "package", &e.Package)
	w.maybeNumber(32, "nitrogen_pct", &e.Nitrogen)
	w.maybeNumber(33, "phosphate_pct", &e.Phosphate)
	w.maybeNumber(34, "potash_pct", &e.Potash)
	w.maybeNumber(35, "quick_nitrogen_pct", &e.QuickNitrogen)
	w.maybeNumber(36, "density_lb_per_gal", &e.Density)
	w.text(37, "mixing_order", &e.MixingOrder)
	w.text(38, "first_aid", &e.FirstAid)
	w.text(39, "emergency_phone", &e.Emergency)
}

// Mix is a recipe: products, each with a rate per area. Base is the mix that it was made from; those of its products
// that Parts does not name are taken over when the mix is entered, unless Parts are said to be complete.
type Mix struct {
	MixName  string
	Parts    []MixPart
	Base     string
	Complete string // "yes": Parts are all of its products, as in every entry
	For      string // for which visits it is meant, one of MixVisits; empty: every one
}

// For which visits a mix is meant.
const (
	EveryVisit  = "every_visit"
	FirstVisits = "first_visits" // lawns on which nothing was laid yet
	OnceAYear   = "once_a_year"  // lawns on which what it has beyond its base was not laid yet this year
)

// MixVisits lists what a mix can be meant for.
func MixVisits() []string { return []string{EveryVisit, FirstVisits, OnceAYear} }

// MixPart is a product of a mix and how much of it goes on an area.
type MixPart struct {
	Product string
	Rate    measure.Rate
	Target  string // the pest that it is for
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
		w.later()
		w.text(3, "target", &p.Target)
	})
	w.later()
	w.text(3, "base", &f.Base)
	w.text(4, "complete", &f.Complete)
	w.text(5, "for", &f.For)
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
