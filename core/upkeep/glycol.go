package upkeep

import (
	_ "embed"
	"strconv"

	"example.com/tintline/core/measure"
)

//go:embed glycol.csv
var glycolText string

// MostGlycol is the last row of the table: beyond it nothing is said.
const MostGlycol = 50

// Thinned is what a per cent of glycol comes to once it meets the water that was left: g V / (V + W). A mass balance of volumes.
func Thinned(pct float64, poured, left measure.Volume) (float64, error) {
	switch {
	case !(pct > 0 && pct <= 100):
		return 0, measure.Troublef("Read the can: it says how much of it is propylene glycol.", "%g %% of glycol is not between 0 and 100.", pct)
	case poured <= 0 || left < 0:
		return 0, measure.Troublef("Say how many gallons were poured in, and how much water was left.", "%s gal in %s gal of water gives nothing.", poured.Text(), left.Text())
	}
	return pct * float64(poured) / float64(poured+left), nil
}

// Freezes is the temperature at which water with so much propylene glycol by volume begins to freeze, in degrees Fahrenheit, by
// straight lines between the rows of the table. It bursts pipes at a lower one: the can names both.
//
// Source: handbook of chemistry, table 5.13.
func Freezes(pct float64) (float64, error) {
	if !(pct >= 0 && pct <= MostGlycol) {
		return 0, measure.Troublef("Take what the can says.", "The table goes from 0 to %d %% of glycol, and %.3g is asked for.", MostGlycol, pct)
	}
	low := [2]float64{}
	for i, r := range rows("glycol.csv", glycolText) {
		p, wrong := strconv.ParseFloat(r[0], 64)
		f, wrongF := strconv.ParseFloat(r[1], 64)
		if wrong != nil || wrongF != nil {
			panic("core/upkeep/glycol.csv: " + r[0] + ", " + r[1]) // as rows
		}
		if pct <= p && i > 0 {
			return low[1] + float64((f-low[1])*((pct-low[0])/(p-low[0]))), nil
		}
		low = [2]float64{p, f}
	}
	return low[1], nil
}

// BurstCaution stands beside each freezing point.
const BurstCaution = "Freeze point and burst point differ, and what was left in pump and hose thins it: catch and measure at the gun. Never car coolant."
