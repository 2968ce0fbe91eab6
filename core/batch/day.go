package batch

import "example.com/tintline/core/measure"

// Day is what a day is planned from. Minutes are minutes of work; a liquid is a mix at the strength of one delivery rate, so
// that one mix for a gun and for a ride-on are two liquids.
type Day struct {
	Liquids []DayLiquid
	Tanks   []DayTank
	Visits  []DayVisit // in the operator's own order
	Costs   DayCosts
	// Line is what stands in hose and mixing cell when the day begins; NoLiquid: nothing that is used.
	Line int
	// Drive is how long it takes from one visit to another, and how far it is; Visits[i] to Visits[j] at [i][j]. Start and End
	// are those from the yard to each and from each to it. They are known together or not at all.
	Drive      [][]Leg
	Start, End []Leg
}

// NoLiquid stands for no liquid, and for no tank.
const NoLiquid = -1

// DayLiquid is a liquid that can be loaded.
type DayLiquid struct {
	Name string
	// Cost is the product in a volume of it, in cents for a gallon.
	CentsPerGallon float64
}

// DayTank is a compartment.
type DayTank struct {
	Letter         byte
	Capacity, Heel measure.Volume
	Holds          int            // a liquid, or NoLiquid where it holds nothing that the day may use
	Left           measure.Volume // of that
	// Shut says that it holds something that is not used today and stays.
	Shut bool
}

// DayVisit is a call at a lawn.
type DayVisit struct {
	Name   string
	Needs  []DayNeed
	Minute float64 // on site besides what its needs take: walking, the sign, the door
	Pinned bool    // it stays at its place in the order
	// From and To are the minutes of the day between which it may begin; To of 0: any.
	From, To float64
}

// DayNeed is a zone to be treated, and the ways in which it may be: none where no mix may go on it.
type DayNeed struct {
	Name    string
	Options []DayOption
}

// DayOption is a way to treat a zone.
type DayOption struct {
	Liquid  int
	Volume  measure.Volume // what goes on the zone
	Minutes float64        // with setting up the applicator
	// Rank says which is wanted: what is lower goes before, whatever it takes.
	Rank int
	// Tag is the caller's own.
	Tag int
}

// Leg is a way from one place to another.
type Leg struct {
	Minutes float64
	Miles   float64
}

// DayCosts are what turning, loading and holding back take.
type DayCosts struct {
	Changeover float64        // minutes of one
	Refill     float64        // minutes of one, with the way there and back, at the place that is named
	Hose, Cell measure.Volume // what stands between tank and nozzle while a liquid is used
	Reserve    float64        // share of what is needed that is loaded on top
	Lost       float64        // share of a hose charge that stays old when it is pushed back: the strength that is lost
	Begins     float64        // minute of the day at which the truck leaves the yard
}

// DayPlan is a plan of a day.
type DayPlan struct {
	Order       []int // indexes of Day.Visits
	Choices     [][]int
	Loads       []DayLoad
	Changeovers []DayChange
	Demand      []measure.Volume // by liquid, what goes on lawns
	Minutes     DayMinutes
	Miles       float64
	Cents       float64
	Unserved    []Unserved
	// Rank is the sum of the ranks of all options.
	Rank int
	// Lost is, by tank, the share of the strength of what is in it that its changeovers take.
	Lost []float64
	// Exact says that no other choice of options, tanks and refills is better in this order. Bound is what no plan of this
	// order, or where it was searched for of any order, can go below.
	Exact bool
	Bound float64 // minutes
	Steps []Step
}

// DayMinutes are the minutes of a plan by what they go into.
type DayMinutes struct{ Site, Drive, Changeover, Refill, Wait float64 }

// All is their sum.
func (m DayMinutes) All() float64 { return m.Site + m.Drive + m.Changeover + m.Refill + m.Wait }

// DayLoad is what is loaded before a visit: in the morning before the first.
type DayLoad struct {
	Before int // place in the order
	Tanks  []TankLoad
}

// TankLoad is a tank after a load.
type TankLoad struct {
	Tank, Liquid int
	Add          measure.Volume // what is put in
	Have         measure.Volume // what was in it already
	Sprayed      measure.Volume // what of it goes on lawns until the next load
	Line         measure.Volume // what of it stands in hose and cell
	Heel         measure.Volume
	Reserve      measure.Volume
}

// DayChange is a changeover: before a need of the visit at a place in the order.
type DayChange struct {
	At, Need int
	From, To int // liquids
}

// Unserved is a zone that the plan leaves out.
type Unserved struct {
	Visit, Need int // indexes of Day.Visits and its Needs
	NoOption    bool
	Room        measure.Volume // of the largest load, where it is too large for any
}
