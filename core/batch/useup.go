package batch

import (
	"math"

	"example.com/tintline/core/measure"
)

// UseUpAsk is a left-over, or water that a tank was rinsed with, and the grounds that it could go on.
type UseUpAsk struct {
	Left     measure.Volume
	Holds    []Held
	Delivery measure.Rate
	Thin     float64 // parts of water to one of it
	Grounds  []Ground
}

// Ground is a place ahead, and how much of each product it can still take.
type Ground struct {
	Name string
	Area measure.Area
	Can  []CanTake // one for each product that is held; a product without one may not go there
}

// CanTake is what a ground can still take of a product. Unknown is no limit that is known.
type CanTake struct {
	Product string
	Not     string                      // why it may not go there at all: a few words; empty: it may
	Laid    measure.Rate                // already on it, and counted towards the most in one application
	Most    measure.Maybe[measure.Rate] // in one application
	Year    measure.Maybe[measure.Rate] // that the year still allows
	Residue bool                        // a trace of another mix, judged already: no limit of a dose holds for it
}

// room is how much more of it may be laid, and what sets that; unknown where nothing does.
func (c CanTake) room() (r measure.Maybe[float64], by string) {
	if c.Most.Known {
		r, by = measure.Known(math.Max(c.Most.V.V-c.Laid.V, 0)), "the most in one application"
	}
	if c.Year.Known && (!r.Known || c.Year.V.V < r.V) {
		r, by = measure.Known(math.Max(c.Year.V.V, 0)), "what the year still allows"
	}
	return r, by
}

// UseUp is where it may go.
type UseUp struct {
	Share  float64        // of its strength that it is laid with when it is thinned: 1 / (1 + parts)
	Volume measure.Volume // thinned
	Area   measure.Area   // that it covers then
	Places []UseUpPlace   // in the order of the grounds
	Steps  []Step
}

// UseUpPlace is a ground, and whether the left-over may go on it.
type UseUpPlace struct {
	Name    string
	May     bool
	Why     string               // where it may not, or what is not known
	Takes   measure.Volume       // of the left-over, thinned as asked
	Area    measure.Area         // that this covers
	LeastTo measure.Maybe[Thins] // the least water with which it may go there; unknown: none is enough
	Limit   string               // the product that decides
	// Ceiling is the share of the most in one application up to which ground may have been treated before it: 91 % for full-strength mix
	// thinned 1 to 10. Unknown where no most is.
	Ceiling measure.Maybe[float64]
	Unknown []string // products of which no limit is known
}

// Thins is parts of water to one of the left-over.
type Thins float64

// Work gives for each ground whether the left-over may go on it, thinned as asked, and the least water with which it may. In sums: one part
// with w of water lays 1 / (1 + w) of its strength, so that 1 to 10 lays 1/11, 9.1 %; over ground that got the full rate that makes 109 %
// of it, and so it belongs on labelled ground that is untreated or was treated with 91 % of the most or less.
func (q UseUpAsk) Work() (UseUp, error) {
	if err := checkVolume("What is left", q.Left); err != nil {
		return UseUp{}, err
	}
	if err := checkDelivery("The delivery rate", q.Delivery); err != nil {
		return UseUp{}, err
	}
	if err := checkHeld(q.Holds); err != nil {
		return UseUp{}, err
	}
	if !(q.Thin >= 0) || q.Thin > 1000 {
		return UseUp{}, measure.Troublef("Give 0 to 1,000 parts of water.", "It is to be thinned with %s parts of water.", figure(q.Thin))
	}
	out := UseUp{Share: 1 / (1 + q.Thin)}
	out.Volume = measure.Volume(math.RoundToEven(math.Min(float64(q.Left)*(1+q.Thin), largest)))
	out.Area = q.Delivery.AreaFor(out.Volume)
	var s steps
	s.say("1 part with ", figure(q.Thin), " of water lays ", percent(out.Share), " of its strength")
	s.say(q.Left.Text(), " gal become ", out.Volume.Text(), " gal, at ", laying(q.Delivery), " = ", out.Area.Text(), " sq ft")
	for _, g := range q.Grounds {
		out.Places = append(out.Places, q.place(g, out, &s))
	}
	out.Steps = s
	return out, nil
}

// place judges one ground.
func (q UseUpAsk) place(g Ground, all UseUp, s *steps) UseUpPlace {
	p := UseUpPlace{Name: g.Name, May: true, LeastTo: measure.Known(Thins(0))}
	for _, h := range q.Holds {
		if h.Amount.N == 0 {
			continue
		}
		q.product(h, g, all.Share, &p)
	}
	if p.May {
		p.Area = min(all.Area, g.Area)
		p.Takes = min(measure.Volume(float64(q.Delivery.Volume(p.Area))*all.Share), q.Left)
		s.say(g.Name, ": ", p.Takes.Text(), " gal of it on ", p.Area.Text(), " sq ft")
		return p
	}
	s.say(g.Name, ": not there; ", p.Why)
	return p
}

// product lowers what a ground takes to what one product allows.
func (q UseUpAsk) product(h Held, g Ground, share float64, p *UseUpPlace) {
	full := float64(measure.ConcentrationOf(h.Amount, q.Left)) * q.Delivery.V
	c, listed := g.of(h.Product)
	if !listed || c.Not != "" {
		if p.May || p.LeastTo.Known {
			p.Why, p.Limit = h.Product+" "+c.Not, h.Product
			if c.Not == "" {
				p.Why = h.Product + " may not go there"
			}
		}
		p.May, p.LeastTo = false, measure.Maybe[Thins]{}
		return
	}
	if c.Residue {
		return
	}
	room, by := c.room()
	if !room.Known {
		p.Unknown = append(p.Unknown, h.Product)
		return
	}
	if c.Most.Known && c.Most.V.V > 0 {
		ceiling := 1 - float64(full*share/c.Most.V.V)
		if !p.Ceiling.Known || ceiling < p.Ceiling.V {
			p.Ceiling = measure.Known(math.Max(ceiling, 0))
		}
	}
	if p.LeastTo.Known {
		switch {
		case room.V <= 0:
			p.LeastTo = measure.Maybe[Thins]{}
		case full/room.V-1 > float64(p.LeastTo.V):
			p.LeastTo.V = Thins(full/room.V - 1)
		}
	}
	if p.May && full*share > room.V*(1+hair) {
		p.May, p.Limit = false, h.Product
		lays, may := measure.Rate{V: full * share, Kind: h.Amount.Kind}, measure.Rate{V: room.V, Kind: h.Amount.Kind}
		p.Why = h.Product + " would lay " + lays.Text() + " more, and " + by + " leaves " + may.Text()
	}
}

func (g Ground) of(product string) (CanTake, bool) {
	for _, c := range g.Can {
		if c.Product == product {
			return c, true
		}
	}
	return CanTake{}, false
}

// RinsateIn is the most rinse water that may make up part of the water of a later mix of the same product.
func RinsateIn(water measure.Volume) measure.Volume {
	return measure.Volume(float64(water) * Practice(RinsateShare).Value / 100)
}
