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
		flow := s.with.Flow.Or(0).GPM()
		each := flow / float64(len(up.Supply))
		f.Weight = Stop
		f.Figured = core.Known(each)
		f.Says = fmt.Sprintf("%d supplies are open: each gives %.1f gal a minute to the gun, and the compartments level out by themselves.", len(up.Supply), each)
		f.Do = fmt.Sprintf("Close all supplies but %c.", up.Supply[0])
		return []Finding{f}
	case up.Return == 0:
		f.Weight = Note
		f.Says = "The return leads nowhere: no agitation, and the bypass has to go somewhere."
		f.Do = fmt.Sprintf("Open the return to %c if the rig has a bypass.", up.Supply[0])
		return []Finding{f}
	case up.Return != up.Supply[0]:
		flow := s.b.Setting(core.BypassFlowGPM)
		f.Weight = Stop
		f.Figured = core.Known(flow)
		f.Ground = GroundSetting
		f.Source = "bypass flow: " + s.b.SettingSource(core.BypassFlowGPM)
		f.Says = fmt.Sprintf("The return leads to %c while %c feeds the pump: about %.1f gal a minute of %c would run into %c.",
			up.Return, up.Supply[0], flow, up.Supply[0], up.Return)
		f.Do = fmt.Sprintf("Turn the return to %c before the pump runs.", up.Supply[0])
		return []Finding{f}
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
