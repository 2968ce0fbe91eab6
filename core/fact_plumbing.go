package core

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Ran: the valves stood as the book says for so long, with the gun shut. What moved is filled in from the book, so that
// the entry holds figures: what the pump drew from each open compartment and sent through the bypass, and what ran by
// gravity from one to the other.
type Ran struct {
	Seconds  Maybe[float64]
	Pump     string // PumpOn, PumpOff
	Drawn    []RanDrawn
	Levelled []RanLevelled
}

// RanDrawn is what the pump drew from a compartment; RanLevelled what ran by gravity through the suction plumbing.
type (
	RanDrawn    = fluid.Drawing
	RanLevelled = fluid.Levelling
)

// Kind of the fact.
func (*Ran) Kind() Kind { return kindRan }

// Name of the fact.
func (*Ran) Name() string { return "ran" }

func (f *Ran) fields(w walker) {
	w.maybeNumber(1, "seconds", &f.Seconds)
	w.text(2, "pump", &f.Pump)
	list(w, 3, "drawn", &f.Drawn, func(w walker, d *RanDrawn) {
		w.letter(1, "from", &d.From)
		w.volume(2, "volume", &d.Volume)
	})
	list(w, 4, "levelled", &f.Levelled, func(w walker, l *RanLevelled) {
		w.letter(1, "from", &l.From)
		w.letter(2, "to", &l.To)
		w.volume(3, "volume", &l.Volume)
	})
}

// Cleaned: a part of the rig in which product dries was opened and cleaned. It moves nothing.
type Cleaned struct {
	What string // Strainers
	Text string
}

// Strainers are those of suction, line and nozzles.
const Strainers = "strainers"

// Kind of the fact.
func (*Cleaned) Kind() Kind { return kindCleaned }

// Name of the fact.
func (*Cleaned) Name() string { return "cleaned" }

func (f *Cleaned) fields(w walker) {
	w.text(1, "what", &f.What)
	w.text(2, "text", &f.Text)
}

// Marked: a mark of a compartment's gauge stands for a volume, read while it was filled with a meter. It moves nothing;
// a mark that the chart has already gets the new volume, and one without a volume is taken off.
type Marked struct {
	Compartment byte
	Mark        string
	Volume      Maybe[measure.Volume]
}

// Kind of the fact.
func (*Marked) Kind() Kind { return kindMarked }

// Name of the fact.
func (*Marked) Name() string { return "marked" }

func (f *Marked) fields(w walker) {
	w.letter(1, "compartment", &f.Compartment)
	w.scalar(2, "mark", &f.Mark)
	w.maybeVolume(3, "volume", &f.Volume)
}
