package check

import (
	"math"

	"example.com/tintline/core"
)

// The range in which the formula for the wet bulb holds (Stull 2011): relative humidity in per cent, air in degrees Celsius.
const (
	stullLeastRH, stullMostRH = 5, 99
	stullColdest, stullHotest = -20, 50
)

// WetBulb is the wet-bulb temperature in degrees Celsius at sea level, from the air's temperature in degrees Celsius and
// its relative humidity in per cent; unknown outside of 5 to 99 per cent and -20 to 50 degrees.
// Stull 2011, Wet-bulb temperature from relative humidity and air temperature, J. Appl. Meteor. Climatol. 50:2267-2269,
// who gives its error as -1 to +0.65 degrees, 0.3 in the mean.
func WetBulb(celsius, humidity float64) core.Maybe[float64] {
	t, rh := celsius, humidity
	if !(rh >= stullLeastRH && rh <= stullMostRH && t >= stullColdest && t <= stullHotest) {
		return core.Maybe[float64]{}
	}
	tw := float64(t * math.Atan(0.151977*math.Sqrt(rh+8.313659)))
	tw += math.Atan(t+rh) - math.Atan(rh-1.676331)
	tw += float64(0.00391838 * float64(rh*math.Sqrt(rh)) * math.Atan(0.023101*rh))
	return core.Known(tw - 4.686035)
}

// DeltaT is the wet-bulb depression in degrees Celsius, by which the drying of drops is judged; unknown where
// temperature or humidity is, or where WetBulb is.
func DeltaT(w *core.Weather) core.Maybe[float64] {
	if !w.Temp.Known || !w.Humidity.Known {
		return core.Maybe[float64]{}
	}
	t := celsius(w.Temp.V)
	wet := WetBulb(t, w.Humidity.V)
	if !wet.Known {
		return wet
	}
	return core.Known(t - wet.V)
}

func celsius(fahrenheit float64) float64 { return (fahrenheit - 32) * 5 / 9 }
