package season

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/printed"
)

type document = map[string]any

// Rows is the season for a spreadsheet: a row for each product on each zone, figures in the unit of their column. A product is liquid
// or dry, so one of two columns is empty.
func (s *Season) Rows() printed.Table {
	t := printed.Table{Columns: []printed.Column{
		{Title: "year", Left: true},
		{Title: "lawn", Left: true},
		{Title: "zone", Left: true},
		{Title: "grass", Left: true},
		{Title: "area", Unit: "sq ft"},
		{Title: "product", Left: true},
		{Title: "liquid", Unit: "fl oz"},
		{Title: "dry", Unit: "lb"},
		{Title: "times"},
		{Title: "days"},
		{Title: "liquid on the part that got most", Unit: "fl oz per 1,000 sq ft"},
		{Title: "dry on the part that got most", Unit: "lb per 1,000 sq ft"},
		{Title: "last", Left: true},
		{Title: "again from", Left: true},
		{Title: "label still allows, liquid", Unit: "fl oz per 1,000 sq ft"},
		{Title: "label still allows, dry", Unit: "lb per 1,000 sq ft"},
		{Title: "lawn due", Left: true},
	}}
	for i := range s.Lawns {
		l := &s.Lawns[i]
		for j := range l.Zones {
			z := &l.Zones[j]
			for k := range z.Used {
				u := &z.Used[k]
				wet, dry := pair(u.Amount)
				row := []string{s.Year, l.Lawn, z.Zone, z.Grass, number(z.Area.SquareFeet(), 1), u.Product, wet, dry, "", fmt.Sprint(u.Days), "", "", u.last, "", "", "", l.Due.Date}
				if u.Line.Known {
					line := &u.Line.V
					row[8] = fmt.Sprint(line.Times)
					row[10], row[11] = ratePair(line.AtLeast)
					row[13] = line.Next
				}
				if u.More.Known {
					row[14], row[15] = ratePair(u.More.V)
				}
				t.Rows = append(t.Rows, row)
			}
		}
	}
	return t
}

func number(f float64, places int) string { return strconv.FormatFloat(f, 'f', places, 64) }

func pair(a measure.Amount) (wet, dry string) {
	if a.Kind == measure.Dry {
		return "", number(measure.Mass(a.N).Pounds(), 4)
	}
	return number(measure.Volume(a.N).FluidOunces(), 4), ""
}

func ratePair(r measure.Rate) (wet, dry string) {
	if r.Kind == measure.Dry {
		f, _ := r.In("lb_per_1000_sqft") // the unit is in the table
		return "", number(f, 4)
	}
	f, _ := r.In("fl_oz_per_1000_sqft")
	return number(f, 4), ""
}

// JSON is the season for a script: keys end in their unit, what is not known is null, no list is null.
func (s *Season) JSON() any {
	lawns, products, days, months, drifts := []document{}, []document{}, []document{}, []document{}, []document{}
	for i := range s.Lawns {
		lawns = append(lawns, s.Lawns[i].document())
	}
	for i := range s.Products {
		products = append(products, s.Products[i].document())
	}
	for _, d := range s.Days {
		days = append(days, with(document{"date": d.Date}, d.Sums))
	}
	for _, m := range s.Months {
		months = append(months, document{"month": m.Month, "nitrogen_lb": m.Mass.Pounds(), "area_sqft": m.Area.SquareFeet(), "not_known": texts(m.Unknown)})
	}
	for _, d := range s.Drifts {
		row := document{"applicator": d.Applicator, "date": orNull(d.Date), "drift_pct": float64(100 * d.Share), "band_pct": nil, "readings": nil}
		if d.Date == "" {
			row["band_pct"], row["readings"] = float64(100*d.Band), d.Readings
		}
		drifts = append(drifts, row)
	}
	return with(document{
		"year": s.Year, "to": s.To, "limits_known": s.Kept, "lawns": lawns, "products": products, "grasses": covered(s.Grasses), "rounds": covered(s.Rounds),
		"days": days, "nitrogen_by_month": months, "rate_drift": drifts,
	}, s.All)
}

func with(d document, s Sums) document {
	d["gal"], d["lb"], d["area_sqft"] = s.Volume.Gallons(), s.Mass.Pounds(), s.Area.SquareFeet()
	return d
}

func covered(list []Covered) []document {
	out := []document{}
	for _, c := range list {
		out = append(out, with(document{"name": c.Name, "lawns": c.Lawns, "from": c.From, "to": c.Upto}, c.Sums))
	}
	return out
}

func (l *Lawn) document() document {
	zones := []document{}
	for i := range l.Zones {
		zones = append(zones, l.Zones[i].document())
	}
	return with(document{
		"lawn": l.Lawn, "in_book": !l.Gone, "rounds": l.Rounds, "due": orNull(l.Due.Date), "last": orNull(l.Due.Last), "round_days": l.Due.Days, "rest_owed_since": orNull(l.Due.Owed),
		"label_again": orNull(l.Due.Again), "label_waits_for": orNull(l.Due.Waits), "no_more_this_year": texts(l.Due.Never), "once_a_year_due": texts(l.Due.Once), "zones": zones,
	}, l.Sums)
}

