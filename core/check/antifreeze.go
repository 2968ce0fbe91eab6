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

// winter tells whether a liquid holds more antifreeze than counts as flushed, and how much it holds.
func winter(b *core.Book, l fluid.Liquid) (measure.Volume, bool) {
	v := antifreezeIn(b, l)
	return v, float64(v) > float64(float64(l.Volume)*antifreezeLeft)
}

// winterHose is winter of all that stands in a hose.
func winterHose(b *core.Book, h *fluid.Hose) (antifreeze, in measure.Volume, stands bool) {
	for i := range h.Charge {
		antifreeze += antifreezeIn(b, h.Charge[i].Liquid)
		in += h.Charge[i].Volume
	}
	return antifreeze, in, float64(antifreeze) > float64(float64(in)*antifreezeLeft)
}

// Antifreeze tells how much antifreeze stands between the compartments and the nozzles, and in how much liquid; 0 where the cell and each
// hose count as flushed.
func Antifreeze(b *core.Book) (antifreeze, in measure.Volume) {
	p := b.Plumbing()
	antifreeze, stands := winter(b, p.Cell.Liquid)
	in = p.Cell.Liquid.Volume
	for i := range p.Hoses {
		v, held, holds := winterHose(b, &p.Hoses[i])
		antifreeze, in, stands = antifreeze+v, in+held, stands || holds
	}
	if !stands {
		return 0, in
	}
	return antifreeze, in
}

// antifreeze stops what is sprayed while antifreeze of the winter stands in hose, cell or the compartment that feeds the pump.
func (s *situation) antifreeze() []Finding {
	f := Finding{Weight: Stop, Part: PartHose, Ground: GroundPractice, Source: "antifreeze is flushed into a can before the first load, or the first lawn gets it: recalled from memory", Unit: "gal"}
	feeds, inTank := s.winterTank(s.up.Supply)
	if v, in := Antifreeze(s.b); v > 0 {
		f.Figured = core.Known(v.Gallons())
		f.Says = fmt.Sprintf("%s gal of antifreeze stand in the %s gal of hose and pump.", v.Text(), in.Text())
		f.Do = fmt.Sprintf("Flush %s gal to a named place, not onto grass: push it into a can.", flushVolume(s.b, nil).Text())
		switch all := flushVolume(s.b, nil); {
		case feeds == nil && s.drawable(s.up.Supply) < all:
			f.Do = fmt.Sprintf("Load at least %s gal of water first. %s", all.Text(), f.Do)
		case feeds != nil:
			f.Says = fmt.Sprintf("%s gal of antifreeze stand in the %s gal of hose and pump, and %s gal in %c, which feeds them.", v.Text(), in.Text(), inTank.Text(), feeds.Letter)
			f.Do = fmt.Sprintf("Empty %c into a can and load it with water first. %s", feeds.Letter, f.Do)
		}
		return []Finding{f}
	}
	if feeds == nil {
		return nil
	}
	f.Part, f.About, f.Figured = PartCompartment, string(feeds.Letter), core.Known(inTank.Gallons())
	f.Says = fmt.Sprintf("%c holds %s gal of antifreeze in %s gal.", feeds.Letter, inTank.Text(), feeds.Liquid.Volume.Text())
	f.Do = fmt.Sprintf("Empty %c into a can and log it, then rinse it.", feeds.Letter)
	return []Finding{f}
}

// winterTank is the first of these compartments that holds antifreeze, and how much it holds; nil if none does.
func (s *situation) winterTank(supply []byte) (*fluid.Compartment, measure.Volume) {
	for _, letter := range supply {
		if c := s.b.Plumbing().Compartment(letter); c != nil {
			if v, holds := winter(s.b, c.Liquid); holds {
				return c, v
			}
		}
	}
	return nil, 0
}

// drawable is what the pump can draw from these compartments.
func (s *situation) drawable(supply []byte) measure.Volume {
	var v measure.Volume
	for _, letter := range supply {
		if c := s.b.Plumbing().Compartment(letter); c != nil {
			v += c.Drawable()
		}
	}
	return v
}

// flushVolume brings the cell and one hose, or each of them, below what counts as flushed: the hose once, the cell five times (e^-5 is
// 0.7 per cent of a well-mixed cell, Levenspiel 1999, ch. 11).
func flushVolume(b *core.Book, hose *fluid.Hose) measure.Volume {
	rig := b.Rig()
	if rig == nil {
		return 0
	}
	v := 5 * rig.WholeCell()
	for i := range rig.Hoses {
		if hose == nil || rig.Hoses[i].Name == hose.Name {
			v += rig.Hoses[i].Volume
		}
	}
	return v
}

// FlushPlace is where antifreeze goes where nothing else is said.
const FlushPlace = fluid.Place("waste/antifreeze can")

// flush is what is done next about antifreeze in hose and pump: to push it into a can by what feeds the pump now, before the valves are
// turned for a lawn. Where that holds antifreeze itself, or too little, the push would never come to an end, or would draw air: then the
// valves go to a compartment that fits, and where none does the stop says what is to be done.
func (s *situation) flush(r Report) (Proposal, bool) {
	if v, _ := Antifreeze(s.b); v <= 0 {
		return Proposal{}, false
	}
	p := s.b.Plumbing()
	hose := p.Hose("")
	for i := range p.Hoses {
		if _, _, stands := winterHose(s.b, &p.Hoses[i]); stands {
			hose = &p.Hoses[i]
			break
		}
	}
	push, feed := flushVolume(s.b, hose), s.drawable(p.LineUp.Supply)
	if feeds, _ := s.winterTank(p.LineUp.Supply); feeds == nil && hose != nil && feed >= push {
		f := &core.PushedBack{Volume: push, To: string(FlushPlace)}
		if len(p.Hoses) > 1 {
			f.Hose = hose.Name
		}
		return Proposal{Act: ActPushBack, Words: fmt.Sprintf("flush %s gal of antifreeze into a can", push.Text()), Facts: []core.Fact{f}}, true
	}
	if turn, ok := s.proposeLineUp(); ok {
		return turn, true
	}
	if goingOn(r, PartHose) {
		return Proposal{}, false
	}
	return Proposal{Act: ActConfirm, Words: "answer the " + r.Verdict.String(), Why: s.antifreeze()[0].Do}, true
}
