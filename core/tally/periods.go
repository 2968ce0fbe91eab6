package tally

import (
	"fmt"
	"strings"

	"example.com/tintline/core/measure"
	"example.com/tintline/core/printed"
)

// By says what a list of sums goes by.
type By string

// What sums can go by.
const (
	Year  By = "year"
	Month By = "month"
)

// of is the year or month of a date.
func (y By) of(date string) string {
	n := len("2006")
	if y == Month {
		n = len("2006-01")
	}
	return date[:min(n, len(date))]
}

// Period is one year or month: the sums of its days without the lawns, and how many days there were.
type Period struct {
	Name string
	Days int
	Sum  Tally
}

// Periods are the sums by year or by month, earliest first.
type Periods struct {
	By   By
	List []Period
}

// AddDay adds one more day, later than those that are in it.
func (p *Periods) AddDay(day *Tally) {
	name := p.By.of(day.From)
	if n := len(p.List); n == 0 || p.List[n-1].Name != name {
		p.List = append(p.List, Period{Name: name})
	}
	at := &p.List[len(p.List)-1]
	at.Days++
	at.Sum.AddDay(day)
}

// All is what they come to together. The flows of tanks are left out: they go on from one to the next.
func (p *Periods) All() Period {
	out := Period{Name: "all"}
	for i := range p.List {
		at := &p.List[i]
		s := &at.Sum
		out.Days += at.Days
		out.Sum.Volume += s.Volume
		out.Sum.Mass += s.Mass
		out.Sum.Area += s.Area
		out.Sum.Seconds += s.Seconds
		out.Sum.Products = addProducts(out.Sum.Products, s.Products)
		out.Sum.To = s.To
		if i == 0 {
			out.Sum.From = s.From
		}
	}
	return out
}

// Text is the list as people read it. As printed, each column adds up.
func (p *Periods) Text() string {
	rows, amounts := p.tables()
	var w strings.Builder
	rows.write(&w)
	if len(amounts.rows) > 1 {
		w.WriteString("\n")
		w.WriteString(Columns(amounts.rows, 2))
	}
	return w.String()
}

// tables are the sums and the amounts of the products, each under its head and above what they come to.
func (p *Periods) tables() (rows, amounts table) {
	all := p.All()
	f := all.Sum.printing()
	var gal, lb, area, hours []float64
	for i := range p.List {
		s := &p.List[i].Sum
		gal, lb = append(gal, s.Volume.Gallons()), append(lb, s.Mass.Pounds())
		area, hours = append(area, s.Area.SquareFeet()), append(hours, s.All().Hours)
	}
	allHours := measure.LargestRemainder([]float64{all.Sum.All().Hours}, all.Sum.All().Hours, hourStep)[0]
	gal = measure.LargestRemainder(gal, all.Sum.Volume.Gallons(), f.gal)
	lb = measure.LargestRemainder(lb, all.Sum.Mass.Pounds(), f.lb)
	area = measure.LargestRemainder(area, all.Sum.Area.SquareFeet(), f.area)
	hours = measure.LargestRemainder(hours, all.Sum.All().Hours, hourStep)
	add := func(name string, days int, hours, gal, lb, area float64) {
		cells := append([]string{name, fmt.Sprint(days), measure.Commas(hours, 1)}, f.figures(gal, lb, area)...)
		rows.add(cells...)
	}
	head := []string{string(p.By), "days", "hours", "gal", "sq ft"}
	if f.allLb != 0 {
		head = []string{string(p.By), "days", "hours", "gal", "lb spread", "sq ft"}
	}
	rows.add(head...)
	amounts.add("product", string(p.By), "amount")
	for i := range p.List {
		add(p.List[i].Name, p.List[i].Days, hours[i], gal[i], lb[i], area[i])
	}
	for _, of := range all.Sum.Products {
		for i := range p.List {
			for _, q := range p.List[i].Sum.Products {
				if q.Product == of.Product && q.Amount.Kind == of.Amount.Kind {
					amounts.add(q.Product, p.List[i].Name, q.Amount.Text())
				}
			}
		}
		if len(p.List) > 1 {
			amounts.add(of.Product, "all", of.Amount.Text())
		}
	}
	if len(p.List) > 1 {
		add("all", all.Days, allHours, f.all, f.allLb, f.allSqF)
	}
	return rows, amounts
}