func (z *Zone) document() document {
	used, actives, most := []document{}, []document{}, []document{}
	for i := range z.Used {
		used = append(used, z.Used[i].document())
	}
	for i := range z.Actives {
		a := &z.Actives[i]
		actives = append(actives, document{
			"active": a.Name, "lb_per_acre": in(core.Known(a.AtLeast), "lb_per_acre"), "sum_known": a.Sum.Known, "most_lb_per_acre": in(a.Limit, "lb_per_acre"), "left_lb_per_acre": in(a.Left, "lb_per_acre"),
			"by_label_of": orNull(a.LimitOf),
		})
	}
	for _, r := range z.Most {
		most = append(most, document{"region": r.Region, "most_lb_per_1000_sqft": r.High.Pointer(), "source": r.Source})
	}
	return with(document{
		"zone": z.Zone, "grass": z.Grass, "zone_sqft": z.Area.SquareFeet(), "in_lawn": !z.Gone, "products": used, "actives": actives, "nitrogen": z.Nitrogen.document(),
		"phosphate": z.Phosphate.document(), "nitrogen_reference": most, "not_known_before": orNull(z.UnknownBefore),
	}, z.Sums)
}

func (n *Nutrient) document() document {
	return document{"lb": n.Mass.Pounds(), "lb_per_1000_sqft": in(n.Rate, "lb_per_1000_sqft"), "not_known": texts(n.Unknown)}
}

func (u *Used) document() document {
	d := document{
		"product": u.Product, "amount": u.Amount.N, "unit": unitOf(u.Amount.Kind), "area_sqft": u.Area.SquareFeet(), "days": u.Days, "times": nil, "last": orNull(u.last),
		"again": nil, "label_allows_more": nil, "allowed_by": orNull(u.MoreBy),
	}
	unit := "fl_oz_per_1000_sqft"
	if u.Amount.Kind == measure.Dry {
		unit = "lb_per_1000_sqft"
	}
	if u.Line.Known {
		l := &u.Line.V
		d["times"], d["again"] = l.Times, orNull(l.Next)
		d["sum_"+unit], d["most_"+unit], d["left_"+unit] = in(core.Known(l.AtLeast), unit), in(l.Limit, unit), in(l.Left, unit)
	}
	if u.More.Known {
		delete(d, "label_allows_more")
		d["label_allows_more_"+unit] = in(u.More, unit)
	}
	return d
}

func (p *Product) document() document {
	d := document{"product": p.Product, "amount": p.Amount.N, "unit": unitOf(p.Amount.Kind), "area_sqft": p.Area.SquareFeet(), "days": p.Days, "zones": p.Zones, "bought": nil, "in_stock": nil, "order": orNull(p.Order)}
	if p.Bought.Known {
		d["bought"] = p.Bought.V.N
	}
	if p.Stock.Have.Known {
		d["in_stock"] = p.Stock.Have.V.N
	}
	return d
}

func unitOf(k measure.Kind) string {
	if k == measure.Dry {
		return "ng"
	}
	return "nl"
}

func in(r core.Maybe[measure.Rate], unit string) any {
	f, err := r.V.In(unit)
	if !r.Known || err != nil {
		return nil
	}
	return f
}

func orNull(s string) any {
	if s == "" {
		return nil
	}
	return s
}

func texts(list []string) []string { return append([]string{}, list...) }

// CSV is the table that is handed out: of grasses, rounds and products that of the way, else a row for each product on each zone, of
// one product alone if one is named. Figures have no separators of thousands.
func (s *Season) CSV(by, product string) printed.Table {
	var t printed.Table
	switch {
	case product == "" && (by == ByGrass || by == ByRound || by == ByProduct || by == ByDue):
		t = s.Table(by)
		for _, list := range append([][]string{t.Sum}, t.Rows...) {
			for i, c := range list {
				if bare := strings.ReplaceAll(c, ",", ""); i > 0 && !t.Columns[i].Left && strings.Trim(bare, "0123456789.") == "" {
					list[i] = bare
				}
			}
		}
		return t
	case product == "" && by == ByPlots:
		return s.dayRows()
	}
	t = s.Rows()
	if product == "" {
		return t
	}
	rows := t.Rows
	t.Rows = nil
	for _, r := range rows {
		if r[5] == product {
			t.Rows = append(t.Rows, r)
		}
	}
	return t
}

// dayRows are what the plots by day are drawn from.
func (s *Season) dayRows() printed.Table {
	t := printed.Table{Columns: append([]printed.Column{{Title: "date", Left: true}}, figureColumns...)}
	for _, d := range s.Days {
		t.Rows = append(t.Rows, []string{d.Date, number(d.Volume.Gallons(), 4), number(d.Mass.Pounds(), 4), number(d.Area.SquareFeet(), 1)})
	}
	return t
}
