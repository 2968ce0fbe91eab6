package calib

import "example.com/tintline/core/hydraulics"

// coarseFrom is the step of a gauge, in standard deviations of what is expected, from which a reading is taken as one that
// only says between which marks it lies: what is in between is then far from normal. The figure is a rule of thumb.
const coarseFrom = 2

// Coarse tells whether a gauge's step is so large against what is known of a tank that a reading is to be taken with
// ReadBetween.
func (f *Filter) Coarse(tank int, step float64) bool {
	_, sd := f.Gallons(tank)
	return step > coarseFrom*sd
}

func remaining(f *Filter, tank int) hydraulics.Remaining {
	return hydraulics.Remaining{Volume: f.Mean[tank], VV: f.Cov[tank][tank]}
}
