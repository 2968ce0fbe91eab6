package tally

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/printed"
	"example.com/tintline/core/worth"
)

// Assumed is a pace that is given instead of the present one; 0: not given.
type Assumed struct{ Stops, Days float64 }

// Payback is how far an investment has paid for itself.
type Payback struct {
	Of      core.Invested
	Calls   int
	Revenue measure.Money // or the value of the minutes saved
	Product measure.Money
	Running measure.Money
	Net     measure.Money
	Left    measure.Money      // of what it cost; below 0: more came in
	Paid    string             // the day on which it had paid back; empty: not yet
	Pace    measure.Money      // net of a year at the present pace
	By      string             // the day at that pace; empty: it has none, or it is paid
	Assumed core.Maybe[string] // the day by what was assumed; empty: never at that pace
	Year    core.Maybe[measure.Money]
	Unknown []string // what is not in it
}

// Paybacks says of each investment what it has earned since it was bought. Days are all that the book has, oldest first; today is a date.
func Paybacks(b *core.Book, days []Earned, today string, a Assumed) []Payback {
	var out []Payback
	for _, f := range b.Investments() {
		out = append(out, payback(b, f, days, today, a))
	}
	return out
}

func payback(b *core.Book, f core.Invested, days []Earned, today string, a Assumed) Payback {
	p := Payback{Of: f}
	var flows []worth.Flow
	minute := measure.Dollars(b.Setting(core.TargetHourUSD) / 60)
	if f.Earns == core.EarnsMinutes && minute == 0 {
		p.unknown("the value of a minute: set target_hour_usd")
	}
	for i := range days {
		e := &days[i]
		if e.Date < f.Date || (f.Retired != "" && e.Date > f.Retired) {
			continue
		}
		net := measure.Money(0)
		for j := range e.Calls {
			net += p.call(b, &e.Calls[j], minute)
		}
		flows = append(flows, worth.Flow{Day: dayOf(e.Date), Cash: net})
	}
	for _, pay := range b.Payments() {
		if cash, is := p.pays(b, &pay); is && pay.Date >= f.Date {
			flows = append(flows, worth.Flow{Day: dayOf(pay.Date), Cash: cash})
			p.Running -= cash
		}
	}
	if f.SoldFor.Known {
		flows = append(flows, worth.Flow{Day: dayOf(f.Retired), Cash: f.SoldFor.V})
	}
	slices.SortStableFunc(flows, func(x, y worth.Flow) int { return x.Day - y.Day })
	p.Net = p.Revenue - p.Product - p.Running + f.SoldFor.V
	day, paid, left := worth.Paid(f.Cost.V, flows)
	p.Left = left
	if paid {
		p.Paid = dateOfDay(day)
	}
	p.ahead(today, paid, a)
	if f.Years.Known {
		p.Year, _ = worth.Machine{Buy: f.Cost.V, Salvage: f.Salvage.V, Years: f.Years.V, Interest: f.Interest.V}.Year()
	}
	return p
}

// ahead says when what is left comes in.
func (p *Payback) ahead(today string, paid bool, a Assumed) {
	since := dayOf(today) - dayOf(p.Of.Date) + 1
	if since > 0 && p.Of.Retired == "" {
		p.Pace = measure.Money(measure.MulDivRound(int64(p.Net), 365, int64(since)))
	}
	if paid || p.Of.Retired != "" {
		return
	}
	if d := worth.DaysAt(p.Left, p.Pace); d.Known {
		p.By = dateOfDay(dayOf(today) + d.V)
	}
	if a.Stops > 0 && a.Days > 0 && p.Calls > 0 {
		stop := measure.Money(measure.MulDivRound(int64(p.Net), 1, int64(p.Calls)))
		p.Assumed = core.Known("")
		if d := worth.DaysAt(p.Left, worth.Assumed(a.Stops, a.Days, stop)); d.Known {
			p.Assumed = core.Known(dateOfDay(dayOf(today) + d.V))
		}
	}
}

