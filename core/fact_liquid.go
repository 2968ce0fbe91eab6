package core

import "example.com/tintline/core/measure"

// Loaded: liquid was put into a compartment or an applicator's own tank. Parts are what it holds; a mix
// named for an applicator gives them where they are left out. It is also the top-up. Without a volume it is dry
// product, by weight, that was put into an applicator's hopper.
type Loaded struct {
	Into   string // a letter, or an applicator
	Volume measure.Volume
	Parts  []LoadPart
	Mix    string
	For    string // the applicator for whose delivery rate the mix is made up
	// Place is where it was mixed; the meter readings are those of the water meter before and after the filling.
	Place                   string
	MeterBefore, MeterAfter Maybe[measure.Volume]
}

// LoadPart is a product put in.
type LoadPart struct {
	Product string
	Amount  measure.Amount
}

// DryMass is the weight of all dry products in a load.
func (f *Loaded) DryMass() measure.Mass {
	var sum measure.Mass
	for _, p := range f.Parts {
		if p.Amount.Kind == measure.Dry {
			sum += measure.Mass(p.Amount.N)
		}
	}
	return sum
}

// Kind of the fact.
func (*Loaded) Kind() Kind { return kindLoaded }

// Name of the fact.
func (*Loaded) Name() string { return "loaded" }

