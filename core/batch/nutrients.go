package batch

import (
	_ "embed"
	"strconv"
	"strings"
)

// weightsTSV are the atomic weights by which an oxide is told as its element.
//
//go:embed atomic_weights.tsv
var weightsTSV string

var atomicWeight = readWeights(weightsTSV)

func readWeights(text string) map[string]float64 {
	out := map[string]float64{}
	for i, line := range strings.Split(strings.TrimSpace(text), "\n") {
		cells := strings.Split(line, "\t")
		if i == 0 {
			continue
		}
		w, err := strconv.ParseFloat(cells[1], 64)
		if err != nil || !(w > 0) || len(cells) != 3 {
			panic("core/batch/atomic_weights.tsv: " + line) // embedded: a broken table is a broken build, held by a test
		}
		out[cells[0]] = w
	}
	return out
}

// Phosphorus is the share by weight of the element in phosphate (P2O5), as fertiliser labels tell it.
func Phosphorus() float64 { return oxide("P", 2, 5) }

// Potassium is the share by weight of the element in potash (K2O).
func Potassium() float64 { return oxide("K", 2, 1) }

func oxide(element string, of, oxygen float64) float64 {
	e, o := float64(of*atomicWeight[element]), float64(oxygen*atomicWeight["O"])
	return e / (e + o)
}
