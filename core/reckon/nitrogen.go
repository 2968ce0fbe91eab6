package reckon

import (
	"strings"

	"example.com/tintline/core/batch"
	"example.com/tintline/core/measure"
)

// plantFood is a nutrient as an analysis tells it: its letters in a key that is taken and in one that is answered.
type plantFood struct {
	taken, answered string
	percent, rate   quantity // share of the product, and what goes on an area
}

// feeding is what a fertiliser is reckoned from.
type feeding struct {
	foods                [3]plantFood // nitrogen, phosphate, potash
	byVolume, density    quantity     // nitrogen in a volume, weight of a volume
	product, carrier     quantity     // dry over an area, liquid over an area
	weight, volume, area quantity     // in all
	most                 quantity     // of nitrogen, for one application
	passes               quantity
	content              batch.Content // of the one that is asked for
	at                   int           // which of foods
	perArea              quantity      // product over an area, in the content's form
}

// nitrogen answers what of a fertiliser gives a rate of nitrogen, phosphate or potash, and what one of it gives.
func nitrogen(in *inputs) (map[string]any, error) {
	f, err := in.feeding()
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	if err := f.complete(in); err != nil {
		return nil, err
	}
	return f.answer(), nil
}

// nutrientUnit gives the factor of a weight of a nutrient over something, as lb_n_per_gal.
func nutrientUnit(food, below string) func(string) (float64, bool) {
	return func(unit string) (float64, bool) {
		top, bottom, found := strings.Cut(unit, "_"+food+"_per_")
		if !found {
			return 0, false
		}
		return per("mass", below)(top + "_per_" + bottom)
	}
}

func (in *inputs) feeding() (*feeding, error) {
	f := &feeding{foods: [3]plantFood{{taken: "n", answered: "N"}, {taken: "p2o5", answered: "P2O5"}, {taken: "k2o", answered: "K2O"}}}
	var all []reading
	for i := range f.foods {
		n := &f.foods[i]
		all = append(all,
			reading{&n.percent, "percent_", percent(n.taken), false},
			reading{&n.rate, n.taken + "_", per("mass", "area"), false},
		)
	}
	all = append(all,
		reading{&f.most, "max_n_", per("mass", "area"), true},
		reading{&f.passes, "", bare("passes"), true},
		reading{&f.byVolume, "", nutrientUnit("n", "volume"), true},
		reading{&f.density, "density_", per("mass", "volume"), true},
		reading{&f.area, "area_", plain("area"), true},
		reading{&f.product, "", per("mass", "area"), false},
		reading{&f.carrier, "", per("volume", "area"), false},
		reading{&f.weight, "", plain("mass"), false},
		reading{&f.volume, "", plain("volume"), false},
	)
	if err := in.readAll(all); err != nil {
		return nil, err
	}
	for _, n := range f.foods {
		if n.percent.base > 1 {
			return nil, &InputError{Key: n.percent.key, Value: in.value[n.percent.key], Want: "at most 100 per cent"}
		}
	}
	return f, in.bareArea(&f.area)
}

// bareArea takes an area whose key is its unit, acres, where none is named area.
func (in *inputs) bareArea(to *quantity) error {
	q, err := in.one("", plain("area"), true)
	if err != nil || !q.given {
		return err
	}
	if err := in.twice(*to, q); err != nil {
		return err
	}
	*to = q
	return nil
}

// complete finds the content that is asked for and the product over an area.
func (f *feeding) complete(in *inputs) error {
	if f.passes.given && !f.most.given && !f.foods[0].rate.given {
		return &MissingError{Kind: in.kind, What: "max_N_lb_per_1000_sqft or N_lb_per_1000_sqft"}
	}
	asked := 0
	for i, n := range f.foods {
		if n.rate.given {
			asked++
			f.at = i
		}
		if asked > 1 {
			return &InputError{Key: n.rate.key, Value: in.value[n.rate.key], Want: "left out, for one nutrient is reckoned at a time"}
		}
	}
	known, err := f.contents(in)
	if err != nil {
		return err
	}
	food := f.foods[f.at]
	if food.rate.given && known {
		if food.percent.given && food.percent.base == 0 {
			return &InputError{Key: food.percent.key, Value: in.value[food.percent.key], Want: "above 0, for it is to give " + food.rate.key}
		}
		f.perArea = quantity{given: true, base: f.content.Product(food.rate.base)}
	}
	return f.laid(in, known)
}

