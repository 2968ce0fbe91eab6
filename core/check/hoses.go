package check

import (
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"

	"example.com/tintline/core/measure"
)

//go:embed hoses.csv
var hosesCSV string

// hoseRow is a bore with the outside diameter that is assumed of it, or a length: what a hose is compared with.
type hoseRow struct {
	bore, outside, length measure.Length
	source                string
}

var hoseBores, hoseLengths = readHoses(hosesCSV)

func readHoses(text string) (bores, lengths []hoseRow) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("core/check/hoses.csv: " + err.Error()) // embedded: a broken table is a broken build, held by a test
	}
	for _, r := range rows[1:] {
		row := hoseRow{source: r[4]}
		if r[0] == "length" {
			row.length = measure.Feet(figureOf(r[3]))
			lengths = append(lengths, row)
			continue
		}
		row.bore, row.outside = measure.Inches(figureOf(r[1])), measure.Inches(figureOf(r[2]))
		bores = append(bores, row)
	}
	return bores, lengths
}

func figureOf(s string) float64 {
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic("core/check/hoses.csv: " + err.Error()) // as above
	}
	return f
}

// outsideOf is the outside diameter that is assumed of a bore: that of the nearest of the table.
func outsideOf(bore measure.Length) measure.Length {
	best := hoseBores[0]
	for _, r := range hoseBores[1:] {
		if abs(r.bore-bore) < abs(best.bore-bore) {
			best = r
		}
	}
	return best.outside + bore - best.bore
}

func abs(l measure.Length) measure.Length { return max(l, -l) }
