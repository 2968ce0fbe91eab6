package batch

import (
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// LoadAsk is a load that is asked for: gallons, or the area that it is for.
type LoadAsk struct {
	Parts    []Part
	Delivery measure.Rate                  // of the applicator that it is made up for
	Volume   measure.Volume                // 0: by area
	Area     measure.Area                  // 0: by volume
	Room     measure.Maybe[measure.Volume] // of the tank; unknown: not asked about
	Order    label.MixingOrder             // of adding; none: the usual one
}

// Load is what goes into the tank. The doses stand in the order in which they go in.
type Load struct {
	Volume measure.Volume
	Area   measure.Area // that it covers
	Doses  []Dose
	Water  measure.Volume
	Adding label.Adding // the order, with what is to be heeded
	Steps  []Step
}

// Work gives the load: area x rate for each product, area x delivery rate for the mix, and water for the rest. It refuses a rate in the
// wrong kind of unit, more than there is room for, and what is nothing or less.
func (q LoadAsk) Work() (Load, error) {
	if err := q.check(); err != nil {
		return Load{}, err
	}
	out := Load{Volume: q.Volume, Area: q.Area}
	var s steps
	if q.Volume == 0 {
		out.Volume = q.Delivery.Volume(q.Area)
		s.say(q.Area.Text(), " sq ft at ", laying(q.Delivery), " = ", out.Volume.Text(), " gal")
	} else {
		out.Area = q.Delivery.AreaFor(q.Volume)
		s.say(q.Volume.Text(), " gal at ", laying(q.Delivery), " = ", out.Area.Text(), " sq ft")
	}
	if err := checkVolume("The load", out.Volume); err != nil {
		return Load{}, err
	}
	if err := q.fits(out.Volume); err != nil {
		return Load{}, err
	}
	parts, adding := inOrder(q.Parts, q.Order)
	out.Adding = adding
	for _, p := range parts {
		a := p.Rate.Over(out.Area)
		out.Doses = append(out.Doses, Dose{p.Product, a, measure.ConcentrationOf(a, out.Volume)})
		s.say(p.Product, ": ", p.Rate.Text(), " on ", out.Area.Text(), " sq ft = ", a.Text(), ", ", aGallon(measure.ConcentrationOf(a, out.Volume), a.Kind))
	}
	product := liquids(out.Doses)
	if product > out.Volume {
		return Load{}, measure.Troublef("Lower the rates, or give a higher delivery rate.",
			"The products alone are %s gal; the load is %s gal in all.", product.Text(), out.Volume.Text())
	}
	out.Water = out.Volume - product
	s.water(out.Volume, product, out.Water)
	out.Steps = s
	return out, nil
}

// water says what the water comes to.
func (s *steps) water(volume, product, water measure.Volume) {
	if product == 0 {
		s.say("water: ", water.Text(), " gal; what is dry takes no room in the sum")
		return
	}
	s.say("water: ", volume.Text(), " gal less ", measure.LiquidAmount(product).Text(), " of liquid product = ", water.Text(), " gal")
}

func (q LoadAsk) check() error {
	if err := checkDelivery("The delivery rate", q.Delivery); err != nil {
		return err
	}
	switch {
	case q.Volume == 0 && q.Area == 0:
		return measure.Troublef("Give gallons, or the area that it is for.", "How large the load is to be is not said.")
	case q.Volume != 0 && q.Area != 0:
		return measure.Troublef("Give one of the two.", "The load is given as %s gal and as %s sq ft.", q.Volume.Text(), q.Area.Text())
	case q.Area < 0 || q.Area > largest:
		return measure.Troublef("Give more than 0 sq ft.", "The area is %s sq ft.", q.Area.Text())
	case q.Area == 0:
		if err := checkVolume("The load", q.Volume); err != nil {
			return err
		}
	}
	var names []string
	for _, p := range q.Parts {
		names = append(names, p.Product)
		if err := checkRate(p.Product, p.Label.Form, p.Rate); err != nil {
			return err
		}
	}
	return once(names)
}

// fits refuses what the tank has no room for, with the room and what the largest load would treat.
func (q LoadAsk) fits(v measure.Volume) error {
	if !q.Room.Known || v <= q.Room.V {
		return nil
	}
	if q.Room.V <= 0 {
		return measure.Troublef("Draw it down first.", "The load is %s gal, and the tank has no room.", v.Text())
	}
	return measure.Troublef("Load at most "+q.Room.V.Text()+" gal, which treats "+q.Delivery.AreaFor(q.Room.V).Text()+" sq ft.",
		"The load is %s gal, but there is room for %s gal.", v.Text(), q.Room.V.Text())
}

// inOrder puts products into the order in which they go into the tank.
func inOrder(parts []Part, order label.MixingOrder) ([]Part, label.Adding) {
	var list []label.ToAdd
	for _, p := range parts {
		list = append(list, label.ToAdd{Name: p.Product, Entry: p.Label})
	}
	adding := label.OrderOf(order, list...)
	out := make([]Part, 0, len(parts))
	for _, step := range adding.Steps {
		for _, p := range parts {
			if p.Product == step.Name {
				out = append(out, p)
			}
		}
	}
	return out, adding
}
