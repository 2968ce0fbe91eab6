package batch

import "example.com/tintline/core/measure"

// Content is how much of an active, or of a plant nutrient, a product holds: nanograms in a nanolitre of a liquid
// product, or in a nanogram of a dry one.
type Content struct {
	PerUnit float64
	Form    measure.Kind
}

// ContentByVolume is that of a liquid whose label gives a weight per volume.
func ContentByVolume(c measure.Concentration) Content {
	return Content{PerUnit: float64(c), Form: measure.Liquid}
}

// ContentByWeight is that of a dry product whose label gives a share by weight.
func ContentByWeight(share float64) Content { return Content{PerUnit: share, Form: measure.Dry} }

// ContentOfLiquid is that of a liquid whose label gives a share by weight, with the weight of a volume of it.
func ContentOfLiquid(share float64, density measure.Concentration) Content {
	return Content{PerUnit: float64(share * float64(density)), Form: measure.Liquid}
}

// Product is what of the product holds an amount of the active in nanograms: nanolitres or nanograms. So it is for what
// lies on an area, or is in a volume of mix.
func (c Content) Product(active float64) float64 { return active / c.PerUnit }

// Active is what of the active an amount of the product holds, in nanograms.
func (c Content) Active(product float64) float64 { return float64(product * c.PerUnit) }

// Finished is the active, in nanograms, in a volume of spray (nL) that is to hold a share of it by weight, with the
// weight of a volume of the spray.
func Finished(share float64, spray float64, density measure.Concentration) float64 {
	return float64(float64(share*spray) * float64(density))
}
