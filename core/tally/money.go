package tally

import (
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// Earned is what one day brought and took, call by call.
type Earned struct {
	Date    string
	Seconds int64               // from opened to closed
	Miles   core.Maybe[float64] // by the odometer, where it was read on that day
	Calls   []Call
}

// Call is a visit that was ended, or what was laid on a lawn without one (Kind empty).
type Call struct {
	Lawn, Kind, Cause string
	Price             core.Maybe[measure.Money] // as the entry says; unknown: it says none
	Site, Drive       int64                     // seconds on the lawn, and driving to it from the lawn before
	With              []string                  // applicators
	Used              []Cost
}

// Cost is how much of a product went down, and what it came to at the price in force at the end of the day.
type Cost struct {
	Product string
	Amount  measure.Amount
	Cost    core.Maybe[measure.Money]
}

// Visit tells whether it was a visit, and not only something laid.
func (c *Call) Visit() bool { return c.Kind != "" }

// EarnedOn is what the book's own day brought.
func EarnedOn(b *core.Book, now core.Maybe[core.Moment]) Earned {
	d := b.Day()
	out := Earned{Date: d.Date, Seconds: seconds(d, now)}
	if m := b.Meters().Odometer; m.Last.Known && m.At.Date() == d.Date && m.Run > m.DayRun {
		out.Miles = core.Known(m.Run - m.DayRun)
	}
	visits := visitsOf(d)
	at := map[int]int{}
	before := core.Moment{}
	gap := int64(b.Setting(core.DriveGapMin) * 60)
	for i := range d.Visits {
		v := &d.Visits[i]
		if v.State != core.Done && v.State != core.Begun {
			continue
		}
		c := Call{Lawn: v.Lawn, Kind: v.Kind, Cause: v.Cause, Price: v.Price}
		if c.Kind == "" {
			c.Kind = core.Round
		}
		if v.State == core.Done {
			c.Site = max(v.Ended.Unix-v.Begun.Unix, 0)
		} else {
			c.Price = core.Known(measure.Money(0)) // charged when it is done
		}
		if !before.Zero() {
			c.Drive = min(max(v.Begun.Unix-before.Unix, 0), gap)
		}
		before = v.Ended
		at[i+1] = len(out.Calls)
		out.Calls = append(out.Calls, c)
	}
	for i := range d.Laid {
		out.use(b, &d.Laid[i], visits[d.Laid[i].Seq], at)
	}
	out.price(b)
	return out
}

// use books what was laid to its visit; outside of one to a call of its own on the lawn.
func (e *Earned) use(b *core.Book, l *core.Laid, visit int, at map[int]int) {
	n, in := at[visit]
	if !in {
		n = slices.IndexFunc(e.Calls, func(c Call) bool { return c.Lawn == l.Lawn && !c.Visit() })
		if n < 0 {
			n = len(e.Calls)
			e.Calls = append(e.Calls, Call{Lawn: l.Lawn})
		}
	}
	c := &e.Calls[n]
	if !slices.Contains(c.With, l.Applicator) {
		c.With = append(c.With, l.Applicator)
	}
	for _, p := range productsOf(b, l) {
		i := slices.IndexFunc(c.Used, func(u Cost) bool { return u.Product == p.Product })
		if i < 0 {
			i = len(c.Used)
			c.Used = append(c.Used, Cost{Product: p.Product, Amount: measure.Amount{Kind: p.Amount.Kind}})
		}
		c.Used[i].Amount.N += p.Amount.N
	}
}

// price shares what each product of the day came to over the calls, so that calls add up to the day to the cent.
func (e *Earned) price(b *core.Book) {
	type place struct{ call, used int }
	var names []string
	places := map[string][]place{}
	for i := range e.Calls {
		for j, u := range e.Calls[i].Used {
			if len(places[u.Product]) == 0 {
				names = append(names, u.Product)
			}
			places[u.Product] = append(places[u.Product], place{i, j})
		}
	}
	for _, name := range names {
		st := b.Stock(name)
		if !st.Price.Known || st.PriceFor.N <= 0 {
			continue
		}
		var weights []int64
		var sum int64
		for _, p := range places[name] {
			n := e.Calls[p.call].Used[p.used].Amount.N
			weights, sum = append(weights, n), sum+n
		}
		shares := measure.Apportion(weights, measure.MulDivRound(sum, int64(st.Price.V), st.PriceFor.N))
		for i, p := range places[name] {
			e.Calls[p.call].Used[p.used].Cost = core.Known(measure.Money(shares[i]))
		}
	}
}

// shared gives each visit its seconds of the day: on the lawn, driving, and the same share of all other work.
func (e *Earned) shared() []int64 {
	out, weights := make([]int64, len(e.Calls)), make([]int64, len(e.Calls))
	rest, visits := e.Seconds, 0
	for i := range e.Calls {
		c := &e.Calls[i]
		out[i] = c.Site + c.Drive
		rest -= out[i]
		if c.Visit() {
			weights[i] = 1
			visits++
		}
	}
	if visits == 0 || rest <= 0 {
		return out
	}
	for i, s := range measure.Apportion(weights, rest) {
		out[i] += s
	}
	return out
}
