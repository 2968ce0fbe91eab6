package tally

import (
	"slices"
	"strings"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/printed"
)

// sectionColumn says what stands in the first column of a section, and in which unit its other columns are where their heads do not say it.
var sectionColumn = map[string]struct{ title, name, unit string }{
	Compartments: {"by compartment", "compartment", "gal"},
	Tanks:        {"applicators' own tanks", "own tank", "gal"},
	Hoppers:      {"hoppers and spreaders", "hopper", "lb"},
	Mixes:        {"by mix", "mix", ""},
	Products:     {"by product", "product", ""},
	Applicators:  {"by applicator", "applicator", ""},
	Hours:        {"by hour", "hour", ""},
	Lawns:        {"by lawn", "lawn", ""},
}

// TitleOf is the title of a section.
func TitleOf(section string) string { return sectionColumn[section].title }

// figureUnits are the units of heads that are a unit themselves.
var figureUnits = map[string]printed.Column{
	"gal": {Title: "volume", Unit: "gal"}, "lb spread": {Title: "spread", Unit: "lb"}, "sq ft": {Title: "area", Unit: "sq ft"},
}

// Printed is the tally as it is handed out, on one page where it fits, with the figures of Text: as printed, each column adds up.
func (t *Tally) Printed() printed.Document {
	d := printed.Document{Title: "Tally, " + t.From, About: []string{strings.ReplaceAll(t.Line(), "   ", ", ")}, OnePage: true}
	if t.To != t.From {
		d.Title += " to " + t.To
	}
	for _, s := range t.Sections() {
		d.Parts = append(d.Parts, s.printed())
	}
	return d
}

func (s Section) columns() []printed.Column {
	about := sectionColumn[s.Of]
	out := []printed.Column{{Title: about.name, Left: true}}
	for _, h := range s.Head[1:] {
		c, itself := figureUnits[h]
		if !itself {
			c = printed.Column{Title: h, Unit: about.unit}
		}
		out = append(out, c)
	}
	return out
}

// printed is the section as a table. The bottom line becomes its sum; a zone stands below its lawn, or beside it where it is the only one.
func (s Section) printed() printed.Part {
	p := printed.Part{Title: TitleOf(s.Of), Table: printed.Table{Columns: s.columns(), Rows: s.Rows}}
	if last := len(s.Rows) - 1; last > 0 && s.Rows[last][0] == "all" && s.Of != Products {
		p.Table.Rows, p.Table.Sum = s.Rows[:last], s.Rows[last]
	}
	if s.Of != Lawns {
		return p
	}
	was, rows := p.Table.Rows, [][]string{}
	for i, r := range was {
		switch {
		case !isPart(was, i):
			rows = append(rows, slices.Clone(r))
		case !isPart(was, i-1) && !isPart(was, i+1):
			rows[len(rows)-1][0] += ": " + strings.TrimLeft(r[0], " ")
		default:
			rows = append(rows, append([]string{emSpace + strings.TrimLeft(r[0], " ")}, r[1:]...))
		}
	}
	p.Table.Rows = rows
	return p
}

const emSpace = "\u2003" // a browser keeps it where a blank is left out

// isPart tells whether a row is part of the one above.
func isPart(rows [][]string, i int) bool { return i < len(rows) && strings.HasPrefix(rows[i][0], "  ") }

// Figures are the tables of the tally for a spreadsheet or a program: figures without separators, the zones instead of their lawns,
// amounts beside their unit. Sums are left to who adds them up.
func (t *Tally) Figures() printed.Document {
	d := printed.Document{Title: "Tally"}
	for _, s := range t.Sections() {
		p := s.printed()
		switch s.Of {
		case Products:
			p.Table = t.amounts()
		case Lawns:
			p.Table.Rows = t.zoneRows(s)
			p.Table.Columns = append([]printed.Column{{}, {Title: "zone", Left: true}, {Title: "grass", Left: true}}, p.Table.Columns[1:]...)
		default:
			p.Table.Rows = plainRows(p.Table.Rows)
		}
		p.Table.Columns[0] = printed.Column{Title: "name", Left: true}
		p.Table.Sum = nil
		d.Parts = append(d.Parts, p)
	}
	return d
}

// zoneRows are the rows of the zones with the name of their lawn, in the figures of the section.
func (t *Tally) zoneRows(s Section) [][]string {
	var out [][]string
	at := 0
	for _, l := range t.Lawns {
		at++ // the row of the lawn
		for _, z := range l.Zones {
			out = append(out, append([]string{l.Lawn, z.Zone, label.GrassWords(z.Grass)}, plainRow(s.Rows[at][1:])...))
			at++
		}
	}
	return out
}

// amounts are the products with their amounts and rates as figures beside their units.
func (t *Tally) amounts() printed.Table {
	out := printed.Table{Columns: []printed.Column{{}, {Title: "amount"}, {Title: "amount unit", Left: true}, {Title: "rate"}, {Title: "rate unit", Left: true}}}
	for _, p := range t.Meant() {
		n, unit := smallUnit(float64(p.Amount.N), p.Amount.Kind)
		rate, per := "", ""
		if p.Area > 0 {
			rate, per = smallUnit(measure.RateOf(p.Amount, p.Area).V*float64(measure.ThousandSquareFeet), p.Amount.Kind)
			per += " per 1,000 sq ft"
		}
		out.Rows = append(out.Rows, []string{p.Product, n, unit, rate, per})
	}
	return out
}

func plainRows(rows [][]string) [][]string {
	var out [][]string
	for _, r := range rows {
		out = append(out, append([]string{r[0]}, plainRow(r[1:])...))
	}
	return out
}

// plainRow are printed figures without separators; nothing known is empty.
func plainRow(cells []string) []string {
	var out []string
	for _, c := range cells {
		if c == "-" {
			c = ""
		}
		out = append(out, strings.ReplaceAll(c, ",", ""))
	}
	return out
}
