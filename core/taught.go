package core

import (
	"math"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Taught is what gauges have shown of an applicator at its delivery rate in force: what leaves it against what area times
// rate says.
type Taught struct {
	Applicator string
	Ratio, SD  float64 // 1.06 puts down 6 per cent more than is thought
	Readings   int     // that were learned from
	Odd        int     // that lay too far off
	Enough     bool    // as many as the setting asks for before it is used
}

// Taught is what gauges have shown of an applicator; false before the first reading after it was used by area.
func (s *state) Taught(applicator string) (Taught, bool) {
	a := s.Applicator(applicator)
	if a == nil || s.gauged == nil {
		return Taught{}, false
	}
	k := s.gauged.factorAt(applicator, a.Delivery.V)
	if k < 0 {
		return Taught{}, false
	}
	f := s.gauged.factors[k]
	t := Taught{Applicator: applicator, Readings: int(f.n), Odd: int(f.odd), Enough: float64(f.n) >= s.Setting(FactorReadings)}
	t.Ratio, t.SD = s.gauged.filter().Factor(k)
	t.Ratio++
	return t, true
}

// RatioOf is by what area times rate is multiplied to say what an applicator will take: 1 until enough was read.
func (s *state) RatioOf(applicator string) float64 {
	if t, ok := s.Taught(applicator); ok && t.Enough {
		return max(t.Ratio, 0)
	}
	return 1
}

// Expected is what a compartment holds as far as all that is known says: booked, put right by what its applicators are
// known to put down, with the standard deviation. It is false where that is not enough to say more than what is booked.
func (s *state) Expected(c *fluid.Compartment) (v, sd measure.Volume, ok bool) {
	i := s.gauged.tankAt(c.Letter)
	if i < 0 {
		return 0, 0, false
	}
	g, t := s.gauged, &s.gauged.tanks[i]
	if !t.begun || len(t.draws) == 0 {
		return 0, 0, false
	}
	mean, variance := g.mean[i], g.cov[i][i]
	job := s.Setting(JobErrorPct) / 100
	for _, d := range t.draws {
		k := g.factorAt(d.applicator, d.delivery)
		if k < 0 || float64(g.factors[k].n) < s.Setting(FactorReadings) {
			return 0, 0, false
		}
		k += len(g.tanks)
		gal := d.volume.Gallons()
		mean -= float64(g.mean[k] * gal)
		variance += float64(float64(job*job)*d.squares) - float64(2*gal*g.cov[i][k])
		for _, o := range t.draws {
			if with := g.factorAt(o.applicator, o.delivery); with >= 0 {
				variance += float64(float64(gal*o.volume.Gallons()) * g.cov[k][len(g.tanks)+with])
			}
		}
	}
	loaded := float64(c.Capacity.Gallons() * s.Setting(GaugeErrorPct) / 100)
	variance += float64(float64(loaded*loaded) * float64(t.loads))
	other := float64(max(c.Moved-t.drawn(), 0).Gallons() * s.Setting(RateErrorPct) / 100)
	variance += float64(other * other)
	v = max(c.Liquid.Volume+gallonsOf(mean), 0)
	return v, gallonsOf(math.Sqrt(max(variance, 0))), true
}

func gallonsOf(f float64) measure.Volume {
	return measure.Volume(math.RoundToEven(f * float64(measure.USGallon)))
}

// gaugedBand is the band of a tank of the truck by all that gauges have shown; false where the settings' shares stand.
func (s *state) gaugedBand(t *fluid.Tank) (measure.Volume, bool) {
	for i := range s.plumbing.Compartments {
		if c := &s.plumbing.Compartments[i]; &c.Tank == t {
			_, sd, ok := s.Expected(c)
			return sd, ok
		}
	}
	return 0, false
}
