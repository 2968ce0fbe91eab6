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
	// KnownSince is the date from which all that was laid there is in the book; empty: from its first entry on. What was
	// laid before is unknown, not nothing.
	KnownSince string
	// Latitude and Longitude are where it is, in degrees, north and east above 0; known both or neither.
	Latitude, Longitude Maybe[float64]
	// WindowFrom and WindowTo are the times of day, "09:00", between which a visit may begin; empty: any.
	WindowFrom, WindowTo string
	ZIP, Town, County    string
	CustomerAddress      string // where the customer lives, if not there
	// RoundDays are the days from its last round to its next; unknown: those of the settings.
	RoundDays Maybe[float64]
	// Price is what a visit is charged, whatever it treats; or PriceMinimum, which pays for PriceIncluded, and PricePer1000 for each 1,000 sq ft
	// beyond. Unknown: the prices of the zones hold, else those of the settings.
	Price         Maybe[measure.Money]
	PriceMinimum  Maybe[measure.Money]
	PriceIncluded Maybe[measure.Area]
	PricePer1000  Maybe[measure.Money]
}

// Zone is a part of a lawn with one grass and a measured area.
type Zone struct {
	Name    string
	Grass   string
	Area    measure.Area
	Hazards []string
	Price   Maybe[measure.Money]
	// Growth is the state of growth, one of label.Growths, and GrowthSince the date since which: of a new turf the date on
	// which it was seeded or sodded. Empty: never said.
	Growth      string
	GrowthSince string
	Cultivar    string
	Sites       []Site
	// Mix is the mix that is meant for it where several may go on it; empty: none in particular. It need not be in the book
	// yet: the plan of a day says so.
	Mix string
	// SoilTest is the date of its last soil test; empty: not said.
	SoilTest string
}

// Site is something in or beside a zone for which a spraying may be wrong: one of label.SiteKinds.
type Site struct {
	Kind string
	Feet Maybe[float64] // how far off it is
	Date string         // when it will be, or was
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
		w.later()
		w.text(6, "growth", &z.Growth)
		w.text(7, "growth_since", &z.GrowthSince)
		w.text(8, "cultivar", &z.Cultivar)
		list(w, 9, "sites", &z.Sites, func(w walker, s *Site) {
			w.text(1, "kind", &s.Kind)
			w.maybeNumber(2, "feet", &s.Feet)
			w.text(3, "date", &s.Date)
		})
		w.text(10, "mix", &z.Mix)
		w.text(11, "soil_test", &z.SoilTest)
	})
	w.later()
	w.text(5, "gate", &f.Gate)
	w.text(6, "dog", &f.Dog)
	w.text(7, "notes", &f.Notes)
	w.text(8, "phone", &f.Phone)
	w.text(9, "known_since", &f.KnownSince)
	w.maybeNumber(10, "latitude", &f.Latitude)
	w.maybeNumber(11, "longitude", &f.Longitude)
	w.text(12, "window_from", &f.WindowFrom)
	w.text(13, "window_to", &f.WindowTo)
	w.text(14, "zip", &f.ZIP)
	w.text(15, "town", &f.Town)
	w.text(16, "county", &f.County)
	w.text(17, "customer_address", &f.CustomerAddress)
	w.maybeNumber(18, "round_days", &f.RoundDays)
	w.maybeMoney(19, "visit_price", &f.Price)
	w.maybeMoney(20, "price_minimum", &f.PriceMinimum)
	w.maybeArea(21, "price_included", &f.PriceIncluded)
	w.maybeMoney(22, "price_per_1000_sqft", &f.PricePer1000)
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
