package yard

import (
	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// Shelf is the stock of all products, and what the planned loads take of it.
type Shelf struct {
	Products []Stocked
	Findings []check.Finding
	Cost     batch.Cost // of what the planned loads take
	Steps    []batch.Step
}

// Stocked is the stock of a product, what the planned loads take of it, tank by tank as it is measured out, and what to order.
type Stocked struct {
	core.Stock
	Takes   []Take
	Truck   core.Maybe[batch.Opening] // what becomes of the packages; unknown where their size, or the stock, is
	Order   core.Maybe[Order]
	Cost    core.Maybe[measure.Money] // of what is planned
	Finding *check.Finding
	Steps   []batch.Step
}

// Take is what the load of one tank takes of a product.
type Take struct {
	Into     string
	Measured batch.Measured
}

// Order is what is to be bought.
type Order struct {
	Amount   measure.Amount
	Packages int64 // 0: their size is not known
	Package  measure.Amount
	Why      string
}

// Words is "2 jugs of 2.5 gal".
func (o Order) Words() string {
	if o.Packages == 0 {
		return o.Amount.Text()
	}
	return batch.Packages(o.Packages, o.Package, "")
}

// Stock gathers the stock of the book.
func Stock(b *core.Book) (Shelf, error) {
	out := Shelf{Findings: check.Stock(b)}
	var priced []batch.Priced
	var planned []int
	for _, st := range b.Stocks() {
		one, err := stockOf(b, st)
		if err != nil {
			return Shelf{}, err
		}
		for i := range out.Findings {
			if out.Findings[i].Product == st.Product {
				one.Finding = &out.Findings[i]
			}
		}
		if st.Planned.N > 0 {
			priced = append(priced, PricedOf(b, st.Product, st.Planned))
			planned = append(planned, len(out.Products))
		}
		out.Products = append(out.Products, one)
		out.Steps = append(out.Steps, one.Steps...)
	}
	cost, err := batch.CostOf(priced)
	if err != nil {
		return Shelf{}, err
	}
	for i, at := range planned {
		out.Products[at].Cost = cost.Each[i]
		out.Products[at].Steps = append(out.Products[at].Steps, cost.Steps[i])
	}
	out.Cost = cost
	out.Steps = append(out.Steps, cost.Steps...)
	return out, nil
}

// PricedOf is an amount of a product with the price that was last paid for it, else that of its label entry.
func PricedOf(b *core.Book, product string, a measure.Amount) batch.Priced {
	st := b.Stock(product)
	return batch.Priced{Product: product, Amount: a, Price: st.Price, Package: st.PriceFor}
}

func stockOf(b *core.Book, st core.Stock) (Stocked, error) {
	out := Stocked{Stock: st}
	ruler := Ruler(b)
	for _, plan := range b.LoadPlans() {
		for _, p := range plan.Parts {
			if p.Product != st.Product {
				continue
			}
			m, err := ruler.Measure(p.Product, p.Amount, st.Package)
			if err != nil {
				return Stocked{}, err
			}
			out.Takes = append(out.Takes, Take{plan.Into, m})
			out.Steps = append(out.Steps, m.Steps...)
		}
	}
	if st.Planned.N > 0 && st.Package.N > 0 && st.Have.Known && st.Have.V.N >= 0 {
		_, open := batch.InPackages(st.Have.V, st.Package)
		opening, err := batch.Open(st.Product, st.Planned, open, st.Package)
		if err != nil {
			return Stocked{}, err
		}
		out.Truck = core.Known(opening)
		out.Steps = append(out.Steps, opening.Steps...)
	}
	out.order()
	return out, nil
}

// order is what is to be bought so that the planned loads have what they take and the line is reached again. A stock that was never
// counted orders nothing.
func (s *Stocked) order() {
	if !s.Have.Known {
		return
	}
	line := s.Reorder.Or(measure.Amount{Kind: s.Form})
	missing := measure.Amount{N: line.N + s.Planned.N - s.Have.V.N, Kind: s.Form}
	if missing.N <= 0 {
		return
	}
	o := Order{Amount: missing, Why: s.Have.V.Text() + " are there"}
	if s.Planned.N > 0 {
		o.Why += ", " + s.Planned.Text() + " are planned"
	}
	if s.Reorder.Known {
		o.Why += ", the line is " + line.Text()
	}
	if s.Package.N > 0 {
		o.Packages, o.Package = (missing.N+s.Package.N-1)/s.Package.N, s.Package
	}
	s.Order = core.Known(o)
	s.Steps = append(s.Steps, batch.Step{Says: s.Product + ": " + o.Why + ": order " + o.Words()})
}
