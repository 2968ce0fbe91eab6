package check

import (
	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

func smoothLoss(measure.Flow, measure.Length, measure.Length) measure.Pressure { return 0 }

func riseOf(measure.Length) measure.Pressure { return 0 }

func dryWeight(outside, bore, length measure.Length) measure.Mass { return 0 }

func waterWeight(measure.Volume) measure.Mass { return 0 }

func (p *Pressure) factor(core.RigHose) { p.Factor, p.FactorLow, p.FactorHigh = 1.15, 1, 1.3 }
