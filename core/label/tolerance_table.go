package label

import (
	_ "embed"
	"slices"
	"strconv"
	"strings"
)

//go:embed tolerance.tsv
var toleranceTSV string

// blocks are the rows of the reference as text, those of one active on one grass together. Only the borders are sought at
// the start of the program; the rows themselves, a dozen at most, are read when they are asked for.
var blocks, blocksAt = readBlocks(toleranceTSV)

// mixtures are the actives that the reference knows together.
var mixtures = mixturesOf(blocks)

// block is the text of the rows of an active on a grass.
type block struct{ active, grass, rows string }

// span is a range of blocks: those of an active.
type span struct{ from, to int }

// mixture is several actives of which a row speaks as one.
type mixture struct {
	name  string
	parts []string
}

const (
	toleranceTable   = "tolerance.tsv"
	toleranceColumns = 18
)

func readBlocks(text string) (all []block, at map[string]span) {
	_, text = lineOf(toleranceTable, text)
	all, at = make([]block, 0, 700), make(map[string]span, 64)
	for text != "" {
		key := keyOf(text)
		rest := text
		for strings.HasPrefix(rest, key) {
			_, rest = lineOf(toleranceTable, rest)
		}
		active, grass, _ := strings.Cut(key[:len(key)-1], "\t")
		all = append(all, block{active, grass, text[:len(text)-len(rest)]})
		if i := len(all) - 1; i == 0 || all[i-1].active != active {
			if _, twice := at[active]; twice {
				broken(toleranceTable, active+" stands in two places")
			}
			at[active] = span{i, i}
		}
		at[active] = span{at[active].from, len(all)}
		text = rest
	}
	return all, at
}

// keyOf is the beginning of a row: its active, its grass, and the tabs behind them.
func keyOf(text string) string {
	first := strings.IndexByte(text, '\t') + 1
	second := strings.IndexByte(text[first:], '\t') + 1
	if first == 0 || second == 0 {
		broken(toleranceTable, "a row has no grass")
	}
	return text[:first+second]
}

// between is what stands between the actives of a mixture in the table.
const between = " + "

func mixturesOf(all []block) []mixture {
	var out []mixture
	for i, b := range all {
		if (i == 0 || all[i-1].active != b.active) && strings.Contains(b.active, between) {
			out = append(out, mixture{b.active, strings.Split(b.active, between)})
		}
	}
	return out
}

// blocksOf are the rows of an active, or of a mixture under its name in the table, grass by grass.
func blocksOf(active string) []block {
	at, ok := blocksAt[active]
	if !ok {
		if a, known := FindActive(active); known {
			at = blocksAt[a.Name]
		}
	}
	return blocks[at.from:at.to]
}

// mostRows is the number of rows of one active on one grass up to which a verdict needs no room of its own.
const mostRows = 16

// rowsOn reads the rows of an active on a grass.
func rowsOn(of []block, grass string) []Row {
	for _, b := range of {
		if b.grass == grass {
			return appendRows(make([]Row, 0, strings.Count(b.rows, "\n")), b.rows)
		}
	}
	return nil
}

func appendRows(into []Row, text string) []Row {
	var cells [toleranceColumns]string
	for text != "" {
		text = row(toleranceTable, text, cells[:])
		into = append(into, readRow(&cells))
	}
	return into
}

func readRow(c *[toleranceColumns]string) Row {
	return Row{
		Active: c[0], Grass: c[1], Rating: readRating(c[2]), Basis: c[4], Contradicted: c[15], Words: c[16], Source: c[17],
		When: Conditions{
			Stage: c[3], MostRate: maybeRate(toleranceTable, c[5]), MostIsLimit: c[6] == "limit",
			LeastRate: maybeRate(toleranceTable, c[7]), TempMax: maybeNumber(toleranceTable, c[8]),
			TempMin: maybeNumber(toleranceTable, c[9]), Months: readMonths(c[10]), Cultivar: c[11],
			NotIn: split(c[12], ","), Form: c[13], Needs: split(c[14], "|"),
		},
	}
}

// RatedActives lists the actives, and the mixtures under their names, that the reference has rows of, in order of their
// names.
func RatedActives() []string {
	out := make([]string, 0, len(blocksAt))
	for i, b := range blocks {
		if i == 0 || blocks[i-1].active != b.active {
			out = append(out, b.active)
		}
	}
	slices.Sort(out)
	return out
}

// Tolerances lists all rows of the reference, in the order of the table. It reads all of them each time.
func Tolerances() []Row {
	var out []Row
	for _, b := range blocks {
		out = appendRows(out, b.rows)
	}
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
