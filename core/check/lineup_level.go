package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// logRan is what is said of a state that moves liquid by itself.
const logRan = "If it stood so with the gun shut, log how long it ran."

// twoOpen: each gives a part, the compartments level out, and with the pump running the higher one may push into the
// lower. The closed forms are Torricelli's, with the losses of the way between, and the energy balance of two branches.
func (s *situation) twoOpen(f Finding) Finding {
	each := s.with.Flow.Or(0).GPM() / float64(len(s.up.Supply))
	f.Weight = Stop
	f.Figured = core.Known(each)
	f.Says = fmt.Sprintf("%d supplies are open: each gives %.1f gal a minute to the gun", len(s.up.Supply), each)
	f.Do = fmt.Sprintf("Close all supplies but %c.", s.up.Supply[0])
	high, low, run, ok := s.b.Levelling(s.up.Supply)
	if !ok {
		f.Says += ", and the compartments level out by themselves. " + logRan
		return f
	}
	minute := run.Moved(60).Volume()
	roughly := "" // by a setting for the depth, not by what the rig says
	if !high.Known || !low.Known {
		roughly = "roughly "
	}
	f.Says += fmt.Sprintf(", and %c levels out into %c: %s%.1f gal a minute now, %s in a minute, %s in all after %s s.",
		high.Letter, low.Letter, roughly, run.Flow.GPM(), gal(minute), gal(run.Total.Volume()), measure.SecondsText(run.Seconds))
	f.Says += s.brought(high.Letter, low.Letter, minute)
	pump := s.pumpFlow()
	if branches := s.b.Branches(high, low, pump); branches.PushesBelow() > pump {
		_, into := branches.Flows()
		f.Says += fmt.Sprintf(" With the pump running at %s it is %.1f gal a minute, pushed into %c.", pump.Text(), -into.GPM(), low.Letter)
	}
	f.Says += " " + logRan
	f.Source = "energy balance between the surfaces (Torricelli, with the losses of the way) and of the two branches to the pump; " + s.levelSource(high, low)
	return f
}

// levelSource says where the levels and the way between come from.
func (s *situation) levelSource(high, low core.Standing) string {
	var set []string
	if _, from := s.b.CrossPath(); len(from) > 0 {
		set = append(set, from...)
	}
	if !high.Known || !low.Known {
		set = append(set, core.TankDepthIn)
	}
	if len(set) == 0 {
		return "levels and way by the rig"
	}
	return "an estimate: " + strings.Join(set, ", ") + " by the settings"
}

// pumpFlow is what the pump gives in all: by the rig, else what the gun takes and the setting for the bypass.
func (s *situation) pumpFlow() measure.Flow {
	flow, set := s.b.RoundFlow()
	if set {
		return flow + s.with.Flow.Or(0)
	}
	return flow
}

// brought says what so much of one compartment, that of a minute, does to the strength of another: of the product that would rise most,
// what a lawn would get from there. Empty where none would rise.
func (s *situation) brought(from, to byte, v measure.Volume) string {
	a, b := s.b.Plumbing().Compartment(from), s.b.Plumbing().Compartment(to)
	if a == nil || b == nil || v <= 0 {
		return ""
	}
	key, share, most := int32(0), 0.0, 0.0
	for _, h := range a.Liquid.Holds {
		usual := usualRate(s.b, h.Key)
		if usual <= 0 {
			continue
		}
		before := float64(b.Liquid.Strength(h.Key))
		after := hydraulics.Heel(hydraulics.Of(b.Liquid.Volume+v), hydraulics.Of(b.Liquid.Volume), before, float64(a.Liquid.Strength(h.Key)))
		if rise := (after - before) * s.with.Delivery.V / usual; rise > most {
			key, share, most = h.Key, after*s.with.Delivery.V/usual, rise
		}
	}
	if most <= 0 {
		return ""
	}
	return fmt.Sprintf(" After a minute %c would give %s per cent of the lowest rate of %s.", to, tenthBelowTen(100*share), s.b.ProductByKey(key).ProductName)
}
