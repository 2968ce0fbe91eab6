package check

import (
	"example.com/tintline/core"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// factor is that of the measured pair of pressures, where it says something; else the usual one with its range.
func (p *Pressure) factor(r core.RigHose) {
	p.Factor, p.FactorLow, p.FactorHigh = hydraulics.HoseFactor, hydraulics.FactorLow, hydraulics.FactorHigh
	if !r.PairFlow.Known || !r.PairPump.Known || !r.PairGun.Known || !r.Bore.Known || !r.Length.Known {
		return
	}
	f, ok := hydraulics.FactorOf(r.PairFlow.V, r.Bore.V, r.Length.V, measure.PSI(r.PairPump.V), measure.PSI(r.PairGun.V), hydraulics.Temperature)
	if ok {
		p.Factor, p.FactorLow, p.FactorHigh, p.Measured = f, f, f, true
	}
}

// smoothLoss is the loss along a smooth hose, without fittings.
func smoothLoss(q measure.Flow, bore, length measure.Length) measure.Pressure {
	return hydraulics.Loss(q, bore, length, 0, hydraulics.Temperature, 1)
}

func riseOf(height measure.Length) measure.Pressure {
	return hydraulics.StaticHead(height, hydraulics.Temperature)
}

func dryWeight(outside, bore, length measure.Length) measure.Mass {
	return hydraulics.DryWeight(bore, outside, length)
}

// waterWeight takes a mix for water: it is a few per cent heavier at most.
func waterWeight(v measure.Volume) measure.Mass {
	return hydraulics.WaterWeight(hydraulics.Of(v), hydraulics.Temperature)
}
