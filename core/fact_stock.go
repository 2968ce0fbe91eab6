package core

import "example.com/tintline/core/measure"

// What a Stocked entry says was done.
const (
	Bought  = "bought"
	Counted = "counted"
	Reorder = "reorder"
)

// Stocked: product was bought, or what is there was counted, or the amount was set from which on more of it is to be bought. It moves
// nothing: what is in stock follows from these entries and from what has come out of the packages since.
type Stocked struct {
	Product string
	What    string         // bought, counted, reorder
	Amount  measure.Amount // bought: in all; counted: what is there; reorder: below this, 0 takes the line away
	// Packages of one size make the amount bought; both may be left out.
	Packages Maybe[float64]
	Package  measure.Amount
	Paid     Maybe[measure.Money] // for all of it
	Supplier string
	Lot      string
}

// Kind of the fact.
func (*Stocked) Kind() Kind { return kindStocked }

// Name of the fact.
func (*Stocked) Name() string { return "stocked" }

func (f *Stocked) fields(w walker) {
	w.text(1, "product", &f.Product)
	w.text(2, "what", &f.What)
	w.amount(3, "amount", &f.Amount)
	w.maybeNumber(4, "packages", &f.Packages)
	w.amount(5, "package", &f.Package)
	w.maybeMoney(6, "paid", &f.Paid)
	w.text(7, "supplier", &f.Supplier)
	w.text(8, "lot", &f.Lot)
}
