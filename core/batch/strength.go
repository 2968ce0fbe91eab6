package batch

import "example.com/tintline/core/measure"

// gramPerLitre is 1 g/L in ng/nL, and so is 1 mg/mL.
const gramPerLitre = float64(measure.Gram) / float64(measure.Litre)

// PerCentInVolume is what a share by weight in volume comes to: 1 per cent is 10 g in a litre, as it is told where a
// litre of spray counts as a kilogram.
func PerCentInVolume(share float64) measure.Concentration {
	return measure.Concentration(share * 1000 * gramPerLitre)
}

// PerCentByWeight is what a share by weight comes to in a liquid of which a volume weighs so much.
func PerCentByWeight(share float64, density measure.Concentration) measure.Concentration {
	return measure.Concentration(share * float64(density))
}

// PartsPerMillion is what of a product gives parts per million, milligrams in a litre of spray, of something of which it
// holds a share by weight.
func PartsPerMillion(ppm, share float64) measure.Concentration {
	return measure.Concentration(ppm / 1000 * gramPerLitre / share)
}
