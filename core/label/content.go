package label

import "example.com/tintline/core/measure"

// poundPerGallon is 1 lb/gal in ng/nL.
const poundPerGallon = float64(measure.Pound) / float64(measure.USGallon)

// PerProduct is how much of the active, in nanograms, is in one nanolitre of a liquid product or one nanogram of a dry
// one; unknown where the label entry does not say, or gives a share by weight of a liquid whose density is not entered.
func (e Entry) PerProduct(a Active) measure.Maybe[float64] {
	switch {
	case e.Form == measure.Dry && a.PercentByWeight > 0:
		return measure.Known(a.PercentByWeight / 100)
	case e.Form == measure.Liquid && a.PoundsPerGallon > 0:
		return measure.Known(a.PoundsPerGallon * poundPerGallon)
	case e.Form == measure.Liquid && a.PercentByWeight > 0 && e.Density.Known:
		return measure.Known(a.PercentByWeight / 100 * e.Density.V * poundPerGallon)
	}
	return measure.Maybe[float64]{}
}

// ActiveRate is the rate of an active, by weight, that a rate of the product lays; unknown where one of the two is not
// known, or the rate is not measured as the product is.
func (e Entry) ActiveRate(a Active, product measure.Maybe[measure.Rate]) measure.Maybe[measure.Rate] {
	content := e.PerProduct(a)
	if !product.Known || !content.Known || product.V.Kind != e.Form {
		return measure.Maybe[measure.Rate]{}
	}
	return measure.Known(measure.Rate{V: product.V.V * content.V, Kind: measure.Dry})
}
