package tally

import (
	"fmt"
	"strings"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// page holds the figures of one page as they are printed, so that they add up as printed: each is a
// multiple of its step, and each sum on the page is the sum of what stands above it.
type page struct {
	places      int     // decimals of gallons
	gal         float64 // step of gallons
	area        float64 // step of square feet
	all, allSqF float64
	lb          float64 // step of pounds
	allLb       float64
}

func (t *Tally) printing() page {
	p := page{places: 1, gal: 0.1, area: 10}
	if t.Volume < 10*measure.USGallon {
		p.places, p.gal = 2, 0.01
	}
	p.all = measure.LargestRemainder([]float64{t.Volume.Gallons()}, t.Volume.Gallons(), p.gal)[0]
	p.lb = 0.1
	p.allLb = measure.LargestRemainder([]float64{t.Mass.Pounds()}, t.Mass.Pounds(), p.lb)[0]
	p.allSqF = measure.LargestRemainder([]float64{t.Area.SquareFeet()}, t.Area.SquareFeet(), p.area)[0]
	return p
}

func (p page) gallons(f float64) string { return measure.Commas(f, p.places) }

func (p page) pounds(f float64) string { return measure.Commas(f, 1) }

func (p page) sqft(f float64) string { return measure.Commas(f, 0) }

// Section is one table of the tally as people read it: the first column stands left, the others right, and a row whose
// first cell begins with blanks is part of the row above.
type Section struct {
	Of   string // Compartments, Mixes, Products, Lawns, Tanks, Hoppers, Applicators or Hours
	Head []string
	Rows [][]string
}

// The sections of a tally.
const (
	Compartments = "compartments"
	Mixes        = "mixes"
	Products     = "products"
	Lawns        = "lawns"
	Tanks        = "tanks"
	Hoppers      = "hoppers"
	Applicators  = "with"
	Hours        = "in"
)

func (s *Section) add(cells ...string) { s.Rows = append(s.Rows, cells) }

// Text is the tally as people read it.
func (t *Tally) Text() string {
	var w strings.Builder
	w.WriteString(t.Line() + "\n")
	for _, s := range t.Sections() {
		w.WriteString("\n")
		rows := table{}
		rows.add(s.Head...)
		for _, r := range s.Rows {
			rows.add(r...)
		}
		rows.write(&w)
	}
	return w.String()
}

// Line is the bottom line of the tally in one line.
func (t *Tally) Line() string {
	p := t.printing()
	dates := t.From
	if t.To != t.From {
		dates += " to " + t.To
	}
	lawns := "lawns"
	if len(t.Lawns) == 1 {
		lawns = "lawn"
	}
	spread := ""
	if t.Mass > 0 {
		spread = p.pounds(p.allLb) + " lb   "
	}
	return fmt.Sprintf("%s   %d %s   %s sq ft   %s gal   %s%s h", dates, len(t.Lawns), lawns,
		p.sqft(p.allSqF), p.gallons(p.all), spread, measure.Commas(t.All().Hours, 1))
}

// Sections are the tables that have rows. As printed, each column adds up to the line at the top.
func (t *Tally) Sections() []Section {
	p := t.printing()
	var out []Section
	for _, s := range []Section{t.compartments(p), t.tanks(p), t.hoppers(p), t.mixes(p), t.products(), t.applicators(p), t.hours(p), t.lawns(p)} {
		if len(s.Rows) > 0 {
			out = append(out, s)
		}
	}
	return out
}

// row prints the six flows of a tank so that they come to what is printed as left.
func (p page) row(f fluid.Flows) []float64 {
	parts := []float64{
		f.Start.Gallons(), f.Loaded.Gallons(), f.PushedIn.Gallons(), -f.Drawn.Gallons(), f.Other.Gallons(), f.Unexplained.Gallons(),
	}
	out := measure.LargestRemainder(parts, f.Left().Gallons(), p.gal)
	out[3], out[4] = -out[3], -out[4]
	left := measure.LargestRemainder([]float64{f.Left().Gallons()}, f.Left().Gallons(), p.gal)[0]
	return append(out, left)
}

func (t *Tally) compartments(p page) Section {
	if len(t.Compartments) == 0 {
		return Section{}
	}
	var to []float64
	for i := range t.Compartments {
		to = append(to, t.Compartments[i].ToLawns.Gallons())
	}
	to = measure.LargestRemainder(to, t.Volume.Gallons(), p.gal)
	rows := Section{Of: Compartments, Head: []string{"gallons", "start", "loaded", "pushed in", "drawn", "other", "unexplained", "left", "gauge", "to lawns"}}
	sums := make([]float64, 7)
	for i := range t.Compartments {
		c := &t.Compartments[i]
		cells := []string{c.Letter}
		for j, f := range p.row(c.Flows) {
			sums[j] += f
			cells = append(cells, p.gallons(f))
		}
		gauge := "-"
		if c.Gauge.Known {
			gauge = p.gallons(c.Gauge.V.Gallons())
		}
		rows.add(append(cells, gauge, p.gallons(to[i]))...)
	}
	cells := []string{"all"}
	for _, f := range sums {
		cells = append(cells, p.gallons(f))
	}
	rows.add(append(cells, "", p.gallons(p.all))...)
	return rows
}

func (t *Tally) mixes(p page) Section {
	if len(t.Mixes) == 0 {
		return Section{}
	}
	var gal, area []float64
	for _, m := range t.Mixes {
		gal, area = append(gal, m.Volume.Gallons()), append(area, m.Area.SquareFeet())
	}
	gal = measure.LargestRemainder(gal, t.Volume.Gallons(), p.gal)
	sprayed := measure.LargestRemainder([]float64{t.Sprayed.SquareFeet()}, t.Sprayed.SquareFeet(), p.area)[0]
	area = measure.LargestRemainder(area, t.Sprayed.SquareFeet(), p.area)
	rows := Section{Of: Mixes, Head: []string{"mix", "gal", "sq ft"}}
	for i, m := range t.Mixes {
		rows.add(m.Mix, p.gallons(gal[i]), p.sqft(area[i]))
	}
	rows.add("all", p.gallons(p.all), p.sqft(sprayed))
	return rows
}

func (t *Tally) products() Section {
	if len(t.Products) == 0 {
		return Section{}
	}
	rows := Section{Of: Products, Head: []string{"product", "amount", "where it went"}}
	for _, pr := range t.Meant() {
		per := "-"
		if pr.Area > 0 {
			per = measure.RateOf(pr.Amount, pr.Area).Text()
		}
		rows.add(pr.Product, pr.Amount.Text(), per)
	}
	return rows
}
