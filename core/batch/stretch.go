package batch

import (
	"math"

	"example.com/tintline/core/measure"
)

// Lowest is the lowest label rate of a product where a rest is to go. Without a rate and without None it is not known.
type Lowest struct {
	Product string
	Rate    measure.Maybe[measure.Rate]
	None    bool // the label has no lowest rate
}

// StretchAsk is a rest that water is to make go further.
type StretchAsk struct {
	Left     measure.Volume // all that is in the tank
	Heel     measure.Volume // of it, what cannot be drawn
	Holds    []Held
	Delivery measure.Rate
	Lowest   []Lowest
	Room     measure.Maybe[measure.Volume] // for the water; unknown: not asked about
}

// Stretched is how far it goes.
type Stretched struct {
	Possible bool
	Why, Do  string
	Water    measure.Volume
	Total    measure.Volume // in the tank then
	Area     measure.Area   // that it covers then
	Now      measure.Area   // that it covers as it is
	Limit    string         // the product that comes to its lowest label rate first
	Rates    []StretchedRate
	Warnings []string
	Steps    []Step
}

// StretchedRate is what of a product goes on an area, before and after.
type StretchedRate struct {
	Product     string
	Now, Then   measure.Rate
	Lowest      measure.Maybe[measure.Rate]
	NoneOnLabel bool
}

// Work gives the water that a rest can take until the first of its products is laid at its lowest label rate, and what it covers then.
// It never goes below the lowest rate of any; where one is not known, it cannot be stretched.
func (q StretchAsk) Work() (Stretched, error) {
	if err := q.check(); err != nil {
		return Stretched{}, err
	}
	drawn := q.Left - q.Heel
	out := Stretched{Total: q.Left, Now: q.Delivery.AreaFor(drawn), Area: q.Delivery.AreaFor(drawn)}
	var s steps
	s.say(drawn.Text(), " gal that can be drawn at ", laying(q.Delivery), " = ", out.Now.Text(), " sq ft as it is")
	k := math.Inf(1)
	for _, h := range q.Holds {
		r := q.rate(h)
		out.Rates = append(out.Rates, r)
		if h.Amount.N == 0 || r.NoneOnLabel {
			continue
		}
		if !r.Lowest.Known {
			out.Why = "The label entry of " + h.Product + " has no lowest rate, so it is not known how thin it may be laid."
			out.Do = "Enter the lowest rate with the product, or that its label has none."
			return q.not(out, s), nil
		}
		n := Stretchable(float64(measure.ConcentrationOf(h.Amount, q.Left)), q.Delivery.V, r.Lowest.V.V)
		s.say(h.Product, ": ", r.Now.Text(), " as it is, lowest label rate ", r.Lowest.V.Text(), ": ", times(n), " its volume")
		if n < k {
			k, out.Limit = n, h.Product
		}
	}
	switch {
	case math.IsInf(k, 1):
		out.Why, out.Do = "No product in it has a lowest label rate, so nothing says how thin it may be laid.", "Lay it as it was made up."
		return q.not(out, s), nil
	case k < 1-hair:
		out.Why = out.Limit + " is laid below its lowest label rate as it is: " + percent(k) + " of it."
		out.Do = "Top it up with product; water makes it weaker still."
		return q.not(out, s), nil
	}
	q.thin(&out, &s, math.Max(k, 1))
	out.Steps = s
	return out, nil
}

// not is the answer where it cannot be stretched.
func (q StretchAsk) not(out Stretched, s steps) Stretched {
	s.say(out.Why)
	out.Steps = s
	for i := range out.Rates {
		out.Rates[i].Then = out.Rates[i].Now
	}
	return out
}

func (q StretchAsk) rate(h Held) StretchedRate {
	r := StretchedRate{Product: h.Product, Now: measure.Rate{V: float64(measure.ConcentrationOf(h.Amount, q.Left)) * q.Delivery.V, Kind: h.Amount.Kind}}
	for _, l := range q.Lowest {
		if l.Product == h.Product {
			r.Lowest, r.NoneOnLabel = l.Rate, l.None
		}
	}
	return r
}

// thin adds the water, as far as there is room; it is cut off, so that no rounding goes below a label rate.
func (q StretchAsk) thin(out *Stretched, s *steps, k float64) {
	out.Possible = true
	out.Water = measure.Volume(math.Floor(math.Min(float64(q.Left)*(k-1), largest)))
	s.say(q.Left.Text(), " gal x ", figure(k), " = ", (q.Left + out.Water).Text(), " gal, of which ", out.Water.Text(), " gal are water")
	if q.Room.Known && out.Water > q.Room.V {
		out.Water = max(q.Room.V, 0)
		s.say("there is room for ", out.Water.Text(), " gal of it")
	}
	out.Total = q.Left + out.Water
	out.Area = q.Delivery.AreaFor(out.Total - q.Heel)
	s.say((out.Total - q.Heel).Text(), " gal at ", laying(q.Delivery), " = ", out.Area.Text(), " sq ft, ", (out.Area - out.Now).Text(), " sq ft more")
	thinner := float64(q.Left) / float64(out.Total)
	for i := range out.Rates {
		r := &out.Rates[i]
		r.Then = measure.Rate{V: r.Now.V * thinner, Kind: r.Now.Kind}
		if out.Water > 0 {
			out.Warnings = append(out.Warnings, "The record says another rate from here on: "+r.Product+" "+r.Then.Text()+" instead of "+r.Now.Text()+".")
		}
	}
	if out.Water > 0 {
		out.Warnings = append([]string{"Control is shorter at the lowest label rate (common practice, no source)."}, out.Warnings...)
	}
}

func (q StretchAsk) check() error {
	if err := checkVolume("What is left", q.Left); err != nil {
		return err
	}
	if q.Heel < 0 || q.Heel > q.Left {
		return measure.Troublef("Give a heel of 0 to "+q.Left.Text()+" gal.", "The heel is %s gal of %s gal.", q.Heel.Text(), q.Left.Text())
	}
	if err := checkDelivery("The delivery rate", q.Delivery); err != nil {
		return err
	}
	if err := checkHeld(q.Holds); err != nil {
		return err
	}
	for _, h := range q.Holds {
		for _, l := range q.Lowest {
			if l.Product == h.Product && l.Rate.Known {
				if err := checkRate(l.Product, h.Label.Form, l.Rate.V); err != nil {
					return err
				}
			}
		}
	}
	return nil
}
