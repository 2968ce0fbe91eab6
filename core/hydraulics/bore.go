package hydraulics

import (
	_ "embed"
	"math"

	"example.com/tintline/core/measure"
)

//go:embed bores.csv
var boresCSV string

// Bore is a row of bores.csv: between which diameters a hose that is sold under a nominal bore may lie.
type Bore struct {
	Inches              float64
	Low, High           float64 // mm, made without a mandrel: the widest
	SteadyLow, Steadier float64 // mm, made on a mandrel
	Prior               float64 // relative standard uncertainty of the volume until it is measured
	Source              string
}

var bores = func() []Bore {
	var out []Bore
	for i, row := range table("bores.csv", boresCSV) {
		n := func(col int) float64 { return figure("bores.csv", i, row[col]) }
		out = append(out, Bore{n(0), n(1), n(2), n(3), n(4), n(5), row[6]})
	}
	return out
}()

// Bores gives the table.
func Bores() []Bore { return append([]Bore(nil), bores...) }

// Rectangular is the relative standard uncertainty of the volume if every bore of the range is as likely: twice that of
// the bore, (high - low) / sqrt(12) (JCGM 100:2008, 4.3.7).
func (b Bore) Rectangular() float64 {
	return 2 * (b.High - b.Low) / math.Sqrt(12) / (b.Inches * 25.4)
}

// nearest is the row whose nominal bore is nearest by ratio. Between and beyond the sizes of the table a hose is as
// uncertain, in shares, as the nearest one: the standard's range grows slower than the bore, so below the smallest size
// this is too narrow and above the largest too wide.
func nearest(bore float64) Bore {
	best := bores[0]
	for _, b := range bores[1:] {
		if math.Abs(math.Log(bore/(b.Inches*0.0254))) < math.Abs(math.Log(bore/(best.Inches*0.0254))) {
			best = b
		}
	}
	return best
}

// BoreBand is the relative standard uncertainty of a hose's volume that is known by its nominal bore alone.
func BoreBand(bore measure.Length) float64 { return nearest(bore.Metres()).Prior }

// Range is the same pipe with the narrowest and with the widest bore that a hose of this nominal bore may have.
func (p Pipe) Range() (narrow, wide Pipe) {
	b := nearest(p.Bore)
	nominal := b.Inches * 25.4
	return Pipe{p.Bore * b.Low / nominal, p.Length}, Pipe{p.Bore * b.High / nominal, p.Length}
}

// VolumeRange is the least and the most that a hose of this nominal bore and length may hold.
func VolumeRange(bore, length measure.Length) (low, high Gallons) {
	narrow, wide := PipeOf(bore, length).Range()
	return narrow.Volume(), wide.Volume()
}
