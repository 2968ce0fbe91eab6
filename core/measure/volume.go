package measure

// Volume is an amount of liquid in nanolitres, up to 9.2 million litres.
type Volume int64

// The US gallon is 231 cubic inches, exactly 3.785411784 L (NIST Handbook 44,
// Appendix C). The fluid ounce and the spoons are no whole number of nanolitres:
// their constants are the nearest one. Multiples come from FluidOunces and its
// kin, which round once.
const (
	Nanolitre    Volume = 1
	Millilitre   Volume = 1_000_000
	Litre        Volume = 1_000_000_000
	USGallon     Volume = 3_785_411_784
	USQuart      Volume = 946_352_946
	USPint       Volume = 473_176_473
	USFluidOunce Volume = 29_573_530 // 29,573,529.5625
	Tablespoon   Volume = 14_786_765 // 14,786,764.78125
	Teaspoon     Volume = 4_928_922  // 4,928,921.59375
)

// Gallons makes a volume of US gallons, rounded once, half to even. It stops at
// the ends of int64; NaN gives 0. The other makers of this file do the same.
func Gallons(f float64) Volume { return Volume(timesFloat(f, int64(USGallon))) }

// Quarts makes a volume of US quarts.
func Quarts(f float64) Volume { return Volume(timesFloat(f, int64(USQuart))) }

// Pints makes a volume of US liquid pints.
func Pints(f float64) Volume { return Volume(timesFloat(f, int64(USPint))) }

// FluidOunces makes a volume of US fluid ounces (1/128 gal).
func FluidOunces(f float64) Volume { return Volume(fromFloat(f, int64(USPint), 16)) }

// Tablespoons makes a volume of US tablespoons (1/2 fl oz).
func Tablespoons(f float64) Volume { return Volume(fromFloat(f, int64(USPint), 32)) }

// Teaspoons makes a volume of US teaspoons (1/6 fl oz).
func Teaspoons(f float64) Volume { return Volume(fromFloat(f, int64(USPint), 96)) }

// Litres makes a volume of litres.
func Litres(f float64) Volume { return Volume(timesFloat(f, int64(Litre))) }

// Millilitres makes a volume of millilitres.
func Millilitres(f float64) Volume { return Volume(timesFloat(f, int64(Millilitre))) }

// Gallons gives v in US gallons.
func (v Volume) Gallons() float64 { return float64(v) / float64(USGallon) }

// Quarts gives v in US quarts.
func (v Volume) Quarts() float64 { return float64(v) / float64(USQuart) }

// Pints gives v in US liquid pints.
func (v Volume) Pints() float64 { return float64(v) / float64(USPint) }

// FluidOunces gives v in US fluid ounces.
func (v Volume) FluidOunces() float64 { return float64(v) * 16 / float64(USPint) }

// Litres gives v in litres.
func (v Volume) Litres() float64 { return float64(v) / float64(Litre) }

// Millilitres gives v in millilitres.
func (v Volume) Millilitres() float64 { return float64(v) / float64(Millilitre) }
