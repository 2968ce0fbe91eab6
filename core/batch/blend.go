package batch

import "example.com/tintline/core/measure"

// Liquid is a volume and what it holds.
type Liquid struct {
	Volume measure.Volume
	Holds  []Held
}

// BlendAsk is one liquid that is run into another.
type BlendAsk struct {
	A, B     Liquid
	Capacity measure.Maybe[measure.Volume] // of the tank that takes both; unknown: not asked about
	Delivery measure.Maybe[measure.Rate]   // of the applicator that is to lay it
}

// Blend is what results.
type Blend struct {
	Volume measure.Volume
	Holds  []BlendPart
	Area   measure.Area // that it covers, where the delivery rate is known
	Steps  []Step
}

// BlendPart is a product of a blend: how strong it was in each, and what it is in both.
type BlendPart struct {
	Held
	A, B, Both measure.Concentration
	Rate       measure.Maybe[measure.Rate] // that it is laid with
}

// Work adds both up (mass balance). More than the tank holds is refused.
func (q BlendAsk) Work() (Blend, error) {
	for _, l := range []Liquid{q.A, q.B} {
		if err := checkVolume("One of the two", l.Volume); err != nil {
			return Blend{}, err
		}
		if err := checkHeld(l.Holds); err != nil {
			return Blend{}, err
		}
	}
	out := Blend{Volume: q.A.Volume + q.B.Volume}
	if q.Capacity.Known && out.Volume > q.Capacity.V {
		return Blend{}, measure.Troublef("Run over at most "+max(q.Capacity.V-q.A.Volume, 0).Text()+" gal.", "Both are %s gal, but the tank holds %s gal.", out.Volume.Text(), q.Capacity.V.Text())
	}
	if q.Delivery.Known {
		if err := checkDelivery("The delivery rate", q.Delivery.V); err != nil {
			return Blend{}, err
		}
		out.Area = q.Delivery.V.AreaFor(out.Volume)
	}
	var s steps
	s.say(q.A.Volume.Text(), " gal and ", q.B.Volume.Text(), " gal = ", out.Volume.Text(), " gal")
	for _, h := range together(q.A.Holds, q.B.Holds) {
		b := BlendPart{Held: h, A: strengthIn(q.A, h.Product), B: strengthIn(q.B, h.Product)}
		b.Both = measure.ConcentrationOf(h.Amount, out.Volume)
		if q.Delivery.Known {
			b.Rate = measure.Known(measure.Rate{V: float64(b.Both) * q.Delivery.V.V, Kind: h.Amount.Kind})
		}
		out.Holds = append(out.Holds, b)
		words := ""
		if b.Rate.Known {
			words = ", laid at " + b.Rate.V.Text()
		}
		s.say(h.Product, ": ", h.Amount.Text(), " in ", out.Volume.Text(), " gal = ", aGallon(b.Both, h.Amount.Kind), " (it was ", aGallon(b.A, h.Amount.Kind), " and ", aGallon(b.B, h.Amount.Kind), ")", words)
	}
	out.Steps = s
	return out, nil
}

// together adds up what two liquids hold, in the order of the first and then of the second.
func together(a, b []Held) []Held {
	out := append([]Held(nil), a...)
next:
	for _, h := range b {
		for i := range out {
			if out[i].Product == h.Product {
				out[i].Amount.N += h.Amount.N
				continue next
			}
		}
		out = append(out, h)
	}
	return out
}

func strengthIn(l Liquid, product string) measure.Concentration {
	for _, h := range l.Holds {
		if h.Product == product {
			return measure.ConcentrationOf(h.Amount, l.Volume)
		}
	}
	return 0
}
