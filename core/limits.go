package core

import "example.com/tintline/core/measure"

// What admission takes at most, or at least, for whoever reads what is typed and says beforehand what is allowed.
const (
	LongestName         = 80   // letters
	LongestText         = 2000 // letters of any text of a fact
	LargestVolume       = 10_000 * measure.USGallon
	LargestArea         = 1000 * measure.Hectare
	WidestBore          = 12 * measure.Inch
	LongestHose         = 10_000 * measure.Foot
	FarthestGauge       = 240 * measure.Inch // from the middle of a compartment
	LargestFlowGPM      = 500
	LargestDelivery     = 1e6 // nL for each mm2: 24,542 gal per 1,000 sq ft
	LargestHopper       = 22_000 * measure.Pound
	HighestPSI          = 1000 // more than any pump of this kind gives
	LargestLoss         = 1000 // of a sum of loss coefficients
	StrongestWind       = 100 * measure.MilePerHour
	HighestPrice        = 100_000 * measure.Dollar
	HighestCost         = 1_000_000 * measure.Dollar // of an investment
	MostPoundsPerGallon = 20
	ColdestF, HottestF  = -20, 130 // of a label's limits, degrees Fahrenheit
	LongestDays         = 1000
	LongestHours        = 240
	FurthestFeet        = 5000
	MostTimes           = 366 // applications in a year
	// Rates of products, in nL or ng for each mm2. Less than the lowest is no amount that could be measured out, a millionth of
	// an ounce for an acre or less, and a dose held against it would be no figure.
	LowestRate, HighestRate = 1e-9, 1e9
)

// CheckName refuses a name that could not stand on one line of a screen or in a place's name; what is what it
// names, "zone".
func CheckName(what, typed string) error { return name(what, typed) }

// PackageFits tells whether an amount is one that a package may hold: up to 10,000 gal or 22,000 lb.
func PackageFits(a measure.Amount) bool {
	most := int64(LargestVolume)
	if a.Kind == measure.Dry {
		most = int64(LargestHopper)
	}
	return a.N >= 0 && a.N <= most
}

// RateFits tells whether a rate is one that a product may have.
func RateFits(r measure.Rate) bool { return r.V >= LowestRate && r.V <= HighestRate }
