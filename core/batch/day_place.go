package batch

import (
	"math"

	"example.com/tintline/core/measure"
)

// Place is where something is, in degrees: north and east are above 0.
type Place struct{ Lat, Long measure.Maybe[float64] }

// earthMiles is the mean radius of the Earth, (2a + b) / 3 of GRS 80: 6,371.0088 km (Moritz, Geodetic Reference System 1980, Journal of
// Geodesy 74, 2000), in statute miles.
const earthMiles = 6371.0088 / 1.609344

// GreatCircle is the miles from one place to another over a sphere, by the haversine formula (Sinnott, Sky and Telescope 68, 1984). A road
// is longer. It is unknown where one of the places is.
func GreatCircle(a, b Place) measure.Maybe[float64] {
	if !a.known() || !b.known() {
		return measure.Maybe[float64]{}
	}
	const degree = math.Pi / 180
	φ1, φ2 := a.Lat.V*degree, b.Lat.V*degree
	s, t := math.Sin((φ2-φ1)/2), math.Sin((b.Long.V-a.Long.V)*degree/2)
	h := float64(s*s) + float64(float64(math.Cos(φ1)*math.Cos(φ2))*float64(t*t))
	return measure.Known(2 * earthMiles * math.Asin(math.Sqrt(min(h, 1))))
}

func (p Place) known() bool { return p.Lat.Known && p.Long.Known }

func (p Place) check(what string) error {
	if p.Lat.Known != p.Long.Known {
		return measure.Troublef("Give both, or neither.", "%s has only one of latitude and longitude.", what)
	}
	if p.known() && !(math.Abs(p.Lat.V) <= 90 && math.Abs(p.Long.V) <= 180) {
		return measure.Troublef("Give a latitude of -90 to 90 and a longitude of -180 to 180 degrees.", "%s lies at %s and %s degrees.", what, figure(p.Lat.V), figure(p.Long.V))
	}
	return nil
}
