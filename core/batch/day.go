package batch

import "example.com/tintline/core/measure"

// Day is what the plan of a day is made from. The caller has judged: only options that may be laid are given.
type Day struct {
	Visits      []Visit // in the operator's own order
	Liquids     []DayLiquid
	Applicators []DayApplicator
	Rig         DayRig
	Times       DayTimes
	Reserve     DayReserve
	Base        Place   // where the day begins and ends, and where the truck is loaded
	Start       float64 // minute of the day at which the truck leaves it
}

// Visit is a call at a lawn.
type Visit struct {
	Name   string
	Place  Place
	Zones  []Need
	Pinned measure.Maybe[int]     // its place among the visits that are still to do, 0 for the first
	From   measure.Maybe[float64] // minute of the day before which it is not begun
	To     measure.Maybe[float64] // minute of the day after which it is not begun
	Loads  bool                   // water and product can be had there: a refill needs no drive
	Done   bool                   // it is left out of the plan
}

// Need is a zone that is to be treated. Without options there is no mix for it.
type Need struct {
	Zone    string
	Area    measure.Area
	Options []Option
	Why     string // why it has no option, in a sentence; empty: there is no mix for it
}

// Option is a way to treat a zone: a liquid through an applicator.
type Option struct {
	Liquid     int // which of Day.Liquids; ByHand: it draws from no compartment, as a spreader, or a backpack that is mixed for it
	Applicator int // which of Day.Applicators
	Volume     measure.Volume
	Minutes    float64 // on site, with setting up, and with filling and rinsing a tank of its own
	Cost       measure.Money
	Products   []Dose // that are taken beside what the liquid holds
}

// What an option, a compartment or the line holds that is none of the day's liquids.
const (
	ByHand  = -1 // of an option
	Nothing = -1 // of a compartment: it is empty and clean
	Other   = -2 // of a compartment: it is rinsed before it gets another liquid; of the line: also water and air
)

// DayLiquid is what can stand in a compartment: a mix at the strength of a delivery rate. A mix for the gun and for the ride-on are two
// liquids, unless both lay the same.
type DayLiquid struct {
	Name     string
	Mix      string
	Delivery measure.Rate
	Products []Target // and how strong each is in it
}

// DayApplicator is what lays it.
type DayApplicator struct{ Name string }

// DayRig is the tank and the line to the nozzle.
type DayRig struct {
	Compartments []DayCompartment
	Line         DayLine
}

// DayCompartment is one part of the tank.
type DayCompartment struct {
	Letter         byte
	Capacity, Heel measure.Volume
	Left           measure.Volume // what stands in it in the morning
	Holds          int            // which of Day.Liquids that is, or Nothing, or Other
	// Likes is the liquid that usually stands in it, by its name or by what stood in it last. It decides only where nothing else does.
	Likes measure.Maybe[int]
}

// DayLine is what stands between the compartments and the nozzle.
type DayLine struct {
	Hose, Cell, Return measure.Volume
	Bypass             float64 // share of the pump's flow that goes through the return line
	Clean              float64 // share of new liquid at the nozzle at which a changeover ends
	Holds              int     // which of Day.Liquids, or Other
}

// DayTimes are minutes, but for the speed.
type DayTimes struct {
	Changeover float64 // each
	Refill     float64 // each, with the rinses that it takes, without the drive
	Rinse      float64 // in the morning, of each compartment that gets another liquid
	Between    float64 // from one place to the next where the way is not known
	ToRefill   float64 // more for the drive to the refill and back where the way is not known
	MPH        float64 // over a way that is known
}

// DayReserve is what is carried beyond the need: a share of what is laid, and a volume of each liquid in each load.
type DayReserve struct {
	Share  float64
	Volume measure.Volume
}
