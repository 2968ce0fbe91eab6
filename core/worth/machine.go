package worth

import (
	"fmt"

	"example.com/tintline/core/measure"
)

// Machine is a thing bought to work with.
type Machine struct {
	Buy, Salvage measure.Money
	Years        float64
	Interest     float64       // per cent a year
	TaxInsurance measure.Money // a year, with housing
	Running      measure.Money // a year: repair, fuel, labour
}

// Recovery is the capital recovery factor i / (1 - (1 + i)^-n); without interest it is 1 / n. Unknown where there are no years.
func Recovery(interest, years float64) measure.Maybe[float64] {
	i := interest / 100
	switch {
	case !(years > 0) || i < 0:
		return measure.Maybe[float64]{}
	case i == 0:
		return measure.Known(1 / years)
	}
	return measure.Known(i / (1 - power(1+i, -years)))
}

// Year is what the machine costs in a year: (buy - salvage) x capital recovery factor + salvage x interest + tax, insurance,
// housing + running (Iowa State University extension, Ag Decision Maker A3-29).
func (m Machine) Year() (measure.Maybe[measure.Money], []Step) {
	f := Recovery(m.Interest, m.Years)
	if !f.Known {
		return measure.Maybe[measure.Money]{}, []Step{{"the years of use are not known"}}
	}
	recovery := measure.Dollars(float64((m.Buy - m.Salvage).Dollars() * f.V))
	tied := measure.Dollars(float64(m.Salvage.Dollars() * m.Interest / 100))
	out := recovery + tied + m.TaxInsurance + m.Running
	return measure.Known(out), []Step{
		{fmt.Sprintf("capital recovery factor at %g %% over %g years: %.4f", m.Interest, m.Years, f.V)},
		{fmt.Sprintf("(%s - %s) x %.4f + %s interest on salvage + %s tax, insurance, housing + %s running = %s",
			m.Buy.Text(), m.Salvage.Text(), f.V, tied.Text(), m.TaxInsurance.Text(), m.Running.Text(), out.Text())},
	}
}

// Salvage is a share of the list price, per cent (Iowa State University extension, Ag Decision Maker A3-29).
func Salvage(list measure.Money, percent float64) measure.Money {
	return measure.Dollars(float64(list.Dollars() * percent / 100))
}

// RideOn is what a machine that saves minutes brings in a year: minutes saved x lawns x value of a minute + product saved -
// fuel and repair (definition).
func RideOn(minutes float64, lawns int, minute, product, running measure.Money) (measure.Money, []Step) {
	saved := measure.Dollars(float64(minutes * float64(lawns) * minute.Dollars()))
	out := saved + product - running
	return out, []Step{{fmt.Sprintf("%g min x %d lawns x %s + %s product - %s fuel and repair = %s", minutes, lawns, minute.Text(), product.Text(), running.Text(), out.Text())}}
}

// DaySaved is the share of a day that a faster trigger saves: the trigger's share x (1 - 1 / times) (arithmetic).
func DaySaved(trigger, times float64) float64 {
	if !(times > 0) {
		return 0
	}
	return trigger * (1 - 1/times)
}