func (f *Loaded) fields(w walker) {
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

// LinedUp: the valves were turned.
type LinedUp struct {
	Supply []byte
	Return byte // 0: nowhere
}

// Kind of the fact.
func (*LinedUp) Kind() Kind { return kindLinedUp }

// Name of the fact.
func (*LinedUp) Name() string { return "lined_up" }

func (f *LinedUp) fields(w walker) {
	w.letters(1, "supply", &f.Supply)
	w.letter(2, "return", &f.Return)
}

// PushedBack: so much was sprayed through a hose into a compartment, or to a place outside (a pail).
type PushedBack struct {
	Into   byte
	Volume measure.Volume
	Hose   string // empty: the first
	To     string // a place, where it is no compartment: "waste/pail"
	// Bypass is what went through the bypass meanwhile; it sweeps the mixing cell too, and brings what stood there into
	// the compartment of the return. Unknown: not reckoned.
	Bypass Maybe[measure.Volume]
}

// Kind of the fact.
func (*PushedBack) Kind() Kind { return kindPushedBack }

// Name of the fact.
func (*PushedBack) Name() string { return "pushed_back" }

func (f *PushedBack) fields(w walker) {
	w.letter(1, "into", &f.Into)
	w.volume(2, "volume", &f.Volume)
	w.later()
	w.text(3, "hose", &f.Hose)
	w.text(4, "to", &f.To)
	w.maybeVolume(5, "bypass", &f.Bypass)
}

// TintSeen: the eye saw the colour change at the nozzle after so much, or so long; or it did not come until then.
// It moves nothing; what it says of hose and mixing cell is learned (see Learned).
type TintSeen struct {
	Volume  Maybe[measure.Volume]
	Seconds Maybe[float64]
	Missed  string // "yes": no tint came
	// Half and full colour, where they were timed too.
	Half        Maybe[measure.Volume]
	HalfSeconds Maybe[float64]
	Full        Maybe[measure.Volume]
	FullSeconds Maybe[float64]
	Hose        string // empty: the first
	// What the entry rests on, filled in from the book: the flow at the nozzle, the share of the pump's output that
	// leaves there, and which way the colour changes.
	Flow      Maybe[measure.Flow]
	GunShare  Maybe[float64]
	Direction string // TowardsTint, TowardsClear, BetweenAlike; empty: not known
	// How well all of it is known, as standard uncertainties, filled in too: hose and cell before this was seen, what the
	// eye adds at the first trace, clock, and flow as a share. What lies more than OddSDs of them off is not learned.
	HoseSD, CellSD, FirstSD Maybe[measure.Volume]
	TimeSD, FlowSD, OddSDs  Maybe[float64]
}

// Which way the colour at the nozzle changes.
const (
	TowardsTint  = "tint"  // the eye sees the first trace
	TowardsClear = "clear" // the eye sees the last of it
	BetweenAlike = "alike" // no tint tells the two apart
)

// Kind of the fact.
func (*TintSeen) Kind() Kind { return kindTintSeen }

// Name of the fact.
func (*TintSeen) Name() string { return "tint_seen" }

func (f *TintSeen) fields(w walker) {
	w.maybeVolume(1, "volume", &f.Volume)
	w.maybeNumber(2, "seconds", &f.Seconds)
	w.later()
	w.text(3, "missed", &f.Missed)
	w.maybeVolume(4, "half_volume", &f.Half)
	w.maybeNumber(5, "half_seconds", &f.HalfSeconds)
	w.maybeVolume(6, "full_volume", &f.Full)
	w.maybeNumber(7, "full_seconds", &f.FullSeconds)
	w.text(8, "hose", &f.Hose)
	w.maybeFlow(9, "flow", &f.Flow)
	w.maybeNumber(10, "gun_share", &f.GunShare)
	w.text(11, "direction", &f.Direction)
	w.maybeVolume(12, "hose_sd", &f.HoseSD)
	w.maybeVolume(13, "cell_sd", &f.CellSD)
	w.maybeVolume(14, "first_sd", &f.FirstSD)
	w.maybeNumber(15, "time_sd", &f.TimeSD)
	w.maybeNumber(16, "flow_sd", &f.FlowSD)
	w.maybeNumber(17, "odd_sds", &f.OddSDs)
}

// Filled: an applicator's tank was filled through the hose.
type Filled struct {
	Applicator string
	Volume     measure.Volume
	Bypass     Maybe[measure.Volume] // as of PushedBack
}

// Kind of the fact.
func (*Filled) Kind() Kind { return kindFilled }

// Name of the fact.
func (*Filled) Name() string { return "filled" }

func (f *Filled) fields(w walker) {
	w.text(1, "applicator", &f.Applicator)
	w.volume(2, "volume", &f.Volume)
	w.later()
	w.maybeVolume(3, "bypass", &f.Bypass)
}

// How a spraying was measured.
const (
	ByArea    = "area"
	ByGallons = "gallons"
	ByGauge   = "gauge"
)

// Sprayed: so much went on these zones, in this order. The entry holds the resolved volume and area.
type Sprayed struct {
	Lawn       string
	Zones      []string
	Applicator string
	By         string
	Volume     Maybe[measure.Volume]
	Area       Maybe[measure.Area]
	Before     Maybe[measure.Volume]
	After      Maybe[measure.Volume]
	Bypass     Maybe[measure.Volume] // as of PushedBack
	Teaching   []Teaching            // of one by gauge: on what it rests what it teaches; one or none
}

// Kind of the fact.
func (*Sprayed) Kind() Kind { return kindSprayed }

// Name of the fact.
func (*Sprayed) Name() string { return "sprayed" }

func (f *Sprayed) fields(w walker) {
	w.text(1, "lawn", &f.Lawn)
	w.texts(2, "zones", &f.Zones)
	w.text(3, "applicator", &f.Applicator)
	w.text(4, "by", &f.By)
	w.maybeVolume(5, "volume", &f.Volume)
	w.maybeArea(6, "area", &f.Area)
	w.maybeVolume(7, "before", &f.Before)
	w.maybeVolume(8, "after", &f.After)
	w.later()
	w.maybeVolume(9, "bypass", &f.Bypass)
	list(w, 10, "teaching", &f.Teaching, teachingFields)
}

// GaugeRead: what a compartment's gauge says. Mark is the reading as it stands on the gauge.
type GaugeRead struct {
	Compartment byte
	Volume      Maybe[measure.Volume]
	Mark        string
	GiveOrTake  Maybe[measure.Volume] // the standard uncertainty of the reading, filled in from chart and truck
	Teaching    []Teaching            // on what it rests what it teaches, filled in; one or none
}

// Kind of the fact.
func (*GaugeRead) Kind() Kind { return kindGaugeRead }

// Name of the fact.
func (*GaugeRead) Name() string { return "gauge_read" }

func (f *GaugeRead) fields(w walker) {
	w.letter(1, "compartment", &f.Compartment)
	w.maybeVolume(2, "volume", &f.Volume)
	w.scalar(3, "mark", &f.Mark)
	w.later()
	w.maybeVolume(4, "give_or_take", &f.GiveOrTake)
	list(w, 5, "teaching", &f.Teaching, teachingFields)
}

// Rinsed: water was put into a compartment and run out to a place, all but the heel; without a place it stays.
type Rinsed struct {
	Compartment byte
	Water       measure.Volume
	To          string
}

// Kind of the fact.
func (*Rinsed) Kind() Kind { return kindRinsed }

// Name of the fact.
func (*Rinsed) Name() string { return "rinsed" }

func (f *Rinsed) fields(w walker) {
	w.letter(1, "compartment", &f.Compartment)
	w.volume(2, "water", &f.Water)
	w.text(3, "to", &f.To)
}

// Dumped: so much, or all, ran from a place of the rig to another place. A weight is dry product out of a hopper.
type Dumped struct {
	From   string
	Volume Maybe[measure.Volume]
	To     string
	Amount Maybe[measure.Mass]
}

// Kind of the fact.
func (*Dumped) Kind() Kind { return kindDumped }

// Name of the fact.
func (*Dumped) Name() string { return "dumped" }

func (f *Dumped) fields(w walker) {
	w.text(1, "from", &f.From)
	w.maybeVolume(2, "volume", &f.Volume)
	w.text(3, "to", &f.To)
	w.later()
	w.maybeMass(4, "amount", &f.Amount)
}
