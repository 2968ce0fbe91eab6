package batch

import (
	_ "embed"
	"math"

	"example.com/tintline/core/measure"
)

//go:embed marks.csv
var marksCSV string

var marks = readLimits(marksCSV)

// The names of marks.csv.
const (
	CupMarkFlOz     = "cup_mark_fl_oz"
	CupMarkML       = "cup_mark_ml"
	ScaleMarkOz     = "scale_mark_oz"
	ScaleMarkG      = "scale_mark_g"
	PremixFlOz      = "premix_fl_oz"
	PremixML        = "premix_ml"
	MeasureErrorPct = "measure_error_pct"
)

// Mark is a figure of measuring out by its name: what is usual where the operator set nothing.
func Mark(name string) Limit { return marks[name] }

// Ruler is what a person measures out with. A mark is in fl oz or mL for the cup, in oz or g for the scale; it counts to a hundredth.
type Ruler struct {
	Metric    bool
	CupMark   float64
	ScaleMark float64
	GramMark  float64 // of a scale in grams, for what is too little for ounces
	Premix    float64 // fl oz or mL: the cup in which little is thinned before it goes in
	MostError float64 // per cent of an amount by which its rounding may miss before a finer way is given
}

// UsualRuler has the marks that are usual.
func UsualRuler(metric bool) Ruler {
	r := Ruler{
		Metric: metric, CupMark: marks[CupMarkFlOz].Value, ScaleMark: marks[ScaleMarkOz].Value,
		GramMark: marks[ScaleMarkG].Value, Premix: marks[PremixFlOz].Value, MostError: marks[MeasureErrorPct].Value,
	}
	if metric {
		r.CupMark, r.ScaleMark, r.Premix = marks[CupMarkML].Value, marks[ScaleMarkG].Value, marks[PremixML].Value
	}
	return r
}

// scale is how amounts of one kind are measured: large units, each a whole number of base units, then the unit that has the marks.
type scale struct {
	large      []largeUnit
	small      string
	num, den   int64 // base units in one of the small unit
	hundredths int64 // of the small unit, from mark to mark
}

type largeUnit struct {
	name string
	size int64
}

// unit is the name of what comes in portions.
const (
	gal  = "gal"
	qt   = "qt"
	flOz = "fl oz"
	lb   = "lb"
	oz   = "oz"
	ltr  = "L"
	ml   = "mL"
	kg   = "kg"
	gram = "g"
)

// scale gives the tool for a kind; ok is false where its mark is none.
func (r Ruler) scale(k measure.Kind) (scale, bool) {
	var s scale
	mark := r.CupMark
	switch {
	case k == measure.Dry && r.Metric:
		s, mark = scale{[]largeUnit{{kg, int64(measure.Kilogram)}}, gram, int64(measure.Gram), 1, 0}, r.ScaleMark
	case k == measure.Dry:
		s, mark = scale{[]largeUnit{{lb, int64(measure.Pound)}}, oz, int64(measure.Ounce), 1, 0}, r.ScaleMark
	case r.Metric:
		s = scale{[]largeUnit{{ltr, int64(measure.Litre)}}, ml, int64(measure.Millilitre), 1, 0}
	default:
		s = scale{[]largeUnit{{gal, int64(measure.USGallon)}, {qt, int64(measure.USQuart)}}, flOz, int64(measure.USPint), 16, 0}
	}
	return s.with(mark)
}

// grams is the scale in grams.
func (r Ruler) grams() (scale, bool) {
	return scale{small: gram, num: int64(measure.Gram), den: 1}.with(r.GramMark)
}

// cup is the cup alone, without gallons and quarts.
func (r Ruler) cup() (scale, bool) {
	s, ok := r.scale(measure.Liquid)
	s.large = nil
	return s, ok
}

func (s scale) with(mark float64) (scale, bool) {
	if !(mark >= 0.01 && mark <= 1e6) {
		return s, false
	}
	s.hundredths = int64(math.Round(100 * mark))
	return s, true
}

// at is the amount at so many hundredths of the small unit, to the nearest base unit.
func (s scale) at(hundredths int64) int64 { return measure.MulDivRound(hundredths, s.num, 100*s.den) }

// nearest is the mark nearest to an amount, in hundredths of the small unit; half way goes to the even one.
func (s scale) nearest(n int64) int64 {
	return s.hundredths * measure.MulDivRound(n, 100*s.den, s.num*s.hundredths)
}
