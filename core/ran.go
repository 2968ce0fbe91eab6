package core

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// Overflow is where liquid goes that ran over a compartment's rim.
const Overflow = fluid.Place("waste/overflow")

// LongestRun is the longest time that the valves can have stood so, in seconds.
const LongestRun = 86400

// The pump ran, or it did not.
const (
	PumpOn  = "on"
	PumpOff = "off"
)

// RoundFlow is what goes round through the bypass while the gun is shut: all that the pump gives, else the setting for the
// flow of the bypass; set tells that it is the setting.
func (s *state) RoundFlow() (flow measure.Flow, set bool) {
	if s.rig != nil && s.rig.PumpFlow.Known && s.rig.PumpFlow.V > 0 {
		return s.rig.PumpFlow.V, false
	}
	return measure.GPM(s.Setting(BypassFlowGPM)), true
}

// resolveRan fills in what moved while the valves stood as the book says. What is given stays.
func (s *state) resolveRan(f *Ran) (Fact, error) {
	if len(f.Drawn) > 0 || len(f.Levelled) > 0 || !f.Seconds.Known || !(f.Seconds.V > 0) || f.Seconds.V > LongestRun {
		return f, nil
	}
	c := *f
	c.Drawn, c.Levelled = s.StandFor(s.plumbing.LineUp, f.Seconds.V, f.Pump == PumpOn)
	return &c, nil
}

// StandFor is what moves if the valves stand so for so many seconds with the gun shut. One supply gives what the pump
// draws. Of two, each gives the share that their levels and the way to the pump leave it (the two branches of an energy
// balance), and liquid is pushed into the lower one where the higher one alone gives more than the pump takes; where the
// levels are not known, each gives half and they level out by gravity beside. With the pump off they level out
// (Torricelli). Of more than two the highest and the lowest are looked at. Nothing gives more than its suction reaches.
func (s *state) StandFor(up fluid.LineUp, seconds float64, pump bool) ([]RanDrawn, []RanLevelled) {
	flow, _ := s.RoundFlow()
	if s.plumbing.Compartment(up.Return) == nil {
		pump = false // with the gun shut and the return nowhere nothing goes round
	}
	if len(up.Supply) == 1 {
		return s.fromOne(up, flow, seconds, pump), nil
	}
	high, low, ok := s.apart(up.Supply)
	switch {
	case !ok:
		return nil, nil
	case !pump:
		return nil, s.levelled(high, low, seconds)
	case !high.Known || !low.Known:
		half := min((flow / 2).Over(seconds), LargestVolume)
		levelled := s.levelled(high, low, seconds)
		var drawn []RanDrawn
		for _, l := range []byte{high.Letter, low.Letter} {
			drawn = append(drawn, RanDrawn{From: l, Volume: s.canGive(l, up.Return, half, levelled)})
		}
		return someDrawn(drawn), levelled
	}
	return s.branches(up.Return, high, low, flow, seconds)
}

// canGive is so much, or what is there beside what levels out, where it does not come back.
func (s *state) canGive(letter, to byte, v measure.Volume, levelled []RanLevelled) measure.Volume {
	if letter == to {
		return v
	}
	there := s.plumbing.Compartment(letter).Drawable()
	for _, l := range levelled {
		if l.From == letter {
			there -= l.Volume
		}
	}
	return min(v, max(there, 0))
}

func (s *state) fromOne(up fluid.LineUp, flow measure.Flow, seconds float64, pump bool) []RanDrawn {
	from := up.Supply[0]
	if !pump || s.plumbing.Compartment(from) == nil {
		return nil
	}
	v := min(flow.Over(seconds), LargestVolume)
	return someDrawn([]RanDrawn{{From: from, Volume: s.canGive(from, up.Return, v, nil)}})
}

func someDrawn(list []RanDrawn) []RanDrawn {
	var out []RanDrawn
	for _, d := range list {
		if d.Volume > 0 {
			out = append(out, d)
		}
	}
	return out
}

// apart finds, of the compartments that are open, the one that stands highest and the one that stands lowest.
func (s *state) apart(supply []byte) (high, low Standing, ok bool) {
	for _, l := range supply {
		c := s.plumbing.Compartment(l)
		if c == nil {
			continue
		}
		at, there := s.StandingAt(l, c.Liquid.Volume)
		if !there {
			continue
		}
		switch {
		case !ok && high.Letter == 0:
			high, low = at, at
		case at.Level > high.Level:
			high, ok = at, true
		case at.Level < low.Level || low.Letter == high.Letter:
			low, ok = at, true
		}
	}
	return high, low, ok && high.Letter != low.Letter
}

