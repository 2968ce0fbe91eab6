package worth

import (
	"fmt"

	"example.com/tintline/core/measure"
)

// Tariff is how a visit is charged: flat, or by the area treated with a minimum that includes some of it. What is unknown is
// not part of it.
type Tariff struct {
	Flat     measure.Maybe[measure.Money]
	Minimum  measure.Maybe[measure.Money]
	Included measure.Maybe[measure.Area] // what the minimum pays for
	Per1000  measure.Maybe[measure.Money]
}

// Says tells whether a price follows from it.
func (t Tariff) Says() bool { return t.Flat.Known || t.Minimum.Known || t.Per1000.Known }

// Price is what a visit is charged: the flat price, else minimum + (sq ft / 1,000 - included) x rate, never less than the minimum
// (common practice, no source). Unknown: the tariff says nothing.
func (t Tariff) Price(area measure.Area) (measure.Maybe[measure.Money], []Step) {
	var s steps
	switch {
	case t.Flat.Known:
		s.say("flat price " + t.Flat.V.Text())
		return t.Flat, s
	case !t.Says():
		s.say("no price is entered")
		return measure.Maybe[measure.Money]{}, s
	}
	over := max(area-max(t.Included.V, 0), 0)
	more := measure.Money(measure.MulDivRound(int64(over), int64(t.Per1000.V), int64(measure.ThousandSquareFeet)))
	p := t.Minimum.V + more
	s.say(fmt.Sprintf("%s + (%s - %s sq ft) / 1,000 x %s = %s", t.Minimum.V.Text(), area.Text(), max(t.Included.V, 0).Text(), t.Per1000.V.Text(), p.Text()))
	return measure.Known(p), s
}

// Contribution is what a visit leaves: price - product - minutes x cost of a minute (definition).
func Contribution(price, product measure.Money, minutes float64, minute measure.Money) (measure.Money, []Step) {
	time := measure.Dollars(float64(minutes * minute.Dollars()))
	out := price - product - time
	return out, []Step{{fmt.Sprintf("%s - %s product - %.1f min x %s = %s", price.Text(), product.Text(), minutes, minute.Text(), out.Text())}}
}

// Retreat is what a visit without a charge costs: product + time on site + round-trip drive at the cost of a minute (definition).
func Retreat(product measure.Money, site, drive float64, minute measure.Money) (measure.Money, []Step) {
	time := measure.Dollars(float64((site + drive) * minute.Dollars()))
	out := product + time
	return out, []Step{{fmt.Sprintf("%s product + (%.1f + %.1f min) x %s = %s", product.Text(), site, drive, minute.Text(), out.Text())}}
}
