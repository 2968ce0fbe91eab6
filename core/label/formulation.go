package label

import (
	_ "embed"
	"strings"
)

// Formulation is what the letters of a formulation mean, and whether a mix of it settles while nobody stirs it.
type Formulation struct {
	Letters, Words string
	Settles        bool
	Source         string
}

//go:embed formulations.csv
var formulationsCSV string

var formulations = readFormulations(formulationsCSV)

func readFormulations(text string) map[string]Formulation {
	out := map[string]Formulation{}
	for _, r := range readCSV("formulations.csv", text) {
		out[r[0]] = Formulation{r[0], r[1], r[2] == Yes, r[3]}
	}
	return out
}

// FindFormulation looks the letters of an entry up, whatever their case; a figure before them ("75 WG") is no part of them.
// False where they are blank, or mean nothing to the table.
func FindFormulation(letters string) (Formulation, bool) {
	f, ok := formulations[strings.TrimLeft(strings.ToLower(strings.TrimSpace(letters)), "0123456789. ")]
	return f, ok
}
