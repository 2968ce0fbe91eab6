package measure

// Concentration is product in a mix: nanolitres (Liquid) or nanograms (Dry) of
// product in each nanolitre of the mix.
type Concentration float64

// ConcentrationOf is the strength of a mix of volume v that holds a; 0 if v is 0.
func ConcentrationOf(a Amount, v Volume) Concentration {
	if v == 0 {
		return 0
	}
	return Concentration(float64(a.N) / float64(v))
}

// In gives the amount of product of the given kind in v, rounded once, half to
// even. It stops at the ends of int64; NaN gives 0.
func (c Concentration) In(v Volume, k Kind) Amount {
	return Amount{N: timesFloat(float64(c), int64(v)), Kind: k}
}

// PerGallon gives the amount of product of the given kind in a US gallon of mix,
// in fl oz (Liquid) or oz (Dry).
func (c Concentration) PerGallon(k Kind) float64 {
	if k == Dry {
		return float64(c) * float64(USGallon) / float64(Ounce)
	}
	return float64(c) * 128
}
