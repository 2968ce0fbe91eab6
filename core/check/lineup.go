package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
)

// lineUpRule: how the valves stand. With none open the pump runs dry; with the return on another compartment
// than the supply the bypass moves liquid between them while the pump runs; with two supplies open each
// gives a part and the compartments level out. And what the pump cannot give.
func lineUpRule(s *situation) []Finding {
	if s.tank != nil {
		return nil
	}
	if cold := s.antifreeze(); len(cold) > 0 {
		return cold
	}
	return append(append(s.valves(), s.pump()...), s.flowLow()...)
}

// LineUpNow is what there is to say of the valves as they stand, whatever the lawn.
func LineUpNow(b *core.Book) (Finding, bool) {
	a := b.Applicator(FirstApplicator(b))
	if b.Rig() == nil || a == nil {
		return Finding{}, false
	}
	s := &situation{b: b, with: a, up: b.Plumbing().LineUp, lawn: &core.Lawn{}}
	for _, f := range s.valves() {
		f.Rule = "line_up"
		return f, true
	}
	return Finding{}, false
}

// LineUpIf is what there would be to say of the valves if they were turned so, whatever the lawn.
func LineUpIf(b *core.Book, up fluid.LineUp) (Finding, bool) {
	a := b.Applicator(FirstApplicator(b))
	if b.Rig() == nil || a == nil {
		return Finding{}, false
	}
	s := &situation{b: b, with: a, up: up, lawn: &core.Lawn{}}
	for _, f := range s.standing() {
		f.Rule = "line_up"
		return f, true
	}
	return Finding{}, false
}

// valves says the heavier of two things: turning the valves cures both.
func (s *situation) valves() []Finding {
	stand, tint := s.standing(), s.tintMissed()
	if len(stand) > 0 && (len(tint) == 0 || stand[0].Weight >= tint[0].Weight) {
		return stand
	}
	return tint
}

// standing is what there is to say of the valves as they stand by the book.
func (s *situation) standing() []Finding {
	f := Finding{Part: PartRig, Ground: GroundPractice, Source: "how the rig is plumbed", Unit: "gal_per_min"}
	up := s.up
	switch {
	case len(up.Supply) == 0:
		f.Weight = Stop
		f.Figured = core.Known(0.0)
		f.Says = "No compartment is open to the pump: it would run dry."
		f.Do = "Open the supply of the compartment to spray from."
		switch fits := Fits(s.b, s.lawn.LawnName); {
		case len(fits) > 0:
			f.Do = fmt.Sprintf("Turn to %c.", fits[0])
		case s.nothingLoaded():
			f.Do = "Load a compartment first, then open its supply."
		}
		return []Finding{f}
	case len(up.Supply) > 1:
		return []Finding{s.twoOpen(f)}
	case up.Return == 0:
		return []Finding{s.returnNowhere(f)}
	case up.Return != up.Supply[0]:
		return []Finding{s.returnElsewhere(f)}
	}
	return nil
}

// nothingLoaded tells whether no compartment has anything to give.
func (s *situation) nothingLoaded() bool {
	p := s.b.Plumbing()
	for i := range p.Compartments {
		if p.Compartments[i].Drawable() > 0 {
			return false
		}
	}
	return true
}
