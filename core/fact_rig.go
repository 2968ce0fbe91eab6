package core

import "example.com/tintline/core/measure"

// Rig sets up the truck's spray equipment, or changes it. It moves no liquid.
type Rig struct {
	RigName      string
	Compartments []RigCompartment
	Cell         measure.Volume
	ReturnLine   measure.Volume
	Hoses        []RigHose
	Applicators  []Applicator
	LineUps      []NamedLineUp
	// Suction is the pipe that the compartments share, between their valves and the pump; with the dead legs it counts
	// in the mixing cell until the cell is measured.
	Suction  measure.Volume
	DeadLegs []DeadLeg
	// PumpFlow is what the pump gives in all; what does not leave the nozzle goes through the bypass.
	PumpFlow Maybe[measure.Flow]
	PumpPSI  Maybe[float64] // the most that the pump, or its relief valve, gives
	// The path between two compartments whose suction valves stand open: bore, length, and the sum of the loss
	// coefficients of its fittings.
	CrossBore   Maybe[measure.Length]
	CrossLength Maybe[measure.Length]
	CrossLoss   Maybe[float64]
}

// DeadLeg is a branch that liquid stands in: a second reel, a fill line.
type DeadLeg struct {
	Name   string
	Volume measure.Volume
}

// How a compartment is agitated.
const (
	Paddle       = "paddle" // while the engine turns
	Jet          = "jet"    // while the return goes to it
	NotAgitated  = "none"
	NoTint       = "none" // what stands in a compartment has no tint
	MarksInches  = "in"   // the marks of a gauge are inches of depth
	MarksCentims = "cm"
)

// RigCompartment is one part of the split tank.
type RigCompartment struct {
	Letter         byte
	Name           string
	Colour         string
	Capacity, Heel measure.Volume
	Marks          []GaugeMark           // the chart of its gauge, lowest first
	Tint           string                // the colour of what is kept in it; NoTint: none; empty: not said
	Agitation      string                // Paddle, Jet, NotAgitated; empty: not said
	MarkUnit       string                // MarksInches, MarksCentims: the marks are depths; empty: they are signs
	Plan           Maybe[measure.Area]   // seen from above, inside
	Floor          Maybe[measure.Length] // its lowest inside point above that of the lowest compartment
	GaugeOff       Maybe[measure.Length] // how far the gauge is from the middle, along the truck
}

// GaugeMark is a mark of a gauge and the volume at it. A mark that is a figure can be read between two others.
type GaugeMark struct {
	Mark   string
	Volume measure.Volume
}

// RigHose is a hose; without a volume, bore and length give it.
type RigHose struct {
	Name   string
	Bore   Maybe[measure.Length]
	Length Maybe[measure.Length]
	Volume measure.Volume
	// Outside is its outside diameter; DryWeight what it weighs empty.
	Outside   Maybe[measure.Length]
	DryWeight Maybe[measure.Mass]
	// A measured pair of pressures: what the gauge at the pump and at the gun say at a flow.
	PairFlow Maybe[measure.Flow]
	PairPump Maybe[float64] // psi
	PairGun  Maybe[float64] // psi
}

// The kinds of applicator.
const (
	Gun      = "gun"
	RideOn   = "ride_on"
	Backpack = "backpack"
	Spreader = "spreader"
)

// Applicator is what puts the liquid down: its delivery rate, the flow where it is known, the hose that
// feeds or fills it, and a tank of its own (0: none).
type Applicator struct {
	Name     string
	Type     string
	Hose     string
	Delivery measure.Rate
	Flow     Maybe[measure.Flow]
	Tank     measure.Volume
	Hopper   measure.Mass   // for dry product; 0: none
	Tips     []Tip          // what can be fitted; Delivery and Flow are those of the one that is
	PSI      Maybe[float64] // what it needs at its inlet to give that flow
}

// Tip is a tip, or a setting of the machine, with the delivery rate and flow that it gives at a pressure.
type Tip struct {
	Name     string
	PSI      Maybe[float64]
	Delivery measure.Rate
	Flow     Maybe[measure.Flow]
}

