package batch

import "example.com/tintline/core/measure"

// Priced is an amount of a product, and what a package of it costs; a package of 0 or an unknown price gives no cost.
type Priced struct {
	Product string
	Amount  measure.Amount
	Price   measure.Maybe[measure.Money]
	Package measure.Amount // what the price buys
}

// Cost is what products come to. Total leaves out those without a price, which Unpriced names.
type Cost struct {
	Each     []measure.Maybe[measure.Money] // as they were given
	Total    measure.Money
	Unpriced []string
	Steps    []Step
}

// CostOf is what amounts cost: amount x price / package, each to the cent, half to even. It refuses an amount below 0 and a package in the
// wrong kind of unit.
func CostOf(parts []Priced) (Cost, error) {
	var out Cost
	var s steps
	for _, p := range parts {
		if p.Amount.N < 0 || p.Amount.N > largest {
			return Cost{}, measure.Troublef("Give 0 or more, and no more than a tank could take.", "The amount of %s is %s.", p.Product, p.Amount.Text())
		}
		if !p.Price.Known || p.Package.N <= 0 {
			out.Each = append(out.Each, measure.Maybe[measure.Money]{})
			out.Unpriced = append(out.Unpriced, p.Product)
			s.say(p.Product, ": no price is entered")
			continue
		}
		if p.Package.Kind != p.Amount.Kind {
			return Cost{}, wrongKind(p.Product, p.Amount.Kind, p.Package.Text())
		}
		c := measure.Money(measure.MulDivRound(p.Amount.N, int64(p.Price.V), p.Package.N))
		out.Each = append(out.Each, measure.Known(c))
		out.Total += c
		s.say(p.Product, ": ", p.Amount.Text(), " at ", p.Price.V.Text(), " for ", PackageSize(p.Package), " = ", c.Text())
	}
	out.Steps = s
	return out, nil
}
