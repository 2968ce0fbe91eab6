package hydraulics

import (
	"math"

	"example.com/tintline/core/measure"
)

// Smear is the standard deviation of what leaves the pipe about the volume at which a plug would arrive, for a hose that
// holds so much (by geometry or as measured), from d = D/(u d): sigma = V sqrt(2 d bore/length), Levenspiel (1999), small
// dispersion. 0 for no length.
func (p Pipe) Smear(hose Gallons, d float64) Gallons {
	if !(p.Length > 0) {
		return 0
	}
	return hose * Gallons(math.Sqrt(2*d*p.Bore/p.Length))
}

// Sigma is the smear of a turbulent hose without any margin: Pipe.Smear with WenFan. A laminar flow has no sigma: there
// Outlet.Laminar stands for it, and this is the figure at Re 2,000.
func Sigma(hose Gallons, bore, length measure.Length, q measure.Flow, c float64) Gallons {
	p := PipeOf(bore, length)
	return p.Smear(hose, WenFan(p.Reynolds(q, WaterAt(c))))
}

// SmearMargin is what sigma is multiplied with where a person relies on it: 1.25, and 1.75 below Re 12,000, where the
// published formulas part.
func SmearMargin(re float64) float64 {
	if re < smearLowBelow {
		return smearMarginLow
	}
	return smearMargin
}

// EffectiveCell is a mixing cell in volumes of the gun's: gun and bypass together sweep it, so that to the gun it is
// smaller. The rest of what stood in it leaves by the return line. Without a flow of the gun it is the whole cell.
func EffectiveCell(cell Gallons, gun, bypass measure.Flow) Gallons {
	if !(gun > 0) || !(bypass > 0) {
		return cell
	}
	return cell * Gallons(gun/(gun+bypass))
}
