package calib

import (
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"

	"example.com/tintline/core/measure"
)

// Limits are what a test is held to. Per cents are per cents, not shares.
type Limits struct {
	SpreadPct     float64        // of a run or a catch from the mean
	OffPct        float64        // of a rate from the one meant
	WornPct       float64        // of a tip's flow from that of a new one
	NozzleOffPct  float64        // of one nozzle from the mean of all
	PressureTimes float64        // by which pressure alone is changed
	Runs          map[string]int // fewest, by kind; a spreader is not timed
}

// LimitRow is a line of the table of limits.
type LimitRow struct {
	Name, Unit, Words, Source string
	Value                     float64
}

//go:embed limits.csv
var limitsCSV string

var limitRows = readLimits(limitsCSV)

func readLimits(text string) []LimitRow {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("core/calib/limits.csv: " + err.Error()) // embedded: a broken table is a broken build, held by a test
	}
	var out []LimitRow
	for _, r := range rows[1:] {
		v, err := strconv.ParseFloat(r[1], 64)
		if err != nil {
			panic("core/calib/limits.csv: " + err.Error()) // as above
		}
		out = append(out, LimitRow{r[0], r[2], r[3], r[4], v})
	}
	return out
}

// LimitRows lists the table with its sources.
func LimitRows() []LimitRow { return append([]LimitRow(nil), limitRows...) }

// SourceOf is where a limit comes from.
func SourceOf(name string) string {
	for _, r := range limitRows {
		if r.Name == name {
			return r.Source
		}
	}
	return ""
}

// Usual are the limits of the table.
func Usual() Limits {
	v := func(name string) float64 {
		for _, r := range limitRows {
			if r.Name == name {
				return r.Value
			}
		}
		return 0
	}
	l := Limits{
		SpreadPct: v("catch_spread_pct"), OffPct: v("rate_off_pct"), WornPct: v("nozzle_worn_pct"),
		NozzleOffPct: v("nozzle_off_pct"), PressureTimes: v("tip_pressure_times"), Runs: map[string]int{},
	}
	for _, kind := range []string{Gun, RideOn, Backpack} {
		l.Runs[kind] = int(v("runs_" + kind))
	}
	return l
}

// UsualGround is the course, and where one is usual the swath, of a test of a kind; 0 where none is.
func UsualGround(kind string) (course, swath measure.Length) {
	for _, r := range limitRows {
		switch r.Name {
		case "course_" + kind + "_ft":
			course = measure.Feet(r.Value)
		case "swath_" + kind + "_ft":
			swath = measure.Feet(r.Value)
		}
	}
	return course, swath
}

// RunsMeant is how many runs a test of a kind needs.
func (l Limits) RunsMeant(kind string) int { return l.Runs[kind] }
