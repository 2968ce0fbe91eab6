package core

import "example.com/tintline/core/measure"

// Routed: the visits that are still planned today are these, in this order. It puts in, moves and takes out.
type Routed struct{ Lawns []string }

// Kind of the fact.
func (*Routed) Kind() Kind { return kindRouted }

// Name of the fact.
func (*Routed) Name() string { return "routed" }

func (f *Routed) fields(w walker) { w.texts(1, "lawns", &f.Lawns) }

// CarriedOver: what is left to do on a lawn is kept for another day. Zones say how much of each, 0 that a zone is not
// owed any more; none means what the visit now has left, else what is owed already, else all of the lawn.
type CarriedOver struct {
	Lawn   string
	Zones  []ZoneRest
	Reason string
	Until  string // a date, if one is meant
}

// ZoneRest is how much of a zone is left to do.
type ZoneRest struct {
	Zone string
	Area measure.Area
}

// Kind of the fact.
func (*CarriedOver) Kind() Kind { return kindCarriedOver }

// Name of the fact.
func (*CarriedOver) Name() string { return "carried_over" }

func (f *CarriedOver) fields(w walker) {
	w.text(1, "lawn", &f.Lawn)
	list(w, 2, "zones", &f.Zones, func(w walker, z *ZoneRest) {
		w.text(1, "zone", &z.Zone)
		w.area(2, "area", &z.Area)
	})
	w.text(3, "reason", &f.Reason)
	w.text(4, "until", &f.Until)
}

// Held: the day waits, for the wind or the rain. It is one state of the day, not a finding at each lawn.
type Held struct{ Cause string }

// Kind of the fact.
func (*Held) Kind() Kind { return kindHeld }

// Name of the fact.
func (*Held) Name() string { return "held" }

func (f *Held) fields(w walker) { w.text(1, "cause", &f.Cause) }

// Resumed: the wait is over.
type Resumed struct{ Reason string }

// Kind of the fact.
func (*Resumed) Kind() Kind { return kindResumed }

// Name of the fact.
func (*Resumed) Name() string { return "resumed" }

func (f *Resumed) fields(w walker) { w.text(1, "reason", &f.Reason) }

// Noted: something was written down about a lawn.
type Noted struct{ Lawn, Text string }

// Kind of the fact.
func (*Noted) Kind() Kind { return kindNoted }

// Name of the fact.
func (*Noted) Name() string { return "noted" }

func (f *Noted) fields(w walker) {
	w.text(1, "lawn", &f.Lawn)
	w.text(2, "text", &f.Text)
}
