package sheet

import (
	"bytes"
	"embed"
	"encoding/csv"
)

//go:embed templates/*.csv
var templates embed.FS

// Template is a file of a kind with a header row of all columns and a few invented rows, which a book takes
// that took the templates of the kinds before; empty for an unknown kind.
func Template(kind string) string {
	columns, _ := table(kind)
	if columns == nil {
		return ""
	}
	src, err := templates.ReadFile("templates/" + kind + ".csv")
	if err != nil {
		panic("core/sheet: no template of " + kind) // embedded: a missing file is a broken build, held by a test
	}
	s := &reading{columns: columns}
	s.parse(kind, src)
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	all := names(columns)
	_ = w.Write(all) // a buffer takes everything
	for _, r := range s.rows {
		cells := make([]string, len(all))
		for i, n := range all {
			cells[i] = r.cells[n]
		}
		_ = w.Write(cells)
	}
	w.Flush()
	return out.String()
}
