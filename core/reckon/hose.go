package reckon

import (
	"example.com/tintline/core/measure"
)

// hose answers what a hose holds and weighs. The figures named low and high are those of the bores that ISO 1307:2006
// allows under the nominal one.
func hose(in *inputs) (map[string]any, error) {
	bore, err := in.bore()
	if err != nil {
		return nil, err
	}
	length, err := in.one("length_", plain("length"), true)
	if err != nil {
		return nil, err
	}
	outside, err := in.one("outside_diameter_", plain("length"), true)
	if err != nil {
		return nil, err
	}
	volume, err := in.one("volume_", plain("volume"), true)
	if err != nil {
		return nil, err
	}
	w, err := in.water()
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	switch {
	case outside.given && !bore.given, length.given && !bore.given:
		return nil, &MissingError{Kind: in.kind, What: "inside_diameter_in"}
	case bore.given && !length.given:
		return nil, &MissingError{Kind: in.kind, What: "length_ft"}
	case bore.given && volume.given:
		return nil, in.twice(bore, volume)
	case !bore.given && !volume.given:
		return nil, &MissingError{Kind: in.kind, What: "inside_diameter_in and length_ft, or volume_gal"}
	case outside.given && outside.base <= bore.base:
		return nil, &InputError{Key: outside.key, Value: in.value[outside.key], Want: "more than " + bore.key}
	}
	out := answers{}
	v := gallonsOf(volume)
	if bore.given {
		p := stream{bore: bore, length: length}.pipe()
		narrow, wide := p.Range()
		v = p.Volume()
		out.gallons("volume_low_", narrow.Volume())
		out.gallons("volume_high_", wide.Volume())
		if outside.given {
			dry := p.DryWeight(outside.base / float64(measure.Metre))
			out.kilograms("dry_weight_", dry)
			out.kilograms("filled_weight_", dry+w.Weight(v))
		}
	}
	out.gallons("volume_", v)
	out.kilograms("weight_", w.Weight(v))
	return out, nil
}