// Printed is the list as it is handed out.
func (p *Periods) Printed() printed.Document {
	rows, amounts := p.tables()
	d := printed.Document{Title: "Tally by " + string(p.By)}
	sums := printed.Part{Table: printed.Table{Rows: rows.rows[1:]}}
	for i, h := range rows.rows[0] {
		c, itself := figureUnits[h]
		if !itself {
			c = printed.Column{Title: h, Left: i == 0}
		}
		sums.Table.Columns = append(sums.Table.Columns, c)
	}
	if n := len(sums.Table.Rows) - 1; n > 0 { // of one period there is no sum
		sums.Table.Rows, sums.Table.Sum = sums.Table.Rows[:n], sums.Table.Rows[n]
	}
	d.Parts = append(d.Parts, sums)
	if len(amounts.rows) > 1 {
		d.Parts = append(d.Parts, printed.Part{Title: "by product", Table: printed.Table{
			Columns: []printed.Column{{Title: "product", Left: true}, {Title: string(p.By), Left: true}, {Title: "amount"}}, Rows: amounts.rows[1:],
		}})
	}
	return d
}

// Figures are the sums for a spreadsheet or a program, a row a period and, below them, a row a period and product.
func (p *Periods) Figures() printed.Document {
	d := p.Printed()
	sums := &d.Parts[0].Table
	sums.Rows, sums.Sum = plainRows(sums.Rows), nil
	products := printed.Part{Title: "by product", Table: printed.Table{
		Columns: []printed.Column{{Title: string(p.By), Left: true}, {Title: "product", Left: true}, {Title: "amount"}, {Title: "amount unit", Left: true}},
	}}
	for i := range p.List {
		for _, q := range p.List[i].Sum.Products {
			n, unit := smallUnit(float64(q.Amount.N), q.Amount.Kind)
			products.Table.Rows = append(products.Table.Rows, []string{p.List[i].Name, q.Product, n, unit})
		}
	}
	d.Parts[0].Title = "sums"
	d.Parts = append(d.Parts[:1], products)
	return d
}

// hourStep is what hours are printed to.
const hourStep = 0.1

// PeriodsDocument is the list as JSON.
type PeriodsDocument struct {
	By      string      `json:"by"`
	Periods []PeriodRow `json:"periods"`
	All     PeriodRow   `json:"all"`
}

// PeriodRow is a year or a month in the document; From and To are the first and the last day that was opened in it.
type PeriodRow struct {
	Period   string         `json:"period"`
	From     string         `json:"from"`
	To       string         `json:"to"`
	Days     int            `json:"days"`
	Volume   float64        `json:"gal"`
	Mass     float64        `json:"lb"`
	Area     float64        `json:"area_sqft"`
	Hours    float64        `json:"hours"`
	Mixes    []MixRow       `json:"mixes"`
	Products []PeriodAmount `json:"products"`
}

// PeriodAmount is a product in the document; the unit is nl or ng.
type PeriodAmount struct {
	Product string `json:"product"`
	Amount  int64  `json:"amount"`
	Unit    string `json:"unit"`
}

// Document arranges the list for JSON.
func (p *Periods) Document() PeriodsDocument {
	d := PeriodsDocument{By: string(p.By), Periods: []PeriodRow{}}
	for i := range p.List {
		d.Periods = append(d.Periods, p.List[i].row())
	}
	all := p.All()
	for i := range p.List {
		for _, m := range p.List[i].Sum.Mixes {
			at := all.Sum.mix(m.Mix)
			at.Volume, at.Area = at.Volume+m.Volume, at.Area+m.Area
		}
	}
	d.All = all.row()
	return d
}

func (p *Period) row() PeriodRow {
	s := &p.Sum
	all := s.All()
	out := PeriodRow{
		Period: p.Name, From: s.From, To: s.To, Days: p.Days, Volume: all.Volume, Mass: all.Mass, Area: all.Area, Hours: all.Hours,
		Mixes: []MixRow{}, Products: []PeriodAmount{},
	}
	for _, m := range s.Mixes {
		out.Mixes = append(out.Mixes, MixRow{m.Mix, m.Volume.Gallons(), m.Area.SquareFeet()})
	}
	for _, q := range s.Products {
		out.Products = append(out.Products, PeriodAmount{q.Product, q.Amount.N, UnitOf(q.Amount.Kind)})
	}
	return out
}
