package label

import (
	_ "embed"
	"encoding/csv"
	"sort"
	"strings"
)

// Grass is a turf species as lawns and label entries name it.
type Grass struct {
	Name       string // lower snake case, the name in the book
	CommonName string
	Botanical  string
	Season     string // "warm" or "cool"
	Source     string
}

// AllTurf is what a label entry lists when the label allows every turfgrass.
const AllTurf = "all_turf"

//go:embed grasses.csv
var grassCSV string

var grasses = readGrasses(grassCSV)

func readGrasses(text string) []Grass {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("core/label/grasses.csv: " + err.Error()) // embedded: a broken table is a broken build, held by a test
	}
	var out []Grass
	for _, r := range rows[1:] {
		out = append(out, Grass{r[0], r[1], r[2], r[3], r[4]})
	}
	return out
}

// Grasses lists all grasses in order of their names.
func Grasses() []Grass { return append([]Grass(nil), grasses...) }

// FindGrass looks a grass up by its name.
func FindGrass(name string) (Grass, bool) {
	for _, g := range grasses {
		if g.Name == name {
			return g, true
		}
	}
	return Grass{}, false
}

// GrassWords is how a grass is written on the screen; an unknown one is written as it stands.
func GrassWords(name string) string {
	if name == AllTurf {
		return "all turf"
	}
	if g, ok := FindGrass(name); ok {
		return g.CommonName
	}
	return name
}

// NearestGrasses lists up to three known names, the most alike first.
func NearestGrasses(name string) []string {
	type scored struct {
		name string
		d    int
	}
	var all []scored
	want := strings.ToLower(strings.ReplaceAll(strings.TrimSpace(name), " ", "_"))
	for _, g := range grasses {
		d := distance(want, g.Name)
		for _, part := range strings.Split(g.Name, "_") {
			d = min(d, distance(want, part)+1)
		}
		all = append(all, scored{g.Name, d})
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].d < all[j].d })
	var out []string
	for _, s := range all[:3] {
		out = append(out, s.name)
	}
	return out
}

// distance is the edit distance between two words (Levenshtein 1966).
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	row := make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(x); i++ {
		diag := row[0]
		row[0] = i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			diag, row[j] = row[j], min(row[j]+1, row[j-1]+1, diag+cost)
		}
	}
	return row[len(y)]
}
