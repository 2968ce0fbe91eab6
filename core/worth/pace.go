package worth

import "example.com/tintline/core/measure"

// PerHour is an amount for each hour, to the cent: revenue per man-hour, stops per driven hour have the same form. Unknown where
// no time went by.
func PerHour(m measure.Money, seconds int64) measure.Maybe[measure.Money] {
	if seconds <= 0 {
		return measure.Maybe[measure.Money]{}
	}
	return measure.Known(measure.Money(measure.MulDivRound(int64(m), 3600, seconds)))
}

// Per is an amount for each of something, such as miles; unknown where there is none of it.
func Per(m measure.Money, of float64) measure.Maybe[measure.Money] {
	if !(of > 0) {
		return measure.Maybe[measure.Money]{}
	}
	return measure.Known(measure.Dollars(m.Dollars() / of))
}

// Density is how many stops there are for each driven hour, or mile (definition); unknown where none was driven.
func Density(stops int, driven float64) measure.Maybe[float64] {
	if !(driven > 0) {
		return measure.Maybe[float64]{}
	}
	return measure.Known(float64(stops) / driven)
}

// Share is a part of a whole, 0.22; unknown where the whole is not above 0.
func Share(part, whole measure.Money) measure.Maybe[float64] {
	if whole <= 0 {
		return measure.Maybe[float64]{}
	}
	return measure.Known(float64(part) / float64(whole))
}

// MaterialTrue is what was used up by the stock: opening + bought - closing (accounting identity). What it is above the material
// that was laid is over-application, spill or bad measuring.
func MaterialTrue(opening, bought, closing measure.Money) measure.Money {
	return opening + bought - closing
}

// Field capacity by width and speed.
const (
	// acreFactor makes mph x ft into acres an hour: 43,560 sq ft an acre / 5,280 ft a mile = 8.25 (ASABE; Iowa State extension A3-24).
	acreFactor = 43_560.0 / 5_280
)

// Capacity is the acres treated in an hour: mph x ft x efficiency / 8.25 (Iowa State University extension, Ag Decision Maker A3-24).
func Capacity(mph, feet, efficiency float64) float64 { return mph * feet * efficiency / acreFactor }

// GunArea is the sq ft that a hose gun treats in a minute at the trigger: gal per min / gal per 1,000 sq ft x 1,000 (definition).
func GunArea(gpm, per1000 float64) measure.Maybe[float64] {
	if !(per1000 > 0) {
		return measure.Maybe[float64]{}
	}
	return measure.Known(gpm / per1000 * 1000)
}

// RealInterest is nominal interest less inflation, per cent (Iowa State University extension, Ag Decision Maker A3-29).
func RealInterest(nominal, inflation float64) float64 { return nominal - inflation }
