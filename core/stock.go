package core

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// stockLine is what the Stocked entries of a product come to. Amounts are in the product's unit, nL or ng.
type stockLine struct {
	known   bool   // it was counted or bought
	counted bool   // the first entry was a count: else there may have been some before
	base    int64  // what there was at the last count, and what was bought since
	then    int64  // what had come out of packages by that count, or by the first purchase
	since   Moment // of that count, or of the first purchase
	off     int64  // the counts less what the book said: unexplained
	recount int32  // counts that were held against the book
	// The line below which it is to be bought.
	reorder Maybe[int64]
	// The last purchase.
	pack       int64
	paid       Maybe[measure.Money]
	paidFor    int64
	supplier   string
	lot        string
	yearBefore int64 // what had come out of packages before the year of the day that is open
	// All that was ever bought, and what of it before that year.
	bought, boughtBefore int64
}

// taken is how much has ever come out of the packages of a product.
func (s *state) taken(key int32) int64 {
	return -s.plumbing.Outside[fluid.PackagePlace(s.products[key].Name)].Holds.Of(key)
}

// stockOf is the line of a product that may be changed: the list is made as long as the products.
func (s *state) stockOf(key int) *stockLine {
	for len(s.stock) <= key {
		s.stock = append(s.stock, stockLine{})
	}
	return &s.stock[key]
}

func (l *stockLine) have(taken int64) int64 { return l.base - (taken - l.then) }

// applyStocked keeps a purchase, a count or a line. What a count finds is believed; by how much the book was wrong is summed up.
func (s *state) applyStocked(e Entry, f *Stocked) {
	k, ok := s.productAt[f.Product]
	if !ok || f.Amount.Kind != s.products[k].Now().Label.Form {
		return
	}
	l, taken := s.stockOf(k), s.taken(int32(k))
	switch f.What {
	case Bought:
		if !l.known {
			l.known, l.then, l.since = true, taken, e.At
		}
		l.base += f.Amount.N
		l.bought += f.Amount.N
		l.pack, l.supplier, l.lot = f.Package.N, f.Supplier, f.Lot
		if f.Paid.Known {
			l.paid, l.paidFor = f.Paid, f.Amount.N
		}
	case Counted:
		if l.known {
			l.off += f.Amount.N - l.have(taken)
			l.recount++
		}
		l.known, l.counted, l.base, l.then, l.since = true, true, f.Amount.N, taken, e.At
	case Reorder:
		l.reorder = Maybe[int64]{V: f.Amount.N, Known: f.Amount.N > 0}
	}
}

// yearOfStock begins the year's account of what is used, with the first day of another year.
func (s *state) yearOfStock(before, date string) {
	const year = len("2026")
	if len(before) < year || len(date) < year || before[:year] == date[:year] {
		return
	}
	for k := range s.products {
		if taken := s.taken(int32(k)); taken != 0 {
			s.stockOf(k).yearBefore = taken
		}
		if k < len(s.stock) {
			s.stock[k].boughtBefore = s.stock[k].bought
		}
	}
}

// Stock is what the book says of the stock of a product.
type Stock struct {
	Product string
	Form    measure.Kind
	// Have is what is there; below 0 more was put in than was there. Unknown: it was neither counted nor bought yet.
	Have    Maybe[measure.Amount]
	Counted bool   // it was counted at least once; else it is what was bought since Since, less what was used
	Since   Moment // the last count, or else the first purchase
	// Unexplained is what counts found more (or, below 0, less) than the book said; Recounts is how many of them there were.
	Unexplained measure.Amount
	Recounts    int
	Used        measure.Amount // since Since
	UsedYear    measure.Amount // in the year of the last day
	BoughtYear  measure.Amount // in the year of the last day
	Planned     measure.Amount // what the planned loads take
	Reorder     Maybe[measure.Amount]
	Package     measure.Amount // of the last purchase, else of the label entry; 0: not known
	// Price is what PriceFor costs: as last paid, else by the label entry.
	Price    Maybe[measure.Money]
	PriceFor measure.Amount
	Paid     bool // it is a price that was paid
	Supplier string
	Lot      string
}

// Stock is what the book says of the stock of a product; of a name that it does not have, nothing.
func (s *state) Stock(product string) Stock {
	k, ok := s.productAt[product]
	if !ok {
		return Stock{Product: product}
	}
	e := &s.products[k].Now().Label
	amount := func(n int64) measure.Amount { return measure.Amount{N: n, Kind: e.Form} }
	var l stockLine
	if k < len(s.stock) {
		l = s.stock[k]
	}
	taken := s.taken(int32(k))
	out := Stock{
		Product: product, Form: e.Form, Counted: l.counted, Since: l.since, Unexplained: amount(l.off), Recounts: int(l.recount),
		UsedYear: amount(taken - l.yearBefore), BoughtYear: amount(l.bought - l.boughtBefore), Planned: amount(s.plannedOf(product)), Package: amount(l.pack),
		Price: e.Price, PriceFor: e.Package, Supplier: l.supplier, Lot: l.lot,
	}
	if l.known {
		out.Have, out.Used = Known(amount(l.have(taken))), amount(taken-l.then)
	} else {
		out.Used = amount(taken)
	}
	if l.reorder.Known {
		out.Reorder = Known(amount(l.reorder.V))
	}
	if l.pack == 0 {
		out.Package = e.Package
	}
	if l.paid.Known {
		out.Price, out.PriceFor, out.Paid = l.paid, amount(l.paidFor), true
	}
	return out
}

// Stocks lists the stock of all products, in the order in which they were entered.
func (s *state) Stocks() []Stock {
	out := make([]Stock, 0, len(s.products))
	for i := range s.products {
		out = append(out, s.Stock(s.products[i].Name))
	}
	return out
}

// plannedOf is how much of a product the planned loads take.
func (s *state) plannedOf(product string) int64 {
	var n int64
	for _, plan := range s.LoadPlans() {
		for _, p := range plan.Parts {
			if p.Product == product {
				n += p.Amount.N
			}
		}
	}
	return n
}

// digestStock adds what the Stocked entries come to; a book without any has the digest that it always had.
func (s *state) digestStock(w *binaryWriter) {
	begun := false
	for k := range s.stock {
		l := &s.stock[k]
		if !l.known && !l.reorder.Known {
			continue
		}
		if !begun {
			w.str("stock")
			begun = true
		}
		w.count(k)
		for _, n := range []int64{l.base, l.then, l.off, int64(l.recount), l.reorder.V, l.pack, int64(l.paid.V), l.paidFor} {
			w.int(n)
		}
		for _, yes := range []bool{l.known, l.counted, l.paid.Known} {
			w.yes(yes)
		}
		w.str(l.supplier)
		w.str(l.lot)
	}
}
