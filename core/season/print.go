package season

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/printed"
)

// The ways in which a season is arranged.
const (
	ByDue     = "due"
	ByLawn    = "lawn"
	ByProduct = "product"
	ByGrass   = "grass"
	ByRound   = "round"
	ByPlots   = "plots"
)

// Ways lists them in their order on the page.
func Ways() []string { return []string{ByDue, ByLawn, ByProduct, ByGrass, ByRound, ByPlots} }

// Titles name them.
var Titles = map[string]string{
	ByDue: "what is due", ByLawn: "by lawn", ByProduct: "by product and stock", ByGrass: "by grass", ByRound: "by round", ByPlots: "plots",
}

// Table is the season arranged in one way; plots are no table.
func (s *Season) Table(by string) printed.Table {
	switch by {
	case ByDue:
		return s.dueTable()
	case ByLawn:
		return s.lawnTable()
	case ByProduct:
		return s.productTable()
	case ByGrass:
		return s.covered("grass", s.Grasses, label.GrassWords)
	case ByRound:
		return s.covered("round", s.Rounds, func(n string) string { return n })
	}
	return printed.Table{}
}

func (s *Season) dueTable() printed.Table {
	t := printed.Table{Columns: []printed.Column{
		{Title: "lawn", Left: true}, {Title: "due", Left: true}, {Title: "last", Left: true}, {Title: "rounds"}, {Title: "what else", Left: true},
	}}
	for i := range s.Lawns {
		l := &s.Lawns[i]
		t.Rows = append(t.Rows, []string{l.Lawn, l.Due.When(), l.Due.Last, fmt.Sprint(l.Rounds), l.Due.Else()})
	}
	return t
}

// When is the date on which a lawn is due, or a word.
func (d *Due) When() string {
	switch {
	case d.Owed != "":
		return "rest owed"
	case d.Date == "":
		return "not known"
	}
	return d.Date
}

// Else is what there is besides: a rest, what the label makes wait, what is for once a year.
func (d *Due) Else() string {
	var out []string
	if d.Owed != "" {
		out = append(out, "rest since "+d.Owed)
	}
	if d.Waits != "" {
		out = append(out, d.Waits+" again from "+d.Again)
	}
	for _, p := range d.Never {
		out = append(out, "no more "+p+" this year")
	}
	if len(d.Once) > 0 {
		out = append(out, "once a year: "+strings.Join(d.Once, ", "))
	}
	return strings.Join(out, "; ")
}

// Words is the same in a sentence.
func (d *Due) Words() string {
	rest := fmt.Sprintf("a round of %d days", d.Days)
	if d.Own {
		rest += ", the lawn's own"
	}
	switch {
	case d.Owed != "":
		return "A rest of it is owed since " + d.Owed + "."
	case d.Last == "":
		return "Nothing was laid there in this year and the last, so no date follows."
	}
	return "Due on " + d.Date + ": last treated on " + d.Last + ", and " + rest + "."
}

// figures are the columns of what was laid, so that each adds up to the sum as printed.
func figures(list []Sums, all Sums) (rows [][]string, sum []string) {
	var gal, lb, area []float64
	for _, s := range list {
		gal, lb, area = append(gal, s.Volume.Gallons()), append(lb, s.Mass.Pounds()), append(area, s.Area.SquareFeet())
	}
	total := func(f, step float64) float64 { return measure.LargestRemainder([]float64{f}, f, step)[0] }
	const stepGal, stepLb, stepArea = 0.1, 0.1, 10
	g, l, a := all.Volume.Gallons(), all.Mass.Pounds(), all.Area.SquareFeet()
	gal, lb, area = measure.LargestRemainder(gal, g, stepGal), measure.LargestRemainder(lb, l, stepLb), measure.LargestRemainder(area, a, stepArea)
	for i := range list {
		rows = append(rows, []string{measure.Commas(gal[i], 1), measure.Commas(lb[i], 1), measure.Commas(area[i], 0)})
	}
	return rows, []string{measure.Commas(total(g, stepGal), 1), measure.Commas(total(l, stepLb), 1), measure.Commas(total(a, stepArea), 0)}
}

var figureColumns = []printed.Column{{Title: "sprayed", Unit: "gal"}, {Title: "spread", Unit: "lb"}, {Title: "treated", Unit: "sq ft"}}

