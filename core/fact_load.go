package core

import "example.com/tintline/core/measure"

// LoadPlanned: this is to go into a compartment or an applicator's tank. A later plan for the same tank takes its
// place, one of 0 gal takes it away, and a load of that tank fulfils it.
type LoadPlanned struct {
	Into   string // a letter, or an applicator
	Volume measure.Volume
	Parts  []LoadPart
	Mix    string
	For    string
	// Place is where it is mixed; the meter readings are those of the water meter before and after the filling.
	Place                   string
	MeterBefore, MeterAfter Maybe[measure.Volume]
}

// Kind of the fact.
func (*LoadPlanned) Kind() Kind { return kindLoadPlanned }

// Name of the fact.
func (*LoadPlanned) Name() string { return "load_planned" }

func (f *LoadPlanned) fields(w walker) {
	w.text(1, "into", &f.Into)
	w.volume(2, "volume", &f.Volume)
	list(w, 3, "parts", &f.Parts, func(w walker, p *LoadPart) {
		w.text(1, "product", &p.Product)
		w.amount(2, "amount", &p.Amount)
	})
	w.text(4, "mix", &f.Mix)
	w.text(5, "for", &f.For)
	w.later()
	w.text(6, "place", &f.Place)
	w.maybeVolume(7, "meter_before", &f.MeterBefore)
	w.maybeVolume(8, "meter_after", &f.MeterAfter)
}

// Ticked: an item of a list was done, or is taken back. It moves nothing; a tick outlives a restart.
type Ticked struct {
	List string // "load/a"
	Item string // a product, "water", or a step
	Undo string // "yes": the tick is taken away
	// Place goes with StepPlace, Meter with the two steps of the meter.
	Place string
	Meter Maybe[measure.Volume]
}

// Kind of the fact.
func (*Ticked) Kind() Kind { return kindTicked }

// Name of the fact.
func (*Ticked) Name() string { return "ticked" }

func (f *Ticked) fields(w walker) {
	w.text(1, "list", &f.List)
	w.text(2, "item", &f.Item)
	w.text(3, "undo", &f.Undo)
	w.later()
	w.text(4, "place", &f.Place)
	w.maybeVolume(5, "meter", &f.Meter)
}
