package calib

import "math"

// Mean is the mean of figures; 0 of none.
func Mean(list []float64) float64 {
	if len(list) == 0 {
		return 0
	}
	sum := 0.0
	for _, f := range list {
		sum += f
	}
	return sum / float64(len(list))
}

// SpreadOf is how far the figure that lies farthest from the mean is from it, as a share of the mean.
func SpreadOf(list []float64) float64 {
	mean, most := Mean(list), 0.0
	if mean == 0 {
		return 0
	}
	for _, f := range list {
		most = max(most, math.Abs(f-mean))
	}
	return most / mean
}

// Variation is the coefficient of variation: the standard deviation of a sample over its mean, as a share; 0 of fewer
// than two.
func Variation(list []float64) float64 {
	mean := Mean(list)
	if len(list) < 2 || mean == 0 {
		return 0
	}
	sum := 0.0
	for _, f := range list {
		sum += float64((f - mean) * (f - mean))
	}
	return math.Sqrt(sum/float64(len(list)-1)) / mean
}
