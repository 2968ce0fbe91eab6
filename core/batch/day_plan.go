package batch

import "example.com/tintline/core/measure"

// DayPlan is a plan of a day. Visits, needs, options and liquids are named by their places in the Day.
type DayPlan struct {
	Order       []int // the visits, without those that are done and those where nothing is laid
	Laid        []DayLaid
	Unserved    []DayUnserved
	Loads       []DayLoad // the first is that of the morning
	Changeovers []DayChange
	Minutes     DayMinutes
	Miles       measure.Maybe[float64] // great-circle; unknown where the way of one leg is not known
	Cost        measure.Money          // of what is laid
	Demand      []DayDemand            // one for each of Day.Liquids
	Carry       []Dose                 // product to put on the truck, with what refills need; Strength is not set
	Arrivals    []DayArrival           // one for each of Order
	Return      float64                // minute of the day at which the truck is back
	Exact       bool                   // no choice of options, compartments and refills in this order takes fewer minutes
	Bound       float64                // minutes that no plan in this order is below
	States      int                    // that were looked at
	Steps       []Step
}

// DayLaid is a zone that is treated.
type DayLaid struct {
	Visit, Need, Option int
	Load                int // from which of Loads
}

// The reasons why a zone is not treated.
const (
	NoMix  = "no_mix"
	NoRoom = "no_room" // it does not fit into any load
)

// DayUnserved is a zone that is not treated.
type DayUnserved struct {
	Visit, Need int
	Why         string
	Says        string
}

// DayLoad is what is put into the compartments at one time.
type DayLoad struct {
	Visit, Need  int // before which it is made; -1 in the morning
	Detour       float64
	Compartments []CompartmentLoad // that are used in it
	Products     []Dose
}

// CompartmentLoad is what goes into a compartment.
type CompartmentLoad struct {
	Compartment int
	Letter      byte
	Liquid      int
	Had         measure.Volume // that stood in it of the same liquid
	ThrownOut   measure.Volume // that stood in it of another
	Rinsed      bool
	Add         measure.Volume
	Level       measure.Volume // when it is loaded
	Laid        measure.Volume // out of it
	Left        measure.Volume // when the next load is made, or the day ends; with the heel
	Strength    float64        // of what is then left, as a share of what was loaded
}

// DayChange is a changeover.
type DayChange struct {
	Visit, Need int  // before which it is made
	From, To    int  // liquids; From may be Other
	Home        bool // a compartment takes back what the line held
}

// DayMinutes are the minutes of a day by kind.
type DayMinutes struct{ Site, Drive, Changeover, Refill, Rinse, Wait float64 }

// Total is all of them.
func (m DayMinutes) Total() float64 {
	return m.Site + m.Drive + m.Changeover + m.Refill + m.Rinse + m.Wait
}

// DayDemand is what becomes of a liquid: had + loaded + mixed = laid + left + in the line + thrown out + displaced.
type DayDemand struct {
	Needed    measure.Volume // laid, one line, reserve
	Laid      measure.Volume
	Had       measure.Volume // in compartments and line in the morning
	Loaded    measure.Volume
	Left      measure.Volume // in compartments at the end
	Line      measure.Volume // in the line at the end
	ThrownOut measure.Volume // out of compartments that got another liquid
	Displaced measure.Volume // out of the line with no compartment to take it
	Mixed     measure.Volume // of others that changeovers brought into it, less what of it they brought into others
}

// DayArrival is when a visit is begun.
type DayArrival struct {
	Visit            int
	Drive            float64 // minutes from the visit before
	Miles            measure.Maybe[float64]
	At, Waited, Late float64 // minute of the day; minutes
}

// DayChoice is the operator's own order beside the best other one that was found.
type DayChoice struct {
	Given, Best DayPlan
	Better      bool // Best saves something
	Saves       DaySaves
	Bound       float64 // minutes that no order is below
	Off         float64 // share by which Best is at most above the best there can be
	Steps       []Step
}

// DaySaves is what the best order found saves.
type DaySaves struct {
	Changeovers, Refills int
	Minutes              float64
	Miles                measure.Maybe[float64]
}
