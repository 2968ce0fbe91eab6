package core

import "example.com/tintline/core/measure"

// Lawn sets up a property, or changes it.
type Lawn struct {
	LawnName string
	Customer string
	Address  string
	Zones    []Zone
	Gate     string // how to get in: where it is, which latch
	Dog      string // what is known of it; empty: none known
	Notes    string
	Phone    string
}

// Zone is a part of a lawn with one grass and a measured area.
type Zone struct {
	Name    string
	Grass   string
	Area    measure.Area
	Hazards []string
	Price   Maybe[measure.Money]
}

// Kind of the fact.
func (*Lawn) Kind() Kind { return kindLawn }

// Name of the fact.
func (*Lawn) Name() string { return "lawn" }

func (f *Lawn) fields(w walker) {
	w.text(1, "name", &f.LawnName)
	w.text(2, "customer", &f.Customer)
	w.text(3, "address", &f.Address)
	list(w, 4, "zones", &f.Zones, func(w walker, z *Zone) {
		w.text(1, "name", &z.Name)
		w.text(2, "grass", &z.Grass)
		w.area(3, "area", &z.Area)
		w.texts(4, "hazards", &z.Hazards)
		w.maybeMoney(5, "price", &z.Price)
	})
	w.text(5, "gate", &f.Gate)
	w.text(6, "dog", &f.Dog)
	w.text(7, "notes", &f.Notes)
	w.text(8, "phone", &f.Phone)
}

// Zone finds a zone by its name.
func (f *Lawn) Zone(name string) (Zone, bool) {
	for _, z := range f.Zones {
		if z.Name == name {
			return z, true
		}
	}
	return Zone{}, false
}

// Area is the sum of the zones.
func (f *Lawn) Area() measure.Area {
	var a measure.Area
	for _, z := range f.Zones {
		a += z.Area
	}
	return a
}

// ZoneNames lists the zones in order.
func (f *Lawn) ZoneNames() []string {
	var out []string
	for _, z := range f.Zones {
		out = append(out, z.Name)
	}
	return out
}
