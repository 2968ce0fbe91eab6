package reckon

import (
	"strings"

	"example.com/tintline/core/batch"
	"example.com/tintline/core/measure"
)

// told is a strength as it is told: one of the first four, and what it is told with.
type told struct {
	byVolume, byWeight, inVolume, ppm quantity
	share                             quantity // of what ppm are meant of in the product, percent_N
	density, mix                      quantity
}

// strength answers what a per cent or parts per million come to in a volume of mix.
func strength(in *inputs) (map[string]any, error) {
	s := &told{}
	if err := in.readAll([]reading{
		{&s.byVolume, "percent_", percent("vv"), false},
		{&s.byWeight, "percent_", percent("ww"), false},
		{&s.inVolume, "percent_", percent("wv"), false},
		{&s.ppm, "", bare("ppm"), false},
		{&s.share, "percent_", percent("n", "ai", "p2o5", "k2o"), true},
		{&s.density, "density_", per("mass", "volume"), true},
		{&s.mix, "mix_", plain("volume"), true},
	}); err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	return s.answer(in)
}

// bare is a key that is no more than a name.
func bare(name string) func(string) (float64, bool) {
	return func(unit string) (float64, bool) { return 1, unit == name }
}

func (s *told) answer(in *inputs) (map[string]any, error) {
	var one quantity
	for _, q := range []quantity{s.byVolume, s.byWeight, s.inVolume, s.ppm} {
		if !q.given {
			continue
		}
		if err := in.twice(one, q); err != nil {
			return nil, err
		}
		if strings.HasPrefix(q.key, "percent_") && q.base > 1 {
			return nil, &InputError{Key: q.key, Value: in.value[q.key], Want: "at most 100 per cent"}
		}
		one = q
	}
	out := answers{}
	switch {
	case s.share.base > 1:
		return nil, &InputError{Key: s.share.key, Value: in.value[s.share.key], Want: "at most 100 per cent"}
	case s.byVolume.given:
		out.per("", "volume", volumeUnits, "volume", mixUnits, s.byVolume.base)
		out["fraction"] = s.byVolume.base
		if s.mix.given {
			out.plain("", "volume", volumeUnits, s.byVolume.base*s.mix.base)
		}
	case s.byWeight.given:
		if !s.density.given {
			return nil, &MissingError{Kind: in.kind, What: "density_lb_per_gal"}
		}
		// A source tells pounds and ounces by the density and grams as weight in volume, in one line; so does this.
		s.weigh(out, []string{"oz", "lb"}, batch.PerCentByWeight(s.byWeight.base, measure.Concentration(s.density.base)))
		s.weigh(out, []string{"g", "kg"}, batch.PerCentInVolume(s.byWeight.base))
	case s.inVolume.given:
		s.weigh(out, massUnits, batch.PerCentInVolume(s.inVolume.base))
	case s.ppm.given:
		share := 1.0
		if s.share.given {
			share = s.share.base
		}
		s.weigh(out, massUnits, batch.PartsPerMillion(s.ppm.base, share))
	default:
		return nil, &MissingError{Kind: in.kind, What: "percent_vv, percent_ww, percent_wv or ppm"}
	}
	return out, nil
}

// weigh answers a weight of product in a volume of mix, and in all of it.
func (s *told) weigh(out answers, units []string, c measure.Concentration) {
	out.per("", "mass", units, "volume", mixUnits, float64(c))
	if s.mix.given {
		out.plain("", "mass", units, float64(c)*s.mix.base)
	}
}
