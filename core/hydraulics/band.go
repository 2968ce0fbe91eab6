package hydraulics

import (
	"math"

	"example.com/tintline/core/measure"
)

// Doubt is how well hose and cell are known: standard uncertainties.
type Doubt struct{ Hose, Cell Gallons }

// Band is the standard uncertainty of At(f): that of the hose, of the cell, of the smear (a fifth) and of the flow by
// which gallons become seconds (3 per cent), put together as squares:
// u^2 = u(Hose)^2 + (ln(1/(1-f)) u(Cell))^2 + (0.2 z_f Sigma)^2 + (0.03 At(f))^2. f lies between 0 and 1, else it is NaN.
func (o Outlet) Band(f float64, d Doubt) Gallons {
	cell := math.Log1p(-f) * float64(d.Cell)
	smear := 0.0
	if !o.Laminar {
		smear = SmearDoubt * quantile(f) * float64(o.Sigma)
	}
	flow := FlowDoubt * float64(o.At(f))
	hose := float64(d.Hose)
	return Gallons(math.Sqrt(float64(hose*hose) + float64(cell*cell) + float64(smear*smear) + float64(flow*flow)))
}

// Side is how the outlet would be if hose and cell were off by so many standard uncertainties: advice for what was never
// measured is given from its upper side.
func (o Outlet) Side(d Doubt, times float64) Outlet {
	o.Hose = max(0, o.Hose+Gallons(times)*d.Hose)
	o.Cell = max(0, o.Cell+Gallons(times)*d.Cell)
	return o
}

// Run is a hose with what goes through it.
type Run struct {
	Hose         Gallons // as measured or by geometry
	Bore, Length measure.Length
	Cell         Gallons // the whole cell
	Gun, Bypass  measure.Flow
	C            float64 // temperature of the liquid
}

// Reynolds is the Reynolds number in the hose.
func (r Run) Reynolds() float64 { return Reynolds(r.Gun, r.Bore, r.C) }

// Outlet is the outlet of a run with margin on the smear: 1 for none, SmearMargin(r.Reynolds()) where a person relies on
// it. A flow that is not surely turbulent is taken as laminar, the later of the two.
func (r Run) Outlet(margin float64) Outlet {
	o := Outlet{Hose: r.Hose, Cell: EffectiveCell(r.Cell, r.Gun, r.Bypass)}
	if !Turbulent(r.Reynolds()) {
		o.Laminar = true
		return o
	}
	o.Sigma = Gallons(margin) * Sigma(r.Hose, r.Bore, r.Length, r.Gun, r.C)
	return o
}