// NamedLineUp is a line-up with the valve positions that make it.
type NamedLineUp struct {
	Name   string
	Valves map[string]string
	Supply []byte
	Return byte
}

// Kind of the fact.
func (*Rig) Kind() Kind { return kindRig }

// Name of the fact.
func (*Rig) Name() string { return "rig" }

func (f *Rig) fields(w walker) {
	w.text(1, "name", &f.RigName)
	list(w, 2, "compartments", &f.Compartments, compartmentFields)
	w.volume(3, "cell", &f.Cell)
	w.volume(4, "return_line", &f.ReturnLine)
	list(w, 5, "hoses", &f.Hoses, func(w walker, h *RigHose) {
		w.text(1, "name", &h.Name)
		w.maybeLength(2, "inside_diameter", &h.Bore)
		w.maybeLength(3, "length", &h.Length)
		w.volume(4, "volume", &h.Volume)
		w.later()
		w.maybeLength(5, "outside_diameter", &h.Outside)
		w.maybeMass(6, "dry_weight", &h.DryWeight)
		w.maybeFlow(7, "pair_flow", &h.PairFlow)
		w.maybeNumber(8, "pair_pump_psi", &h.PairPump)
		w.maybeNumber(9, "pair_gun_psi", &h.PairGun)
	})
	list(w, 6, "applicators", &f.Applicators, applicatorFields)
	list(w, 7, "line_ups", &f.LineUps, func(w walker, l *NamedLineUp) {
		w.text(1, "name", &l.Name)
		w.words(2, "valves", &l.Valves)
		w.letters(3, "supply", &l.Supply)
		w.letter(4, "return", &l.Return)
	})
	w.later()
	w.volume(8, "suction", &f.Suction)
	list(w, 9, "dead_legs", &f.DeadLegs, func(w walker, d *DeadLeg) {
		w.text(1, "name", &d.Name)
		w.volume(2, "volume", &d.Volume)
	})
	w.maybeFlow(10, "pump_flow", &f.PumpFlow)
	w.maybeNumber(11, "pump_psi", &f.PumpPSI)
	w.maybeLength(12, "cross_inside_diameter", &f.CrossBore)
	w.maybeLength(13, "cross_length", &f.CrossLength)
	w.maybeNumber(14, "cross_loss", &f.CrossLoss)
}

func compartmentFields(w walker, c *RigCompartment) {
	w.letter(1, "letter", &c.Letter)
	w.text(2, "name", &c.Name)
	w.text(3, "colour", &c.Colour)
	w.volume(4, "capacity", &c.Capacity)
	w.volume(5, "heel", &c.Heel)
	w.later()
	list(w, 6, "marks", &c.Marks, func(w walker, m *GaugeMark) {
		w.scalar(1, "mark", &m.Mark)
		w.volume(2, "volume", &m.Volume)
	})
	w.text(7, "tint", &c.Tint)
	w.text(8, "agitation", &c.Agitation)
	w.text(9, "mark_unit", &c.MarkUnit)
	w.maybeArea(10, "plan", &c.Plan)
	w.maybeLength(11, "floor", &c.Floor)
	w.maybeLength(12, "gauge_off", &c.GaugeOff)
}

func applicatorFields(w walker, a *Applicator) {
	w.text(1, "name", &a.Name)
	w.text(2, "kind", &a.Type)
	w.text(3, "hose", &a.Hose)
	w.delivery(4, "delivery", &a.Delivery)
	w.maybeFlow(5, "flow", &a.Flow)
	w.volume(6, "tank", &a.Tank)
	w.later()
	w.mass(7, "hopper", &a.Hopper)
	list(w, 8, "tips", &a.Tips, func(w walker, t *Tip) {
		w.text(1, "name", &t.Name)
		w.maybeNumber(2, "pressure_psi", &t.PSI)
		w.delivery(3, "delivery", &t.Delivery)
		w.maybeFlow(4, "flow", &t.Flow)
	})
	w.maybeNumber(9, "needs_psi", &a.PSI)
}
