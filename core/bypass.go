package core

import (
	"math"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// bypassWith is what goes through the bypass while an applicator gives v through its hose: v times what the pump gives
// beside it, over its flow (mass balance). It is unknown where the pump's output or the applicator's flow is not in the
// book, where nothing goes round, and for an applicator that lays from a tank of its own.
func (s *state) bypassWith(a *Applicator, v measure.Volume) Maybe[measure.Volume] {
	if a == nil || a.Tank > 0 {
		return Maybe[measure.Volume]{}
	}
	return s.bypassThrough(s.plumbing, a.Hose, a.Flow, v)
}

// bypassThrough is bypassWith for a hose of some plumbing and a flow at its nozzle. The pump runs while air leaves the hose
// too.
func (s *state) bypassThrough(p *fluid.Plumbing, hose string, flow Maybe[measure.Flow], v measure.Volume) Maybe[measure.Volume] {
	if s.rig == nil || !s.rig.PumpFlow.Known || !flow.Known {
		return Maybe[measure.Volume]{}
	}
	gun, pump := float64(flow.V), float64(s.rig.PumpFlow.V)
	if !(gun > 0) || !(pump > gun) || v <= 0 {
		return Maybe[measure.Volume]{}
	}
	through := float64(v)
	if h := p.Hose(hose); h != nil {
		through += float64(h.AirBefore(v))
	}
	most := float64(LargestVolume)
	return Known(measure.Volume(math.RoundToEven(min(float64(through*((pump-gun)/gun)), most))))
}

// BypassAtHose is what goes through the bypass while v is pushed through a hose of a sketch of the plumbing; the empty name
// is the first one.
func (b *Book) BypassAtHose(p *fluid.Plumbing, hose string, v measure.Volume) Maybe[measure.Volume] {
	return b.bypassThrough(p, hose, b.flowAt(hose), v)
}

// flowAt is the flow at the nozzle of a hose: of the first applicator that hangs on it, sprays from no tank of its own
// and has a flow.
func (s *state) flowAt(hose string) Maybe[measure.Flow] {
	h := s.plumbing.Hose(hose)
	if h == nil {
		return Maybe[measure.Flow]{}
	}
	for i := range s.rig.Applicators {
		if a := &s.rig.Applicators[i]; a.Hose == h.Name && a.Tank == 0 && a.Flow.Known {
			return a.Flow
		}
	}
	return Maybe[measure.Flow]{}
}

// resolvePushedBack fills in the bypass of the gun that hangs on the hose.
func (s *state) resolvePushedBack(f *PushedBack) (Fact, error) {
	c := *f
	c.Bypass = s.bypassAt(f.Hose, f.Volume, f.Bypass)
	return &c, nil
}

// resolveFilled fills in the bypass of the gun that hangs on the hose through which the tank is filled.
func (s *state) resolveFilled(f *Filled) (Fact, error) {
	c := *f
	if a := s.Applicator(f.Applicator); a != nil {
		c.Bypass = s.bypassAt(a.Hose, f.Volume, f.Bypass)
	}
	return &c, nil
}

// bypassAt is the bypass that was given, or else what goes round while v leaves a hose.
func (s *state) bypassAt(hose string, v measure.Volume, given Maybe[measure.Volume]) Maybe[measure.Volume] {
	if given.Known {
		return given
	}
	return s.bypassThrough(s.plumbing, hose, s.flowAt(hose), v)
}

// admitPump refuses a pump that gives nothing, or more than any of its kind, and one that gives less than an applicator
// that it feeds needs.
func admitPump(f *Rig) error {
	if !f.PumpFlow.Known {
		return nil
	}
	if !(f.PumpFlow.V > 0) || f.PumpFlow.V > measure.GPM(LargestFlowGPM) {
		return refuse("Give more than 0 and up to 500 gpm, or leave it out.", "The flow of the pump is %s.", f.PumpFlow.V.Text())
	}
	for _, a := range f.Applicators {
		if a.Tank > 0 || a.Type == Spreader {
			continue // it has a pump of its own, or needs none
		}
		flows := []Maybe[measure.Flow]{a.Flow}
		for _, t := range a.Tips {
			flows = append(flows, t.Flow)
		}
		for _, flow := range flows {
			if flow.Known && flow.V > f.PumpFlow.V {
				return refuse("Correct one of the two, or leave the flow of the pump out.", "%s gives %s, more than the pump, which gives %s.", a.Name, flow.V.Text(), f.PumpFlow.V.Text())
			}
		}
	}
	return nil
}
