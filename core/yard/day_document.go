package yard

import (
	"example.com/tintline/core/batch"
	"example.com/tintline/core/measure"
)

// document is an object of the plan for a script: keys end in their unit.
type document = map[string]any

// Document is the plan for a script: both orders, the one that is chosen named.
func (p *DayPlan) Document(chosen string) map[string]any {
	warnings := []document{}
	for _, w := range p.Warnings {
		warnings = append(warnings, document{"lawn": w.Lawn, "zone": w.Zone, "weight": w.Weight.String(), "no_mix": w.NoMix, "says": w.Says, "do": w.Do})
	}
	return document{
		"date": p.Date, "open": p.Open, "chosen": chosen, "warnings": warnings, "notes": orEmpty(p.Notes), "better": p.Better,
		"saves": document{
			"changeovers": p.Saves.Changeovers, "refills": p.Saves.Refills, "minutes": p.Saves.Minutes, "great_circle_mi": p.Saves.Miles.Pointer(),
		},
		"bound_minutes": p.Bound, "best_above_bound_share": p.Off, "given": p.Given.document(), "best": p.Best.document(), "working": working(p.Steps),
	}
}

func working(steps []batch.Step) []string {
	out := []string{}
	for _, s := range steps {
		out = append(out, s.Says)
	}
	return out
}

func dollars(m measure.Money) float64 { return float64(m) / float64(measure.Dollar) }

func (o *DayOrder) document() document {
	loads, stops, truck := []document{}, []document{}, []document{}
	for _, l := range o.Loads {
		tanks := []document{}
		for i := range l.Tanks {
			tanks = append(tanks, l.Tanks[i].document())
		}
		var before any
		if l.Before != "" {
			before = l.Before
		}
		loads = append(loads, document{"before_lawn": before, "place": l.Place, "compartments": tanks})
	}
	for i := range o.Stops {
		stops = append(stops, o.Stops[i].document())
	}
	for _, t := range o.Truck {
		d := amountDocument(t.Product, t.Amount)
		d["packages"] = t.Shelf
		d["cost_usd"] = nil
		if t.Cost.Known {
			d["cost_usd"] = dollars(t.Cost.V)
		}
		truck = append(truck, d)
	}
	m := o.Minutes
	return document{
		"order": o.Name, "changeovers": o.Changeovers, "refills": o.Refills, "minutes": m.Total(),
		"minutes_by_kind": document{"site": m.Site, "drive": m.Drive, "changeover": m.Changeover, "refill": m.Refill, "rinse": m.Rinse, "wait": m.Wait},
		"great_circle_mi": o.Miles.Pointer(), "cost_usd": dollars(o.Cost), "without_price": orEmpty(o.Unpriced), "exact": o.Exact, "bound_minutes": o.Bound,
		"back": clockOf(o.Back), "loads": loads, "visits": stops, "truck": truck, "working": working(o.Steps),
	}
}

func amountDocument(product string, a measure.Amount) document {
	if a.Kind == measure.Dry {
		return document{"product": product, "amount_oz": measure.Mass(a.N).Ounces()}
	}
	return document{"product": product, "amount_fl_oz": measure.Volume(a.N).FluidOunces()}
}

func (t *DayTank) document() document {
	products := []document{}
	for _, p := range t.Products {
		products = append(products, amountDocument(p.Product, p.Amount))
	}
	return document{
		"compartment": string(rune(t.Letter)), "mix": t.Mix, "for": t.For, "had_gal": t.Had.Gallons(), "add_gal": t.Add.Gallons(), "level_gal": t.Level.Gallons(),
		"on_lawns_gal": t.OnLawns.Gallons(), "hose_and_cell_gal": t.Line.Gallons(), "heel_gal": t.Heel.Gallons(), "reserve_gal": t.Reserve.Gallons(),
		"emptied_gal": t.Emptied.Gallons(), "rinsed": t.Rinsed, "strength_left_share": t.Strength, "products": products,
	}
}

func (s *DayStop) document() document {
	zones := []document{}
	for i := range s.Zones {
		z := &s.Zones[i]
		from := []string{}
		for _, l := range z.From {
			from = append(from, string(l))
		}
		d := document{
			"zone": z.Zone, "area_sqft": z.Area.SquareFeet(), "mix": nil, "with": nil, "compartments": from, "gal": z.Volume.Gallons(),
			"minutes": z.Minutes, "refill_before": z.Refill, "changeover_before": z.Changeover, "asks": orEmpty(z.Asks), "why": nil,
		}
		if z.With != "" {
			d["mix"], d["with"] = z.Mix, z.With
		}
		if z.Why != "" {
			d["why"] = z.Why
		}
		zones = append(zones, d)
	}
	return document{
		"lawn": s.Lawn, "begins": clockOf(s.At), "drive_minutes": s.Drive, "great_circle_mi": s.Miles.Pointer(), "waited_minutes": s.Waited, "late_minutes": s.Late, "zones": zones,
	}
}
