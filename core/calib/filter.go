package calib

import (
	"math"
	"slices"
)

// Filter is what is known of what stands in each tank, in gallons, and of the factor by which each applicator puts down
// more than area times rate says, all together: the errors of the factors do not average out, and they tie the tanks to
// one another. The estimate is the linear Bayesian one (Kalman 1960). Tanks come first, then applicators.
//
// A method that changes it changes nothing that another Filter shares: those that are taken with Copy.
type Filter struct {
	Tanks, Applicators int
	Mean               []float64
	Cov                [][]float64
}

// NewFilter knows nothing: tanks hold nothing, surely, and all factors are 1, surely.
func NewFilter(tanks, applicators int) *Filter {
	n := tanks + applicators
	f := &Filter{Tanks: tanks, Applicators: applicators, Mean: make([]float64, n), Cov: make([][]float64, n)}
	for i := range n {
		f.Cov[i] = make([]float64, n)
		if i >= tanks {
			f.Mean[i] = 1
		}
	}
	return f
}

// Copy is one of its own.
func (f *Filter) Copy() *Filter {
	c := &Filter{Tanks: f.Tanks, Applicators: f.Applicators, Mean: slices.Clone(f.Mean), Cov: make([][]float64, len(f.Cov))}
	for i := range f.Cov {
		c.Cov[i] = slices.Clone(f.Cov[i])
	}
	return c
}

// factor is the place of an applicator's factor.
func (f *Filter) factor(applicator int) int { return f.Tanks + applicator }

// SetTank begins a tank anew: so much is in it, give or take a standard deviation, whatever was known before.
func (f *Filter) SetTank(tank int, gallons, sd float64) { f.begin(tank, gallons, sd) }

// SetFactor begins the factor of an applicator anew.
func (f *Filter) SetFactor(applicator int, factor, sd float64) {
	f.begin(f.factor(applicator), factor, sd)
}

func (f *Filter) begin(at int, mean, sd float64) {
	for i := range f.Cov {
		f.Cov[at][i], f.Cov[i][at] = 0, 0
	}
	f.Mean[at], f.Cov[at][at] = mean, float64(sd*sd)
}

// Drift lets a factor wander: its variance grows by the square of sd.
func (f *Filter) Drift(applicator int, sd float64) {
	at := f.factor(applicator)
	f.Cov[at][at] += float64(sd * sd)
}

// Moved says that gallons were put in (above 0) or taken out by something that is no applicator, with their own standard
// deviation.
func (f *Filter) Moved(tank int, gallons, sd float64) {
	f.Mean[tank] += gallons
	f.Cov[tank][tank] += float64(sd * sd)
}

// Sprayed says what left a tank through an applicator: area times rate in all, and the root of the sum of the squares of the
// single jobs, which differ from one another by a share. For one job both are its gallons.
func (f *Filter) Sprayed(tank, applicator int, gallons, rootSquares, share float64) {
	k := f.factor(applicator)
	f.Mean[tank] -= float64(f.Mean[k] * gallons)
	noise := share * rootSquares
	spread := f.Cov[tank][tank] - float64(2*gallons*f.Cov[tank][k]) + float64(float64(gallons*gallons)*f.Cov[k][k]) + float64(noise*noise)
	for i := range f.Cov {
		if i != tank {
			f.Cov[tank][i] -= float64(gallons * f.Cov[k][i])
			f.Cov[i][tank] = f.Cov[tank][i]
		}
	}
	f.Cov[tank][tank] = spread
}

// Off is how many standard deviations a reading with its own standard deviation lies from what is expected of a tank.
func (f *Filter) Off(tank int, gallons, sd float64) float64 {
	all := f.Cov[tank][tank] + float64(sd*sd)
	switch {
	case all > 0:
		return math.Abs(gallons-f.Mean[tank]) / math.Sqrt(all)
	case gallons == f.Mean[tank]:
		return 0
	}
	return math.Inf(1)
}

// Read takes a reading of a tank, with its standard deviation.
func (f *Filter) Read(tank int, gallons, sd float64) {
	all := f.Cov[tank][tank] + float64(sd*sd)
	if !(all > 0) {
		return
	}
	f.shift(tank, (gallons-f.Mean[tank])/all, 1/all)
}

// ReadBetween takes a reading that says only that a tank holds from low to high, exactly: the moments of the normal
// distribution cut off at both ends. It is false, and nothing is changed, where the reading says something else than what
// is expected: less than one in a million.
func (f *Filter) ReadBetween(tank int, low, high float64) bool {
	r := remaining(f, tank)
	after, ok := r.Between(low, high)
	if !ok {
		return false
	}
	v := f.Cov[tank][tank]
	f.shift(tank, (after.Volume-r.Volume)/v, (1-after.VV/v)/v)
	return true
}

// shift moves all means by by times their covariance with a tank, and takes less times the products of those out of the
// covariance.
func (f *Filter) shift(tank int, by, less float64) {
	with := slices.Clone(f.Cov[tank])
	for i := range f.Mean {
		f.Mean[i] += float64(with[i] * by)
		for j := range f.Mean {
			f.Cov[i][j] -= float64(float64(with[i]*with[j]) * less)
		}
	}
}

// Gallons are what a tank holds, with the standard deviation.
func (f *Filter) Gallons(tank int) (gallons, sd float64) {
	return f.Mean[tank], math.Sqrt(max(f.Cov[tank][tank], 0))
}

// Factor is that of an applicator, with the standard deviation.
func (f *Filter) Factor(applicator int) (factor, sd float64) {
	at := f.factor(applicator)
	return f.Mean[at], math.Sqrt(max(f.Cov[at][at], 0))
}

// Correlation of a tank's gallons with a factor; 0 where one of them is known exactly.
func (f *Filter) Correlation(tank, applicator int) float64 {
	at := f.factor(applicator)
	if d := math.Sqrt(f.Cov[tank][tank] * f.Cov[at][at]); d > 0 {
		return f.Cov[tank][at] / d
	}
	return 0
}
