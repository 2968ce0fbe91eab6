package label

import (
	"strconv"
	"strings"

	"example.com/tintline/core/measure"
)

// lines calls each with the rows of an embedded table, without its head. The tables are separated by tabs and quote
// nothing, so that reading them costs next to nothing at the start of the program. A row with more or fewer columns than
// the head breaks the build: a test reads every table.
func lines(table, text string, each func(cells []string)) {
	head, rest, _ := strings.Cut(text, "\n")
	cells := make([]string, strings.Count(head, "\t")+1)
	for rest != "" {
		rest = row(table, rest, cells)
		each(cells)
	}
}

// row takes the first row off a text, into as many cells as the table has columns.
func row(table, text string, cells []string) (rest string) {
	line, rest := lineOf(table, text)
	last := len(cells) - 1
	for i := range last {
		at := strings.IndexByte(line, '\t')
		if at < 0 {
			broken(table, "a column is missing: "+line)
		}
		cells[i], line = line[:at], line[at+1:]
	}
	if strings.IndexByte(line, '\t') >= 0 {
		broken(table, "a column too many: "+line)
	}
	cells[last] = line
	return rest
}

// lineOf takes the first line off a text; every line of a table has an end.
func lineOf(table, text string) (line, rest string) {
	end := strings.IndexByte(text, '\n')
	if end < 0 {
		broken(table, "the last row has no end")
	}
	return text[:end], text[end+1:]
}

// rowsIn counts the rows of a table, without its head.
func rowsIn(text string) int { return strings.Count(text, "\n") - 1 }

// broken stops a build whose embedded table cannot be read; a test holds it.
func broken(table, what string) { panic("core/label/" + table + ": " + what) }

// split takes a cell of several values apart; nil if it is empty.
func split(cell, by string) []string {
	if cell == "" {
		return nil
	}
	return strings.Split(cell, by)
}

func maybeNumber(table, cell string) measure.Maybe[float64] {
	if cell == "" {
		return measure.Maybe[float64]{}
	}
	f, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		broken(table, cell)
	}
	return measure.Known(f)
}

// maybeRate reads a rate by weight such as "1.12 kg/ha".
func maybeRate(table, cell string) measure.Maybe[measure.Rate] {
	if cell == "" {
		return measure.Maybe[measure.Rate]{}
	}
	number, unit, _ := strings.Cut(cell, " ")
	f, err := strconv.ParseFloat(number, 64)
	u, known := rateUnits[unit]
	if err != nil || !known {
		broken(table, cell)
	}
	return measure.Known(measure.Rate{V: f * u, Kind: measure.Dry})
}

// rateUnits are the units of the tables, in those of measure.Rate.
var rateUnits = map[string]float64{"kg/ha": rateUnit("kg_per_ha"), "g/ha": rateUnit("g_per_ha"), "lb/A": rateUnit("lb_per_acre")}

func rateUnit(key string) float64 {
	r, err := measure.RateUnit(1, key)
	if err != nil {
		broken("units", key)
	}
	return r.V
}
