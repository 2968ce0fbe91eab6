package tally

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// MoneyWays are the ways in which money is added up.
var MoneyWays = []string{"day", "week", "month", "lawn", "round"}

// MoneyRow is what a day, a lawn or another part brought and took.
type MoneyRow struct {
	Name              string
	Revenue, Material measure.Money
	Paid, Free        int   // visits with a charge, and without
	ByNow             int   // visits whose entry has no price: at the price in force now
	Unpriced          int   // visits for which no price is known: not in Revenue
	Seconds           int64 // of the day, each visit with its share of what is neither site nor drive
	Site, Drive       int64
	Miles             float64 // of the days on which the odometer was read
	Metered           int     // how many days that was
	Without           []string
}

// Money is what days brought and took. Rows add up to All.
type Money struct {
	By    string
	Rows  []MoneyRow
	All   MoneyRow
	Out   map[string]measure.Money // what was paid, by what for
	In    measure.Money            // what came in beside the visits
	Again []Again
	Days  int
}

// Again is how often a lawn had to be called at again without a charge: by product of the visit before, or by cause.
type Again struct {
	Of, Name   string // "product" or "cause"
	Free, Paid int    // Paid: visits with a charge at which the product went down
	Cost       measure.Money
}

// AddMoney adds up days, oldest first, those from a date on. Days of the same year before it only count the rounds and say what went down
// before a call-back.
func AddMoney(b *core.Book, days []Earned, by, from, to string) Money {
	m := Money{By: by, Out: map[string]measure.Money{}}
	m.All.Name = "all"
	rounds, year := map[string]int{}, ""
	last := map[string][]string{}
	for i := range days {
		e := &days[i]
		if y := e.Date[:min(4, len(e.Date))]; y != year {
			year, rounds = y, map[string]int{}
		}
		in := (from == "" || e.Date >= from) && (to == "" || e.Date <= to)
		if in {
			m.Days++
			m.All.meter(e)
			if r := m.dayRow(e); r != nil {
				r.meter(e)
			}
		}
		shares := e.shared()
		left := e.Seconds
		for j := range e.Calls {
			c := &e.Calls[j]
			if c.Visit() && c.Kind != core.CallBack && c.Kind != core.LookOnly {
				rounds[c.Lawn]++
			}
			left -= shares[j]
			if in {
				m.take(b, e, c, shares[j], rounds[c.Lawn])
				m.again(b, c, last[c.Lawn])
			}
			if c.Visit() && c.Kind != core.CallBack && len(c.Used) > 0 {
				last[c.Lawn] = usedIn(c)
			}
		}
		if in && left != 0 { // a day without visits, or clocks that were set
			m.row(m.nameOf(e, nil, 0)).Seconds += left
			m.All.Seconds += left
		}
	}
	for _, p := range b.Payments() {
		switch {
		case (from != "" && p.Date < from) || (to != "" && p.Date > to):
		case p.What == core.PaidIn:
			m.In += p.Amount.V
		default:
			m.Out[p.What] += p.Amount.V
		}
	}
	return m
}

func usedIn(c *Call) []string {
	var out []string
	for _, u := range c.Used {
		out = append(out, u.Product)
	}
	return out
}

func (r *MoneyRow) meter(e *Earned) {
	if e.Miles.Known {
		r.Miles += e.Miles.V
		r.Metered++
	}
}

func (m *Money) dayRow(e *Earned) *MoneyRow {
	switch m.By {
	case "day", "week", "month":
		return m.row(m.nameOf(e, nil, 0))
	}
	return nil
}

func (m *Money) row(name string) *MoneyRow {
	for i := len(m.Rows) - 1; i >= 0; i-- {
		if m.Rows[i].Name == name {
			return &m.Rows[i]
		}
	}
	m.Rows = append(m.Rows, MoneyRow{Name: name})
	return &m.Rows[len(m.Rows)-1]
}

// nameOf is in which row a call stands; what belongs to no call stands by itself.
func (m *Money) nameOf(e *Earned, c *Call, round int) string {
	switch m.By {
	case "week":
		return mondayOf(e.Date)
	case "month":
		return e.Date[:min(len("2006-01"), len(e.Date))]
	case "lawn", "round":
		switch {
		case c == nil:
			return "at no lawn"
		case m.By == "lawn":
			return c.Lawn
		}
		return fmt.Sprintf("%s round %d", e.Date[:min(4, len(e.Date))], round)
	}
	return e.Date
}

func mondayOf(date string) string {
	t, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return date
	}
	return t.AddDate(0, 0, -(int(t.Weekday())+6)%7).Format(time.DateOnly)
}

func (m *Money) take(b *core.Book, e *Earned, c *Call, seconds int64, round int) {
	one := MoneyRow{Seconds: seconds, Site: c.Site, Drive: c.Drive}
	if c.Visit() {
		price := c.Price
		if !price.Known {
			if price = b.PriceNow(c.Lawn, c.Kind); price.Known {
				one.ByNow = 1
			}
		}
		switch {
		case !price.Known:
			one.Unpriced = 1
		case price.V == 0:
			one.Free = 1
		default:
			one.Paid, one.Revenue = 1, price.V
		}
	}
	for _, u := range c.Used {
		if u.Cost.Known {
			one.Material += u.Cost.V
		} else if u.Amount.N != 0 {
			one.Without = append(one.Without, u.Product)
		}
	}
	m.row(m.nameOf(e, c, round)).add(&one)
	m.All.add(&one)
}

func (r *MoneyRow) add(o *MoneyRow) {
	r.Revenue += o.Revenue
	r.Material += o.Material
	r.Paid += o.Paid
	r.Free += o.Free
	r.ByNow += o.ByNow
	r.Unpriced += o.Unpriced
	r.Seconds += o.Seconds
	r.Site += o.Site
	r.Drive += o.Drive
	for _, w := range o.Without {
		if !slices.Contains(r.Without, w) {
			r.Without = append(r.Without, w)
		}
	}
}

// Visits is how many there were, with a charge, without, and of no known price.
func (r *MoneyRow) Visits() int { return r.Paid + r.Free + r.Unpriced }

// Left is revenue less material.
func (r *MoneyRow) Left() measure.Money { return r.Revenue - r.Material }

// again counts a call-back by its cause and by what went down on the lawn before; other visits by what went down.
func (m *Money) again(_ *core.Book, c *Call, before []string) {
	if !c.Visit() {
		return
	}
	if c.Kind != core.CallBack {
		for _, p := range usedIn(c) {
			m.of("product", p).Paid++
		}
		return
	}
	var cost measure.Money
	for _, u := range c.Used {
		cost += u.Cost.V
	}
	cause := m.of("cause", strings.TrimSpace(c.Cause))
	cause.Free++
	cause.Cost += cost
	for _, p := range before {
		m.of("product", p).Free++
	}
}

func (m *Money) of(of, name string) *Again {
	for i := range m.Again {
		if m.Again[i].Of == of && m.Again[i].Name == name {
			return &m.Again[i]
		}
	}
	m.Again = append(m.Again, Again{Of: of, Name: name})
	return &m.Again[len(m.Again)-1]
}

// PaidOut is all that was paid.
func (m *Money) PaidOut() measure.Money {
	var out measure.Money
	for _, what := range core.PaidKinds {
		out += m.Out[what]
	}
	return out
}
