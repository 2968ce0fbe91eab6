package tally

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/printed"
	"example.com/tintline/core/worth"
)

var moneyColumns = []printed.Column{
	{Title: "", Left: true},
	{Title: "visits"},
	{Title: "free"},
	{Title: "revenue", Unit: "$"},
	{Title: "product", Unit: "$"},
	{Title: "left", Unit: "$"},
	{Title: "product", Unit: "% of revenue"},
	{Title: "hours"},
	{Title: "a man-hour", Unit: "$"},
	{Title: "a driven hour", Unit: "$"},
	{Title: "stops a driven hour"},
}

func plainMoney(m measure.Money) string { return strings.Replace(m.Text(), "$", "", 1) }

func orDash(m core.Maybe[measure.Money]) string {
	if !m.Known {
		return "-"
	}
	return plainMoney(m.V)
}

func (r *MoneyRow) cells(hours float64) []string {
	pct := "-"
	if s := worth.Share(r.Material, r.Revenue); s.Known {
		pct = fmt.Sprintf("%.1f", s.V*100)
	}
	stops := "-"
	if s := worth.Density(r.Visits(), float64(r.Drive)/3600); s.Known {
		stops = fmt.Sprintf("%.1f", s.V)
	}
	return []string{
		r.Name, fmt.Sprint(r.Visits()), fmt.Sprint(r.Free), plainMoney(r.Revenue), plainMoney(r.Material), plainMoney(r.Left()), pct, fmt.Sprintf("%.1f", hours),
		orDash(worth.PerHour(r.Revenue, r.Seconds)), orDash(worth.PerHour(r.Revenue, r.Drive)), stops,
	}
}

// Table has a row for each part and their sum; each column of amounts adds up as printed.
func (m *Money) Table() printed.Table {
	t := printed.Table{Columns: append([]printed.Column(nil), moneyColumns...)}
	t.Columns[0].Title = m.By
	var hours []float64
	for i := range m.Rows {
		hours = append(hours, float64(m.Rows[i].Seconds)/3600)
	}
	hours = measure.LargestRemainder(hours, float64(m.All.Seconds)/3600, 0.1)
	for i := range m.Rows {
		t.Rows = append(t.Rows, m.Rows[i].cells(hours[i]))
	}
	t.Sum = m.All.cells(float64(m.All.Seconds) / 3600)
	return t
}

// Document is what days brought and took, as it is handed out.
func (m *Money) Document(b *core.Book, title string) printed.Document {
	d := printed.Document{Title: title, About: m.About(b)}
	d.Parts = append(d.Parts, printed.Part{Title: "by " + m.By, Table: m.Table()})
	var out []printed.Pair
	for _, what := range core.PaidKinds {
		if v := m.Out[what]; v != 0 {
			out = append(out, printed.Pair{Name: what, Says: v.Text()})
		}
	}
	if m.In != 0 {
		out = append(out, printed.Pair{Name: "came in beside the visits", Says: m.In.Text()})
	}
	out = append(out, printed.Pair{Name: "left after product and what was paid", Says: (m.All.Left() + m.In - m.PaidOut()).Text()})
	d.Parts = append(d.Parts, printed.Part{Title: "paid in these days", Pairs: out})
	if t := m.againTable(); len(t.Rows) > 0 {
		d.Parts = append(d.Parts, printed.Part{Title: "call-backs", Table: t})
	}
	d.Foot = []string{
		"For scale, not as a target: materials 20 to 25 % of sales, revenue of a man-hour as of 8 h in a day (a consultant's budget in a trade magazine, no study).",
		"Product is at the price in force at the end of each day, last paid or of the label entry. A man-hour is any hour from opened to closed.",
	}
	return d
}

func (m *Money) againTable() printed.Table {
	t := printed.Table{Columns: []printed.Column{{Title: "by", Left: true}, {Title: "of", Left: true}, {Title: "call-backs"}, {Title: "visits with it"}, {Title: "product", Unit: "$"}}}
	for _, a := range m.Again {
		if a.Free == 0 {
			continue
		}
		with, cost := "-", plainMoney(a.Cost)
		if a.Of == "product" {
			with, cost = fmt.Sprint(a.Paid), "-"
		}
		t.Rows = append(t.Rows, []string{a.Of, a.Name, fmt.Sprint(a.Free), with, cost})
	}
	return t
}

// About says how the revenue stands to the target, and what is not known.
func (m *Money) About(b *core.Book) []string {
	var out []string
	if target := b.Setting(core.TargetDayUSD); target > 0 && m.Days > 0 {
		goal := measure.Dollars(float64(target * float64(m.Days)))
		share := worth.Share(m.All.Revenue, goal)
		out = append(out, fmt.Sprintf("%s of %s, the target of %s: %.0f %%", m.All.Revenue.Text(), goal.Text(), counted(m.Days, "day"), share.V*100))
	} else {
		out = append(out, "No target is set (target_day_usd).")
	}
	if m.All.Metered > 0 {
		out = append(out, fmt.Sprintf("%.1f mi on %s with an odometer reading", m.All.Miles, counted(m.All.Metered, "day")))
	}
	if m.All.Metered > 0 && m.All.Metered == m.Days && m.All.Miles > 0 {
		out = append(out, fmt.Sprintf("%s and %.2f visits a mile", worth.Per(m.All.Revenue, m.All.Miles).V.Text(), float64(m.All.Visits())/m.All.Miles))
	}
	if m.All.Unpriced > 0 {
		out = append(out, fmt.Sprintf("%s without any price; they are not in the revenue. Enter a price at the lawn.", counted(m.All.Unpriced, "visit")))
	}
	if m.All.ByNow > 0 {
		out = append(out, fmt.Sprintf("%s with no price in the entry: at the lawn's price now.", counted(m.All.ByNow, "visit")))
	}
	if len(m.All.Without) > 0 {
		out = append(out, "Without a price, and not in the cost: "+strings.Join(m.All.Without, ", ")+".")
	}
	return out
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
