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
}

// RigCompartment is one part of the split tank.
type RigCompartment struct {
	Letter         byte
	Name           string
	Colour         string
	Capacity, Heel measure.Volume
	Marks          []GaugeMark // the chart of its gauge, lowest first
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
	Hopper   measure.Mass // for dry product; 0: none
	Tips     []Tip        // what can be fitted; Delivery and Flow are those of the one that is
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
	list(w, 2, "compartments", &f.Compartments, func(w walker, c *RigCompartment) {
		w.letter(1, "letter", &c.Letter)
		w.text(2, "name", &c.Name)
		w.text(3, "colour", &c.Colour)
		w.volume(4, "capacity", &c.Capacity)
		w.volume(5, "heel", &c.Heel)
		list(w, 6, "marks", &c.Marks, func(w walker, m *GaugeMark) {
			w.scalar(1, "mark", &m.Mark)
			w.volume(2, "volume", &m.Volume)
		})
	})
	w.volume(3, "cell", &f.Cell)
	w.volume(4, "return_line", &f.ReturnLine)
	list(w, 5, "hoses", &f.Hoses, func(w walker, h *RigHose) {
		w.text(1, "name", &h.Name)
		w.maybeLength(2, "inside_diameter", &h.Bore)
		w.maybeLength(3, "length", &h.Length)
		w.volume(4, "volume", &h.Volume)
	})
	list(w, 6, "applicators", &f.Applicators, func(w walker, a *Applicator) {
		w.text(1, "name", &a.Name)
		w.text(2, "kind", &a.Type)
		w.text(3, "hose", &a.Hose)
		w.delivery(4, "delivery", &a.Delivery)
		w.maybeFlow(5, "flow", &a.Flow)
		w.volume(6, "tank", &a.Tank)
		w.mass(7, "hopper", &a.Hopper)
		list(w, 8, "tips", &a.Tips, func(w walker, t *Tip) {
			w.text(1, "name", &t.Name)
			w.maybeNumber(2, "pressure_psi", &t.PSI)
			w.delivery(3, "delivery", &t.Delivery)
			w.maybeFlow(4, "flow", &t.Flow)
		})
	})
	list(w, 7, "line_ups", &f.LineUps, func(w walker, l *NamedLineUp) {
		w.text(1, "name", &l.Name)
		w.words(2, "valves", &l.Valves)
		w.letters(3, "supply", &l.Supply)
		w.letter(4, "return", &l.Return)
	})
}
