package reckon

import (
	"example.com/tintline/core/batch"
	"example.com/tintline/core/measure"
)

// working says how a load was worked out, as far as the inputs go.
func (m *mixing) working() []batch.Step {
	var out []batch.Step
	say := func(words string) { out = append(out, batch.Step{Says: words}) }
	form := measure.Liquid
	if m.dry {
		form = measure.Dry
	}
	amount := func(base float64) string {
		return measure.Amount{N: measure.Concentration(base).In(1, form).N, Kind: form}.Text()
	}
	gal := func(base float64) string { return figureText(base/float64(measure.USGallon)) + " gal" }
	sqft := func(base float64) string {
		return figureText(base/float64(measure.ThousandSquareFeet)*1000) + " sq ft"
	}
	laying := func() string {
		return figureText(measure.Rate{V: m.carrier.base}.GalPer1000()) + " gal per 1,000 sq ft"
	}
	if m.rate.given && m.carrier.given {
		say(measure.Rate{V: m.rate.base, Kind: form}.Text() + " in " + laying() + " = " + amount(m.strength.base*float64(measure.USGallon)) + " a gal")
	}
	if m.tank.given && m.carrier.given {
		say(gal(m.tank.base) + " at " + laying() + " = " + sqft(m.tank.base/m.carrier.base) + " a tank")
	}
	if m.tank.given && m.strength.given {
		say(gal(m.tank.base) + " at " + amount(m.strength.base*float64(measure.USGallon)) + " a gal = " + amount(m.strength.base*m.tank.base) + " a tank")
	}
	if m.mix.given && m.area.given && m.carrier.given {
		say(sqft(m.area.base) + " at " + laying() + " = " + gal(m.mix.base))
	}
	if m.area.given && m.rate.given {
		say(sqft(m.area.base) + " at " + measure.Rate{V: m.rate.base, Kind: form}.Text() + " = " + amount(m.rate.base*m.area.base))
	} else if m.mix.given && m.strength.given {
		say(gal(m.mix.base) + " at " + amount(m.strength.base*float64(measure.USGallon)) + " a gal = " + amount(m.strength.base*m.mix.base))
	}
	return out
}
