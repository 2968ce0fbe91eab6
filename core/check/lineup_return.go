package check

import (
	"fmt"
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// bypassFlow is what goes through the bypass while the gun is open: the pump's output less the gun's flow where the book
// knows both, else the setting.
func (s *situation) bypassFlow() (flow measure.Flow, set bool) {
	if pump, none := s.b.RoundFlow(); !none && s.with.Flow.Known {
		return max(pump-s.with.Flow.V, 0), false
	}
	return measure.GPM(s.b.Setting(core.BypassFlowGPM)), true
}

// returnElsewhere: the bypass moves liquid from the supply into another compartment (mass balance).
func (s *situation) returnElsewhere(f Finding) Finding {
	from, to := s.up.Supply[0], s.up.Return
	flow, set := s.bypassFlow()
	f.Weight = Stop
	f.Figured = core.Known(flow.GPM())
	f.Source = "mass balance; the bypass is what the pump gives less what the gun takes, both by the rig"
	if set {
		f.Ground = GroundSetting
		f.Source = "mass balance; bypass flow: " + s.b.SettingSource(core.BypassFlowGPM)
	}
	f.Says = fmt.Sprintf("The return leads to %c while %c feeds the pump: about %.1f gal a minute of %c would run into %c", to, from, flow.GPM(), from, to)
	if round, _ := s.b.RoundFlow(); round > flow {
		f.Says += fmt.Sprintf(", %.1f with the gun shut", round.GPM())
	}
	f.Says += "." + s.dryAndOver(from, to, flow)
	f.Says += s.brought(from, to, flow.Over(60)) + " " + logRan
	f.Do = fmt.Sprintf("Turn the return to %c before the pump runs.", from)
	return f
}

// dryAndOver says how long it lasts, where the compartments hold something.
func (s *situation) dryAndOver(from, to byte, bypass measure.Flow) string {
	a, b := s.b.Plumbing().Compartment(from), s.b.Plumbing().Compartment(to)
	if a == nil || b == nil || a.Drawable() <= 0 {
		return ""
	}
	e := hydraulics.Elsewhere{
		A: hydraulics.Held{Volume: hydraulics.Of(a.Drawable())}, B: hydraulics.Held{Volume: hydraulics.Of(b.Liquid.Volume)},
		Gun: s.with.Flow.Or(0).GPM(), Bypass: bypass.GPM(), RoomB: hydraulics.Of(b.Room()),
	}
	dry, over := e.DryAfter(), e.OverAfter()
	switch {
	case math.IsInf(dry, 1):
		return ""
	case over < dry:
		if over < 1 {
			return fmt.Sprintf(" %c runs over after %s s, %c would be dry after %s min.", to, measure.SecondsText(60*over), from, tenthBelowTen(dry))
		}
		return fmt.Sprintf(" %c runs over after %s min, %c would be dry after %s.", to, tenthBelowTen(over), from, tenthBelowTen(dry))
	}
	return fmt.Sprintf(" %c is dry after %s min.", from, tenthBelowTen(dry))
}

// tenthBelowTen is a figure: whole from 10 on, to a tenth below.
func tenthBelowTen(v float64) string {
	if v >= 10 {
		return measure.SecondsText(v)
	}
	return measure.Multiple(v)
}

// returnNowhere: nothing is agitated, and what the gun does not take has no way.
func (s *situation) returnNowhere(f Finding) Finding {
	f.Weight = Note
	f.Says = "The return leads nowhere: no agitation, and the bypass has to go somewhere."
	if flow, set := s.bypassFlow(); !set && flow > 0 {
		f.Figured = core.Known(flow.GPM())
		f.Says = fmt.Sprintf("The return leads nowhere: no agitation, and %.1f gal a minute of bypass have to go somewhere.", flow.GPM())
	}
	f.Do = fmt.Sprintf("Open the return to %c if the rig has a bypass.", s.up.Supply[0])
	return f
}
