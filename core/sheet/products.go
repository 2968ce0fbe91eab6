package sheet

import (
	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

var productColumns = []column{
	{Column: Column{Name: "name", Words: "what the product is called in the book", Example: "example mesotrione 4", Required: true}, reader: name("product")},
	{Column: Column{Name: "form", Words: "how it is measured out: by volume or by weight", Example: "liquid", Required: true}, reader: form()},
	{Column: Column{Name: "kind", Words: "what it is for", Example: "herbicide"}, reader: text()},
	{Column: Column{Name: "actives", Words: "its active ingredients, as on the label", Example: "mesotrione 4 lb/gal"}, reader: actives()},
	{Column: Column{Name: "registration", Words: "its registration number, as on the label", Example: "00000-91"}, reader: text()},
	{Column: Column{Name: "grasses", Words: "the grasses that the label lists", Example: "tall fescue; kentucky bluegrass"}, reader: grasses()},
	{Column: Column{Name: "rate_low", Words: "the lowest rate on the label", Example: "4 fl oz per acre"}, reader: rate()},
	{Column: Column{Name: "rate_high", Words: "the highest rate on the label", Example: "8 fl oz per acre"}, reader: rate()},
	{Column: Column{Name: "wind_max_mph", Words: "the strongest wind that the label allows", Example: "9"}, reader: milesPerHour()},
}

// readProducts makes a product of each row.
func readProducts(s *reading) {
	seen := named{}
	for _, r := range s.rows {
		ok := r.sound("")
		f := &core.Product{ProductName: value[string](r, "name")}
		e := &f.Label
		form, formed := get[measure.Kind](r, "form")
		e.Form = form
		e.Kind, e.Registration = value[string](r, "kind"), value[string](r, "registration")
		e.Actives, e.Grasses = value[[]label.Active](r, "actives"), value[[]string](r, "grasses")
		e.RateLow, e.HasRateLow = r.rateOf("rate_low", form, formed)
		e.RateHigh, e.HasRateHigh = r.rateOf("rate_high", form, formed)
		e.WindMax, e.HasWindMax = get[measure.Speed](r, "wind_max_mph")
		if ok && f.ProductName != "" && seen.once(r, "name", "product", f.ProductName) {
			s.facts = append(s.facts, made{fact: f, rows: []*row{r}})
		}
	}
}

// rateOf reads a rate of a product whose form is known.
func (r *row) rateOf(column string, form measure.Kind, formed bool) (measure.Rate, bool) {
	typed, ok := get[typedRate](r, column)
	if !ok || !formed {
		return measure.Rate{}, false
	}
	rate, err := typed.of(form)
	if err != nil {
		r.bad(column, err)
		return measure.Rate{}, false
	}
	return rate, true
}
