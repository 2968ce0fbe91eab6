package measure

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

//go:embed units.csv
var unitsCSV string

// unit is one row of units.csv: one of it is num/den of the base unit.
type unit struct {
	quantity, key string
	num, den      int64
	ratio         *big.Rat
	names         []string // what a person may type, lower case
	source        string
}

// float gives the factor to the base unit as the nearest float64.
func (u *unit) float() float64 {
	f, _ := u.ratio.Float64()
	return f
}

// of gives so many base units in this unit.
func (u *unit) of(base float64) float64 {
	if u.den == 1 {
		return base / float64(u.num)
	}
	return base * float64(u.den) / float64(u.num)
}

// units is the table, in file order.
var units = readUnits(unitsCSV)

// readUnits reads the table that is built into the program. A fault in it is a
// fault of the build, which the tests of this package find: it ends the program.
func readUnits(text string) []*unit {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("units.csv: %v", err))
	}
	table := make([]*unit, 0, len(rows))
	for i, row := range rows[1:] {
		num, errNum := strconv.ParseInt(row[2], 10, 64)
		den, errDen := strconv.ParseInt(row[3], 10, 64)
		if errNum != nil || errDen != nil || num <= 0 || den <= 0 {
			panic(fmt.Sprintf("units.csv: row %d has no factor", i+2))
		}
		table = append(table, &unit{
			quantity: row[0], key: row[1], num: num, den: den,
			ratio: big.NewRat(num, den), names: strings.Split(row[5], "|"), source: row[6],
		})
	}
	return table
}

// findUnit gives the unit of a quantity by its key, or nil.
func findUnit(quantity, key string) *unit {
	for _, u := range units {
		if u.key == key && u.quantity == quantity {
			return u
		}
	}
	return nil
}

// unitOf is findUnit with a sentence for an unknown name.
func unitOf(quantity, key string) (*unit, error) {
	if u := findUnit(quantity, key); u != nil {
		return u, nil
	}
	keys := UnitsOf(quantity)
	if len(keys) == 0 {
		return nil, textErrorf("%q is no quantity that is measured here.", quantity)
	}
	return nil, textErrorf("%q is no unit of %s; write one of: %s.", key, quantity, strings.Join(keys, ", "))
}

// UnitsOf lists the keys of a quantity's units in file order; the quantities are
// volume, mass, area, length, flow, pressure, speed and money.
func UnitsOf(quantity string) []string {
	var keys []string
	for _, u := range units {
		if u.quantity == quantity {
			keys = append(keys, u.key)
		}
	}
	return keys
}

// QuantityOf names the quantity that a key of units.csv belongs to, or "".
func QuantityOf(key string) string {
	for _, u := range units {
		if u.key == key {
			return u.quantity
		}
	}
	return ""
}

// Factor gives how many base units (nL, ng, mm², µm, nL/s, Pa, µm/s, cents) one
// of the unit holds, as the nearest float64; ok is false for an unknown unit.
func Factor(quantity, key string) (base float64, ok bool) {
	u := findUnit(quantity, key)
	if u == nil {
		return 0, false
	}
	return u.float(), true
}

// TextError says in one sentence what is wrong with a text and what is allowed.
type TextError struct{ Sentence string }

func (e *TextError) Error() string { return e.Sentence }

func textErrorf(format string, args ...any) error {
	return &TextError{Sentence: fmt.Sprintf(format, args...)}
}
