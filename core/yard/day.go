package yard

import (
	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// DayAsk is what is asked of the plan of a day.
type DayAsk struct {
	Lawns []string // in the operator's order; none: what is still to do today, or what a day opened now would have
	At    core.Moment
	Pins  []DayPin // what the other order is held to
}

// DayPlan is the plan of a day as it is shown: what is wrong first.
type DayPlan struct {
	Date     string
	Open     bool // the day is open
	Warnings []DayWarning
	Notes    []string // what was taken as so, for want of figures
	Given    DayOrder // in the operator's own order
	Best     DayOrder // the best order that was found; the same where none is better
	Better   bool
	Saves    batch.DaySaves
	Bound    float64 // minutes that no order is below
	Off      float64 // share by which Best is at most above the best there can be
	Steps    []batch.Step
}

// DayWarning is a zone for which something is wrong, or is to be known.
type DayWarning struct {
	Lawn, Zone string // or a product of which too little is in stock
	Weight     check.Weight
	Says, Do   string
	NoMix      bool // it is left out for want of a mix or of room
}

// DayOrder is the day in one order.
type DayOrder struct {
	Name        string // core.OrderGiven, core.OrderBest
	Loads       []DayLoad
	Stops       []DayStop
	Truck       []Truck
	Changeovers int
	Refills     int
	Minutes     batch.DayMinutes
	Miles       core.Maybe[float64] // great-circle
	Cost        measure.Money
	Unpriced    []string // products of which no price is known
	Exact       bool     // no choice of mixes, compartments and refills in this order takes fewer minutes
	Bound       float64  // minutes that no plan in this order is below
	Back        float64  // minute of the day
	Steps       []batch.Step
}

// DayLoad is what is loaded at one time.
type DayLoad struct {
	Before string // the lawn before which it is; empty: in the morning
	Place  string
	Tanks  []DayTank
}

// DayTank is what goes into a compartment, and what of it is for what.
type DayTank struct {
	Letter  byte
	Mix     string
	For     string // the applicator whose delivery rate it is made up for
	Had     measure.Volume
	Add     measure.Volume
	Level   measure.Volume // when it is loaded
	OnLawns measure.Volume
	Line    measure.Volume // stands in hose and cell
	Heel    measure.Volume
	Reserve measure.Volume // and what else is left
	Emptied measure.Volume // of another liquid that stands in it and has to go first
	Rinsed  bool
	// Strength is that of what is left of it, as a share of what was loaded: changeovers take the rest.
	Strength float64
	Products []core.LoadPart // that go in with Add
}

// DayStop is a call at a lawn.
type DayStop struct {
	Lawn   string
	At     float64 // minute of the day
	Drive  float64
	Miles  core.Maybe[float64]
	Waited float64
	Late   float64
	Zones  []DayZone
}

// DayZone is a zone at a stop.
type DayZone struct {
	Zone       string
	Area       measure.Area
	Mix, With  string // empty: nothing goes on it
	From       string // compartments: "a"
	Volume     measure.Volume
	Minutes    float64
	Refill     bool     // before it
	Changeover bool     // before it
	Asks       []string // what is asked at the trigger
	Why        string   // why nothing goes on it
}

// Truck is a product that goes on the truck.
type Truck struct {
	Product string
	Amount  measure.Amount
	Shelf   string // in packages
	Cost    core.Maybe[measure.Money]
}

// PlanDay makes the plan of a day from what the book holds.
func PlanDay(b *core.Book, q DayAsk) (DayPlan, error) {
	ask, err := AskDay(b, q)
	if err != nil {
		return DayPlan{}, err
	}
	choice, err := ask.Search()
	if err != nil {
		return DayPlan{}, err
	}
	return ask.Answer(&choice), nil
}

// DayQuestion is what the plan of a day is made from, gathered from the book.
type DayQuestion struct{ g *gathered }

// AskDay gathers it. It reads the book, and so does Answer.
func AskDay(b *core.Book, q DayAsk) (*DayQuestion, error) {
	g, err := gatherDay(b, q)
	return &DayQuestion{g}, err
}

// Search looks for the plan. It does not read the book, so that it may run beside what changes it.
func (q *DayQuestion) Search() (batch.DayChoice, error) { return batch.ChooseDay(q.g.day) }

// Answer puts what was found into the words of the book.
func (q *DayQuestion) Answer(choice *batch.DayChoice) DayPlan {
	g := q.g
	out := DayPlan{
		Date: g.date, Open: g.b.Day().Open, Warnings: g.warnings, Notes: g.notes, Better: choice.Better, Saves: choice.Saves,
		Bound: choice.Bound, Off: choice.Off, Steps: choice.Steps,
	}
	out.Given = g.order(core.OrderGiven, &choice.Given)
	out.Best = g.order(core.OrderBest, &choice.Best)
	if !out.Better {
		out.Best = out.Given
		out.Best.Name = core.OrderBest
	}
	out.noRoom(g, &choice.Given)
	out.Warnings = append(out.Warnings, g.short(&out.Given)...)
	return out
}

// Order is one of both orders, by its name.
func (p *DayPlan) Order(name string) *DayOrder {
	if name == core.OrderBest {
		return &p.Best
	}
	return &p.Given
}

// noRoom names the zones that no load has room for, behind those that have no mix.
func (p *DayPlan) noRoom(g *gathered, plan *batch.DayPlan) {
	for _, u := range plan.Unserved {
		if u.Why == batch.NoRoom {
			v := &g.day.Visits[u.Visit]
			p.Warnings = append(p.Warnings, DayWarning{
				Lawn: v.Name, Zone: v.Zones[u.Need].Zone, Weight: check.Stop, Says: u.Says, Do: "Do it in two loads, or with another applicator.", NoMix: true,
			})
		}
	}
}
