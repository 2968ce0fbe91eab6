package yard

import (
	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/measure"
)

// Document is the stock for a script. Amounts of a liquid product stand under keys that end in _gal, those of a dry one in _lb.
func (s *Shelf) Document() map[string]any {
	products, found := []document{}, []document{}
	for i := range s.Products {
		products = append(products, s.Products[i].document())
	}
	for _, f := range s.Findings {
		found = append(found, document{"rule": f.Rule, "weight": f.Weight.String(), "product": f.Product, "says": f.Says, "do": f.Do, "ground": f.Ground, "source": f.Source})
	}
	return document{
		"products": products, "findings": found, "planned_cost_usd": dollars(s.Cost.Total), "unpriced": orEmpty(s.Cost.Unpriced), "working": working(s.Steps),
	}
}

// put puts an amount under a key with its unit; null where it is not known.
func put(d document, key string, a core.Maybe[measure.Amount], form measure.Kind) {
	unit := "_gal"
	if form == measure.Dry {
		unit = "_lb"
	}
	switch {
	case !a.Known:
		d[key+unit] = nil
	case form == measure.Dry:
		d[key+unit] = measure.Mass(a.V.N).Pounds()
	default:
		d[key+unit] = measure.Volume(a.V.N).Gallons()
	}
}

func (s *Stocked) document() document {
	d := document{
		"product": s.Product, "form": s.Form.String(), "counted": s.Counted, "since": nil, "recounts": s.Recounts, "order": nil, "truck": nil,
		"price_usd": nil, "price_paid": s.Paid, "planned_cost_usd": nil, "supplier": orNull(s.Supplier), "lot": orNull(s.Lot), "full_packages": nil,
		"working": working(s.Steps),
	}
	amount := func(key string, a measure.Amount, known bool) {
		put(d, key, core.Maybe[measure.Amount]{V: a, Known: known}, s.Form)
	}
	put(d, "in_stock", s.Have, s.Form)
	put(d, "reorder_at", s.Reorder, s.Form)
	amount("used_since", s.Used, s.Have.Known)
	amount("used_this_year", s.UsedYear, true)
	amount("planned", s.Planned, true)
	amount("unexplained", s.Unexplained, s.Recounts > 0)
	amount("package", s.Package, s.Package.N > 0)
	amount("price_for", s.PriceFor, s.Price.Known && s.PriceFor.N > 0)
	if s.Have.Known {
		d["since"] = s.Since.Date()
	}
	full, open := batch.InPackages(s.Have.V, s.Package)
	if s.Have.Known && s.Package.N > 0 {
		d["full_packages"] = full
	}
	amount("open_package", open, s.Have.Known && s.Package.N > 0)
	if s.Price.Known {
		d["price_usd"] = dollars(s.Price.V)
	}
	if s.Cost.Known {
		d["planned_cost_usd"] = dollars(s.Cost.V)
	}
	loads := []document{}
	for _, t := range s.Takes {
		loads = append(loads, t.document())
	}
	d["loads"] = loads
	if s.Truck.Known {
		t := document{"opened_packages": s.Truck.V.Opened, "empty_packages": s.Truck.V.Empty}
		put(t, "from_open", core.Known(s.Truck.V.FromOpen), s.Form)
		put(t, "left_in_open", core.Known(s.Truck.V.Left), s.Form)
		d["truck"] = t
	}
	if s.Order.Known {
		o := document{"packages": nil, "words": s.Order.V.Words(), "why": s.Order.V.Why}
		if s.Order.V.Packages > 0 {
			o["packages"] = s.Order.V.Packages
		}
		put(o, "amount", core.Known(s.Order.V.Amount), s.Form)
		d["order"] = o
	}
	return d
}

func (t Take) document() document {
	m := t.Measured
	d := document{
		"into": t.Into, "measured": m.Words, "error_pct": m.ErrorPct, "whole_packages": m.Whole, "below_smallest_mark": m.Below,
		"finer": nil, "finer_error_pct": nil,
	}
	put(d, "exact", core.Known(m.Exact), m.Exact.Kind)
	put(d, "rounded", core.Known(m.Rounded), m.Exact.Kind)
	put(d, "rest", core.Known(m.Rest), m.Exact.Kind)
	if m.Finer.Known {
		d["finer"], d["finer_error_pct"] = m.Finer.V.Says, m.Finer.V.ErrorPct
	}
	return d
}
