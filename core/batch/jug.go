package batch

import (
	"strconv"

	"example.com/tintline/core/measure"
)

// JugAsk is a package that is to be split: into so many equal loads, into loads of one size, or into the loads given.
type JugAsk struct {
	Product string
	Form    measure.Kind
	Package measure.Amount
	Loads   int // equal ones; 0: not so
	Each    measure.Maybe[measure.Amount]
	Given   []measure.Amount
	Rate    measure.Maybe[measure.Rate] // what goes on an area; unknown: what a load covers is not asked
}

// JugSplit is what each load gets and what is left.
type JugSplit struct {
	Loads []JugLoad
	Left  measure.Amount
	Steps []Step
}

// JugLoad is a load, and the area that it covers where the rate is known.
type JugLoad struct {
	Amount measure.Amount
	Area   measure.Maybe[measure.Area]
}

// mostLoads is more than anyone measures out of a package.
const mostLoads = 1000

// Work splits the package. Equal loads use it up to the last unit; loads that are more than the package are refused.
func (q JugAsk) Work() (JugSplit, error) {
	amounts, err := q.amounts()
	if err != nil {
		return JugSplit{}, err
	}
	var s steps
	if n := len(amounts); n > 0 {
		s.say(q.Package.Text(), " of ", q.Product, " into ", strconv.Itoa(n), " loads, the first ", amounts[0].Text())
	}
	out := JugSplit{Left: q.Package}
	for _, a := range amounts {
		out.Left.N -= a.N
		l := JugLoad{Amount: a}
		if q.Rate.Known {
			l.Area = measure.Known(q.Rate.V.AreaOf(a))
		}
		out.Loads = append(out.Loads, l)
	}
	if out.Left.N < 0 {
		used := q.Package.N - out.Left.N
		return JugSplit{}, measure.Troublef("Open another package, or make the loads smaller.", "The loads are %s together, but the package holds %s of %s.",
			measure.Amount{N: used, Kind: q.Form}.Text(), q.Package.Text(), q.Product)
	}
	if q.Rate.Known && len(out.Loads) > 0 {
		s.say(amounts[0].Text(), " at ", q.Rate.V.Text(), " covers ", out.Loads[0].Area.V.Text(), " sq ft")
	}
	s.say(measure.Amount{N: q.Package.N - out.Left.N, Kind: q.Form}.Text(), " are measured out, ", out.Left.Text(), " are left")
	out.Steps = s
	return out, nil
}

// amounts are the loads that are asked for.
func (q JugAsk) amounts() ([]measure.Amount, error) {
	if err := checkAmount(q.Product, q.Form, q.Package); err != nil {
		return nil, err
	}
	if q.Package.N == 0 {
		return nil, measure.Troublef("Enter with the product how much is in a package, or say it: package 1 gal.", "The package of %s holds nothing.", q.Product)
	}
	if q.Rate.Known {
		if err := checkRate(q.Product, q.Form, q.Rate.V); err != nil {
			return nil, err
		}
	}
	switch {
	case len(q.Given) > 0:
		for _, a := range q.Given {
			if err := checkAmount(q.Product, q.Form, a); err != nil {
				return nil, err
			}
		}
		if len(q.Given) > mostLoads {
			return nil, tooMany(int64(len(q.Given)))
		}
		return q.Given, nil
	case q.Each.Known:
		return q.ofOneSize()
	case q.Loads > 0 && q.Loads <= mostLoads:
		return q.equal(), nil
	}
	return nil, tooMany(int64(q.Loads))
}

func tooMany(n int64) error {
	return measure.Troublef("Give 1 to "+strconv.Itoa(mostLoads)+" loads, or how much goes into each.", "The package is to be split into %d loads.", n)
}

// ofOneSize gives as many loads as the package fills.
func (q JugAsk) ofOneSize() ([]measure.Amount, error) {
	if err := checkAmount(q.Product, q.Form, q.Each.V); err != nil {
		return nil, err
	}
	if q.Each.V.N == 0 || q.Each.V.N > q.Package.N {
		return nil, measure.Troublef("Give more than 0 and at most "+q.Package.Text()+".", "Each load is %s of %s, and the package holds %s.", q.Each.V.Text(), q.Product, q.Package.Text())
	}
	n := q.Package.N / q.Each.V.N
	if n > mostLoads {
		return nil, tooMany(n)
	}
	out := make([]measure.Amount, n)
	for i := range out {
		out[i] = q.Each.V
	}
	return out, nil
}

// equal shares the package; the odd units go to the first loads.
func (q JugAsk) equal() []measure.Amount {
	out := make([]measure.Amount, q.Loads)
	for i, n := range measure.Apportion(make([]int64, q.Loads), q.Package.N) {
		out[i] = measure.Amount{N: n, Kind: q.Form}
	}
	return out
}
