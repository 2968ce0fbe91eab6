package hydraulics

import _ "embed"

//go:embed fittings.csv
var fittingsCSV string

// Fitting is what costs pressure beside the hose: K times rho u^2/2.
type Fitting struct {
	Name, Words, Source string
	K                   float64
}

var fittings = func() []Fitting {
	var out []Fitting
	for i, row := range table("fittings.csv", fittingsCSV) {
		out = append(out, Fitting{Name: row[0], K: figure("fittings.csv", i, row[1]), Words: row[2], Source: row[3]})
	}
	return out
}()

// Fittings gives the table.
func Fittings() []Fitting { return append([]Fitting(nil), fittings...) }

// LossOf is the coefficient of a fitting by name; ok is false for a name that the table lacks.
func LossOf(name string) (k float64, ok bool) {
	for _, f := range fittings {
		if f.Name == name {
			return f.K, true
		}
	}
	return 0, false
}

// OpenEnds is the sum for a hose that is fed from a wide place and ends in the open: entrance and exit.
func OpenEnds() float64 {
	in, _ := LossOf("entrance")
	out, _ := LossOf("exit")
	return in + out
}
