package hydraulics

import (
	_ "embed"
	"math"
)

//go:embed water.csv
var waterCSV string

// Water is what of water matters to a flow.
type Water struct {
	Viscosity float64 // kinematic, m2/s
	Density   float64 // kg/m3
}

// waterRow is a row of water.csv.
type waterRow struct {
	c float64
	Water
	source string
}

var waterTable = func() []waterRow {
	var out []waterRow
	for i, row := range table("water.csv", waterCSV) {
		n := func(col int) float64 { return figure("water.csv", i, row[col]) }
		out = append(out, waterRow{c: n(0), Water: Water{Viscosity: n(1), Density: n(2)}, source: row[3]})
	}
	return out
}()

// How far beyond the table's ends the last two rows are carried on, in C: to just above freezing, and to water that
// stood in the sun.
const beyondTable = 10

// WaterAt is water of a temperature in C. Between the rows of water.csv the density goes in a straight line and the
// viscosity in one of its logarithm; it is carried on for 10 C beyond the ends and held from there. NaN is taken as the
// usual temperature.
func WaterAt(c float64) Water {
	if math.IsNaN(c) {
		c = Temperature
	}
	last := len(waterTable) - 1
	c = min(max(c, waterTable[0].c-beyondTable), waterTable[last].c+beyondTable)
	i := 0
	for i < last-1 && c > waterTable[i+1].c {
		i++
	}
	a, b := waterTable[i], waterTable[i+1]
	t := (c - a.c) / (b.c - a.c)
	switch t {
	case 0:
		return a.Water
	case 1:
		return b.Water
	}
	return Water{
		Viscosity: a.Viscosity * math.Pow(b.Viscosity/a.Viscosity, t),
		Density:   a.Density + float64(t*(b.Density-a.Density)),
	}
}
