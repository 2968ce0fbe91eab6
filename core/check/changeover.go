package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// Changeover is what it takes until the nozzle gives the compartment's liquid clean enough for the lawn. Volumes are what
// leaves the nozzle from now on.
type Changeover struct {
	To       byte
	Hose     string         // through which it is pushed; empty: the first
	Air      measure.Volume // in the hose: it leaves first, counts in the seconds, and not in the volumes
	Arrives  measure.Volume // until the new liquid comes
	Half     measure.Volume
	Clean    measure.Volume // by the figures of the book, with the margin on the smear
	Band     measure.Volume // give or take, for Clean
	ArrivesS core.Maybe[float64]
	HalfS    core.Maybe[float64]
	CleanS   core.Maybe[float64]
	// The eye sees the tint come between these; if none came by the later one, the valves are not where the book
	// says.
	TintFrom, TintBy   measure.Volume
	TintFromS, TintByS core.Maybe[float64]
	// Tint is which way the colour at the nozzle changes: core.TowardsTint, TowardsClear, BetweenAlike; empty: the rig does
	// not say. Between alike ones nothing is to be seen, and TintFrom and TintBy are 0. TintGone is where the last of the
	// colour goes, towards a clear one; 0 else.
	Tint      string
	TintGone  measure.Volume
	TintGoneS core.Maybe[float64]
	DecidedBy string  // the product that decides when it is clean
	Why       string  // what it is held against, with the setting
	Share     float64 // share of new liquid at which it is
	Into      byte    // the compartment to push back into; 0: none can take it
	// Advised is what is to be pushed: Clean where hose and cell are known by timed changeovers, else Clean and the
	// standard uncertainty of what was never measured. PushBack is the same in whole hundredths.
	Advised, PushBack measure.Volume
	AdvisedS          core.Maybe[float64]
	Learned           bool // hose and cell rest on timed changeovers
	// Legs is the same push-back in parts, each where it costs least.
	Legs []Leg
	// Ways are the ways that the mixed tail could go, in a fixed order, with what each would cost; one is chosen. ToClean leaves
	// out those that it did not need to look at, AllWays and WhatIf do not.
	Ways []Way
	// Order is what the return brings along, and what it would take to keep it away; nil where no bypass is reckoned.
	Order *ReturnOrder
	// Overflow is a compartment that would run over if it took all of what has to go back; nil: none would.
	Overflow *Overflow

	Smear       measure.Volume // standard deviation of the smear at the nozzle, with its margin; 0: not known
	SmearFactor float64        // that margin; 0: no smear is reckoned
	Margins     string         // the same in words: "with 1.25 on the smear"
	Re          float64        // Reynolds number in the hose; 0: bore or flow is not known
	Laminar     bool           // the flow is not surely turbulent: reckoned as a hose without radial mixing
	FlowLow     bool           // the same as a reproach: the flow is below MinFlow
	MinFlow     core.Maybe[measure.Flow]
	Cell        measure.Volume // the mixing cell as the gun sees it: the bypass sweeps it too
	Bypass      bool           // whether a bypass is reckoned in that
	// Left is the old liquid that has still to come out of the nozzle when one stops at Clean, LeftShare the same as a
	// share of hose and cell; NewLost the new liquid that has gone by then.
	Left      measure.Volume
	LeftShare float64
	NewLost   measure.Volume

	old, rest profile // share of old liquid: never rising, and as it is
}

// NewAt is the share of new liquid that the nozzle gives, at least, from so much on: 0 to 1, and never less for more.
func (c *Changeover) NewAt(v measure.Volume) float64 {
	return min(max(1-c.old.at(hydraulics.Of(max(v, 0))), 0), 1)
}

// LeftAt is the old liquid that has still to come out of the nozzle when one stops after so much: what stands in the hose,
// and of the cell that part which the gun takes.
func (c *Changeover) LeftAt(v measure.Volume) measure.Volume {
	return max(hydraulics.Gallons(c.rest.left(hydraulics.Of(max(v, 0)))).Volume(), 0)
}

// Leg is a part of a push-back.
type Leg struct {
	Into   byte
	Volume measure.Volume
	To     string // a place outside, where it is no compartment: "waste/pail"
}

// Place names where it goes: "b", "a pail".
func (l Leg) Place() string {
	if l.To != "" {
		_, name := fluid.Place(l.To).Split()
		return "a " + name
	}
	return string(l.Into)
}

// Pail is the place outside that a tail can be pushed into.
const Pail = "waste/pail"

// Overflow is a compartment that a push-back, or the return, would make run over.
type Overflow struct {
	Letter           byte
	Gets, Room, Over measure.Volume
}

func (o *Overflow) words() string {
	return fmt.Sprintf("%c has room for %s: %s into it would run over by %s.", o.Letter, gal(o.Room), gal(o.Gets), gal(o.Over))
}

// Way is the one chosen, nil where there is nothing to choose.
func (c *Changeover) Way() *Way {
	if c == nil {
		return nil
	}
	for i := range c.Ways {
		if c.Ways[i].Chosen {
			return &c.Ways[i]
		}
	}
	return nil
}

// SweepS is how long the pump is to run with the gun shut before the return is turned; 0: not at all.
func (c *Changeover) SweepS() float64 {
	if w := c.Way(); w != nil {
		return w.RunS
	}
	return 0
}

// The ways that the mixed tail can go, once the plug is back where it came from.
const (
	WayNew   = "new"   // into the compartment lined up
	WayOld   = "old"   // all of it into the one it came from
	WayPail  = "pail"  // into a pail
	WaySwept = "swept" // through the bypass first, with the gun shut and the return still on the old compartment
)

// Way is one of them, with what it would cost.
type Way struct {
	Name   string
	Legs   []Leg
	RunS   float64        // how long the pump runs with the gun shut before the return is turned; 0: not at all
	NewOld measure.Volume // new liquid that ends in the old compartment
	OldNew measure.Volume // old liquid that ends in the new one
	Wasted measure.Volume
	// Weight is the heaviest that the residue it leaves in both compartments would be on the lawns that these still serve,
	// Share the same as a share of the lowest label rate, Of of which Load is the limit from which it is asked about; Worst
	// is the product, In the compartment, On the lawn. Of a product of the compartment's own mix Share is its strength
	// against what it was.
	Weight      Weight
	Own         bool
	Share, Load float64
	Worst       string
	In          byte
	On          string
	Chosen      bool
	Cannot      string  // why it cannot be gone; empty: it can
	Old, New    Residue // the same for each of the two compartments
}

// ReturnOrder is what the bypass does with the old liquid in cell and return line (mass balance).
type ReturnOrder struct {
	Together measure.Volume // old liquid that it brings into the new compartment if the return is turned with the supply
	HeldS    float64        // how long the return has to stay on the old compartment to keep that away
	Held     measure.Volume // new liquid that the old compartment then gets
}

// LegSeconds is how long each leg takes at a flow. Air in the hose leaves before the first.
func LegSeconds(legs []Leg, air measure.Volume, flow measure.Flow) []float64 {
	out := make([]float64, len(legs))
	for i, l := range legs {
		out[i] = flow.Seconds(l.Volume + air)
		air = 0
	}
	return out
}
