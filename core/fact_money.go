package core

import "example.com/tintline/core/measure"

// What money was paid for; In is money that came in and is no visit.
const (
	PaidFuel      = "fuel"
	PaidRepair    = "repair"
	PaidInsurance = "insurance"
	PaidWages     = "wages"
	PaidOffice    = "office"
	PaidOther     = "other"
	PaidIn        = "in"
)

// PaidKinds lists them.
var PaidKinds = []string{PaidFuel, PaidRepair, PaidInsurance, PaidWages, PaidOffice, PaidOther, PaidIn}

// Paid: money went out that is no product and no thing of lasting use, or came in that is no visit.
type Paid struct {
	What   string
	Amount Maybe[measure.Money]
	Fuel   Maybe[measure.Volume]
	Of     string // the investment it belongs to; empty: to the work as a whole
	Date   string // empty: the date of the day that is open, else of the entry
	Note   string
}

// Kind of the fact.
func (*Paid) Kind() Kind { return kindPaid }

// Name of the fact.
func (*Paid) Name() string { return "paid" }

func (f *Paid) fields(w walker) {
	w.text(1, "what", &f.What)
	w.maybeMoney(2, "paid", &f.Amount)
	w.maybeVolume(3, "fuel", &f.Fuel)
	w.text(4, "of", &f.Of)
	w.text(5, "date", &f.Date)
	w.text(6, "note", &f.Note)
}

// By what an investment earns.
const (
	EarnsAll        = "all"        // by each visit
	EarnsApplicator = "applicator" // by the visits at which an applicator was used
	EarnsMinutes    = "minutes"    // by minutes saved at each visit at which an applicator was used
)

// EarnsKinds lists them.
var EarnsKinds = []string{EarnsAll, EarnsApplicator, EarnsMinutes}

// Invested: a thing of lasting use was bought, or what is known of it is another, or it was retired or sold. The last entry of a name rules.
type Invested struct {
	Thing      string
	Cost       Maybe[measure.Money]
	Date       string
	Salvage    Maybe[measure.Money]
	Years      Maybe[float64] // of use
	Interest   Maybe[float64] // per cent a year
	Earns      string
	Applicator string
	Minutes    Maybe[float64] // saved at a lawn
	Retired    string         // the date; empty: in use
	SoldFor    Maybe[measure.Money]
}

// Kind of the fact.
func (*Invested) Kind() Kind { return kindInvested }

// Name of the fact.
func (*Invested) Name() string { return "invested" }

func (f *Invested) fields(w walker) {
	w.text(1, "thing", &f.Thing)
	w.maybeMoney(2, "cost", &f.Cost)
	w.text(3, "date", &f.Date)
	w.maybeMoney(4, "salvage", &f.Salvage)
	w.maybeNumber(5, "years", &f.Years)
	w.maybeNumber(6, "interest_pct", &f.Interest)
	w.text(7, "earns", &f.Earns)
	w.text(8, "applicator", &f.Applicator)
	w.maybeNumber(9, "minutes_saved", &f.Minutes)
	w.text(10, "retired", &f.Retired)
	w.maybeMoney(11, "sold_for", &f.SoldFor)
}
