package label

import (
	_ "embed"

	"example.com/tintline/core/measure"
)

// When a caution of mixing is to be heeded.
const (
	CautionStart   = "start"
	CautionWith    = "with" // with the product that it stands at
	CautionBetween = "between"
	CautionEnd     = "end"
)

// Caution is what is to be heeded at a step of filling a tank.
type Caution struct{ When, Says, Source string }

//go:embed mixing_cautions.csv
var mixingCautionsCSV string

var mixingCautions = readMixingCautions(mixingCautionsCSV)

func readMixingCautions(text string) map[string][]Caution {
	out := map[string][]Caution{}
	for _, r := range readCSV("mixing_cautions.csv", text) {
		out[r[0]] = append(out[r[0]], Caution{r[1], r[2], r[3]})
	}
	return out
}

// The rows of the table that are about more than one class.
const (
	cautionAll     = "all"
	cautionMany    = "many"
	cautionLiquids = "liquids"
)

// MostPartners is how many products in one tank need no note.
//
// Source: sprayers101.com, on tank mixes: not more than three partners.
const MostPartners = 3

// heed puts the cautions to the steps. Adjuvants and conditioners are no partners.
func (a *Adding) heed(products []ToAdd) {
	a.Cautions = append(a.Cautions, mixingCautions[cautionAll]...)
	forms := map[string]measure.Kind{}
	for _, p := range products {
		forms[p.Name] = p.Entry.Form
	}
	liquid := false
	for i := range a.Steps {
		s := &a.Steps[i]
		if s.Class != OrderAdjuvant && s.Class != "conditioner" {
			a.Partners++
		}
		if !liquid && forms[s.Name] == measure.Liquid && s.Class != "conditioner" {
			liquid = true
			s.Cautions = append(s.Cautions, mixingCautions[cautionLiquids]...)
		}
		s.Cautions = append(s.Cautions, mixingCautions[s.Class]...)
	}
	if a.Partners > MostPartners {
		a.Cautions = append(append([]Caution(nil), mixingCautions[cautionMany]...), a.Cautions...)
	}
}
