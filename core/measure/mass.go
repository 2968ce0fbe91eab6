package measure

// Mass is an amount of dry product in nanograms, up to 9.2 tonnes.
type Mass int64

// The avoirdupois pound is exactly 0.45359237 kg (NIST SP 811 (2008), Appendix B.8).
const (
	Nanogram  Mass = 1
	Milligram Mass = 1_000_000
	Gram      Mass = 1_000_000_000
	Kilogram  Mass = 1_000_000_000_000
	Ounce     Mass = 28_349_523_125
	Pound     Mass = 453_592_370_000
)

// Pounds makes a mass of pounds, rounded once, half to even. It stops at the ends
// of int64; NaN gives 0. The other makers of this file do the same.
func Pounds(f float64) Mass { return Mass(timesFloat(f, int64(Pound))) }

// Ounces makes a mass of avoirdupois ounces (1/16 lb).
func Ounces(f float64) Mass { return Mass(timesFloat(f, int64(Ounce))) }

// Grams makes a mass of grams.
func Grams(f float64) Mass { return Mass(timesFloat(f, int64(Gram))) }

// Kilograms makes a mass of kilograms.
func Kilograms(f float64) Mass { return Mass(timesFloat(f, int64(Kilogram))) }

// Pounds gives m in pounds.
func (m Mass) Pounds() float64 { return float64(m) / float64(Pound) }

// Ounces gives m in avoirdupois ounces.
func (m Mass) Ounces() float64 { return float64(m) / float64(Ounce) }

// Grams gives m in grams.
func (m Mass) Grams() float64 { return float64(m) / float64(Gram) }

// Kilograms gives m in kilograms.
func (m Mass) Kilograms() float64 { return float64(m) / float64(Kilogram) }
