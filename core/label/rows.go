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
		var line string
		line, rest, _ = strings.Cut(rest, "\n")
		for i := range cells {
			cell, tail, more := strings.Cut(line, "\t")
			if more == (i == len(cells)-1) {
				broken(table, line)
			}
			cells[i], line = cell, tail
		}
		each(cells)
	}
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
	key := map[string]string{"kg/ha": "kg_per_ha", "g/ha": "g_per_ha", "lb/A": "lb_per_acre"}[unit]
	r, err2 := measure.RateUnit(f, key)
	if err != nil || err2 != nil {
		broken(table, cell)
	}
	return measure.Known(r)
}