func (s *Season) lawnTable() printed.Table {
	t := printed.Table{Columns: append(append([]printed.Column{{Title: "lawn", Left: true}, {Title: "rounds"}}, figureColumns...),
		printed.Column{Title: "N", Unit: "lb"}, printed.Column{Title: "P2O5", Unit: "lb"})}
	var list []Sums
	var n, p []float64
	var allN, allP measure.Mass
	for i := range s.Lawns {
		ln, lp := measure.Mass(0), measure.Mass(0)
		for j := range s.Lawns[i].Zones {
			z := &s.Lawns[i].Zones[j]
			ln, lp = ln+z.Nitrogen.Mass, lp+z.Phosphate.Mass
		}
		list, n, p = append(list, s.Lawns[i].Sums), append(n, ln.Pounds()), append(p, lp.Pounds())
		allN, allP = allN+ln, allP+lp
	}
	rows, sum := figures(list, s.All)
	const step = 0.01
	n, p = measure.LargestRemainder(n, allN.Pounds(), step), measure.LargestRemainder(p, allP.Pounds(), step)
	for i := range s.Lawns {
		t.Rows = append(t.Rows, append(append([]string{s.Lawns[i].Lawn, fmt.Sprint(s.Lawns[i].Rounds)}, rows[i]...), measure.Commas(n[i], 2), measure.Commas(p[i], 2)))
	}
	t.Sum = append(append([]string{"all", ""}, sum...),
		measure.Commas(measure.LargestRemainder([]float64{allN.Pounds()}, allN.Pounds(), step)[0], 2), measure.Commas(measure.LargestRemainder([]float64{allP.Pounds()}, allP.Pounds(), step)[0], 2))
	return t
}

func (s *Season) covered(what string, list []Covered, words func(string) string) printed.Table {
	t := printed.Table{Columns: append(append([]printed.Column{{Title: what, Left: true}, {Title: "lawns"}}, figureColumns...),
		printed.Column{Title: "from", Left: true}, printed.Column{Title: "to", Left: true})}
	var sums []Sums
	for i := range list {
		sums = append(sums, list[i].Sums)
	}
	rows, sum := figures(sums, s.All)
	for i := range list {
		c := &list[i]
		t.Rows = append(t.Rows, append(append([]string{words(c.Name), fmt.Sprint(c.Lawns)}, rows[i]...), c.From, c.Upto))
	}
	t.Sum = append(append([]string{"all", ""}, sum...), "", "")
	return t
}

func (s *Season) productTable() printed.Table {
	t := printed.Table{Columns: []printed.Column{
		{Title: "product", Left: true}, {Title: "went down"}, {Title: "days"}, {Title: "zones"}, {Title: "bought"}, {Title: "in stock now"}, {Title: "reorder"},
	}}
	for i := range s.Products {
		p := &s.Products[i]
		have, bought := "not counted", ""
		if p.Stock.Have.Known {
			have = p.Stock.Have.V.Text()
		}
		if p.Bought.Known && p.Stock.Have.Known {
			bought = p.Bought.V.Text()
		}
		t.Rows = append(t.Rows, []string{p.Product, p.Amount.Text(), fmt.Sprint(p.Days), fmt.Sprint(p.Zones), bought, have, p.Order})
	}
	return t
}

// OfProduct is where a product went, lawn by lawn and zone by zone, and what is left of its limits there.
func (s *Season) OfProduct(product string) printed.Table {
	t := printed.Table{Columns: []printed.Column{
		{Title: "lawn", Left: true},
		{Title: "zone", Left: true},
		{Title: "went down"},
		{Title: "times"},
		{Title: "per 1,000 sq ft"},
		{Title: "last", Left: true},
		{Title: "again from", Left: true},
		{Title: "label still allows"},
	}}
	for i := range s.Lawns {
		for j := range s.Lawns[i].Zones {
			z := &s.Lawns[i].Zones[j]
			for k := range z.Used {
				if u := &z.Used[k]; u.Product == product {
					c := u.cells(z, s.Year)
					t.Rows = append(t.Rows, append([]string{s.Lawns[i].Lawn, z.Zone}, c[1:]...))
				}
			}
		}
	}
	return t
}

