package label

import (
	_ "embed"
	"strings"
)

// ActiveInfo is an active as the reference knows it.
type ActiveInfo struct {
	Name  string // as in the reference, "metsulfuron-methyl"
	Class string // herbicide_post, insecticide, ...
	Group string // open code of the mode of action: "HRAC 2", "IRAC 4A", "FRAC 11"; "none"
	// Trace is the class by which residue of it is judged, 'A' to 'F':
	// A herbicides of HRAC 2 and 27, and indaziflam until it is shown otherwise; B those that spare no turf; C other
	// herbicides, and quinclorac; D other herbicides of HRAC 4; E any of HRAC 4 beside food plants, so that it is no
	// active's own; F insecticides, fungicides, growth regulators, plant food and what is added to a mix. A proposal drawn
	// from published injury at small doses, not a standard.
	Trace   byte
	Aliases []string // other spellings
	Source  string   // of the group
}

// The classes of actives.
const (
	ClassPre          = "herbicide_pre"
	ClassPost         = "herbicide_post"
	ClassPrePost      = "herbicide_pre_post"
	ClassNonselective = "herbicide_nonselective"
	ClassInsecticide  = "insecticide"
	ClassFungicide    = "fungicide"
	ClassFertiliser   = "fertiliser"
	ClassRegulator    = "plant_growth_regulator"
	ClassAdjuvant     = "adjuvant"
	ClassDye          = "dye"
)

// ClassWords is how a class of actives is written on the screen.
func ClassWords(class string) string {
	switch class {
	case ClassPre:
		return "herbicide before emergence"
	case ClassPost:
		return "herbicide after emergence"
	case ClassPrePost:
		return "herbicide before and after emergence"
	case ClassNonselective:
		return "herbicide that spares no turf"
	case ClassRegulator:
		return "growth regulator"
	}
	return class
}

// Herbicide tells whether the active is meant to kill plants.
func (a ActiveInfo) Herbicide() bool { return strings.HasPrefix(a.Class, "herbicide") }

// harmless tells whether the active is of a class that the reference rates for burn at most: plant food and what is
// added to a mix.
func (a ActiveInfo) harmless() bool {
	return a.Class == ClassFertiliser || a.Class == ClassAdjuvant || a.Class == ClassDye
}

//go:embed actives.tsv
var activesTSV string

var actives = readActives(activesTSV)

// activeAt says where an active stands, by the bare letters of its name and of its other spellings.
var activeAt = indexActives(actives)

func readActives(text string) []ActiveInfo {
	out := make([]ActiveInfo, 0, rowsIn(text))
	lines("actives.tsv", text, func(c []string) {
		if len(c[3]) != 1 {
			broken("actives.tsv", c[0])
		}
		out = append(out, ActiveInfo{Name: c[0], Class: c[1], Group: c[2], Trace: c[3][0], Aliases: split(c[4], "|"), Source: c[5]})
	})
	return out
}

func indexActives(all []ActiveInfo) map[string]int {
	out := make(map[string]int, 2*len(all))
	for i, a := range all {
		out[bare(a.Name)] = i
		for _, alias := range a.Aliases {
			out[bare(alias)] = i
		}
	}
	return out
}

// bare leaves the letters and digits of a name, in lower case, so that spellings which differ in hyphens, spaces and case
// are one.
func bare(s string) string {
	out := make([]byte, 0, len(s))
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c >= 'A' && c <= 'Z':
			out = append(out, c+'a'-'A')
		case c >= 'a' && c <= 'z', c >= '0' && c <= '9', c >= 0x80:
			out = append(out, c)
		}
	}
	return string(out)
}

// Actives lists the actives that the reference knows, in order of their names.
func Actives() []ActiveInfo { return append([]ActiveInfo(nil), actives...) }

// FindActive finds an active by its name or another spelling of it, in any case, with or without hyphens.
func FindActive(name string) (ActiveInfo, bool) {
	i, ok := activeAt[bare(name)]
	if !ok {
		return ActiveInfo{}, false
	}
	return actives[i], true
}

// ReadActive finds the name of an active by what is typed.
func ReadActive(typed string) (name string, ok bool) {
	a, ok := FindActive(typed)
	return a.Name, ok
}

// NearestActives lists up to three known names, the most alike first.
func NearestActives(name string) []string {
	spelled := make([]string, 0, len(activeAt))
	owner := make([]string, 0, len(activeAt))
	for _, a := range actives {
		for _, s := range append([]string{a.Name}, a.Aliases...) {
			spelled, owner = append(spelled, s), append(owner, a.Name)
		}
	}
	return nearestOwners(name, spelled, owner)
}
