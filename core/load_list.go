package core

import (
	"sort"

	"example.com/tintline/core/measure"
)

// WaterItem is the item of a load's list that makes up the rest of its volume.
const WaterItem = "water"

// LoadItem is an item of what is to go into a tank.
type LoadItem struct {
	Item   string // "water", or a product
	Amount measure.Amount
	Done   bool
}

// LoadList is the name of the list of a planned load, "load/a".
func LoadList(into string) string { return "load/" + into }

// LoadPlans lists what is to be loaded, one plan a tank, in the order of the rig: compartments, then applicators.
func (s *state) LoadPlans() []LoadPlanned {
	var out []LoadPlanned
	if s.rig == nil {
		return nil
	}
	add := func(into string) {
		if p := s.plans[into]; p != nil {
			out = append(out, *p)
		}
	}
	for _, c := range s.rig.Compartments {
		add(string(c.Letter))
	}
	for _, a := range s.rig.Applicators {
		add(a.Name)
	}
	return out
}

// LoadPlan is what is to be loaded into a compartment (a letter) or an applicator; nil if nothing is.
func (s *state) LoadPlan(into string) *LoadPlanned { return s.plans[into] }

// Ticks lists the items of a list that are done, by name.
func (s *state) Ticks(list string) []string { return s.ticks[list] }

// StepTicked tells whether an item of a plan's list is ticked: water, a product or a step.
func (s *state) StepTicked(p *LoadPlanned, item string) bool {
	return hasText(s.ticks[LoadList(p.Into)], item)
}

// LoadItems lists what a plan takes, the water first, each with whether it is ticked. The products stand as the mix has
// them; in which order they go in, label.OrderOf says.
func (s *state) LoadItems(p *LoadPlanned) []LoadItem {
	items := p.items()
	for i := range items {
		items[i].Done = hasText(s.ticks[LoadList(p.Into)], items[i].Item)
	}
	return items
}

// LoadTicked tells whether all that a plan takes is ticked.
func (s *state) LoadTicked(p *LoadPlanned) bool {
	for _, i := range s.LoadItems(p) {
		if !i.Done {
			return false
		}
	}
	return true
}

// LoadedFrom is the load that a plan becomes when all of it is in.
func LoadedFrom(p *LoadPlanned) *Loaded {
	return &Loaded{
		Into: p.Into, Volume: p.Volume, Parts: append([]LoadPart(nil), p.Parts...), Mix: p.Mix, For: p.For,
		Place: p.Place, MeterBefore: p.MeterBefore, MeterAfter: p.MeterAfter,
	}
}

// items are what a plan takes. Water is what the liquid products leave of the volume.
func (f *LoadPlanned) items() []LoadItem {
	water := f.Volume
	var products []LoadItem
	for _, p := range f.Parts {
		if p.Amount.Kind == measure.Liquid {
			water -= measure.Volume(p.Amount.N)
		}
		products = append(products, LoadItem{Item: p.Product, Amount: p.Amount})
	}
	if water <= 0 {
		return products
	}
	return append([]LoadItem{{Item: WaterItem, Amount: measure.LiquidAmount(water)}}, products...)
}

func hasText(list []string, s string) bool {
	i := sort.SearchStrings(list, s)
	return i < len(list) && list[i] == s
}
