package measure

// Pressure is a pressure in pascal.
type Pressure float64

// A pound-force is 4.4482216152605 N and acts on (25.4 mm)²: 6,894.757 Pa
// (NIST SP 811 (2008), Appendix B.8). Written as a quotient of whole numbers,
// so that it is rounded once.
const pascalPerPSI = 44_482_216_152_605.0 / 6_451_600_000.0

// PSI makes a pressure of pounds-force a square inch.
func PSI(f float64) Pressure { return Pressure(f * pascalPerPSI) }

// Kilopascals makes a pressure of kilopascals.
func Kilopascals(f float64) Pressure { return Pressure(f * 1000) }

// PSI gives p in pounds-force a square inch.
func (p Pressure) PSI() float64 { return float64(p) / pascalPerPSI }

// Kilopascals gives p in kilopascals.
func (p Pressure) Kilopascals() float64 { return float64(p) / 1000 }
