package core

import (
	"example.com/tintline/core/measure"
	"example.com/tintline/core/worth"
)

// money is what was paid, with its dates and in the order of entry, and what was bought for lasting use.
type money struct {
	paid     []Paid
	invested []Invested
}

// Investments lists what was bought for lasting use, as last entered, in the order of the first entries.
func (s *state) Investments() []Invested { return s.invested }

// Investment is one of them, nil if there is none of that name.
func (s *state) Investment(name string) *Invested {
	for i := range s.invested {
		if s.invested[i].Thing == name {
			return &s.invested[i]
		}
	}
	return nil
}

// Payments lists what was paid and what came in beside the visits, in the order of entry; each has its date.
func (s *state) Payments() []Paid { return s.paid }

// applyPaid keeps a payment with its date. Lists are cut where they end, because a clone shares them.
func (s *state) applyPaid(e Entry, f *Paid) {
	p := *f
	if p.Date == "" {
		p.Date = e.At.Date()
		if s.day.Open {
			p.Date = s.day.Date
		}
	}
	s.paid = append(s.paid[:len(s.paid):len(s.paid)], p)
}

func (s *state) applyInvested(f *Invested) {
	list := append([]Invested(nil), s.invested...)
	for i := range list {
		if list[i].Thing == f.Thing {
			list[i] = *f
			s.invested = list
			return
		}
	}
	s.invested = append(list, *f)
}

// Tariff is how visits at a lawn are charged: as the lawn says, else as the settings say for all. Prices of its zones stand between.
func (f *Lawn) Tariff() worth.Tariff {
	return worth.Tariff{Flat: f.Price, Minimum: f.PriceMinimum, Included: f.PriceIncluded, Per1000: f.PricePer1000}
}

// Tariff is the one of the settings; a setting of 0 says nothing.
func (s *state) Tariff() worth.Tariff {
	money := func(name string) Maybe[measure.Money] {
		v := s.Setting(name)
		return Maybe[measure.Money]{V: measure.Dollars(v), Known: v > 0}
	}
	included := s.Setting(PriceIncludedSqFt)
	return worth.Tariff{
		Flat: money(PriceVisitUSD), Minimum: money(PriceMinimumUSD), Per1000: money(PricePer1000USD),
		Included: Maybe[measure.Area]{V: measure.SquareFeet(included), Known: included > 0},
	}
}

// PriceOf is what a visit is charged by the prices in force now: nothing for a call-back, for a look and for what finishes a visit that was
// carried over; else the lawn's own flat price or rate, else the prices of the zones treated, else the settings. Unknown: no price is
// entered, or not for each of the zones treated.
func (s *state) PriceOf(v *Visit) Maybe[measure.Money] {
	lawn := s.Lawn(v.Lawn)
	switch {
	case lawn == nil:
		return Maybe[measure.Money]{}
	case v.Kind == CallBack, v.Kind == LookOnly:
		return Known(measure.Money(0))
	}
	return s.charge(lawn, s.zonesCharged(lawn, v), len(v.Due) > 0 && !s.startedAnew(lawn, v))
}

// PriceNow is what a whole visit at a lawn would be charged by the prices in force now.
func (s *state) PriceNow(lawn, kind string) Maybe[measure.Money] {
	l := s.Lawn(lawn)
	switch {
	case l == nil:
		return Maybe[measure.Money]{}
	case kind == CallBack, kind == LookOnly:
		return Known(measure.Money(0))
	}
	return s.charge(l, l.Zones, false)
}

// charge is the price of zones; a rest is what finishes a visit that was charged when it was begun.
func (s *state) charge(lawn *Lawn, zones []Zone, rest bool) Maybe[measure.Money] {
	sum, some, all := measure.Money(0), false, true
	var area measure.Area
	for _, z := range zones {
		sum += z.Price.V
		area += z.Area
		some, all = some || z.Price.Known, all && z.Price.Known
	}
	of := lawn.Tariff()
	switch {
	case of.Says():
	case some:
		return Maybe[measure.Money]{V: sum, Known: all}
	default:
		of = s.Tariff()
	}
	if rest && of.Says() {
		return Known(measure.Money(0))
	}
	p, _ := of.Price(area)
	return p
}

// startedAnew tells whether all of the lawn was still to do, so that nothing of it was charged before.
func (s *state) startedAnew(lawn *Lawn, v *Visit) bool {
	for _, z := range lawn.Zones {
		if restOf(v.Due, z.Name) < z.Area {
			return false
		}
	}
	return true
}

// zonesCharged are the zones on which the visit laid something; if it laid nothing that was logged, those that it was for and did not carry
// over. A zone of which a part was treated on an earlier visit was charged then.
func (s *state) zonesCharged(lawn *Lawn, v *Visit) []Zone {
	laid := s.day.LaidAt(v)
	on := func(zone string) bool {
		for i := range laid {
			if laid[i].Zone == zone {
				return true
			}
		}
		return false
	}
	var out []Zone
	for _, z := range lawn.Zones {
		due := len(v.Due) == 0 || restOf(v.Due, z.Name) >= z.Area
		if due && (on(z.Name) || (len(laid) == 0 && !containsText(v.Carried, z.Name))) {
			out = append(out, z)
		}
	}
	return out
}

// resolveVisitDone fills in what the visit is charged, so that it follows from the entries.
func (s *state) resolveVisitDone(f *VisitDone) Fact {
	if f.Price.Known {
		return f
	}
	v := s.day.find(f.Lawn, Begun)
	if v == nil {
		return f
	}
	c := *f
	c.Price = s.PriceOf(v)
	return &c
}

// digestMoney adds what was paid and invested; a book without any has the digest that it always had.
func (s *state) digestMoney(w *binaryWriter) {
	if len(s.paid) > 0 {
		w.str("paid")
		for i := range s.paid {
			w.factFields(&s.paid[i])
		}
	}
	if len(s.invested) > 0 {
		w.str("invested")
		for i := range s.invested {
			w.factFields(&s.invested[i])
		}
	}
}
