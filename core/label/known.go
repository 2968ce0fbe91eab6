package label

import (
	_ "embed"
	"encoding/csv"
	"strings"
)

//go:embed nutrients.csv
var nutrientCSV string

var nutrients = readNutrients(nutrientCSV)

func readNutrients(text string) map[string]bool {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("core/label/nutrients.csv: " + err.Error()) // embedded: a broken table is a broken build, held by a test
	}
	out := map[string]bool{}
	for _, r := range rows[1:] {
		out[r[0]] = true
	}
	return out
}

// Nutrient tells whether a name is that of a plant nutrient, which a label lists without it being a pesticide.
func Nutrient(name string) bool { return nutrients[plainWord(name)] }

// KnownActive tells whether a name is one that needs no further word: of the reference, or a nutrient.
func KnownActive(name string) bool {
	if Nutrient(name) {
		return true
	}
	_, ok := FindActive(name)
	return ok
}

// Signals lists the signal words, the heaviest first; none is a label without one.
func Signals() []string { return []string{"danger", "warning", "caution", "none"} }

// Limits lists the keys of what a label may have none of, in the order in which they are asked.
func Limits() []string {
	return []string{
		LimitRateLow, LimitRateHigh, LimitMost, LimitMostYear, LimitMostTimes, LimitDaysBetween, LimitWindMax, LimitTempMax,
		LimitTempMin, LimitRainFree, LimitReseed, LimitNewTurf, LimitWater,
	}
}
