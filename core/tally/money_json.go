package tally

import "example.com/tintline/core/measure"

// JSON is the sums as a document: dollars and hours, not rounded; what is not known is null.
func (m *Money) JSON() map[string]any {
	rows := make([]map[string]any, 0, len(m.Rows))
	for i := range m.Rows {
		rows = append(rows, m.Rows[i].json())
	}
	out := map[string]float64{}
	for what, v := range m.Out {
		out[what+"_usd"] = v.Dollars()
	}
	again := make([]map[string]any, 0, len(m.Again))
	for _, a := range m.Again {
		if a.Free > 0 {
			again = append(again, map[string]any{"by": a.Of, "name": a.Name, "call_backs": a.Free, "visits": a.Paid, "product_usd": a.Cost.Dollars()})
		}
	}
	return map[string]any{"by": m.By, "rows": rows, "all": m.All.json(), "paid": out, "in_usd": m.In.Dollars(), "call_backs": again, "days": m.Days}
}

func (r *MoneyRow) json() map[string]any {
	without := r.Without
	if without == nil {
		without = []string{}
	}
	var miles *float64
	if r.Metered > 0 {
		miles = &r.Miles
	}
	return map[string]any{
		"name": r.Name, "visits": r.Visits(), "free": r.Free, "unpriced": r.Unpriced, "at_price_now": r.ByNow,
		"revenue_usd": r.Revenue.Dollars(), "product_usd": r.Material.Dollars(), "left_usd": r.Left().Dollars(),
		"hours": float64(r.Seconds) / 3600, "site_h": float64(r.Site) / 3600, "drive_h": float64(r.Drive) / 3600, "miles": miles, "products_without_price": without,
	}
}

// PaybackJSON is the investments as a document.
func PaybackJSON(list []Payback) map[string]any {
	rows := make([]map[string]any, 0, len(list))
	orNull := func(s string) *string {
		if s == "" {
			return nil
		}
		return &s
	}
	for i := range list {
		p := &list[i]
		unknown := p.Unknown
		if unknown == nil {
			unknown = []string{}
		}
		var year *float64
		if p.Year.Known {
			year = measure.Known(p.Year.V.Dollars()).Pointer()
		}
		rows = append(rows, map[string]any{
			"name": p.Of.Thing, "cost_usd": p.Of.Cost.V.Dollars(), "bought": p.Of.Date, "visits": p.Calls, "earned_usd": p.Revenue.Dollars(),
			"product_usd": p.Product.Dollars(), "running_usd": p.Running.Dollars(), "net_usd": p.Net.Dollars(), "left_usd": p.Left.Dollars(),
			"paid_back": orNull(p.Paid), "at_present_pace": orNull(p.By), "as_assumed": orNull(p.Assumed.V), "capital_a_year_usd": year, "unknown": unknown,
		})
	}
	return map[string]any{"investments": rows}
}
