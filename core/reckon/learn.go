package reckon

import (
	"math"
	"strings"

	"example.com/tintline/core/calib"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// taught is what is known before, and what was read or timed.
type taught struct {
	v, p11, p12, low, high             quantity // a tank, with the factor of an applicator
	k, p22                             float64
	kGiven, p22Given                   bool
	prior, priorSD, flow, time, timeSD quantity // a hose
	flowSD                             float64
	flowSDGiven                        bool
}

// learn answers what a reading of a gauge teaches of a tank and of the factor of an applicator, or what a timed tint
// teaches of a hose.
func learn(in *inputs) (map[string]any, error) {
	t, err := in.taught()
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	hose := t.prior.given || t.priorSD.given || t.flow.given || t.time.given || t.timeSD.given || t.flowSDGiven
	for _, q := range []quantity{t.v, t.low, t.high} {
		if hose && q.given {
			return nil, &InputError{Key: q.key, Value: in.value[q.key], Want: "left out, for a hose is timed"}
		}
	}
	if hose {
		return t.hose(in)
	}
	return t.tank(in)
}

func (in *inputs) taught() (*taught, error) {
	t := &taught{}
	if err := in.readAll([]reading{
		{&t.v, "prior_v_", plain("volume"), false},
		{&t.p11, "p11_", squared, true},
		{&t.low, "reading_low_", plain("volume"), false},
		{&t.high, "reading_high_", plain("volume"), false},
		{&t.priorSD, "prior_sd_", plain("volume"), true},
		{&t.prior, "prior_", plain("volume"), true},
		{&t.flow, "flow_", plain("flow"), true},
		{&t.timeSD, "time_sd_", duration, false},
		{&t.time, "time_", duration, true},
	}); err != nil {
		return nil, err
	}
	var err error
	if t.p12, err = in.signed("p12_", plain("volume")); err != nil {
		return nil, err
	}
	if t.k, t.kGiven, err = in.bare("prior_k", true); err != nil {
		return nil, err
	}
	if t.p22, t.p22Given, err = in.bare("p22", true); err != nil {
		return nil, err
	}
	t.flowSD, t.flowSDGiven, err = in.bare("flow_rel_sd", false)
	return t, err
}

// needed is an input that the others are of no use without.
type needed struct {
	given bool
	key   string
}

func (in *inputs) need(all ...needed) error {
	for _, n := range all {
		if !n.given {
			return &MissingError{Kind: in.kind, What: n.key}
		}
	}
	return nil
}

// tank answers tank and factor after a reading between two marks.
func (t *taught) tank(in *inputs) (map[string]any, error) {
	if err := in.need(
		needed{t.v.given, "prior_v_gal"}, needed{t.kGiven, "prior_k"}, needed{t.p11.given, "p11_gal2"}, needed{t.p12.given, "p12_gal"},
		needed{t.p22Given, "p22"}, needed{t.low.given, "reading_low_gal"}, needed{t.high.given, "reading_high_gal"},
	); err != nil {
		return nil, err
	}
	switch {
	case t.high.base <= t.low.base:
		return nil, &InputError{Key: t.high.key, Value: in.value[t.high.key], Want: "more than " + t.low.key}
	case t.p12.base*t.p12.base > t.p11.base*t.p22:
		return nil, &InputError{Key: t.p12.key, Value: in.value[t.p12.key], Want: "a covariance: its square is at most p11 times p22"}
	}
	f := calib.NewFilter(1, 1)
	f.SetTank(0, t.v.base, math.Sqrt(t.p11.base))
	f.SetFactor(0, t.k, math.Sqrt(t.p22))
	f.Cov[0][1], f.Cov[1][0] = t.p12.base, t.p12.base
	if !f.ReadBetween(0, t.low.base, t.high.base) {
		return nil, &InputError{Key: t.low.key, Value: in.value[t.low.key], Want: "nearer to what is expected: less than one reading in a million lies so far off"}
	}
	out := answers{}
	gallons, sd := f.Gallons(0)
	out.plain("volume_", "volume", volumeUnits, gallons)
	out.plain("sd_volume_", "volume", volumeUnits, sd)
	out["rate_factor"], out["sd_rate_factor"] = f.Factor(0)
	out["correlation"] = f.Correlation(0, 0)
	return out, nil
}

// hose answers what a hose holds after a tint was timed.
func (t *taught) hose(in *inputs) (map[string]any, error) {
	if err := in.need(
		needed{t.prior.given, "prior_gal"}, needed{t.priorSD.given, "prior_sd_gal"}, needed{t.flow.given, "flow_gpm"},
		needed{t.flowSDGiven, "flow_rel_sd"}, needed{t.time.given, "time_s"}, needed{t.timeSD.given, "time_sd_s"},
	); err != nil {
		return nil, err
	}
	seen := hydraulics.Timed(t.flow.base, t.flowSD, t.time.base, t.timeSD.base)
	after := hydraulics.Estimate{Value: t.prior.base, SD: t.priorSD.base}.With(seen)
	out := answers{}
	out.plain("obs_", "volume", volumeUnits, seen.Value)
	out.plain("obs_sd_", "volume", volumeUnits, seen.SD)
	out.plain("post_", "volume", volumeUnits, after.Value)
	out.plain("post_sd_", "volume", volumeUnits, after.SD)
	return out, nil
}

// squared gives the factor of the square of a unit of volume, gal2.
func squared(unit string) (float64, bool) {
	name, ok := strings.CutSuffix(unit, "2")
	f, known := factor("volume", name)
	return f * f, ok && known
}

// signed is one, of a figure that may be below 0.
func (in *inputs) signed(prefix string, unit func(string) (float64, bool)) (quantity, error) {
	for _, key := range in.keys {
		name, ok := strings.CutPrefix(key, prefix)
		f, known := unit(name)
		if !ok || !known {
			continue
		}
		v, err := measure.ParseNumber(in.value[key])
		if err != nil {
			return quantity{}, &InputError{Key: key, Value: in.value[key], Want: "a plain number such as -0.24"}
		}
		in.taken[key] = true
		return quantity{given: true, key: key, base: v * f}, nil
	}
	return quantity{}, nil
}
