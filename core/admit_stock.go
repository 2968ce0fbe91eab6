package core

import (
	"math"

	"example.com/tintline/core/measure"
)

// MostPackages is the most that is bought at once.
const MostPackages = 10000

// resolveStocked gives what was bought its amount, from the packages; a package of which no size is said is the label entry's.
func (s *state) resolveStocked(f *Stocked) (Fact, error) {
	c := *f
	p := s.Product(f.Product)
	if p == nil {
		return &c, nil // admission names it
	}
	form := p.Label.Form
	// Nothing of an amount says nothing of its kind.
	if c.Amount.N == 0 {
		c.Amount.Kind = form
	}
	if c.Package.N == 0 {
		c.Package.Kind = form
	}
	if !c.Packages.Known {
		return &c, nil
	}
	n := c.Packages.V
	if !(n >= 1 && n <= MostPackages) || n != math.Trunc(n) {
		return nil, refuse("Give 1 to 10,000, or the amount in all.", "%.6g packages of %s were bought.", n, f.Product)
	}
	if c.Package.N == 0 {
		c.Package = p.Label.Package
	}
	if c.Package.N < 0 || c.Package.N > largestAmount {
		return nil, refuse("Give more than 0, up to 10,000 gal or 22,000 lb.", "A package of %s is said to hold %s.", f.Product, c.Package.Text())
	}
	if c.Package.N == 0 {
		return nil, refuse("Say how much is in one, such as 2 x 2.5 gal, or 2 x 50 lb of what is dry.", "How much is in a package of %s is not known.", f.Product)
	}
	all := measure.MulDiv(c.Package.N, int64(n), 1)
	if c.Amount.N == 0 {
		c.Amount = measure.Amount{N: all, Kind: c.Package.Kind}
	}
	if c.Amount.N != all {
		return nil, refuse("Leave the amount out, or correct one of the two.", "%.6g packages of %s are %s, and %s were bought.",
			n, c.Package.Text(), measure.Amount{N: all, Kind: c.Package.Kind}.Text(), c.Amount.Text())
	}
	return &c, nil
}

func (s *state) admitStocked(f *Stocked) error {
	p := s.Product(f.Product)
	if p == nil {
		return s.noProduct(f.Product)
	}
	for _, a := range []measure.Amount{f.Amount, f.Package} {
		if a.Kind != p.Label.Form {
			return otherKind(f.Product, p.Label.Form, a)
		}
		if a.N < 0 || a.N > largestAmount {
			return refuse("Give 0 to 10,000 gal or 22,000 lb.", "The stock of %s is given as %s.", f.Product, a.Text())
		}
	}
	if f.What != Bought && (f.Packages.Known || f.Paid.Known || f.Supplier != "" || f.Lot != "") {
		return refuse("Leave them out, or say that it was bought.", "%s was not bought, but packages, price, supplier or lot are given.", f.Product)
	}
	switch f.What {
	case Counted, Reorder:
		return nil
	case Bought:
		return s.admitBought(f)
	}
	if f.What == "" {
		return refuse("Say one of bought, counted, reorder.", "What was done with the stock of %s is not said.", f.Product)
	}
	return refuse("Say one of bought, counted, reorder.", "%q is not what is done with a stock.", f.What)
}

// otherKind refuses a weight of a liquid, and a volume of what is dry.
func otherKind(product string, form measure.Kind, given measure.Amount) error {
	if form == measure.Dry {
		return refuse("Give a weight, such as oz or lb.", "%s is dry and is weighed, but %s is a volume.", product, given.Text())
	}
	return refuse("Give a volume, such as fl oz or gal.", "%s is liquid and is measured by volume, but %s is a weight.", product, given.Text())
}

func (s *state) admitBought(f *Stocked) error {
	if f.Amount.N == 0 {
		return refuse("Say how much, such as 2 x 2.5 gal.", "How much of %s was bought is not said.", f.Product)
	}
	if have := s.Stock(f.Product).Have; have.Known && have.V.N > largestAmount-f.Amount.N {
		return refuse("Count what is there.", "With %s more there would be more of %s than a book can hold.", f.Amount.Text(), f.Product)
	}
	if f.Paid.Known && (f.Paid.V < 0 || f.Paid.V > HighestPrice) {
		return refuse("Give 0 to 100,000 dollars.", "The price of %s is %s.", f.Product, f.Paid.V.Text())
	}
	return nil
}
