package reckon

import (
	"strings"

	"example.com/tintline/core/batch"
	"example.com/tintline/core/measure"
)

// ofActive is what active ingredient is reckoned from, in base units: ng, nL, mm2.
type ofActive struct {
	content        batch.Content
	known          bool     // the content
	byVolume       quantity // of a liquid, by its label
	percent        quantity
	density        quantity // of the product where the content is by weight, else of the spray
	rate, strength quantity // of the active over an area, and in a volume of mix
	plain          quantity // of the active, in all
	product        quantity // over an area
	dry            bool     // the product whose rate was given
	spray          quantity
	finished       quantity // share of the active in the spray, by weight
	sprayDensity   quantity
}

// active answers what of a product holds an active, and the other way round.
func active(in *inputs) (map[string]any, error) {
	a, err := in.ofActive()
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	if err := a.complete(in); err != nil {
		return nil, err
	}
	return a.answer(in)
}

// aiUnit gives the factor of a weight of active over something, as lb_ai_per_acre. Of a volume, the hundreds are those
// of mix and the others those of a product.
func aiUnit(below string, hundreds bool) func(string) (float64, bool) {
	return func(unit string) (float64, bool) {
		top, bottom, found := strings.Cut(unit, "_ai_per_")
		if !found || (below == "volume" && strings.HasPrefix(bottom, "100_") != hundreds) {
			return 0, false
		}
		return per("mass", below)(top + "_per_" + bottom)
	}
}

// aiWeight gives the factor of a weight of active, as lb_ai.
func aiWeight(unit string) (float64, bool) {
	weight, found := strings.CutSuffix(unit, "_ai")
	f, ok := factor("mass", weight)
	return f, found && ok
}

// percent gives the factor of a per cent to a share, under one of its names.
func percent(names ...string) func(string) (float64, bool) {
	return func(unit string) (float64, bool) {
		for _, n := range names {
			if unit == n {
				return 0.01, true
			}
		}
		return 0, false
	}
}

func (in *inputs) ofActive() (*ofActive, error) {
	a := &ofActive{}
	if err := in.readAll([]reading{
		{&a.byVolume, "", aiUnit("volume", false), true},
		{&a.strength, "", aiUnit("volume", true), false},
		{&a.rate, "", aiUnit("area", false), false},
		{&a.plain, "", aiWeight, false},
		{&a.percent, "percent_", percent("ai", "ai_ww"), true},
		{&a.finished, "finished_percent_", percent("ai", "ai_ww"), false},
		{&a.sprayDensity, "spray_density_", per("mass", "volume"), true},
		{&a.density, "density_", per("mass", "volume"), true},
		{&a.spray, "spray_", plain("volume"), true},
	}); err != nil {
		return nil, err
	}
	for _, share := range []quantity{a.percent, a.finished} {
		if share.base > 1 {
			return nil, &InputError{Key: share.key, Value: in.value[share.key], Want: "at most 100 per cent"}
		}
	}
	for _, kind := range []string{"volume", "mass"} {
		q, err := in.one("", per(kind, "area"), false)
		if err != nil {
			return nil, err
		}
		if q.given {
			if err := in.twice(a.product, q); err != nil {
				return nil, err
			}
			a.product, a.dry = q, kind == "mass"
		}
	}
	return a, nil
}

// complete finds the content, and refuses what is of no use.
func (a *ofActive) complete(in *inputs) error {
	switch {
	case a.byVolume.given && a.percent.given:
		return in.twice(a.byVolume, a.percent)
	case a.byVolume.given:
		a.content, a.known = batch.ContentByVolume(measure.Concentration(a.byVolume.base)), true
	case a.percent.given && a.density.given:
		a.content, a.known = batch.ContentOfLiquid(a.percent.base, measure.Concentration(a.density.base)), true
	case a.percent.given:
		a.content, a.known = batch.ContentByWeight(a.percent.base), true
	default:
		return &MissingError{Kind: in.kind, What: "lb_ai_per_gal or percent_ai"}
	}
	if a.product.given && a.dry != (a.content.Form == measure.Dry) {
		want := "a volume, for the product is a liquid"
		if a.content.Form == measure.Dry {
			want = "a weight, for the product is dry"
		}
		return &InputError{Key: a.product.key, Value: in.value[a.product.key], Want: want}
	}
	if a.product.given && a.rate.given {
		return in.twice(a.rate, a.product)
	}
	if a.finished.given {
		return a.finish(in)
	}
	if a.spray.given && !a.strength.given {
		return &MissingError{Kind: in.kind, What: "lb_ai_per_100_gal or finished_percent_ai_ww"}
	}
	if a.spray.given && !a.plain.given {
		a.plain = quantity{given: true, base: a.strength.base * a.spray.base}
	}
	if !a.product.given && !a.rate.given && !a.strength.given && !a.plain.given {
		return &MissingError{Kind: in.kind, What: "lb_ai_per_acre, lb_ai_per_100_gal, lb_ai or the product over an area"}
	}
	return nil
}

// finish turns a share in the spray into a strength, and with a volume into a weight. The density that is given beside a
// content by volume is that of the spray.
func (a *ofActive) finish(in *inputs) error {
	density := a.sprayDensity
	if !density.given && a.byVolume.given {
		density = a.density
	}
	switch {
	case !density.given:
		return &MissingError{Kind: in.kind, What: "spray_density_lb_per_gal"}
	case a.strength.given:
		return in.twice(a.strength, a.finished)
	case a.plain.given && a.spray.given:
		return in.twice(a.plain, a.finished)
	}
	d := measure.Concentration(density.base)
	a.strength = quantity{given: true, base: batch.Finished(a.finished.base, 1, d)}
	if a.spray.given {
		a.plain = quantity{given: true, base: batch.Finished(a.finished.base, a.spray.base, d)}
	}
	return nil
}

func (a *ofActive) answer(*inputs) (map[string]any, error) {
	out := answers{}
	kind, units := "volume", volumeUnits
	if a.content.Form == measure.Dry {
		kind, units = "mass", massUnits
	}
	rate := a.rate
	if a.product.given {
		rate = quantity{given: true, base: a.content.Active(a.product.base)}
	}
	if rate.given {
		product := a.content.Product(rate.base)
		out.per("", kind, units, "area", areaUnits, product)
		out.active("area", areaUnits, rate.base)
		if kind == "mass" {
			out.named("_product_per_", "area", areaUnits, product)
		}
	}
	if a.strength.given {
		out.per("", kind, units, "volume", mixUnits, a.content.Product(a.strength.base))
		out.active("volume", mixUnits, a.strength.base)
	}
	if a.plain.given {
		product := a.content.Product(a.plain.base)
		out.plain("", kind, units, product)
		for _, u := range massUnits {
			f, _ := factor("mass", u)
			out[u+"_ai"] = a.plain.base / f
			if kind == "mass" {
				out[u+"_product"] = product / f
			}
		}
	}
	return out, nil
}

// active answers a weight of active over something: lb_ai_per_acre.
func (a answers) active(below string, belows []string, base float64) {
	a.named("_ai_per_", below, belows, base)
}

// named answers a weight over something whose key says of what: lb_product_per_acre.
func (a answers) named(of, below string, belows []string, base float64) {
	for _, top := range massUnits {
		for _, bottom := range belows {
			f, _ := factor("mass", top)
			g, _ := factor(below, bottom)
			a[top+of+bottom] = base / f * g
		}
	}
}
