package reckon

import (
	"strings"

	"example.com/tintline/core/batch"
	"example.com/tintline/core/measure"
)

// dilute answers a concentrate and water, a stock and a diluent, or a rest that goes through another applicator.
func dilute(in *inputs) (map[string]any, error) {
	for _, key := range in.keys {
		switch {
		case strings.HasPrefix(key, "stock_"), strings.HasPrefix(key, "target_"), strings.HasPrefix(key, "diluent_"):
			return fromStock(in)
		case strings.HasPrefix(key, "left_"), strings.HasPrefix(key, "from_"), strings.HasPrefix(key, "to_"):
			return turn(in)
		}
	}
	return fromConcentrate(in)
}

// percents reads figures that are per cent, and says which is missing.
func (in *inputs) percents(keys ...string) ([]float64, error) {
	var out []float64
	for _, key := range keys {
		f, given, err := in.bare(key, false)
		if err != nil {
			return nil, err
		}
		if !given {
			return nil, in.missing(key)
		}
		if f > 100 {
			return nil, &InputError{Key: key, Value: in.value[key], Want: "at most 100"}
		}
		out = append(out, f)
	}
	return out, nil
}

// shownUnit is the unit of a quantity's key, and what one of it is in base units: the working speaks in it.
func shownUnit(q quantity, prefix, kind string) (name string, size float64) {
	unit := strings.TrimPrefix(q.key, prefix)
	f, _ := factor(kind, unit)
	return strings.ReplaceAll(unit, "_", " "), f
}

// fromConcentrate is C1 V1 = C2 V2: by volume, or with a density by weight.
func fromConcentrate(in *inputs) (map[string]any, error) {
	kind, amounts, err := in.eitherKind(plain, true, "", "final_")
	if err != nil {
		return nil, err
	}
	final := amounts["final_"]
	if !final.given {
		return nil, in.missing("final_gal with final_pct and concentrate_pct, or stock_ml with stock_pct and target_pct, or left_gal with from_gal_per_1000_sqft and to_gal_per_1000_sqft")
	}
	p, err := in.percents("final_pct", "concentrate_pct")
	if err != nil {
		return nil, err
	}
	density, err := in.one("density_", strengthOf("mass"), true)
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	unit, size := shownUnit(final, "final_", kind)
	base := final.base
	var steps []batch.Step
	if density.given && kind == "volume" {
		kind, base, unit, size = "mass", final.base*density.base, "lb", float64(measure.Pound)
		steps = append(steps, batch.Step{Says: in.value[final.key] + " " + strings.ReplaceAll(strings.TrimPrefix(final.key, "final_"), "_", " ") + " weigh " + figureText(base/size) + " lb: per cent are by weight"})
	}
	got, err := batch.DiluteTo(base/size, p[0], p[1], unit)
	if err != nil {
		return nil, err
	}
	out := answers{}
	out.working(append(steps, got.Steps...))
	out.after(kind, unitsOf(kind), "_concentrate", got.Concentrate*size)
	out.after(kind, unitsOf(kind), "_water", got.Water*size)
	return out, nil
}

// fromStock is Pearson's square.
func fromStock(in *inputs) (map[string]any, error) {
	kind, amounts, err := in.eitherKind(plain, true, "", "stock_")
	if err != nil {
		return nil, err
	}
	stock := amounts["stock_"]
	if !stock.given {
		return nil, in.missing("stock_ml")
	}
	p, err := in.percents("stock_pct", "target_pct")
	if err != nil {
		return nil, err
	}
	var diluent float64
	if _, there := in.value["diluent_pct"]; there {
		d, err := in.percents("diluent_pct")
		if err != nil {
			return nil, err
		}
		diluent = d[0]
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	unit, size := shownUnit(stock, "stock_", kind)
	got, err := batch.DiluteStock(stock.base/size, p[0], p[1], diluent, unit)
	if err != nil {
		return nil, err
	}
	out := answers{}
	out.working(got.Steps)
	out["parts_stock"], out["parts_diluent"] = batch.Pearson(p[0], p[1], diluent)
	name := "_diluent"
	if diluent == 0 {
		out.after(kind, unitsOf(kind), "_water", got.Water*size)
	}
	out.after(kind, unitsOf(kind), name, got.Water*size)
	out.after(kind, unitsOf(kind), "_total", got.Total*size)
	return out, nil
}

// turn is a rest made up for one delivery rate that goes through an applicator of another.
func turn(in *inputs) (map[string]any, error) {
	volumes, err := in.several(plain("volume"), true, "left", "capacity")
	if err != nil {
		return nil, err
	}
	rates, err := in.several(per("volume", "area"), true, "from", "to")
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	left, capacity := volumes["left"], volumes["capacity"]
	switch {
	case !left.given:
		return nil, in.missing("left_gal")
	case !rates["from"].given:
		return nil, in.missing("from_gal_per_1000_sqft")
	case !rates["to"].given:
		return nil, in.missing("to_gal_per_1000_sqft")
	}
	got, err := batch.TurnAsk{
		Left: volumeOf(left), From: measure.Rate{V: rates["from"].base}, To: measure.Rate{V: rates["to"].base},
		Capacity: measure.Maybe[measure.Volume]{V: volumeOf(capacity), Known: capacity.given},
	}.Work()
	if err != nil {
		return nil, err
	}
	ratio := rates["from"].base / rates["to"].base
	out := answers{"strength_ratio": ratio}
	out.working(got.Steps)
	if ratio > 1 {
		out.verdict(false, "Water does not make it stronger; it is to be "+figureText(ratio)+" times as strong.", "Add product: reckon topup says how much.")
		return out, nil
	}
	out.verdict(got.Possible, got.Why, got.Do)
	out.plain("total_", "volume", volumeUnits, left.base/ratio)
	out.plain("water_", "volume", volumeUnits, left.base/ratio-left.base)
	return out, nil
}
