package label

import (
	_ "embed"
	"slices"
	"strings"
)

// Source is where a row comes from.
type Source struct {
	ID          string
	Institution string // or authors
	Title       string
	URL         string
	Weak        bool   // a column, a garden site
	Seen        string // how much of it stands behind the rows: abstract, opening part, part
}

//go:embed sources.tsv
var sourcesTSV string

// sources are in order of their ids.
var sources = readSources(sourcesTSV)

func readSources(text string) []Source {
	out := make([]Source, 0, rowsIn(text))
	lines("sources.tsv", text, func(c []string) { out = append(out, Source{c[0], c[1], c[2], c[3], c[4] == Yes, c[5]}) })
	return out
}

// Sources lists all sources, in order of their ids.
func Sources() []Source { return append([]Source(nil), sources...) }

// FindSource finds a source by its id; that of a recalled row says in words that nobody read one.
func FindSource(id string) (Source, bool) {
	i, ok := slices.BinarySearchFunc(sources, id, func(s Source, id string) int { return strings.Compare(s.ID, id) })
	if !ok {
		return Source{}, false
	}
	return sources[i], true
}
