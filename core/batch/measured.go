package batch

import (
	"math"
	"strconv"

	"example.com/tintline/core/measure"
)

// Measured is an amount as a person measures it out: whole packages first, then large units, then marks.
type Measured struct {
	Exact   measure.Amount
	Rounded measure.Amount // whole packages and portions together, exactly
	Package measure.Amount // 0: its size is not known
	Whole   int64          // packages that go in whole
	Parts   []Portion      // what is measured out beside them
	Rest    measure.Amount // what the portions are together
	// ErrorPct is by how much the rounding misses what was asked for, in per cent; below 0 too little goes in.
	ErrorPct float64
	// Below: it is less than the smallest mark, which is Smallest.
	Below    bool
	Smallest Portion
	// Finer is what to do where the marks are too coarse; unknown where they do, or where nothing finer helps.
	Finer measure.Maybe[Finer]
	Words string
	Steps []Step
}

// Put is what goes in when it is done as said: by the finer way where there is one.
func (m Measured) Put() measure.Amount {
	if m.Finer.Known {
		return m.Finer.V.Amount
	}
	return m.Rounded
}

// PutErrorPct is the error of Put.
func (m Measured) PutErrorPct() float64 {
	if m.Finer.Known {
		return m.Finer.V.ErrorPct
	}
	return m.ErrorPct
}

// Finer is a way to measure what the marks are too coarse for.
type Finer struct {
	Grams    []Portion // weighed in grams; empty: by a pre-mix
	Product  Portion   // of the product, into so much pre-mix
	Of, Take Portion   // the pre-mix in all, and what of it goes into the tank
	Amount   measure.Amount
	ErrorPct float64
	Says     string
}

// Measure gives an amount as it is measured out. pack is what a package holds, 0 where that is not known; what fills whole packages goes in
// as such. It refuses a negative amount and a package in the wrong kind of unit.
func (r Ruler) Measure(product string, a, pack measure.Amount) (Measured, error) {
	s, ok := r.scale(a.Kind)
	switch {
	case !ok:
		return Measured{}, measure.Troublef("Set a mark from 0.01 on.", "The marks of the cup or the scale are %s apart.", bare(r.CupMark))
	case a.N < 0 || a.N > largest:
		return Measured{}, measure.Troublef("Give 0 or more, and no more than a tank could take.", "The amount of %s is %s.", product, a.Text())
	case pack.N < 0:
		return Measured{}, measure.Troublef("Enter how much a package holds.", "A package of %s holds %s.", product, pack.Text())
	case pack.N > 0 && pack.Kind != a.Kind:
		return Measured{}, wrongKind(product, a.Kind, pack.Text())
	}
	out := Measured{Exact: a, Package: pack, Smallest: Portion{s.hundredths, s.small}}
	rest := a.N
	if pack.N > 0 {
		out.Whole = rest / pack.N
		rest -= out.Whole * pack.N
	}
	var n int64
	if out.Parts, n = s.portions(rest); pack.N > 0 && n >= pack.N {
		out.Whole, out.Parts, n = out.Whole+1, nil, 0
	}
	out.Rest = measure.Amount{N: n, Kind: a.Kind}
	out.Rounded = measure.Amount{N: out.Whole*pack.N + n, Kind: a.Kind}
	out.ErrorPct = errorPct(a.N, out.Rounded.N)
	out.Below = a.N > 0 && a.N < s.at(s.hundredths)
	if out.Below || math.Abs(out.ErrorPct) > r.MostError {
		out.Finer = r.finer(a)
	}
	out.Words = out.words()
	out.Steps = out.work(product)
	return out, nil
}

// errorPct is by how much what was measured misses what was asked for.
func errorPct(asked, got int64) float64 {
	if asked == 0 {
		return 0
	}
	return 100 * float64(got-asked) / float64(asked)
}

// words is what is measured out: "1 whole jug of 2.5 gal and 1 qt 4 fl oz".
func (m Measured) words() string {
	text := portionsText(m.Parts)
	if m.Whole > 0 {
		whole := Packages(m.Whole, m.Package, "whole ")
		if text == "" {
			return whole
		}
		return whole + " and " + text
	}
	switch {
	case m.Exact.N == 0:
		return "nothing"
	case m.Below:
		return "under " + m.Smallest.Text() + ", the smallest mark"
	}
	return text
}

// Packages names so many packages by what they hold: "2 jugs of 2.5 gal". which stands before the noun, with its space.
func Packages(n int64, pack measure.Amount, which string) string {
	noun := "jug"
	if pack.Kind == measure.Dry {
		noun = "bag"
	}
	if n != 1 {
		noun += "s"
	}
	return strconv.FormatInt(n, 10) + " " + which + noun + " of " + PackageSize(pack)
}

// PackageSize prints what a package holds as it stands on it: "2.5 gal", "50 lb", "64 fl oz".
func PackageSize(pack measure.Amount) string {
	small, large, smallName, largeName := measure.LiquidAmount(measure.USPint), measure.LiquidAmount(measure.USGallon), flOz, gal
	per := 16.0
	if pack.Kind == measure.Dry {
		small, large, smallName, largeName, per = measure.DryAmount(measure.Ounce), measure.DryAmount(measure.Pound), oz, lb, 1
	}
	if pack.N >= large.N {
		return plainFigure(float64(pack.N)/float64(large.N)) + " " + largeName
	}
	return plainFigure(float64(pack.N)*per/float64(small.N)) + " " + smallName
}

// plainFigure prints to a hundredth, without noughts at the end.
func plainFigure(f float64) string {
	return strconv.FormatFloat(math.Round(100*f)/100, 'f', -1, 64)
}

// work is the working.
func (m Measured) work(product string) []Step {
	var s steps
	if m.Whole > 0 {
		s.say(product, ": ", m.Exact.Text(), " = ", Packages(m.Whole, m.Package, ""), " + ",
			measure.Amount{N: max(0, m.Exact.N-m.Whole*m.Package.N), Kind: m.Exact.Kind}.Text())
	}
	if m.Exact.N > 0 {
		s.say(product, ": ", m.Exact.Text(), " to the nearest mark of ", m.Smallest.Text(), " = ", m.Words, ", ", ErrorText(m.ErrorPct))
	}
	if m.Finer.Known {
		s.say(product, ": ", m.Finer.V.Says)
	}
	return s
}

// ErrorText says by how much measuring out misses: "2.3 % less than asked".
func ErrorText(pct float64) string {
	size := math.Abs(pct)
	text := strconv.FormatFloat(size, 'f', 1, 64)
	if size >= 100 {
		text = strconv.FormatFloat(size, 'f', 0, 64)
	}
	switch {
	case size < 0.05:
		return "within 0.1 %"
	case pct < 0:
		return text + " % less than asked"
	}
	return text + " % more than asked"
}
