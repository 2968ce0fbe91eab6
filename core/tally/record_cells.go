package tally

import (
	"strconv"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// cells are the fields as they are printed, by key.
type cells map[string]string

func (c cells) Text(key string, v *string) { c[key] = *v }

func (c cells) Number(key string, v *core.Maybe[float64]) {
	if c[key] = ""; v.Known {
		c[key] = figure(v.V)
	}
}

func (c cells) Area(key string, v *measure.Area) {
	if c[key] = ""; *v != 0 {
		c[key] = figure(v.SquareFeet())
	}
}

func (c cells) Volume(key string, v *measure.Volume) {
	if c[key] = ""; *v != 0 {
		c[key] = figure(v.Gallons())
	}
}

func (c cells) Amount(key string, v *measure.Amount) {
	if c[key] = ""; v.N != 0 {
		c[key] = v.Text()
	}
}

// figure prints a number to six significant digits, without separators: what a spreadsheet and a person both read.
func figure(f float64) string {
	r, err := strconv.ParseFloat(strconv.FormatFloat(f, 'e', 5, 64), 64)
	if err != nil {
		return ""
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}

// Cells are all fields of the record as text, by the keys of core.RecordFields; empty is not known.
func (r *Record) Cells() map[string]string {
	c := cells{}
	r.Walk(c)
	c["grass"] = label.GrassWords(r.Grass)
	if rate := r.Rate(); rate.Known {
		c["rate"] = rate.V.Text()
	}
	if d := r.Dilution(); d.Known {
		c["dilution"] = d.V.Text() + " in a gallon"
	}
	return c
}
