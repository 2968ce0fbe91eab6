package measure

// Length is a length in micrometres.
type Length int64

// The foot is exactly 0.3048 m (NIST SP 811 (2008), Appendix B.8).
const (
	Micrometre Length = 1
	Millimetre Length = 1_000
	Centimetre Length = 10_000
	Metre      Length = 1_000_000
	Inch       Length = 25_400
	Foot       Length = 304_800
	Yard       Length = 914_400
	Mile       Length = 1_609_344_000
)

// Feet makes a length of feet, rounded once, half to even. It stops at the ends
// of int64; NaN gives 0. The other makers of this file do the same.
func Feet(f float64) Length { return Length(timesFloat(f, int64(Foot))) }

// Inches makes a length of inches.
func Inches(f float64) Length { return Length(timesFloat(f, int64(Inch))) }

// Metres makes a length of metres.
func Metres(f float64) Length { return Length(timesFloat(f, int64(Metre))) }

// Feet gives l in feet.
func (l Length) Feet() float64 { return float64(l) / float64(Foot) }

// Inches gives l in inches.
func (l Length) Inches() float64 { return float64(l) / float64(Inch) }

// Metres gives l in metres.
func (l Length) Metres() float64 { return float64(l) / float64(Metre) }
