package core

import (
	"strings"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

func (s *state) admitRig(f *Rig) error {
	if err := name("rig", f.RigName); err != nil {
		return err
	}
	if err := admitCompartments(f); err != nil {
		return err
	}
	for _, v := range []struct {
		what string
		v    measure.Volume
	}{{"The cell", f.Cell}, {"The return line", f.ReturnLine}} {
		if err := bounded(v.what, v.v); err != nil {
			return err
		}
	}
	if err := admitHoses(f); err != nil {
		return err
	}
	if err := admitApplicators(f); err != nil {
		return err
	}
	if err := admitLineUps(f); err != nil {
		return err
	}
	if err := admitPump(f); err != nil {
		return err
	}
	if err := admitPlumbing(f); err != nil {
		return err
	}
	return s.admitRigAround(f)
}

func admitCompartments(f *Rig) error {
	if n := len(f.Compartments); n < 2 || n > 6 {
		return refuse("Give 2 to 6.", "The number of compartments is %d.", n)
	}
	for i, c := range f.Compartments {
		if want := byte('a' + i); c.Letter != want {
			return refuse("Letter them a, b, c and so on by position.", "Compartment %d has the letter %q, not %q.", i+1, letterWords(c.Letter), letterWords(want))
		}
		if err := positive("The capacity of "+string(c.Letter), c.Capacity); err != nil {
			return err
		}
		if c.Heel < 0 || c.Heel >= c.Capacity {
			return refuse("Give 0 or more, and less than the capacity.", "The heel of %c is %s gal of %s.", c.Letter, c.Heel.Text(), c.Capacity.Text())
		}
		if err := admitMarks(c); err != nil {
			return err
		}
	}
	return nil
}

// letterWords is a letter as a text; none is empty.
func letterWords(l byte) string {
	if l == 0 {
		return ""
	}
	return string(rune(l))
}

func admitHoses(f *Rig) error {
	if len(f.Hoses) == 0 {
		return refuse("Enter at least one hose.", "The rig has no hose.")
	}
	var names []string
	for _, h := range f.Hoses {
		if err := name("hose", h.Name); err != nil {
			return err
		}
		if h.Volume == 0 {
			return refuse("Give its volume, or its inside diameter and its length.", "The hose %s has no volume.", h.Name)
		}
		if err := positive("The volume of hose "+h.Name, h.Volume); err != nil {
			return err
		}
		names = append(names, h.Name)
	}
	return unique("hose", names)
}

func admitApplicators(f *Rig) error {
	var names []string
	for _, a := range f.Applicators {
		if err := name("applicator", a.Name); err != nil {
			return err
		}
		if len(a.Name) == 1 {
			return refuse("Use a longer name.", "The applicator %q has the name of a compartment.", a.Name)
		}
		switch a.Type {
		case Gun, RideOn, Backpack, Spreader:
		default:
			return refuse("Write gun, ride_on, backpack or spreader.", "The kind of applicator %s is %q.", a.Name, a.Type)
		}
		if a.Hose != "" && !hasHose(f, a.Hose) {
			return refuse("Name a hose of the rig, or none.", "The applicator %s hangs on hose %q, which the rig does not have.", a.Name, a.Hose)
		}
		if a.Type != Spreader && a.Delivery == (measure.Rate{}) {
			return refuse("Give it in gallons per 1,000 sq ft.", "The applicator %s has no delivery rate.", a.Name)
		}
		if a.Type != Spreader && (!(a.Delivery.V > 0) || a.Delivery.Kind != measure.Liquid || a.Delivery.V > LargestDelivery) {
			return refuse("Give it in gallons per 1,000 sq ft, more than 0.", "The delivery rate of %s is %s.", a.Name, a.Delivery.Text())
		}
		if a.Flow.Known && (!(a.Flow.V > 0) || a.Flow.V > measure.GPM(LargestFlowGPM)) {
			return refuse("Give more than 0 and up to 500 gpm, or leave it out.", "The flow of %s is %s.", a.Name, a.Flow.V.Text())
		}
		if err := bounded("The tank of "+a.Name, a.Tank); err != nil {
			return err
		}
		if err := admitHopper(&a); err != nil {
			return err
		}
		if err := admitTips(&a); err != nil {
			return err
		}
		names = append(names, a.Name)
	}
	return unique("applicator", names)
}

func hasHose(f *Rig, name string) bool {
	for _, h := range f.Hoses {
		if h.Name == name {
			return true
		}
	}
	return false
}

func admitLineUps(f *Rig) error {
	var names []string
	for _, l := range f.LineUps {
		if err := name("line-up", l.Name); err != nil {
			return err
		}
		seen := map[byte]bool{}
		for _, c := range l.Supply {
			if seen[c] {
				return refuse("Name it once.", "Compartment %c stands twice in the supply of line-up %s.", c, l.Name)
			}
			seen[c] = true
		}
		for _, c := range append([]byte{l.Return}, l.Supply...) {
			if c != 0 && int(c-'a') >= len(f.Compartments) {
				return refuse("Use the letters of the rig.", "The line-up %s names compartment %q, which the rig does not have.", l.Name, string(rune(c)))
			}
		}
		names = append(names, l.Name)
	}
	return unique("line-up", names)
}

// admitRigAround refuses a change that would take away a part that holds liquid, or make it too small.
func (s *state) admitRigAround(f *Rig) error {
	if s.rig == nil {
		return nil
	}
	p := s.plumbing
	for i := range p.Compartments {
		c := &p.Compartments[i]
		room := measure.Volume(0)
		if n := int(c.Letter - 'a'); n < len(f.Compartments) {
			room = f.Compartments[n].Capacity
		}
		if err := stillFits("Compartment "+string(c.Letter), c.Liquid.Volume, room); err != nil {
			return err
		}
	}
	for i := range p.Tanks {
		room := measure.Volume(0)
		for _, a := range f.Applicators {
			if a.Name == p.Tanks[i].Name {
				room = a.Tank
			}
		}
		if err := stillFits("The tank of "+p.Tanks[i].Name, p.Tanks[i].Liquid.Volume, room); err != nil {
			return err
		}
	}
	if err := s.hoppersStillFit(f); err != nil {
		return err
	}
	learned := s.learnedUnder(f)
	if err := stillFits("The cell", p.Cell.Liquid.Volume, learned.cellSize(f)); err != nil {
		return err
	}
	if err := stillFits("The return line", p.Return.Liquid.Volume, f.ReturnLine); err != nil {
		return err
	}
	for i := range p.Hoses {
		h := &p.Hoses[i]
		room := measure.Volume(0)
		for _, n := range f.Hoses {
			if n.Name == h.Name {
				room = learned.hoseSize(n)
			}
		}
		if err := stillFits("Hose "+h.Name, h.Size-airAtNozzle(h), room); err != nil {
			return err
		}
	}
	for _, l := range append([]byte{p.LineUp.Return}, p.LineUp.Supply...) {
		if l != 0 && int(l-'a') >= len(f.Compartments) {
			return refuse("Turn the valves away from it first.", "The line-up stands on compartment %c, which the new rig does not have.", l)
		}
	}
	return nil
}

func airAtNozzle(h *fluid.Hose) measure.Volume {
	if len(h.Charge) == 0 {
		return 0
	}
	return h.Charge[0].Air
}

func stillFits(what string, holds, room measure.Volume) error {
	if holds > room {
		return refuse("Dump it first, or keep the part as it is.", "%s holds %s gal and would have room for %s.", what, holds.Text(), room.Text())
	}
	return nil
}

func (s *state) admitLinedUp(f *LinedUp) error {
	if err := s.needRig(); err != nil {
		return err
	}
	seen := map[byte]bool{}
	for _, l := range f.Supply {
		if s.plumbing.Compartment(l) == nil {
			return s.noCompartment(l)
		}
		if seen[l] {
			return refuse("Name it once.", "Compartment %c stands twice in the supply.", l)
		}
		seen[l] = true
	}
	if f.Return != 0 && s.plumbing.Compartment(f.Return) == nil {
		return s.noCompartment(f.Return)
	}
	return nil
}

func (s *state) noCompartment(l byte) error {
	var have []string
	for i := range s.plumbing.Compartments {
		have = append(have, string(s.plumbing.Compartments[i].Letter))
	}
	if len(have) == 0 {
		return s.needRig()
	}
	if l == 0 {
		return refuse("Name one of "+strings.Join(have, ", ")+".", "No compartment is named.")
	}
	return refuse("Name one of "+strings.Join(have, ", ")+".", "There is no compartment %q.", string(rune(l)))
}
