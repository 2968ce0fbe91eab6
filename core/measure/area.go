package measure

// Area is an area in square millimetres, up to 9.2 million square kilometres.
type Area int64

// A square foot is 92,903.04 mm² and an acre 43,560 of them (NIST SP 811 (2008),
// Appendix B.8; NIST Handbook 44, Appendix C): neither is a whole number, so
// multiples come from SquareFeet and Acres, which round once.
const (
	SquareMillimetre   Area = 1
	SquareMetre        Area = 1_000_000
	Hectare            Area = 10_000_000_000
	ThousandSquareFeet Area = 92_903_040
)

const (
	// hundredSquareFeet and tenAcres are the smallest whole multiples.
	hundredSquareFeet = 9_290_304
	tenAcres          = 40_468_564_224
)

// SquareFeet makes an area of square feet, rounded once, half to even. It stops
// at the ends of int64; NaN gives 0. The other makers of this file do the same.
func SquareFeet(f float64) Area { return Area(fromFloat(f, hundredSquareFeet, 100)) }

// Acres makes an area of acres (43,560 sq ft).
func Acres(f float64) Area { return Area(fromFloat(f, tenAcres, 10)) }

// SquareMetres makes an area of square metres.
func SquareMetres(f float64) Area { return Area(timesFloat(f, int64(SquareMetre))) }

// Hectares makes an area of hectares.
func Hectares(f float64) Area { return Area(timesFloat(f, int64(Hectare))) }

// SquareFeet gives a in square feet.
func (a Area) SquareFeet() float64 { return float64(a) * 100 / hundredSquareFeet }

// Acres gives a in acres.
func (a Area) Acres() float64 { return float64(a) * 10 / tenAcres }

// SquareMetres gives a in square metres.
func (a Area) SquareMetres() float64 { return float64(a) / float64(SquareMetre) }

// Hectares gives a in hectares.
func (a Area) Hectares() float64 { return float64(a) / float64(Hectare) }
