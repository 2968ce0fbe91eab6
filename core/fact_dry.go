package core

import "example.com/tintline/core/measure"

// Fitted: a tip of the rig's list was put on an applicator, or a setting of it chosen. Its delivery rate and flow
// hold from then on.
//
// With a hose it says on which of the rig's hoses the applicator hangs from now on.
type Fitted struct {
	Applicator, Tip string
	Hose            string
}

// Kind of the fact.
func (*Fitted) Kind() Kind { return kindFitted }

// Name of the fact.
func (*Fitted) Name() string { return "fitted" }

func (f *Fitted) fields(w walker) {
	w.text(1, "applicator", &f.Applicator)
	w.text(2, "tip", &f.Tip)
	w.later()
	w.text(3, "hose", &f.Hose)
}

// ByWeight is a spreading that was weighed.
const ByWeight = "weight"

// Spread: so much of a dry product went on these zones, in this order. The entry holds the resolved amount and area.
type Spread struct {
	Lawn       string
	Zones      []string
	Applicator string
	Product    string
	By         string // area, weight
	Amount     measure.Amount
	Area       Maybe[measure.Area]
}

// Kind of the fact.
func (*Spread) Kind() Kind { return kindSpread }

// Name of the fact.
func (*Spread) Name() string { return "spread" }

func (f *Spread) fields(w walker) {
	w.text(1, "lawn", &f.Lawn)
	w.texts(2, "zones", &f.Zones)
	w.text(3, "applicator", &f.Applicator)
	w.text(4, "product", &f.Product)
	w.text(5, "by", &f.By)
	w.amount(6, "amount", &f.Amount)
	w.maybeArea(7, "area", &f.Area)
}
