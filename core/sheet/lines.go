package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// Line is one thing that a label entry says, in words: a value, none on the label, or that it is blank.
type Line struct {
	Key   string // of the column
	Words string
	Says  string
	Blank bool
}

// What is written where a label entry has no value.
const (
	SaysNone  = "none on the label"
	SaysBlank = "blank: not checked"
	saysNot   = "not entered"
)

// lineOf is a column with the words before it, the unit behind its value, and whether something is checked by it.
type lineOf struct {
	key, words, unit string
	checked          bool
}

// entryLines are the columns of a label entry in the order in which they are read: by what is told wrong first. Actives,
// grasses, analysis and price are read apart.
var entryLines = []lineOf{
	{"registration", "registration no.", "", true},
	{"signal", "signal word", "", false},
	{"restricted", "restricted use", "", false},
	{"rate_high", "highest rate", "", true},
	{"rate_low", "lowest rate", "", true},
	{"rates", "rates by grass", "", false},
	{"most_application", "most in one visit", "", true},
	{"most_year", "most in a year", "", true},
	{"most_times", "times in a year", "", true},
	{"year_days", "the label's year", " days", false},
	{"days_between", "between two visits", " days", true},
	{"wind_max_mph", "wind", " mph at most", true},
	{"temp_max_f", "highest temperature", " F", true},
	{"temp_min_f", "lowest temperature", " F", true},
	{"rain_free_h", "without rain", " h", true},
	{"no_inversion", "not under inversion", "", true},
	{"water_ft", "strip along water", " ft", true},
	{"no_bloom", "not on bloom", "", true},
	{"new_turf_days", "wait on new turf", " days", true},
	{"reseed_days", "wait to seed", " days", true},
	{"first_aid", "first aid", "", false},
	{"emergency_phone", "number to call", "", false},
	{"reentry", "going back on it", "", false},
	{"sites", "sites", "", false},
	{"mixing_class", "formulation", "", false},
	{"mixing_order", "goes into the tank", "", false},
}

// Lines are what a label entry says, in the order in which it is read. A number that only pesticides have is left out of
// other products where it is blank.
func Lines(p *core.Product) []Line {
	cells := Cells(p)
	var out []Line
	for _, f := range entryLines {
		l := Line{Key: f.key, Words: f.words, Says: valueWords(cells[f.key]) + f.unit}
		switch {
		case cells[f.key] == none && f.key != "signal":
			l.Says = SaysNone
		case cells[f.key] != "":
		case f.checked && f.key == "registration" && !p.Label.Pesticide():
			continue
		case f.checked:
			l.Says, l.Blank = SaysBlank, true
		case f.key == "rates" || f.key == "year_days" || f.key == "mixing_order":
			continue // the general rates, the calendar year and the formulation hold
		default:
			l.Says = saysNot
		}
		out = append(out, l)
	}
	out = append(out, analysisLine(p)...)
	return append(out, priceLine(p))
}

// analysisLine is what a fertiliser holds.
func analysisLine(p *core.Product) []Line {
	e := &p.Label
	l := Line{Key: "nitrogen_pct", Words: "analysis"}
	if !e.Nitrogen.Known && !e.Phosphate.Known && !e.Potash.Known {
		if n := e.NitrogenPerProduct(); n.Known {
			return nil
		}
		l.Says, l.Blank = SaysBlank, true
		return []Line{l}
	}
	of := func(m core.Maybe[float64]) string {
		if !m.Known {
			return "?"
		}
		return figure(m.V)
	}
	l.Says = of(e.Nitrogen) + "-" + of(e.Phosphate) + "-" + of(e.Potash) + " (nitrogen, phosphate, potash, % by weight)"
	if e.Nitrogen.Or(0) > 0 {
		l.Says += "; of the nitrogen at once: "
		if e.QuickNitrogen.Known {
			l.Says += figure(e.QuickNitrogen.V) + "%"
		} else {
			l.Says += "not entered"
		}
	}
	return []Line{l}
}

func priceLine(p *core.Product) Line {
	l := Line{Key: "price_usd", Words: "price", Says: saysNot}
	switch {
	case p.Label.Price.Known && p.Label.Package.N > 0:
		l.Says = p.Label.Price.V.Text() + " for " + p.Label.Package.Text()
	case p.Label.Price.Known:
		l.Says = p.Label.Price.V.Text()
	case p.Label.Package.N > 0:
		l.Says = saysNot + ", package " + p.Label.Package.Text()
	}
	return l
}

// Changes says what a version of a label entry has otherwise than the one before it; nothing where they say the same.
func Changes(before, after *core.Product) []string {
	was, is := Cells(before), Cells(after)
	var out []string
	for _, c := range productColumns {
		a, b := was[c.Name], is[c.Name]
		switch {
		case a == b:
		case c.Name == grassesColumn:
			out = append(out, listChange("grasses", before.Label.Grasses, after.Label.Grasses))
		default:
			words, unit := wordsOf(c.Name)
			out = append(out, fmt.Sprintf("%s %s, was %s", words, withUnit(b, unit), withUnit(a, unit)))
		}
	}
	return out
}

const grassesColumn = "grasses"

func wordsOf(key string) (words, unit string) {
	for _, f := range entryLines {
		if f.key == key {
			return f.words, f.unit
		}
	}
	return strings.ReplaceAll(key, "_", " "), ""
}

func withUnit(cell, unit string) string {
	if cell == "" || cell == none {
		return valueWords(cell)
	}
	return valueWords(cell) + unit
}

func valueWords(cell string) string {
	switch cell {
	case "":
		return "blank"
	case none:
		return SaysNone
	}
	return strings.ReplaceAll(cell, "per 1000 sqft", "per 1,000 sq ft")
}

// listChange is what a list of grasses has more and less.
func listChange(what string, before, after []string) string {
	var parts []string
	for _, d := range []struct {
		word         string
		these, those []string
	}{{"with", after, before}, {"without", before, after}} {
		var names []string
		for _, g := range d.these {
			if !slices.Contains(d.those, g) {
				names = append(names, label.GrassWords(g))
			}
		}
		if len(names) > 0 {
			parts = append(parts, d.word+" "+strings.Join(names, ", "))
		}
	}
	if len(parts) == 0 {
		return what + " in another order"
	}
	return what + " " + strings.Join(parts, "; ")
}
