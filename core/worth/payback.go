package worth

import (
	"math"

	"example.com/tintline/core/measure"
)

// power is math.Pow; nothing that it gives is booked.
func power(x, y float64) float64 { return math.Pow(x, y) }

// Even is the payback of an outlay by the same net cash each year, in years: outlay / net cash (Iowa State University extension,
// Ag Decision Maker C5-240; cash, not profit: depreciation is left out). Unknown where no cash comes in.
func Even(outlay, year measure.Money) measure.Maybe[float64] {
	if year <= 0 {
		return measure.Maybe[float64]{}
	}
	return measure.Known(max(float64(outlay), 0) / float64(year))
}

// Uneven is the payback by the cash of each year in turn: the years before full recovery, and what is left then by the cash of
// the next (Iowa State University extension, Ag Decision Maker C5-240). Unknown where it is not recovered.
func Uneven(outlay measure.Money, flows []measure.Money) measure.Maybe[float64] {
	return discounted(outlay, flows, 0)
}

// Discounted is Uneven with the cash of year n worth cash / (1 + i)^n; interest in per cent (Iowa State University extension,
// Ag Decision Maker C5-240).
func Discounted(outlay measure.Money, flows []measure.Money, interest float64) measure.Maybe[float64] {
	return discounted(outlay, flows, interest/100)
}

func discounted(outlay measure.Money, flows []measure.Money, i float64) measure.Maybe[float64] {
	rest := float64(outlay)
	if rest <= 0 {
		return measure.Known(0.0)
	}
	for n, f := range flows {
		cash := float64(f)
		if i != 0 {
			cash /= power(1+i, float64(n+1))
		}
		if cash >= rest {
			return measure.Known(float64(n) + rest/cash)
		}
		rest -= cash
	}
	return measure.Maybe[float64]{}
}

// NetPresent is the present value of the cash of years less the outlay; interest in per cent (Iowa State University extension, Ag
// Decision Maker C5-240).
func NetPresent(outlay measure.Money, flows []measure.Money, interest float64) measure.Money {
	sum := -outlay.Dollars()
	for n, f := range flows {
		sum += f.Dollars() / power(1+interest/100, float64(n+1))
	}
	return measure.Dollars(sum)
}

// Flow is cash on a day; the days are numbered.
type Flow struct {
	Day  int
	Cash measure.Money
}

// Paid is the day on which an outlay was recovered by what came in, earliest first; what is taken out again later does not undo it.
// False: not yet; left is what is still out, below 0 where more came in.
func Paid(outlay measure.Money, flows []Flow) (day int, paid bool, left measure.Money) {
	left = outlay
	for _, f := range flows {
		left -= f.Cash
		if left <= 0 && !paid {
			day, paid = f.Day, true
		}
	}
	return day, paid, left
}

// DaysAt is in how many calendar days what is left is recovered at an amount for each year of 365 days, rounded up; unknown
// where none comes in, or where it would be more than a hundred years.
func DaysAt(left, year measure.Money) measure.Maybe[int] {
	const most = 100 * 365
	switch {
	case left <= 0:
		return measure.Known(0)
	case year <= 0:
		return measure.Maybe[int]{}
	}
	d := math.Ceil(float64(left) * 365 / float64(year))
	if d > most {
		return measure.Maybe[int]{}
	}
	return measure.Known(int(d))
}

// Assumed is the net cash of a year from what a stop leaves: stops a day x days a year x net of a stop (definition).
func Assumed(stops, days float64, stop measure.Money) measure.Money {
	return measure.Dollars(float64(stops * days * stop.Dollars()))
}