// Levelling is how two open compartments level out with the pump at rest; false where they stand level, or are not two.
func (s *state) Levelling(supply []byte) (high, low Standing, l hydraulics.LevellingAt, ok bool) {
	high, low, ok = s.apart(supply)
	if !ok {
		return high, low, l, false
	}
	path, _ := s.CrossPath()
	l, ok = hydraulics.Levelling{Area1: high.Area, Area2: low.Area, Drop: high.Level - low.Level, Path: path}.Start()
	return high, low, l, ok
}

// levelled is what runs from the higher to the lower in a time: no more than to level, than is there. What finds no room
// runs over.
func (s *state) levelled(high, low Standing, seconds float64) []RanLevelled {
	_, _, l, ok := s.Levelling([]byte{high.Letter, low.Letter})
	if !ok {
		return nil
	}
	v := min(l.Moved(seconds).Volume(), s.plumbing.Compartment(high.Letter).Drawable())
	if v <= 0 {
		return nil
	}
	return []RanLevelled{{From: high.Letter, To: low.Letter, Volume: v}}
}

// Branches is how the pump shares its flow between two open compartments.
func (s *state) Branches(high, low Standing, pump measure.Flow) hydraulics.Branches {
	path, _ := s.CrossPath()
	half := branch(path)
	return hydraulics.Branches{Path1: half, Path2: half, Drop: high.Level - low.Level, Pump: pump}
}

func (s *state) admitRan(f *Ran) error {
	if err := s.needRig(); err != nil {
		return err
	}
	if f.Pump != PumpOn && f.Pump != PumpOff {
		return refuse("Write on or off.", "Whether the pump ran is said by %q.", f.Pump)
	}
	if !f.Seconds.Known || !(f.Seconds.V > 0) || f.Seconds.V > LongestRun {
		return refuse("Give more than 0 and up to 86,400 s.", "The time is %g s.", f.Seconds.V)
	}
	if len(s.plumbing.LineUp.Supply) == 0 {
		return refuse("Log how the valves stood first, as lined_up; if none was open, leave it out.", "No compartment is open by the book, so nothing moved.")
	}
	for _, d := range f.Drawn {
		if err := s.admitDrawn(d, f.Levelled); err != nil {
			return err
		}
	}
	for _, l := range f.Levelled {
		for _, letter := range []byte{l.From, l.To} {
			if s.plumbing.Compartment(letter) == nil {
				return s.noCompartment(letter)
			}
		}
		if l.From == l.To {
			return refuse("Name two compartments.", "Liquid is said to have run from %c to itself.", l.From)
		}
		if err := positive("What ran from "+string(l.From)+" to "+string(l.To), l.Volume); err != nil {
			return err
		}
		have, band := s.plumbing.Compartment(l.From).Drawable(), s.Band(&s.plumbing.Compartment(l.From).Tank)
		if l.From == s.plumbing.LineUp.Return {
			for _, d := range f.Drawn {
				have += d.Volume // the bypass brings it
			}
		}
		if l.Volume > have+band {
			return beyond("Compartment "+string(l.From), l.Volume, have, band, "Read its gauge and log it first.")
		}
	}
	return nil
}

// admitDrawn refuses more than was there, and than ran in meanwhile.
func (s *state) admitDrawn(d RanDrawn, levelled []RanLevelled) error {
	c := s.plumbing.Compartment(d.From)
	if c == nil {
		return s.noCompartment(d.From)
	}
	if err := positive("What was drawn from "+string(d.From), d.Volume); err != nil {
		return err
	}
	to := s.plumbing.LineUp.Return
	if to == 0 {
		return refuse("Log first where the return led.", "%s gal are said to have gone round, and the return leads nowhere.", d.Volume.Text())
	}
	have, band := c.Drawable(), s.Band(&c.Tank)
	for _, l := range levelled {
		if l.To == d.From {
			have += l.Volume
		}
	}
	if d.From != to && d.Volume > have+band {
		return beyond("Compartment "+string(d.From), d.Volume, have, band, "Read its gauge and log it first.")
	}
	return nil
}

func (s *state) applyRan(f *Ran) { s.plumbing.Stand(f.Drawn, f.Levelled, Overflow) }

// RanOver is what of a run finds no room in the compartment that it runs to, and after how many seconds it begins to run
// over; nothing where all of it finds room. What was given is taken as it is: Prepare fills it in.
func (s *state) RanOver(f *Ran) (into byte, over measure.Volume, after float64) {
	p := s.plumbing.Sketch()
	p.Stand(f.Drawn, f.Levelled, Overflow)
	over = p.Outside[Overflow].Volume
	if over <= 0 {
		return 0, 0, 0
	}
	into = s.plumbing.LineUp.Return
	var moved measure.Volume
	for _, d := range f.Drawn {
		moved += d.Volume
	}
	if moved == 0 {
		for _, l := range f.Levelled {
			into, moved = l.To, moved+l.Volume
		}
	}
	return into, over, float64(f.Seconds.V * (1 - float64(over)/float64(max(moved, over))))
}
