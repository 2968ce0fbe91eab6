package label

import (
	_ "embed"
	"strconv"
	"strings"
)

//go:embed tolerance.tsv
var toleranceTSV string

// tolerances are the rows of the reference; those of one active stand together.
var tolerances = readTolerances(toleranceTSV)

// spans says where the rows of an active, or of a mixture of actives, stand.
var spans = spansOf(tolerances)

// mixtures are the actives that the reference knows only, or also, together.
var mixtures = mixturesOf(tolerances)

type span struct{ from, to int }

// mixture is several actives of which a row speaks as one.
type mixture struct {
	name  string
	parts []string
}

const toleranceTable = "tolerance.tsv"

func readTolerances(text string) []Row {
	out := make([]Row, 0, rowsIn(text))
	lines(toleranceTable, text, func(c []string) {
		out = append(out, Row{
			Active: c[0], Grass: c[1], Rating: readRating(c[2]), Basis: c[4], Contradicted: c[15], Words: c[16], Source: c[17],
			When: Conditions{
				Stage: c[3], MostRate: maybeRate(toleranceTable, c[5]), MostIsLimit: c[6] == "limit",
				LeastRate: maybeRate(toleranceTable, c[7]), TempMax: maybeNumber(toleranceTable, c[8]),
				TempMin: maybeNumber(toleranceTable, c[9]), Months: readMonths(c[10]), Cultivar: c[11],
				NotIn: split(c[12], ","), Form: c[13], Needs: split(c[14], "|"),
			},
		})
	})
	return out
}

func readRating(cell string) Rating {
	switch cell {
	case "tolerant":
		return Tolerant
	case "moderate":
		return Moderate
	case "dormant_only":
		return OnlyDormant
	case "not_tolerant":
		return NotTolerant
	case "unknown":
		return RatingUnknown
	}
	broken(toleranceTable, cell)
	return RatingUnknown
}

func readMonths(cell string) []int {
	if cell == "" {
		return nil
	}
	parts := strings.Split(cell, ",")
	out := make([]int, len(parts))
	for i, p := range parts {
		m, err := strconv.Atoi(p)
		if err != nil || m < 1 || m > 12 {
			broken(toleranceTable, cell)
		}
		out[i] = m
	}
	return out
}

func spansOf(rows []Row) map[string]span {
	out := map[string]span{}
	for i := 0; i < len(rows); {
		j := i
		for j < len(rows) && rows[j].Active == rows[i].Active {
			j++
		}
		if _, twice := out[rows[i].Active]; twice {
			broken(toleranceTable, rows[i].Active+" stands in two places")
		}
		out[rows[i].Active] = span{i, j}
		i = j
	}
	return out
}

// between is what stands between the actives of a mixture in the table.
const between = " + "

func mixturesOf(rows []Row) []mixture {
	var out []mixture
	for i, r := range rows {
		if (i == 0 || rows[i-1].Active != r.Active) && strings.Contains(r.Active, between) {
			out = append(out, mixture{r.Active, strings.Split(r.Active, between)})
		}
	}
	return out
}

// rowsOf are the rows of an active, or of a mixture under its name in the table.
func rowsOf(active string) []Row {
	at, ok := spans[active]
	if !ok {
		if a, known := FindActive(active); known {
			at = spans[a.Name]
		}
	}
	return tolerances[at.from:at.to]
}

// Tolerances lists all rows of the reference, in the order of the table.
func Tolerances() []Row { return append([]Row(nil), tolerances...) }
