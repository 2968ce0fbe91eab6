package measure

// Flow is a flow of liquid in nanolitres a second.
type Flow float64

// GPM makes a flow of US gallons a minute.
func GPM(f float64) Flow { return Flow(f * float64(USGallon) / 60) }

// LitresPerMinute makes a flow of litres a minute.
func LitresPerMinute(f float64) Flow { return Flow(f * float64(Litre) / 60) }

// GPM gives f in US gallons a minute.
func (f Flow) GPM() float64 { return float64(f) * 60 / float64(USGallon) }

// LitresPerMinute gives f in litres a minute.
func (f Flow) LitresPerMinute() float64 { return float64(f) * 60 / float64(Litre) }

// Over gives what flows in so many seconds, rounded half to even. It stops at the
// ends of int64; NaN gives 0.
func (f Flow) Over(seconds float64) Volume { return Volume(roundFloat(float64(f) * seconds)) }

// Seconds gives how long v takes at flow f; 0 if f is 0.
func (f Flow) Seconds(v Volume) float64 {
	if f == 0 {
		return 0
	}
	return float64(v) / float64(f)
}
