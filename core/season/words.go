package season

import (
	"fmt"
	"strings"
)

// Words is how a product stands on a zone, in a sentence without its name.
func (u *Used) Words(z *Zone, year string) string {
	c := u.cells(z, year)
	parts := []string{c[1]}
	if u.Trace() {
		return c[1] + ", a trace"
	}
	switch {
	case !u.Line.Known:
		parts = append(parts, "on "+counted(u.Days, "day"))
	case c[2] == "1":
		parts = append(parts, "once")
	default:
		parts = append(parts, c[2]+" times")
	}
	if c[3] != "" {
		parts = append(parts, c[3]+" per 1,000 sq ft")
	}
	if c[4] != "" {
		parts = append(parts, "last "+c[4])
	}
	switch c[5] {
	case "":
	case "now":
		parts = append(parts, "by days and sums again now")
	case "not checked":
		parts = append(parts, "when again is not checked")
	case "not this year":
		parts = append(parts, "no more of it fits into the label's year")
	default:
		parts = append(parts, "again from "+c[5])
	}
	switch {
	case u.More.Known:
		parts = append(parts, "label allows "+c[6]+" more")
	case c[6] != "":
		parts = append(parts, "most in a year: "+c[6])
	}
	return strings.Join(parts, ", ")
}

// Words is how a product stands in the year and in stock.
func (p *Product) Words() string {
	words := fmt.Sprintf("%s on %s in %s.", p.Amount.Text(), counted(p.Zones, "zone"), counted(p.Days, "day"))
	if p.Days == 0 {
		words = "None of it went down."
	}
	switch {
	case !p.Stock.Have.Known:
		words += " It was neither counted nor bought, so the stock is not known."
	case p.Bought.Known:
		words += " Bought in the year: " + p.Bought.V.Text() + "; in stock now: " + p.Stock.Have.V.Text() + "."
	default:
		words += " In stock now: " + p.Stock.Have.V.Text() + "."
	}
	if p.Order != "" {
		words += " Reorder " + p.Order + "."
	}
	return words
}
