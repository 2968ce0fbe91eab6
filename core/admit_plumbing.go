package core

import "example.com/tintline/core/measure"

// admitPlumbing admits what pressure, levelling, gauges and tint rest on. All of it may be left out; the pump's flow is
// admitted with the bypass.
func admitPlumbing(f *Rig) error {
	if err := admitCell(f); err != nil {
		return err
	}
	if err := psi("The pressure of the pump", f.PumpPSI); err != nil {
		return err
	}
	for _, l := range []struct {
		what, do, unit string
		v              Maybe[measure.Length]
		most, one      measure.Length
	}{
		{"inside diameter", "Give more than 0 and up to 12 in, or leave it out.", "in", f.CrossBore, WidestBore, measure.Inches(1)},
		{"length", "Give more than 0 and up to 10,000 ft, or leave it out.", "ft", f.CrossLength, LongestHose, measure.Feet(1)},
	} {
		if l.v.Known && (l.v.V <= 0 || l.v.V > l.most) {
			return refuse(l.do, "The %s of the path between two compartments is %.6g %s.", l.what, float64(l.v.V)/float64(l.one), l.unit)
		}
	}
	if k := f.CrossLoss; k.Known && (!(k.V > 0) || k.V > LargestLoss) {
		return refuse("Give more than 0 and up to 1,000, or leave it out.", "The loss coefficients of the path between two compartments sum to %g.", k.V)
	}
	for i := range f.Compartments {
		if err := admitKept(&f.Compartments[i]); err != nil {
			return err
		}
	}
	for i := range f.Hoses {
		if err := admitHoseFigures(&f.Hoses[i]); err != nil {
			return err
		}
	}
	for _, a := range f.Applicators {
		if err := psi("The pressure that "+a.Name+" needs", a.PSI); err != nil {
			return err
		}
	}
	return nil
}

// admitCell admits the suction pipe and the dead legs, which count in the cell, and the whole of it.
func admitCell(f *Rig) error {
	if err := bounded("The suction pipe", f.Suction); err != nil {
		return err
	}
	var names []string
	whole := f.Cell + f.Suction
	for _, d := range f.DeadLegs {
		if err := name("dead leg", d.Name); err != nil {
			return err
		}
		if err := positive("The dead leg "+d.Name, d.Volume); err != nil {
			return err
		}
		names = append(names, d.Name)
		if whole += d.Volume; whole > LargestVolume {
			break
		}
	}
	if err := unique("dead leg", names); err != nil {
		return err
	}
	return bounded("The cell with suction pipe and dead legs", whole)
}

func psi(what string, p Maybe[float64]) error {
	if p.Known && (!(p.V > 0) || p.V > HighestPSI) {
		return refuse("Give more than 0 and up to 1,000 psi, or leave it out.", "%s is %g psi.", what, p.V)
	}
	return nil
}

// admitKept admits what is said of what a compartment keeps and how it is read.
func admitKept(c *RigCompartment) error {
	if c.Tint != "" {
		if err := name("tint of "+string(c.Letter), c.Tint); err != nil {
			return err
		}
	}
	switch c.Agitation {
	case "", Paddle, Jet, NotAgitated:
	default:
		return refuse("Write paddle, jet or none, or leave it out.", "Compartment %c is agitated by %q.", c.Letter, c.Agitation)
	}
	switch c.MarkUnit {
	case "", MarksInches, MarksCentims:
	default:
		return refuse("Write in or cm, or leave it out where the marks are no depths.", "The marks of the gauge of %c are in %q.", c.Letter, c.MarkUnit)
	}
	switch {
	case c.Plan.Known && (c.Plan.V <= 0 || c.Plan.V > LargestArea):
		return refuse("Give more than 0 sq ft, or leave it out.", "Compartment %c has %s sq ft seen from above.", c.Letter, c.Plan.V.Text())
	case c.Floor.Known && (c.Floor.V < 0 || c.Floor.V > FarthestGauge):
		return refuse("Give 0 to 240 in, or leave it out; the lowest compartment has 0.", "The floor of %c is %.4g in above that of the lowest.", c.Letter, c.Floor.V.Inches())
	case c.GaugeOff.Known && (c.GaugeOff.V < 0 || c.GaugeOff.V > FarthestGauge):
		return refuse("Give 0 to 240 in, or leave it out.", "The gauge of %c is %.4g in from the middle.", c.Letter, c.GaugeOff.V.Inches())
	}
	return nil
}

// admitHoseFigures admits what a hose weighs and a measured pair of pressures: the one at the pump is higher, by what the
// hose takes of it.
func admitHoseFigures(h *RigHose) error {
	switch {
	case h.Outside.Known && (h.Outside.V <= 0 || h.Outside.V > WidestBore):
		return refuse("Give more than 0 and up to 12 in, or leave it out.", "The outside diameter of hose %s is %.3g in.", h.Name, h.Outside.V.Inches())
	case h.Outside.Known && h.Bore.Known && h.Outside.V <= h.Bore.V:
		return refuse("Correct one of the two.", "The outside diameter of hose %s is %.3g in, its inside diameter %.3g in.", h.Name, h.Outside.V.Inches(), h.Bore.V.Inches())
	case h.DryWeight.Known && (h.DryWeight.V <= 0 || h.DryWeight.V > LargestHopper):
		return refuse("Give more than 0 and up to 22,000 lb, or leave it out.", "Hose %s weighs %.6g lb empty.", h.Name, h.DryWeight.V.Pounds())
	}
	if !h.PairFlow.Known && !h.PairPump.Known && !h.PairGun.Known {
		return nil
	}
	switch {
	case !h.PairFlow.Known || !h.PairPump.Known || !h.PairGun.Known:
		return refuse("Give the flow and both pressures, or none of them.", "Of the measured pair of pressures of hose %s not all is given.", h.Name)
	case !(h.PairFlow.V > 0) || h.PairFlow.V > measure.GPM(LargestFlowGPM):
		return refuse("Give more than 0 and up to 500 gpm.", "The pressures of hose %s were measured at %s.", h.Name, h.PairFlow.V.Text())
	case !(h.PairGun.V >= 0) || !(h.PairPump.V > 0) || h.PairPump.V > HighestPSI:
		return refuse("Give 0 to 1,000 psi.", "The pressures of hose %s are %g psi at the pump and %g psi at the gun.", h.Name, h.PairPump.V, h.PairGun.V)
	case h.PairGun.V >= h.PairPump.V:
		return refuse("Correct one of the two; the hose takes some of the pressure.", "Hose %s has %g psi at the pump and %g psi at the gun.", h.Name, h.PairPump.V, h.PairGun.V)
	}
	return nil
}