// contents finds how much of the nutrient that is asked for the product holds.
func (f *feeding) contents(in *inputs) (known bool, err error) {
	share := f.foods[f.at].percent
	switch {
	case f.byVolume.given && f.foods[0].percent.given && f.density.given:
		return false, in.twice(f.byVolume, f.density)
	case f.byVolume.given && f.at == 0:
		f.content = batch.ContentByVolume(measure.Concentration(f.byVolume.base))
	case !share.given:
		for _, n := range f.foods {
			if n.percent.given {
				return false, nil
			}
		}
		if f.density.given || f.foods[f.at].rate.given && !f.passes.given {
			return false, &MissingError{Kind: in.kind, What: "percent_" + f.foods[f.at].answered + map[bool]string{true: " or lb_N_per_gal"}[f.at == 0]}
		}
		if !f.most.given && !f.passes.given {
			return false, &MissingError{Kind: in.kind, What: "percent_N or lb_N_per_gal"}
		}
		return false, nil
	case f.density.given:
		f.content = batch.ContentOfLiquid(share.base, measure.Concentration(f.density.base))
	default:
		f.content = batch.ContentByWeight(share.base)
	}
	return true, nil
}

// laid takes the product over an area where it was given, and refuses one of the other form.
func (f *feeding) laid(in *inputs, known bool) error {
	given, other, want := f.product, f.carrier, "a weight, for the fertiliser is told by weight"
	if known && f.content.Form == measure.Liquid {
		given, other, want = f.carrier, f.product, "a volume, for the fertiliser is a liquid"
	}
	if other.given {
		return &InputError{Key: other.key, Value: in.value[other.key], Want: want}
	}
	if !given.given {
		return nil
	}
	if f.perArea.given {
		return in.twice(f.foods[f.at].rate, given)
	}
	f.perArea = given
	return nil
}

func (f *feeding) answer() answers {
	out := answers{}
	liquid := f.content.Form == measure.Liquid && f.content.PerUnit > 0
	if liquid {
		for _, top := range massUnits {
			for _, bottom := range mixUnits {
				a, _ := factor("mass", top)
				b, _ := factor("volume", bottom)
				out[top+"_N_per_"+bottom] = f.content.PerUnit / a * b
			}
		}
	}
	if f.perArea.given {
		f.over(out, liquid)
	}
	f.inAll(out, liquid)
	if f.passes.given {
		most := f.most
		if !most.given {
			most = f.foods[0].rate
		}
		for _, top := range massUnits {
			for _, bottom := range areaUnits {
				a, _ := factor("mass", top)
				b, _ := factor("area", bottom)
				out["N_"+top+"_per_"+bottom+"_per_pass"] = most.base / f.passes.base / a * b
			}
		}
	}
	return out
}

// over answers product and nutrients over an area, and with an area in all.
func (f *feeding) over(out answers, liquid bool) {
	kind, units := "mass", massUnits
	if liquid {
		kind, units = "volume", volumeUnits
	}
	out.per("", kind, units, "area", areaUnits, f.perArea.base)
	if f.area.given {
		total := f.perArea.base * f.area.base
		out.plain("", kind, units, total)
		for _, u := range units {
			out[u+"_total"] = out[u]
		}
	}
	for i, n := range f.foods {
		content, ok := f.of(i)
		if !ok {
			continue
		}
		rate := content.Active(f.perArea.base)
		out.per(n.answered+"_", "mass", massUnits, "area", areaUnits, rate)
		out.named("_"+n.answered+"_per_", "area", areaUnits, rate)
		if f.area.given {
			out.plain(n.answered+"_", "mass", massUnits, rate*f.area.base)
		}
	}
}

// of is the content of one of the nutrients, in the form that is reckoned with.
func (f *feeding) of(i int) (batch.Content, bool) {
	switch share := f.foods[i].percent; {
	case i == f.at && f.content.PerUnit > 0:
		return f.content, true
	case !share.given:
		return batch.Content{}, false
	case f.density.given:
		return batch.ContentOfLiquid(share.base, measure.Concentration(f.density.base)), true
	case f.content.Form == measure.Dry || f.content.PerUnit == 0:
		return batch.ContentByWeight(share.base), true
	}
	return batch.Content{}, false
}

// inAll answers what a weight or a volume of the product holds, with the elements of the oxides.
func (f *feeding) inAll(out answers, liquid bool) {
	given := f.weight
	if liquid {
		given = f.volume
	}
	for i, n := range f.foods {
		content, ok := f.of(i)
		if !given.given || !ok {
			continue
		}
		holds := content.Active(given.base)
		out.plain(n.answered+"_", "mass", massUnits, holds)
		switch n.taken {
		case "p2o5":
			out.plain("P_", "mass", massUnits, holds*batch.Phosphorus())
		case "k2o":
			out.plain("K_", "mass", massUnits, holds*batch.Potassium())
		}
	}
}
