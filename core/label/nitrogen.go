package label

import (
	_ "embed"
	"slices"
	"sort"
	"strings"

	"example.com/tintline/core/measure"
)

// NitrogenRow is a row of the reference on nitrogen.
type NitrogenRow struct {
	Record string // annual_n, per_app, per_app_p2o5, calendar
	Grass  string // or all, warm-season, ...
	Region string
	Low    measure.Maybe[float64]
	High   measure.Maybe[float64]
	Unit   string
	Note   string
	Source string
}

// The records on nitrogen.
const (
	NitrogenYear     = "annual_n"     // pounds for each 1,000 sq ft and year
	NitrogenOnce     = "per_app"      // pounds for each 1,000 sq ft in one application
	PhosphateOnce    = "per_app_p2o5" // pounds of P2O5 for each 1,000 sq ft in one application
	NitrogenCalendar = "calendar"     // what is said of seasons, in words
)

// anyRegion is the region of a row that holds everywhere.
const anyRegion = "any"

//go:embed nitrogen.tsv
var nitrogenTSV string

var nitrogenRows = readNitrogen(nitrogenTSV)

func readNitrogen(text string) []NitrogenRow {
	const table = "nitrogen.tsv"
	out := make([]NitrogenRow, 0, rowsIn(text))
	lines(table, text, func(c []string) {
		out = append(out, NitrogenRow{c[0], c[1], c[2], maybeNumber(table, c[3]), maybeNumber(table, c[4]), c[5], c[6], c[7]})
	})
	return out
}

// NitrogenOf lists the rows of a record that hold for a grass in a region, those of the grass itself first, then those of
// its kind, then those of all grasses. A region that is empty: all regions. A row of a state holds in its parts too.
func NitrogenOf(record, grass, region string) []NitrogenRow {
	var out []NitrogenRow
	for _, r := range nitrogenRows {
		if r.Record == record && near(r.Grass, grass) > 0 && r.holdsIn(region) {
			out = append(out, r)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return near(out[i].Grass, grass) > near(out[j].Grass, grass) })
	return out
}

func (r NitrogenRow) holdsIn(region string) bool {
	return region == "" || r.Region == region || r.Region == anyRegion || strings.HasPrefix(region, r.Region+" ")
}

// near says how closely a row's grass fits: 3 the grass itself, 2 its kind, 1 all grasses, 0 not at all.
func near(row, grass string) int {
	g, known := FindGrass(grass)
	switch {
	case row == grass:
		return 3
	case known && strings.HasPrefix(grass, row+"_"), known && row == g.Season+"-season":
		return 2
	case row == "all":
		return 1
	}
	return 0
}

// NitrogenRegions lists the regions of the table, in order of their names.
func NitrogenRegions() []string {
	var out []string
	for _, r := range nitrogenRows {
		if r.Region != anyRegion && !slices.Contains(out, r.Region) {
			out = append(out, r.Region)
		}
	}
	sort.Strings(out)
	return out
}
