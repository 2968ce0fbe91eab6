package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// antifreezeKind is the kind of product that rigs are put away for the winter with.
const antifreezeKind = "antifreeze"

// antifreezeLeft is the share of antifreeze in hose and cell up to which they count as flushed.
//
// Common practice, no source: what comes out is as water to the eye.
const antifreezeLeft = 0.01

// antifreezeIn is how much antifreeze a liquid holds.
func antifreezeIn(b *core.Book, l fluid.Liquid) measure.Volume {
	var v measure.Volume
	for _, h := range l.Holds {
		p := b.ProductByKey(h.Key)
		if p.Label.Form == measure.Liquid && strings.Contains(strings.ToLower(p.Label.Kind), antifreezeKind) {
			v += measure.Volume(h.N)
		}
	}
	return v
}

// inLine is all that stands between the compartments and the nozzle.
func inLine(b *core.Book, hose string) fluid.Liquid {
	p := b.Plumbing()
	in := fluid.Liquid{}.Plus(p.Cell.Liquid)
	for i := range p.Hoses {
		if hose != "" && p.Hoses[i].Name != hose {
			continue
		}
		for _, c := range p.Hoses[i].Charge {
			in = in.Plus(c.Liquid)
		}
	}
	return in
}

// Antifreeze tells how much antifreeze stands between the compartments and the nozzle, and in how much liquid; 0 where it counts as flushed.
func Antifreeze(b *core.Book) (antifreeze, in measure.Volume) {
	l := inLine(b, "")
	v := antifreezeIn(b, l)
	if float64(v) <= float64(float64(l.Volume)*antifreezeLeft) {
		return 0, l.Volume
	}
	return v, l.Volume
}

// antifreeze stops what is sprayed while antifreeze of the winter stands in hose, cell or the compartment that feeds the pump.
func (s *situation) antifreeze() []Finding {
	f := Finding{Weight: Stop, Part: PartHose, Ground: GroundPractice, Source: "antifreeze is flushed into a can before the first load, or the first lawn gets it: recalled from memory", Unit: "gal"}
	if v, in := Antifreeze(s.b); v > 0 {
		f.Figured = core.Known(v.Gallons())
		f.Says = fmt.Sprintf("%s gal of antifreeze stand in the %s gal of hose and pump.", v.Text(), in.Text())
		f.Do = fmt.Sprintf("Flush %s gal to a named place, not onto grass: push it into a can.", flushVolume(s.b).Text())
		return []Finding{f}
	}
	for _, letter := range s.up.Supply {
		c := s.b.Plumbing().Compartment(letter)
		if c == nil {
			continue
		}
		if v := antifreezeIn(s.b, c.Liquid); float64(v) > float64(float64(c.Liquid.Volume)*antifreezeLeft) {
			f.Part, f.About, f.Figured = PartCompartment, string(letter), core.Known(v.Gallons())
			f.Says = fmt.Sprintf("%c holds %s gal of antifreeze in %s gal.", letter, v.Text(), c.Liquid.Volume.Text())
			f.Do = fmt.Sprintf("Empty %c into a can and log it, then rinse it.", letter)
			return []Finding{f}
		}
	}
	return nil
}

// flushVolume brings hose and cell below what counts as flushed: the hose once, the cell five times (e^-5 is 0.7 per cent of a well-mixed
// cell, Levenspiel 1999, ch. 11).
func flushVolume(b *core.Book) measure.Volume {
	rig := b.Rig()
	if rig == nil {
		return 0
	}
	v := 5 * rig.WholeCell()
	for i := range rig.Hoses {
		v += rig.Hoses[i].Volume
	}
	return v
}

// FlushPlace is where antifreeze goes where nothing else is said.
const FlushPlace = fluid.Place("waste/antifreeze can")

// proposeFlush is to push the antifreeze of the winter into a can, before the valves are turned for a lawn.
func (s *situation) proposeFlush() (Proposal, bool) {
	if v, _ := Antifreeze(s.b); v <= 0 {
		return Proposal{}, false
	}
	push := flushVolume(s.b)
	return Proposal{
		Act: ActPushBack, Words: fmt.Sprintf("flush %s gal of antifreeze into a can", push.Text()),
		Facts: []core.Fact{&core.PushedBack{Volume: push, To: string(FlushPlace)}},
	}, true
}
