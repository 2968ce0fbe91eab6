package reckon

import (
	"math"
	"strings"

	"example.com/tintline/core/batch"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// theProduct is what the product of a reckoning is called: it has no name.
const theProduct = "the product"

// topup answers what brings a rest to a strength, how strong a heel makes a filled tank, or what a tank holds that gains volume.
func topup(in *inputs) (map[string]any, error) {
	for _, key := range in.keys {
		switch {
		case strings.HasPrefix(key, "v0_"), strings.HasPrefix(key, "m0_"), strings.HasPrefix(key, "q_in_"), strings.HasPrefix(key, "q_out_"), strings.HasPrefix(key, "c_in_"), strings.HasPrefix(key, "time_"):
			return gaining(in)
		case strings.HasPrefix(key, "heel_"), key == "new_conc_rel":
			return refill(in)
		}
	}
	return fillUp(in)
}

// rest is what was given of a rest that is filled up.
type rest struct {
	left, to, capacity quantity // nL
	kind               string
	has, want          quantity // product in a nL
}

func (in *inputs) rest() (r rest, err error) {
	volumes, err := in.several(plain("volume"), false, "left", "target", "capacity")
	if err != nil {
		return r, err
	}
	r.left, r.to, r.capacity = volumes["left"], volumes["target"], volumes["capacity"]
	kind, strengths, err := in.eitherKind(strengthOf, false, "", "left_", "target_")
	if err != nil {
		return r, err
	}
	r.kind, r.has, r.want = kind, strengths["left_"], strengths["target_"]
	if err := in.unknown(); err != nil {
		return r, err
	}
	switch {
	case !r.left.given:
		return r, in.missing("left_gal (with heel_gal, the strength of a heel; with v0_gal, a tank that gains volume)")
	case !r.has.given && r.left.base > 0:
		return r, in.missing("left_fl_oz_per_gal")
	case !r.want.given:
		return r, in.missing("target_fl_oz_per_gal")
	case !r.to.given:
		return r, in.missing("target_gal")
	}
	return r, nil
}

func fillUp(in *inputs) (map[string]any, error) {
	r, err := in.rest()
	if err != nil {
		return nil, err
	}
	form := formOf(r.kind)
	entry := label.Entry{Form: form}
	have := r.left.base * r.has.base
	ask := batch.TopUpAsk{
		Left: volumeOf(r.left), Volume: volumeOf(r.to),
		Holds:    []batch.Held{{Product: theProduct, Label: entry, Amount: measure.Concentration(r.has.base).In(volumeOf(r.left), form)}},
		Targets:  []batch.Target{{Product: theProduct, Label: entry, Strength: measure.Concentration(r.want.base)}},
		Capacity: measure.Maybe[measure.Volume]{V: volumeOf(r.capacity), Known: r.capacity.given},
	}
	up, err := ask.Work()
	if err != nil {
		return nil, err
	}
	out := answers{}
	out.verdict(up.Possible, up.Why, up.Do)
	out.working(up.Steps)
	if up.Possible {
		add := math.Max(batch.ToAdd(r.to.base, r.want.base, have), 0)
		water := r.to.base - r.left.base
		if form == measure.Liquid {
			water -= add
		}
		out.plain("product_", r.kind, unitsOf(r.kind), add)
		out.plain("water_", "volume", volumeUnits, math.Max(water, 0))
		return out, nil
	}
	if len(up.Strong) > 0 && r.want.base > 0 {
		out.plain("right_at_", "volume", volumeUnits, batch.RightAt(have, r.want.base))
		out["times_too_strong"] = have / (r.want.base * r.to.base)
	}
	return out, nil
}

// refill answers how strong a tank is that was filled on a heel.
func refill(in *inputs) (map[string]any, error) {
	volumes, err := in.several(plain("volume"), false, "capacity", "heel")
	if err != nil {
		return nil, err
	}
	var rel [2]float64
	for i, key := range []string{"heel_conc_rel", "new_conc_rel"} {
		f, given, err := in.bare(key, false)
		if err != nil {
			return nil, err
		}
		if !given {
			return nil, in.missing(key)
		}
		rel[i] = f
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	for _, name := range []string{"capacity", "heel"} {
		if !volumes[name].given {
			return nil, in.missing(name + "_gal")
		}
	}
	q := batch.RefillAsk{Capacity: gallonsOf(volumes["capacity"]), Heel: gallonsOf(volumes["heel"]), HeelStrength: rel[0], New: rel[1], Wanted: 1}
	got, err := q.Work()
	if err != nil {
		return nil, err
	}
	out := answers{"conc_rel": got.Strength}
	out.working(got.Steps)
	if got.Needs < 0 {
		out.verdict(false, "The heel alone holds more product than the full tank may.", "Draw it down first.")
		return out, nil
	}
	out.verdict(true, "", "")
	out["product_needed_for_rel_1"] = got.Needs
	out.gallons("product_needed_for_rel_1_", hydraulics.Gallons(got.Needs))
	return out, nil
}

// gaining answers a tank into which more flows than out of it, or less.
func gaining(in *inputs) (map[string]any, error) {
	v0, err := in.one("v0_", plain("volume"), true)
	if err != nil {
		return nil, err
	}
	kind, m0, err := in.eitherKind(plain, false, "", "m0_")
	if err != nil {
		return nil, err
	}
	kind, c, err := in.eitherKind(strengthOf, false, kind, "c_in_")
	if err != nil {
		return nil, err
	}
	flows, err := in.several(plain("flow"), false, "q_in", "q_out")
	if err != nil {
		return nil, err
	}
	time, err := in.one("time_", duration, false)
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	for _, need := range []struct {
		q    quantity
		what string
	}{{v0, "v0_gal"}, {m0["m0_"], "m0_lb"}, {flows["q_in"], "q_in_gpm"}, {flows["q_out"], "q_out_gpm"}, {c["c_in_"], "c_in_lb_gal"}, {time, "time_min"}} {
		if !need.q.given {
			return nil, in.missing(need.what)
		}
	}
	big, perGallon := 1.0, float64(measure.USGallon)
	if kind == "mass" {
		big = float64(measure.Pound) // the working speaks of pounds, or of gallons
	} else {
		big = perGallon
	}
	got, err := batch.Gain(hydraulics.Gaining{
		Volume: gallonsOf(v0), Product: m0["m0_"].base / big, In: gpm(flows["q_in"]), Out: gpm(flows["q_out"]), InStrength: c["c_in_"].base * perGallon / big,
	}, time.base/60)
	if err != nil {
		return nil, err
	}
	out := answers{}
	out.working(got.Steps)
	out.gallons("volume_", got.Volume)
	prefix := map[string]string{"mass": "mass_", "volume": "product_"}[kind]
	out.plain(prefix, kind, unitsOf(kind), math.Max(got.Product, 0)*big)
	out.strength("conc_", kind, math.Max(got.Product, 0)*big/(float64(got.Volume)*perGallon))
	return out, nil
}
