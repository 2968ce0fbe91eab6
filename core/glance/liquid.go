package glance

import (
	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

func compartments(b *core.Book, at core.Moment) []Compartment {
	out := []Compartment{}
	with := b.Applicator(check.FirstApplicator(b))
	agitated := check.Agitated(b, at)
	for i := range b.Plumbing().Compartments {
		c := &b.Plumbing().Compartments[i]
		row := Compartment{
			Letter: string(c.Letter), Capacity: c.Capacity.Gallons(), Heel: c.Heel.Gallons(), Left: c.Liquid.Volume.Gallons(),
			Band: b.Band(&c.Tank).Gallons(), Products: products(b, c.Liquid), Agitated: agitated[i].Minutes.Pointer(),
		}
		if v, _, ok := b.Expected(c); ok {
			gal := v.Gallons()
			row.Expected = &gal
		}
		if set := b.RigCompartment(c.Letter); set != nil {
			row.Name = set.Name
		}
		if with != nil && with.Delivery.V > 0 {
			covers := with.Delivery.AreaFor(c.Drawable()).SquareFeet()
			row.Covers, row.With = &covers, text(with.Name)
		}
		out = append(out, row)
	}
	return out
}

// products lists what a liquid holds in a unit that people use.
func products(b *core.Book, l fluid.Liquid) []Product {
	out := []Product{}
	for _, h := range l.Holds {
		p := b.ProductByKey(h.Key)
		a := measure.Amount{N: h.N, Kind: p.Label.Form}
		row := Product{Product: p.ProductName, Unit: "fl_oz"}
		if a.Kind == measure.Dry {
			row.Unit = "oz"
		}
		row.Amount, _ = a.In(row.Unit) // both units are in the table
		if l.Volume > 0 {
			per := measure.ConcentrationOf(a, l.Volume).PerGallon(a.Kind)
			row.PerGal = &per
		}
		out = append(out, row)
	}
	return out
}

// origins are the gallons by the letter of the compartment that they were drawn from.
func origins(b *core.Book, l fluid.Liquid) map[string]float64 {
	sums := map[string]measure.Volume{}
	for _, f := range l.From {
		name := "water"
		if o := b.Origin(f.Key); o.Letter != 0 {
			name = string(o.Letter)
		} else if o.Mix != "" {
			name = "other"
		}
		sums[name] += measure.Volume(f.N)
	}
	out := map[string]float64{}
	for name, v := range sums {
		out[name] = v.Gallons()
	}
	return out
}

func cell(b *core.Book) Cell {
	l := b.Plumbing().Cell.Liquid
	return Cell{l.Volume.Gallons(), origins(b, l), products(b, l)}
}

// hoseName is the hose of the first applicator; empty means the first hose.
func hoseName(b *core.Book) string {
	if a := b.Applicator(check.FirstApplicator(b)); a != nil {
		return a.Hose
	}
	return ""
}

// hose lists what the hose of the first applicator holds, from the pump end to the nozzle.
func hose(b *core.Book) []Parcel {
	out := []Parcel{}
	h := b.Plumbing().Hose(hoseName(b))
	if h == nil {
		return out
	}
	for _, p := range h.FromPumpEnd() {
		out = append(out, Parcel{p.Volume.Gallons(), p.Air.Gallons(), origins(b, p.Liquid), products(b, p.Liquid)})
	}
	return out
}

func applicators(b *core.Book) []Applicator {
	out := []Applicator{}
	if b.Rig() == nil {
		return out
	}
	for _, a := range b.Rig().Applicators {
		row := Applicator{Name: a.Name, Products: []Product{}}
		if t := b.Plumbing().Tank(a.Name); t != nil {
			size, left := t.Capacity.Gallons(), t.Liquid.Volume.Gallons()
			row.Tank, row.Left, row.Products = &size, &left, products(b, t.Liquid)
		}
		if h := b.Plumbing().Hopper(a.Name); h != nil {
			size, left := h.Capacity.Pounds(), h.Mass().Pounds()
			row.Hopper, row.LeftDry = &size, &left
			row.Products = append(row.Products, products(b, fluid.Liquid{Holds: h.Holds})...)
		}
		out = append(out, row)
	}
	return out
}

func accounts(b *core.Book) []Account {
	out := []Account{}
	for _, a := range b.Plumbing().Accounts() {
		row := Account{Place: string(a.Place), Volume: int64(a.Volume), Products: []ExactShare{}}
		for i := range a.Products {
			p := b.ProductByKey(a.Products[i].Key)
			share := ExactShare{Product: p.ProductName}
			if p.Label.Form == measure.Dry {
				share.NG = &a.Products[i].N
			} else {
				share.NL = &a.Products[i].N
			}
			row.Products = append(row.Products, share)
		}
		out = append(out, row)
	}
	return out
}
