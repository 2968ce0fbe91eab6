package check

import (
	"fmt"

	"example.com/tintline/core"
)

const (
	aboutPressure = "pressure"
	aboutFlow     = "pump flow"
)

// pump is what the pump cannot give: more flow than it has, which is asked about, because area times rate is then not what
// goes down; or the pressure for nozzle and hose, which is noted once a day.
func (s *situation) pump() []Finding {
	if f, found := s.flowAbovePump(); found {
		return []Finding{f}
	}
	p, _, ok := pressure(s.b, s.with.Name)
	if !ok || !p.Short.Known || p.Short.V <= 0 || s.saidSince(core.Moment{}) {
		return nil
	}
	p.compare()
	f := Finding{
		Weight: Note, About: aboutPressure, Part: PartRig, Unit: "psi", Ground: GroundPractice, Source: "pressure lost in a hose by Darcy and Weisbach, " + p.factorWords(),
		Figured: core.Known(p.Must.V.PSI()), Limit: s.b.Rig().PumpPSI,
	}
	f.Says = fmt.Sprintf("%s needs %s and hose %s takes %s at %s%s: %s, and the pump gives %s.",
		p.NeedsOf, psi(p.Needs.V), p.Hose, psi(p.Loss.V), p.Flow.V.Text(), p.rangeWords(), psi(p.Must.V), psi(p.Pump.V))
	f.Do = "Time the flow at the nozzle, and enter it." + p.wider()
	return []Finding{f}
}

// rangeWords says of a loss that was not measured between which it lies.
func (p *Pressure) rangeWords() string {
	if p.Measured {
		return ""
	}
	return fmt.Sprintf(" (%s to %s)", figurePSI(p.LossLow.V), figurePSI(p.LossHigh.V))
}

func (s *situation) flowAbovePump() (Finding, bool) {
	pump, gun := s.b.Rig().PumpFlow, s.with.Flow
	if !pump.Known || !gun.Known || gun.V <= pump.V {
		return Finding{}, false
	}
	return Finding{
		Weight: Ask, About: aboutFlow, Part: PartRig, Unit: "gal_per_min", Ground: GroundPractice, Source: "how the rig is plumbed",
		Figured: core.Known(gun.V.GPM()), Limit: core.Known(pump.V.GPM()),
		Says: fmt.Sprintf("%s takes %s by the book and the pump gives %s in all: less would go down than the time says.", s.nozzleName(), gun.V.Text(), pump.V.Text()),
		Do:   "Fit a smaller tip, or enter both flows as they are.",
	}, true
}

// nozzleName is the applicator, with the tip that is on.
func (s *situation) nozzleName() string {
	if tip := s.b.FittedTip(s.with.Name); tip != "" {
		return s.with.Name + " with tip " + tip
	}
	return s.with.Name
}

// wider names the narrowest of the usual bores with which the pump would do.
func (p *Pressure) wider() string {
	for _, o := range p.Bores {
		if o.Bore > p.Bore.V && o.Must.Known && o.Must.V <= p.Pump.V {
			return fmt.Sprintf(" A hose of %s would do with %s, and holds %s.", inches(o.Bore), psi(o.Must.V), gal(o.Holds))
		}
	}
	return ""
}
