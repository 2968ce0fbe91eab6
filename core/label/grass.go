package label

import (
	_ "embed"
	"encoding/csv"
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
	var names []string
	for _, g := range grasses {
		names = append(names, g.Name)
	}
	var out []string
	for _, s := range alike(name, names)[:3] {
		out = append(out, s.name)
	}
	return out
}

// ReadGrass finds a grass by what is typed: its name or its common name, in any case, with spaces or
// underscores. AllTurf is read too and answers with its name alone.
func ReadGrass(typed string) (name string, ok bool) {
	want := plainWord(typed)
	if want == AllTurf {
		return AllTurf, true
	}
	for _, g := range grasses {
		if want == g.Name || want == plainWord(g.CommonName) {
			return g.Name, true
		}
	}
	return "", false
}