// cells are a product on a zone: product, amount, times, dose on the part that got most, last, again, left.
func (u *Used) cells(z *Zone, year string) []string {
	out := []string{u.Product, u.Amount.Text(), fmt.Sprint(u.Days), rate(measure.RateOf(u.Amount, z.Area)), u.last, "", ""}
	if z.Area == 0 {
		out[3] = ""
	}
	if !u.Line.Known {
		return out
	}
	l := &u.Line.V
	out[2], out[3] = fmt.Sprint(l.Times), rate(l.AtLeast)
	if l.MostTimes.Known {
		out[2] += fmt.Sprintf(" of %g", l.MostTimes.V)
	}
	if !l.Sum.Known {
		out[3] = "at least " + out[3]
	}
	if u.Trace() {
		out[2] = "a trace"
	}
	if l.Last != "" && strings.HasPrefix(l.Last, year) {
		out[4] = l.Last
	}
	if u.over {
		return out
	}
	switch {
	case !l.DaysBetween.Known && !l.Limit.Known && !l.MostTimes.Known:
		out[5] = "not checked"
	case l.Fits == "":
		out[5] = "not this year"
	case l.Next <= l.To:
		out[5] = "now"
	default:
		out[5] = l.Next
	}
	switch {
	case u.More.Known:
		out[6] = rate(u.More.V)
	case l.None:
		out[6] = "no limit on label"
	default:
		out[6] = "blank"
	}
	return out
}

// rate is a rate without the words of its area, which stand in the head.
func rate(r measure.Rate) string { return strings.TrimSuffix(r.Text(), " per 1,000 sq ft") }

// nutrient is nitrogen or P2O5 of a zone in words.
func (n *Nutrient) words(name string) string {
	var parts []string
	if n.Rate.Known && n.Rate.V.V > 0 {
		lb, _ := n.Rate.V.In("lb_per_1000_sqft") // the unit is in the table
		parts = append(parts, fmt.Sprintf("%.2f lb per 1,000 sq ft on the part that got most", lb))
	}
	if n.Mass > 0 {
		parts = append(parts, fmt.Sprintf("%.2f lb on the zone", n.Mass.Pounds()))
	}
	if len(parts) == 0 {
		if len(n.Unknown) == 0 {
			return ""
		}
		parts = append(parts, "none that is known")
	}
	words := name + ": " + strings.Join(parts, ", ")
	if len(n.Unknown) > 0 {
		words += "; not entered how much is in " + strings.Join(n.Unknown, ", ")
	}
	return words
}

// left says what is left of the reference's range.
func (z *Zone) left() []string {
	var out []string
	if !z.Nitrogen.Rate.Known || z.Nitrogen.Words() == "" {
		return nil
	}
	lb, _ := z.Nitrogen.Rate.V.In("lb_per_1000_sqft")
	for _, r := range z.Most {
		most := r.High.V
		out = append(out, fmt.Sprintf("nitrogen in a year of %s: up to %g lb per 1,000 sq ft (%s; %s), %.2f left", label.GrassWords(z.Grass), most, r.Region, institution(r.Source), max(most-lb, 0)))
	}
	if len(z.Most) == 0 {
		out = append(out, "nitrogen in a year: the reference has no figure for "+label.GrassWords(z.Grass)+" in the region that is set")
	}
	return out
}

// institution is who says so, without the title.
func institution(id string) string {
	if s, ok := label.FindSource(id); ok {
		return s.Institution
	}
	return id
}

// Words is nitrogen in words, empty where there is none.
func (n *Nutrient) Words() string { return n.words("nitrogen") }

func activeWords(l *core.SeasonLine) string {
	if !l.Limit.Known {
		return ""
	}
	unit := func(r measure.Rate) string {
		f, err := r.In("lb_per_acre")
		if err != nil {
			return r.Text()
		}
		return measure.Commas(f, 3)
	}
	least := ""
	if !l.Sum.Known {
		least = "at least "
	}
	return fmt.Sprintf("%s: %s%s of at most %s lb per acre, %s left (label entry of %s)", l.Name, least, unit(l.AtLeast), unit(l.Limit.V), unit(l.Left.V), l.LimitOf)
}
