package measure

import (
	"math"
	"strings"
)

// Rate is an amount for each area: nL/mm² (1 nL/mm² is 1 mL/m²) if Liquid,
// ng/mm² (1 ng/mm² is 1 mg/m²) if Dry.
type Rate struct {
	V    float64
	Kind Kind
}

// Over gives what rate r puts on a, rounded once, half to even, from the exact
// product. It stops at the ends of int64; NaN gives 0.
func (r Rate) Over(a Area) Amount {
	return Amount{N: timesFloat(r.V, int64(a)), Kind: r.Kind}
}

// Volume gives what a liquid rate, such as a delivery rate, puts on a; see Over.
func (r Rate) Volume(a Area) Volume { return Volume(timesFloat(r.V, int64(a))) }

// AreaFor gives the area that v covers at the delivery rate r, rounded half to
// even: to the unit below 2^53 mm² (9,000 km²). It stops at the ends of int64 and
// is 0 if r is 0 or not a number.
func (r Rate) AreaFor(v Volume) Area {
	if r.V == 0 || math.IsNaN(r.V) {
		return 0
	}
	return Area(roundFloat(float64(v) / r.V))
}

// AreaOf gives the area that an amount covers at the rate r; see AreaFor.
func (r Rate) AreaOf(a Amount) Area { return r.AreaFor(Volume(a.N)) }

// RateOf is the rate that put a on the area; 0 if the area is 0.
func RateOf(a Amount, over Area) Rate {
	if over == 0 {
		return Rate{Kind: a.Kind}
	}
	return Rate{V: float64(a.N) / float64(over), Kind: a.Kind}
}

// VolumeRate is the delivery rate that put v on the area; 0 if the area is 0.
func VolumeRate(v Volume, over Area) Rate { return RateOf(LiquidAmount(v), over) }

// GalPer1000 makes a liquid rate of US gallons for each 1,000 sq ft.
func GalPer1000(f float64) Rate {
	return Rate{V: f * float64(USGallon) / float64(ThousandSquareFeet), Kind: Liquid}
}

// GalPer1000 gives a liquid rate in US gallons for each 1,000 sq ft.
func (r Rate) GalPer1000() float64 {
	return r.V * float64(ThousandSquareFeet) / float64(USGallon)
}

// In gives r in a unit such as fl_oz_per_1000_sqft or lb_per_acre: a unit of
// volume (Liquid) or mass (Dry), "_per_", and a unit of area, by their keys in
// units.csv. The error says what is wrong with the name.
func (r Rate) In(unit string) (float64, error) {
	amount, area, kind, err := rateUnits(unit)
	if err != nil {
		return 0, err
	}
	if kind != r.Kind {
		return 0, textErrorf("%q does not fit a %s product.", unit, r.Kind)
	}
	return r.V * area.float() / amount.float(), nil
}

// RateUnit makes a rate of f in a unit named as for In.
func RateUnit(f float64, unit string) (Rate, error) {
	amount, area, kind, err := rateUnits(unit)
	if err != nil {
		return Rate{}, err
	}
	return Rate{V: f * amount.float() / area.float(), Kind: kind}, nil
}

// rateUnits takes the name of a rate's unit apart.
func rateUnits(name string) (amount, area *unit, kind Kind, err error) {
	left, right, found := strings.Cut(name, "_per_")
	if found {
		if amount = findUnit("volume", left); amount == nil {
			amount, kind = findUnit("mass", left), Dry
		}
		area = findUnit("area", right)
	}
	if amount == nil || area == nil {
		return nil, nil, 0, textErrorf("%q is no unit of a rate; write an amount and an area such as fl_oz_per_1000_sqft or lb_per_acre.", name)
	}
	return amount, area, kind, nil
}
