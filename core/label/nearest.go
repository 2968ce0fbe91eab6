package label

import (
	"slices"
	"sort"
	"strings"
)

// Nearest is the known name that is most like a word, whatever its case; empty where none shares half
// of it.
func Nearest(word string, known []string) string {
	all := alike(word, known)
	if len(all) == 0 || strings.TrimSpace(word) == "" || all[0].d > max(1, len([]rune(word))/2) {
		return ""
	}
	return all[0].name
}

// longestAlike bounds the work on a word that somebody pasted.
const longestAlike = 100

type scored struct {
	name string
	d    int
}

// alike puts names in order by how little they differ from a word, whole or in one of their parts.
func alike(word string, names []string) []scored {
	want := plainWord(word)
	if r := []rune(want); len(r) > longestAlike {
		want = string(r[:longestAlike])
	}
	var all []scored
	for _, name := range names {
		plain := plainWord(name)
		d := distance(want, plain)
		if begin := []rune(plain); len(begin) > len([]rune(want)) && want != "" { // typed short: zoysa, triclop
			d = min(d, distance(want, string(begin[:len([]rune(want))]))+1)
		}
		for _, part := range strings.Split(plain, "_") {
			d = min(d, distance(want, part)+1)
		}
		all = append(all, scored{name, d})
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].d < all[j].d })
	return all
}

// nearestOwners lists up to three owners of the spellings that differ least from a word, each once.
func nearestOwners(word string, spelled, owner []string) []string {
	of := make(map[string]string, len(spelled))
	for i, s := range spelled {
		of[s] = owner[i]
	}
	var out []string
	for _, s := range alike(word, spelled) {
		if !slices.Contains(out, of[s.name]) {
			out = append(out, of[s.name])
		}
		if len(out) == 3 {
			break
		}
	}
	return out
}

// plainWord is a name in lower case, its words joined by underscores, without full stops.
func plainWord(s string) string {
	s = strings.NewReplacer(".", " ", "_", " ", "-", " ").Replace(strings.ToLower(s))
	return strings.Join(strings.Fields(s), "_")
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
