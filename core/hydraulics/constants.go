package hydraulics

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

//go:embed constants.csv
var constantsCSV string

// Constant is a row of constants.csv.
type Constant struct {
	Name, Unit, Source string
	Value              float64
}

// constants is the table, in file order.
var constants = readConstants(constantsCSV)

// Constants gives the single figures that this package reckons with, each with its source.
func Constants() []Constant { return append([]Constant(nil), constants...) }

// The figures by name. A name that the table lacks is a fault of the build and ends the program, as the tests find.
var (
	laminarBelow   = constant("laminar_below")
	turbulentFrom  = constant("turbulent_from")
	smearLowBelow  = constant("smear_low_below")
	smearMargin    = constant("smear_margin")
	smearMarginLow = constant("smear_margin_low")
	SmearDoubt     = constant("smear_doubt")
	FlowDoubt      = constant("flow_doubt")
	roughness      = constant("roughness_mm") / 1000
	hoseDensity    = constant("hose_density_lb_in3")
	gravity        = constant("gravity")

	// Temperature is that of water, in C, where nobody has said another.
	Temperature = constant("usual_temperature")
	// CellPrior is a mixing cell that was never measured, and CellDoubt its relative standard uncertainty.
	CellPrior = Gallons(constant("cell_prior"))
	CellDoubt = constant("cell_doubt")
	// HazenWilliams is the coefficient C of a plastic hose.
	HazenWilliams = constant("hazen_williams")
	// HoseFactor is what the friction of a real hose is to that of a smooth pipe, between FactorLow and FactorHigh, until
	// a pair of pressures is measured.
	HoseFactor = constant("hose_factor")
	FactorLow  = constant("hose_factor_low")
	FactorHigh = constant("hose_factor_high")
)

// constant gives the figure of a name.
func constant(name string) float64 {
	for _, c := range constants {
		if c.Name == name {
			return c.Value
		}
	}
	panic("constants.csv has no " + name)
}

func readConstants(text string) []Constant {
	var out []Constant
	for i, row := range table("constants.csv", text) {
		out = append(out, Constant{Name: row[0], Value: figure("constants.csv", i, row[1]), Unit: row[2], Source: row[3]})
	}
	return out
}

// table reads a file that is built into the program, without its heading. A fault in it is a fault of the build, which
// the tests of this package find: it ends the program.
func table(file, text string) [][]string {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("%s: %v", file, err))
	}
	return rows[1:]
}

// figure reads the number of a row.
func figure(file string, row int, text string) float64 {
	f, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(fmt.Sprintf("%s: row %d has no figure but %q", file, row+2, text))
	}
	return f
}