// call is what a visit brought the investment.
func (p *Payback) call(b *core.Book, c *Call, minute measure.Money) measure.Money {
	f := &p.Of
	if f.Earns != "" && f.Earns != core.EarnsAll && !slices.Contains(c.With, f.Applicator) {
		return 0
	}
	if c.Visit() {
		p.Calls++
	}
	if f.Earns == core.EarnsMinutes {
		if !c.Visit() {
			return 0
		}
		saved, _ := worth.RideOn(f.Minutes.V, 1, minute, 0, 0)
		p.Revenue += saved
		return saved
	}
	price := c.Price
	if c.Visit() && !price.Known {
		if price = b.PriceNow(c.Lawn, c.Kind); !price.Known {
			p.unknown("the price at " + c.Lawn)
		}
	}
	var product measure.Money
	for _, u := range c.Used {
		if !u.Cost.Known && u.Amount.N != 0 {
			p.unknown("the price of " + u.Product)
		}
		product += u.Cost.V
	}
	p.Revenue += price.V
	p.Product += product
	return price.V - product
}

// pays is what a payment brings an investment: its own, and where it earns by all visits also those of no other one.
func (p *Payback) pays(_ *core.Book, pay *core.Paid) (measure.Money, bool) {
	all := p.Of.Earns == "" || p.Of.Earns == core.EarnsAll
	if pay.Of != p.Of.Thing && (!all || pay.Of != "") {
		return 0, false
	}
	if pay.What == core.PaidIn {
		return pay.Amount.V, true
	}
	return -pay.Amount.V, true
}

func (p *Payback) unknown(what string) {
	if !slices.Contains(p.Unknown, what) {
		p.Unknown = append(p.Unknown, what)
	}
}

const secondsADay = 86_400

func dayOf(date string) int {
	t, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return 0
	}
	return int(t.Unix() / secondsADay)
}

func dateOfDay(day int) string {
	return time.Unix(int64(day)*secondsADay, 0).UTC().Format(time.DateOnly)
}

// Share is how much of it is paid back, 0 to 1.
func (p *Payback) Share() float64 {
	if p.Of.Cost.V <= 0 {
		return 1
	}
	return min(max(1-float64(p.Left)/float64(p.Of.Cost.V), 0), 1)
}

// Says is when it has paid back, in words.
func (p *Payback) Says() string {
	switch {
	case p.Paid != "":
		return "paid back on " + p.Paid
	case p.Of.Retired != "":
		return "retired on " + p.Of.Retired + ", " + p.Left.Text() + " short"
	case p.By != "":
		return "at the present pace on " + p.By
	}
	return "at the present pace not within 100 years"
}

// PaybackDocument is all of them as they are handed out.
func PaybackDocument(list []Payback, a Assumed) printed.Document {
	d := printed.Document{Title: "Payback"}
	if len(list) == 0 {
		d.About = []string{"Nothing that was bought for lasting use is in the book."}
	}
	for i := range list {
		p := &list[i]
		part := printed.Part{Title: p.Of.Thing, Pairs: []printed.Pair{
			{Name: "cost", Says: p.Of.Cost.V.Text() + " on " + p.Of.Date},
			{Name: "visits", Says: fmt.Sprint(p.Calls)},
			{Name: "earned", Says: p.Revenue.Text()},
			{Name: "product", Says: p.Product.Text()},
			{Name: "running, less what came in", Says: p.Running.Text()},
			{Name: "net so far", Says: p.Net.Text()},
			{Name: "left to earn", Says: max(p.Left, 0).Text()},
			{Name: "paid back", Says: fmt.Sprintf("%.0f %%; %s", p.Share()*100, p.Says())},
		}}
		if p.Assumed.Known {
			says := "not within 100 years"
			if p.Assumed.V != "" {
				says = "on " + p.Assumed.V
			}
			part.Pairs = append(part.Pairs, printed.Pair{Name: fmt.Sprintf("with %g stops on %g days a year", a.Stops, a.Days), Says: says})
		}
		if p.Year.Known {
			part.Pairs = append(part.Pairs, printed.Pair{Name: "costs a year, capital alone", Says: p.Year.V.Text()})
		}
		if len(p.Unknown) > 0 {
			part.Lines = []string{"Not known, and not in it: " + strings.Join(p.Unknown, ", ") + "."}
		}
		d.Parts = append(d.Parts, part)
	}
	d.Foot = []string{"Payback counts cash: depreciation and interest are left out, and so is what comes after (Iowa State University extension, Ag Decision Maker C5-240). Capital cost a year: capital recovery (A3-29)."}
	return d
}
