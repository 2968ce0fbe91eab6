package past

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/tally"
)

// Document is what was laid as JSON: keys end in their unit, figures are not rounded, no list is null.
type Document struct {
	Laid     []LaidRow   `json:"laid"`
	Products []AmountRow `json:"products"`
}

// LaidRow is one spraying or spreading on one zone; at is when it was logged.
type LaidRow struct {
	Date       string    `json:"date"`
	Seq        uint64    `json:"seq"`
	At         string    `json:"at"`
	Operator   string    `json:"operator"`
	Lawn       string    `json:"lawn"`
	Zone       string    `json:"zone"`
	Grass      string    `json:"grass"`
	Applicator string    `json:"applicator"`
	Volume     float64   `json:"gal"`
	Mass       float64   `json:"lb"` // of what was spread
	Area       float64   `json:"area_sqft"`
	Products   []UsedRow `json:"products"`
}

// UsedRow is a product in it; label is the number of its label entry in force, from 1.
type UsedRow struct {
	AmountRow
	Label int `json:"label"`
}

// AmountRow is an amount of a product; the unit is nl or ng.
type AmountRow struct {
	Product string `json:"product"`
	Amount  int64  `json:"amount"`
	Unit    string `json:"unit"`
}

// Arrange arranges for JSON what was found.
func (q Query) Arrange(list []Laid) Document {
	d := Document{Laid: []LaidRow{}, Products: []AmountRow{}}
	for i := range list {
		l := &list[i]
		row := LaidRow{
			Date: l.Date, Seq: l.Seq, At: l.At.String(), Operator: l.Operator, Lawn: l.Lawn, Zone: l.Zone, Grass: l.Grass,
			Applicator: l.Applicator, Volume: l.Volume.Gallons(), Area: l.Area.SquareFeet(), Products: []UsedRow{},
		}
		if l.Dry {
			row.Mass = l.spread().Pounds()
		}
		for _, u := range l.Products {
			row.Products = append(row.Products, UsedRow{amountRow(u), int(u.Version) + 1})
		}
		d.Laid = append(d.Laid, row)
	}
	for _, u := range q.Total(list) {
		d.Products = append(d.Products, amountRow(u))
	}
	return d
}

func amountRow(u Used) AmountRow {
	return AmountRow{u.Product, u.Amount.N, tally.UnitOf(u.Amount.Kind)}
}

// Total adds up by product, of the one that was asked for alone if one was, in the order in which they were laid first.
func (q Query) Total(list []Laid) []Used {
	var out []Used
	for i := range list {
		for _, u := range list[i].Products {
			if q.Product != "" && u.Product != q.Product {
				continue
			}
			at := slices.IndexFunc(out, func(o Used) bool { return o.Product == u.Product && o.Amount.Kind == u.Amount.Kind })
			if at < 0 {
				out = append(out, u)
				continue
			}
			out[at].Amount.N += u.Amount.N
		}
	}
	return out
}

// Text lists what was found as people read it.
func (q Query) Text(list []Laid) string {
	rows := [][]string{{"date", "entry", "lawn, zone and grass", "with", "laid", "sq ft", "products"}}
	for i := range list {
		l := &list[i]
		laid := l.Volume.Text() + " gal"
		if l.Dry {
			laid = measure.Amount{N: int64(l.spread()), Kind: measure.Dry}.Text()
		}
		var products []string
		for _, u := range l.Products {
			if q.Product == "" || u.Product == q.Product {
				products = append(products, u.words())
			}
		}
		rows = append(rows, []string{
			l.Date, fmt.Sprint(l.Seq), l.Lawn + ", " + l.Zone + ", " + label.GrassWords(l.Grass), l.Applicator, laid, l.Area.Text(),
			strings.Join(products, "; "),
		})
	}
	out := tally.Columns(rows, 1, 4, 5)
	if total := q.Total(list); len(total) > 0 {
		sums := [][]string{{"product", "in all"}}
		for _, u := range total {
			sums = append(sums, []string{u.Product, u.Amount.Text()})
		}
		out += "\n" + tally.Columns(sums, 1)
	}
	return out
}

// words name the label entry only where it is not the first.
func (u Used) words() string {
	if u.Version > 0 {
		return fmt.Sprintf("%s %s (label %d)", u.Amount.Text(), u.Product, u.Version+1)
	}
	return u.Amount.Text() + " " + u.Product
}
