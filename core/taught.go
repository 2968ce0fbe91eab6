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
	return s.expectedAfter(c, gaugedDraw{})
}

// ExpectedAfter is what a compartment will hold after an applicator took so much by area times rate, with the standard deviation
// of that: what it really takes is as uncertain as its factor and as one job differs from the next. Below 0 it falls short.
func (s *state) ExpectedAfter(c *fluid.Compartment, applicator string, byRate measure.Volume) (v, sd measure.Volume, ok bool) {
	a := s.Applicator(applicator)
	if a == nil {
		return 0, 0, false
	}
	gal := byRate.Gallons()
	v, sd, ok = s.expectedAfter(c, gaugedDraw{a.Name, a.Delivery.V, byRate, float64(gal * gal)})
	return v - byRate, sd, ok
}

// expectedAfter counts one draw more than those since the last reading; one of nothing is none. What is booked does not yet
// have it.
func (s *state) expectedAfter(c *fluid.Compartment, more gaugedDraw) (v, sd measure.Volume, ok bool) {
	g, i := s.gauged, s.gauged.tankAt(c.Letter)
	if i < 0 {
		return 0, 0, false
	}
	t := &g.tanks[i]
	if len(t.draws) == 0 && !s.tied(i) {
		return 0, 0, false
	}
	tank := float64(c.Capacity.Gallons() * s.Setting(GaugeErrorPct) / 100)
	mean, variance := g.mean[i], g.cov[i][i]+float64(float64(tank*tank)*float64(t.loads))
	if !t.begun { // it was loaded when it was empty, and not read since
		variance += float64(tank * tank)
	}
	job := s.Setting(JobErrorPct) / 100
	draw := func(n int) gaugedDraw {
		if n < len(t.draws) {
			return t.draws[n]
		}
		return more
	}
	all := len(t.draws)
	if more.volume > 0 {
		all++
	}
	for n := range all {
		d := draw(n)
		k := g.factorAt(d.applicator, d.delivery)
		if k < 0 || float64(g.factors[k].n) < s.Setting(FactorReadings) {
			return 0, 0, false
		}
		k += len(g.tanks)
		gal := d.volume.Gallons()
		mean -= float64(g.mean[k] * gal)
		variance += float64(float64(job*job)*d.squares) - float64(2*gal*g.cov[i][k])
		for m := range all {
			o := draw(m)
			if with := g.factorAt(o.applicator, o.delivery); with >= 0 {
				variance += float64(float64(gal*o.volume.Gallons()) * g.cov[k][len(g.tanks)+with])
			}
		}
	}
	other := float64(max(c.Moved-t.drawn(), 0).Gallons() * s.Setting(RateErrorPct) / 100)
	variance += float64(other * other)
	v = c.Liquid.Volume + gallonsOf(mean)
	if more.volume == 0 {
		v = max(v, 0)
	}
	return v, gallonsOf(math.Sqrt(max(variance, 0))), true
}

// tied tells whether the last reading of a tank said something of an applicator of which enough is known: then it is known
// better than the reading alone says.
func (s *state) tied(tank int) bool {
	g := s.gauged
	if !g.tanks[tank].begun {
		return false
	}
	for k := range g.factors {
		if g.cov[tank][len(g.tanks)+k] != 0 && float64(g.factors[k].n) >= s.Setting(FactorReadings) {
			return true
		}
	}
	return false
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
