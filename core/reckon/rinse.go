package reckon

import (
	"math"

	"example.com/tintline/core/batch"
	"example.com/tintline/core/hydraulics"
)

// rinse answers what is left of the old liquid: after equal rinses of a residual, or after a flow through a mixed volume.
func rinse(in *inputs) (map[string]any, error) {
	flow, err := in.one("flow_", plain("flow"), false)
	if err != nil {
		return nil, err
	}
	volumes, err := in.several(plain("volume"), true, "volume", "residual", "rinse_total", "rinse_each")
	if err != nil {
		return nil, err
	}
	time, err := in.one("time_", duration, false)
	if err != nil {
		return nil, err
	}
	n, counted, err := in.bare("rinses", true)
	if err != nil {
		return nil, err
	}
	share, asked, err := in.bare("target_fraction", true)
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	if counted && (n != math.Trunc(n) || n > 1000) {
		return nil, &InputError{Key: "rinses", Value: in.value["rinses"], Want: "a whole number from 1 to 1000"}
	}
	if asked && share >= 1 {
		return nil, &InputError{Key: "target_fraction", Value: in.value["target_fraction"], Want: "below 1"}
	}
	if volumes["volume"].given || flow.given || time.given {
		return in.washout(volumes["volume"], flow, time)
	}
	return in.rinses(volumes, int(n), share)
}

func (in *inputs) washout(volume, flow, time quantity) (map[string]any, error) {
	switch {
	case !volume.given:
		return nil, in.missing("volume_gal")
	case !flow.given:
		return nil, in.missing("flow_gpm")
	case !time.given:
		return nil, in.missing("time_min")
	}
	share, working, err := batch.WashedOut(gallonsOf(volume), gpm(flow), time.base/60)
	if err != nil {
		return nil, err
	}
	out := answers{"fraction_old": share}
	out.working(working)
	return out, nil
}

// rinses answers the one of water, number and share that is not given; with all three the share reached.
func (in *inputs) rinses(volumes map[string]quantity, n int, share float64) (map[string]any, error) {
	residual, total, each := volumes["residual"], volumes["rinse_total"], volumes["rinse_each"]
	if total.given && each.given {
		return nil, in.twice(total, each)
	}
	ask := batch.RinseAsk{Residual: gallonsOf(residual), Rinses: n, Share: share}
	switch {
	case !residual.given:
		return nil, in.missing("residual_gal (or volume_gal with flow_gpm and time_min)")
	case n > 0 && total.given:
		ask.Water = gallonsOf(total)
	case n > 0 && each.given:
		ask.Water = gallonsOf(each) * hydraulics.Gallons(float64(n))
	case n > 0 && share > 0:
	case each.given && share > 0:
		ask.Water = gallonsOf(each)
	case n == 0:
		return nil, in.missing("rinses (or rinse_each_gal with target_fraction)")
	default:
		return nil, in.missing("rinse_total_gal, rinse_each_gal or target_fraction")
	}
	got, err := ask.Work()
	if err != nil {
		return nil, err
	}
	out := answers{"fraction_old": got.Share, "rinses": float64(got.Rinses)}
	out.working(got.Steps)
	out.gallons("rinse_total_", got.Water)
	out.gallons("rinse_each_", got.Each)
	return out, nil
}
