package measure

// Speed is a speed in micrometres a second.
type Speed int64

// A mile an hour is exactly 0.44704 m/s (NIST SP 811 (2008), Appendix B.8).
const (
	MetrePerSecond Speed = 1_000_000
	MilePerHour    Speed = 447_040
	FootPerSecond  Speed = 304_800
	FootPerMinute  Speed = 5_080
)

// MPH makes a speed of miles an hour, rounded once, half to even. It stops at the
// ends of int64; NaN gives 0. FeetPerSecond and MetresPerSecond do the same.
func MPH(f float64) Speed { return Speed(timesFloat(f, int64(MilePerHour))) }

// FeetPerSecond makes a speed of feet a second.
func FeetPerSecond(f float64) Speed { return Speed(timesFloat(f, int64(FootPerSecond))) }

// MetresPerSecond makes a speed of metres a second.
func MetresPerSecond(f float64) Speed { return Speed(timesFloat(f, int64(MetrePerSecond))) }

// MPH gives s in miles an hour.
func (s Speed) MPH() float64 { return float64(s) / float64(MilePerHour) }

// FeetPerSecond gives s in feet a second.
func (s Speed) FeetPerSecond() float64 { return float64(s) / float64(FootPerSecond) }

// MetresPerSecond gives s in metres a second.
func (s Speed) MetresPerSecond() float64 { return float64(s) / float64(MetrePerSecond) }
