package yard

import (
	"slices"

	"example.com/tintline/core"
)

// Accept is what it means that the operator takes one of the orders: the plan of the day, its order where the day is open and has
// another one, and what is to be loaded in the morning, as load lists. A compartment that has to be emptied or rinsed first gets no list.
func (p *DayPlan) Accept(b *core.Book, name string) []core.Fact {
	o := p.Order(name)
	out := []core.Fact{p.fact(b, o)}
	if p.Open {
		var lawns []string
		for _, s := range o.Stops {
			lawns = append(lawns, s.Lawn)
		}
		if r := routed(b, lawns); r != nil {
			out = append(out, r)
		}
	}
	for _, l := range o.Loads {
		if l.Before != "" {
			continue
		}
		for _, t := range l.Tanks {
			if t.Add > 0 && t.Emptied == 0 && !t.Rinsed {
				out = append(out, &core.LoadPlanned{Into: string(rune(t.Letter)), Volume: t.Add, Mix: t.Mix, For: t.For})
			}
		}
	}
	return out
}

// routed is the order of what is still planned, nil where it is that already. Lawns that are not in the plan stay, behind it.
func routed(b *core.Book, lawns []string) *core.Routed {
	var now, out []string
	for _, v := range b.Day().Next() {
		now = append(now, v.Lawn)
	}
	for _, l := range lawns {
		if v := b.Day().Visiting(); v == nil || v.Lawn != l {
			out = append(out, l)
		}
	}
	for _, l := range now {
		if !slices.Contains(out, l) {
			out = append(out, l)
		}
	}
	if slices.Equal(now, out) {
		return nil
	}
	return &core.Routed{Lawns: out}
}

func (p *DayPlan) fact(b *core.Book, o *DayOrder) *core.DayPlanned {
	f := &core.DayPlanned{
		Date: p.Date, Order: o.Name, Changeovers: core.Known(float64(o.Changeovers)), Minutes: core.Known(o.Minutes.Total()), Miles: o.Miles,
		Saved: core.Known(p.Given.Minutes.Total() - o.Minutes.Total()),
	}
	if len(o.Unpriced) == 0 {
		f.Cost = core.Known(o.Cost)
	}
	for _, s := range o.Stops {
		for _, z := range s.Zones {
			v := core.PlannedZone{Lawn: s.Lawn, Zone: z.Zone, Area: z.Area}
			if z.Mix != "" && z.From != "" {
				v.Mix, v.With, v.From = z.Mix, z.With, z.From[:1]
			}
			f.Visits = append(f.Visits, v)
		}
	}
	for _, l := range o.Loads {
		for _, t := range l.Tanks {
			if t.Add > 0 {
				f.Loads = append(f.Loads, core.PlannedLoad{Into: string(rune(t.Letter)), Mix: t.Mix, For: t.For, Volume: t.Add, Before: l.Before, Place: l.Place})
			}
		}
	}
	return f
}
