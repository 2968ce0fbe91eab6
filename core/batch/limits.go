package batch

import (
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"
)

// Limit is a figure of practice with where it comes from.
type Limit struct {
	Value  float64
	Unit   string
	Source string
}

// The names of useup.csv.
const (
	Thin         = "thin"
	RinsateShare = "rinsate_share"
)

//go:embed useup.csv
var limitsCSV string

var limits = readLimits(limitsCSV)

func readLimits(text string) map[string]Limit {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil // a test reads the table
	}
	out := map[string]Limit{}
	for _, r := range rows[1:] {
		f, _ := strconv.ParseFloat(r[1], 64)
		out[r[0]] = Limit{f, r[2], r[3]}
	}
	return out
}

// Practice is a figure of practice by its name.
func Practice(name string) Limit { return limits[name] }
