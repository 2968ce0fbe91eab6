package tally

import (
	"strconv"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// fill puts a value into the field of its key; what is no text and no number stays.
type fill struct {
	key, value string
	done       bool
}

func (f *fill) Text(key string, v *string) {
	if key == f.key {
		*v, f.done = f.value, true
	}
}

func (f *fill) Number(key string, v *core.Maybe[float64]) {
	if key != f.key {
		return
	}
	if n, err := strconv.ParseFloat(f.value, 64); err == nil {
		*v, f.done = core.Known(n), true
	}
}

func (*fill) Area(string, *measure.Area)     {}
func (*fill) Volume(string, *measure.Volume) {}
func (*fill) Amount(string, *measure.Amount) {}

// Fill puts a value that was read by core.RecordField.Read into a field, and tells whether the record has it.
func (r *Record) Fill(key, value string) bool {
	f := fill{key: key, value: value}
	r.Walk(&f)
	return f.done
}

// fillIn fills what was filled in by hand: the more narrowly told rules, of the same the later.
func (r *Record) fillIn(said []core.Recorded) {
	for narrow := 0; narrow <= 3; narrow++ {
		for i := range said {
			if f := &said[i]; f.Narrow() == narrow && f.Fits(r.Lawn, r.Zone, r.Product) {
				r.Fill(f.Field, f.Value)
			}
		}
	}
}
