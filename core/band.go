package core

import (
	"math"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Band is how far what is left in a tank may be from the truth: the error of the last reading or load (what the chart of its
// gauge said of the reading, else a share of the tank) and that of what was drawn since (a share of it), as root of the sum of
// squares. Both shares are settings. Where gauges have shown enough of the applicators that drew from a compartment, they say it.
func (s *state) Band(t *fluid.Tank) measure.Volume {
	if sd, ok := s.gaugedBand(t); ok {
		return sd
	}
	g := float64(t.Capacity) * (s.Setting(GaugeErrorPct) / 100)
	if t.ReadBand > 0 {
		g = float64(t.ReadBand)
	}
	r := float64(t.Moved) * (s.Setting(RateErrorPct) / 100)
	return measure.Volume(math.RoundToEven(math.Sqrt(float64(g*g) + float64(r*r))))
}

// SupplyBand is the band of all compartments that are open to the pump.
func (s *state) SupplyBand() measure.Volume {
	var sum float64
	for _, l := range s.plumbing.LineUp.Supply {
		if c := s.plumbing.Compartment(l); c != nil {
			v := float64(s.Band(&c.Tank))
			sum += float64(v * v)
		}
	}
	return measure.Volume(math.RoundToEven(math.Sqrt(sum)))
}
