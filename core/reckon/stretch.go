package reckon

import (
	"math"
	"strconv"

	"example.com/tintline/core/batch"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// figureText prints a figure to six digits.
func figureText(f float64) string { return strconv.FormatFloat(f, 'g', 6, 64) }

// stretch answers how far a rest goes at the lowest label rate.
func stretch(in *inputs) (map[string]any, error) {
	volumes, err := in.several(plain("volume"), false, "left", "room", "heel")
	if err != nil {
		return nil, err
	}
	kind, low, err := in.eitherKind(func(k string) func(string) (float64, bool) { return per(k, "area") }, true, "", "rate_low_")
	if err != nil {
		return nil, err
	}
	carrier, err := in.one("", per("volume", "area"), true)
	if err != nil {
		return nil, err
	}
	kind, strengths, err := in.eitherKind(strengthOf, true, kind, "")
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	left, strength, lowest := volumes["left"], strengths[""], low["rate_low_"]
	switch {
	case !left.given:
		return nil, in.missing("left_gal")
	case !strength.given:
		return nil, in.missing("fl_oz_per_gal, the strength of what is left")
	case !lowest.given:
		return nil, in.missing("rate_low_fl_oz_per_1000_sqft")
	case !carrier.given:
		return nil, in.missing("gal_per_1000_sqft")
	}
	form := formOf(kind)
	got, err := batch.StretchAsk{
		Left: volumeOf(left), Heel: volumeOf(volumes["heel"]), Delivery: measure.Rate{V: carrier.base},
		Holds:  []batch.Held{{Product: theProduct, Label: label.Entry{Form: form}, Amount: measure.Concentration(strength.base).In(volumeOf(left), form)}},
		Lowest: []batch.Lowest{{Product: theProduct, Rate: measure.Known(measure.Rate{V: lowest.base, Kind: form})}},
		Room:   measure.Maybe[measure.Volume]{V: volumeOf(volumes["room"]), Known: volumes["room"].given},
	}.Work()
	if err != nil {
		return nil, err
	}
	out := answers{}
	out.verdict(got.Possible, got.Why, got.Do)
	out.working(got.Steps)
	total := left.base
	if got.Possible {
		total = left.base * math.Max(batch.Stretchable(strength.base, carrier.base, lowest.base), 1)
	}
	if volumes["room"].given {
		total = math.Min(total, left.base+volumes["room"].base)
	}
	out.plain("total_", "volume", volumeUnits, total)
	out.plain("water_", "volume", volumeUnits, total-left.base)
	out.area("area_", (total-volumes["heel"].base)/carrier.base)
	out.per("rate_", kind, unitsOf(kind), "area", areaUnits, strength.base*left.base/total*carrier.base)
	return out, nil
}

// blend answers two liquids in one tank.
func blend(in *inputs) (map[string]any, error) {
	volumes, err := in.several(plain("volume"), true, "va", "vb", "capacity")
	if err != nil {
		return nil, err
	}
	kind, strengths, err := in.eitherKind(strengthOf, false, "", "ca_", "cb_")
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	va, vb, ca, cb := volumes["va"], volumes["vb"], strengths["ca_"], strengths["cb_"]
	for _, need := range []struct {
		q    quantity
		what string
	}{{va, "va_gal"}, {vb, "vb_gal"}, {ca, "ca_oz_gal"}, {cb, "cb_oz_gal"}} {
		if !need.q.given {
			return nil, in.missing(need.what)
		}
	}
	form := formOf(kind)
	liquid := func(v, c quantity) batch.Liquid {
		return batch.Liquid{Volume: volumeOf(v), Holds: []batch.Held{{Product: theProduct, Label: label.Entry{Form: form}, Amount: measure.Concentration(c.base).In(volumeOf(v), form)}}}
	}
	got, err := batch.BlendAsk{
		A: liquid(va, ca), B: liquid(vb, cb), Capacity: measure.Maybe[measure.Volume]{V: volumeOf(volumes["capacity"]), Known: volumes["capacity"].given},
	}.Work()
	if err != nil {
		return nil, err
	}
	out := answers{}
	out.working(got.Steps)
	out.plain("total_", "volume", volumeUnits, va.base+vb.base)
	out.strength("c_", kind, batch.Blended(va.base, vb.base, ca.base, cb.base))
	return out, nil
}
