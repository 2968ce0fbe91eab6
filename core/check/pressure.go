package check

import (
	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Pressure is what the hose of an applicator takes of the pump's pressure, and what another one would.
type Pressure struct {
	Applicator, Hose string
	Flow             core.Maybe[measure.Flow]
	Bore, Length     core.Maybe[measure.Length]
	// Factor is what the friction of the hose is to that of a smooth pipe, with the range that it may lie in. Where a pair of
	// pressures was measured it comes of that, and Low and High are it too.
	Factor, FactorLow, FactorHigh float64
	Measured                      bool
	// Loss is that along the hose at the flow, at Factor; LossLow and LossHigh at the ends of its range.
	Loss, LossLow, LossHigh core.Maybe[measure.Pressure]
	// Needs is the pressure at the applicator's inlet for that flow; NeedsOf says whose figure it is: a tip's name, or the
	// applicator's.
	Needs   core.Maybe[measure.Pressure]
	NeedsOf string
	Pump    core.Maybe[measure.Pressure] // the most that the pump gives
	Must    core.Maybe[measure.Pressure] // what it has to give: Needs and Loss
	Short   core.Maybe[measure.Pressure] // by how much it gives too little; below 0: what it has to spare
	PerFoot measure.Pressure             // for each foot that the nozzle is above the pump
	Holds   measure.Volume               // by the book
	Seconds core.Maybe[float64]          // to push that out
	// Dry is the hose empty, Filled with what it holds. DryOf says where the first comes from.
	Dry, Filled core.Maybe[measure.Mass]
	DryOf       string
	Bores       []OtherHose // the same length in other bores
	Lengths     []OtherHose // the same bore in other lengths
	Unknown     []string    // what has to be entered for what is unknown here
}

// OtherHose is a hose that could stand in its place, at the same flow.
type OtherHose struct {
	Bore, Length measure.Length
	Loss         measure.Pressure
	Must         core.Maybe[measure.Pressure]
	Holds        measure.Volume // by geometry
	Seconds      float64
	Filled       measure.Mass // the dry part is assumed
	Same         bool         // it is the one on the rig
}

// Where the dry weight of a hose comes from.
const (
	DryEntered = "entered"
	DryOutside = "assumed from the outside diameter that was entered"
	DryBore    = "assumed from an outside diameter that is usual for the bore"
)

// PressureOf works that out for an applicator (empty: the first that draws through a hose). It is false where the book
// has no such applicator, or it does not draw through a hose.
func PressureOf(b *core.Book, applicator string) (Pressure, bool) {
	p, r, ok := pressure(b, applicator)
	if !ok {
		return p, false
	}
	p.weigh(r, b.Plumbing().Hose(p.Hose))
	p.compare()
	p.missing()
	return p, true
}

// pressure is the part of it that a verdict rests on.
func pressure(b *core.Book, applicator string) (p Pressure, r core.RigHose, ok bool) {
	if applicator == "" {
		applicator = FirstApplicator(b)
	}
	a := b.Applicator(applicator)
	if a == nil || b.Rig() == nil || b.Plumbing().Tank(applicator) != nil {
		return p, r, false
	}
	h := b.Plumbing().Hose(a.Hose)
	if h == nil {
		return p, r, false
	}
	p = Pressure{Applicator: applicator, Hose: h.Name, Flow: a.Flow, Holds: h.Size}
	if set := b.RigHose(h.Name); set != nil {
		r = *set
	}
	p.Bore, p.Length = r.Bore, r.Length
	if a.Flow.Known {
		p.Seconds = core.Known(a.Flow.V.Seconds(h.Size))
	}
	p.needs(b, a)
	if b.Rig().PumpPSI.Known {
		p.Pump = core.Known(measure.PSI(b.Rig().PumpPSI.V))
	}
	p.friction(r)
	return p, r, true
}

// needs is the pressure of the tip that is on, else the applicator's own.
func (p *Pressure) needs(b *core.Book, a *core.Applicator) {
	on := b.FittedTip(a.Name)
	for _, t := range a.Tips {
		is := t.Name == on || on == "" && !a.PSI.Known && t.Delivery == a.Delivery && t.Flow == a.Flow
		if is && t.PSI.Known && !p.Needs.Known {
			p.Needs, p.NeedsOf = core.Known(measure.PSI(t.PSI.V)), t.Name
		}
	}
	if !p.Needs.Known && a.PSI.Known {
		p.Needs, p.NeedsOf = core.Known(measure.PSI(a.PSI.V)), a.Name
	}
}

// must is what the pump has to give for a loss.
func (p *Pressure) must(loss measure.Pressure) core.Maybe[measure.Pressure] {
	if !p.Needs.Known {
		return core.Maybe[measure.Pressure]{}
	}
	return core.Known(p.Needs.V + loss)
}

// friction is the loss, by the factor measured or the usual one.
func (p *Pressure) friction(r core.RigHose) {
	p.factor(r)
	p.PerFoot = riseOf(measure.Feet(1))
	if !p.Flow.Known || !p.Bore.Known || !p.Length.Known {
		return
	}
	smooth := smoothLoss(p.Flow.V, p.Bore.V, p.Length.V)
	p.Loss = core.Known(smooth * measure.Pressure(p.Factor))
	p.LossLow, p.LossHigh = core.Known(smooth*measure.Pressure(p.FactorLow)), core.Known(smooth*measure.Pressure(p.FactorHigh))
	p.Must = p.must(p.Loss.V)
	if p.Must.Known && p.Pump.Known {
		p.Short = core.Known(p.Must.V - p.Pump.V)
	}
}

// weigh is what lies on the shoulder, if all of the hose does.
func (p *Pressure) weigh(r core.RigHose, h *fluid.Hose) {
	switch {
	case r.DryWeight.Known:
		p.Dry, p.DryOf = r.DryWeight, DryEntered
	case r.Outside.Known && r.Bore.Known && r.Length.Known:
		p.Dry, p.DryOf = core.Known(dryWeight(r.Outside.V, r.Bore.V, r.Length.V)), DryOutside
	case r.Bore.Known && r.Length.Known:
		p.Dry, p.DryOf = core.Known(dryWeight(outsideOf(r.Bore.V), r.Bore.V, r.Length.V)), DryBore
	default:
		return
	}
	p.Filled = core.Known(p.Dry.V + waterWeight(h.Size))
}

// compare lists the same length in other bores, and the same bore in other lengths.
func (p *Pressure) compare() {
	if !p.Flow.Known || !p.Bore.Known || !p.Length.Known || p.Flow.V <= 0 {
		return
	}
	for _, r := range hoseBores {
		p.Bores = append(p.Bores, p.other(r.bore, p.Length.V))
	}
	for _, r := range hoseLengths {
		p.Lengths = append(p.Lengths, p.other(p.Bore.V, r.length))
	}
}

func (p *Pressure) other(bore, length measure.Length) OtherHose {
	o := OtherHose{Bore: bore, Length: length, Holds: fluid.BoreVolume(bore, length)}
	o.Loss = smoothLoss(p.Flow.V, bore, length) * measure.Pressure(p.Factor)
	o.Must = p.must(o.Loss)
	o.Seconds = p.Flow.V.Seconds(o.Holds)
	o.Filled = dryWeight(outsideOf(bore), bore, length) + waterWeight(o.Holds)
	o.Same = bore == p.Bore.V && length == p.Length.V
	return o
}

func (p *Pressure) missing() {
	for _, m := range []struct {
		known bool
		what  string
	}{
		{p.Flow.Known, "the flow of " + p.Applicator},
		{p.Bore.Known, "the inside diameter of hose " + p.Hose},
		{p.Length.Known, "the length of hose " + p.Hose},
		{p.Needs.Known, "the pressure that " + p.Applicator + " needs"},
		{p.Pump.Known, "the pressure that the pump gives"},
	} {
		if !m.known {
			p.Unknown = append(p.Unknown, m.what)
		}
	}
}
