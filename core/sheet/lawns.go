package sheet

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

var lawnColumns = []column{
	{Column: Column{Name: "lawn", Words: "what the lawn is called; rows with the same name are one lawn", Example: "1 Sample Street", Required: true}, reader: name("lawn")},
	{Column: Column{Name: "customer", Words: "whose lawn it is, on one of its rows", Example: "A. Sample"}, reader: text()},
	{Column: Column{Name: "address", Words: "where it is, on one of its rows", Example: "1 Sample Street, Exampleton"}, reader: text()},
	{Column: Column{Name: "phone", Words: "the customer's phone, on one of its rows", Example: "555-0101"}, reader: text()},
	{Column: Column{Name: "gate", Words: "how to get in, on one of its rows", Example: "north side, lift the latch"}, reader: text()},
	{Column: Column{Name: "dog", Words: "what is known of it, on one of its rows; empty: none known", Example: "small, barks"}, reader: text()},
	{Column: Column{Name: "notes", Words: "anything else to know there, on one of its rows", Example: "ring first"}, reader: text()},
	{Column: Column{Name: "known_since", Words: "the date from which all that was laid there is in the book, on one of its rows; empty: from its first entry on", Example: "2026-01-01"}, reader: date()},
	{Column: Column{Name: "zone", Words: "a part of the lawn with one grass", Example: "front", Required: true}, reader: name("zone")},
	{Column: Column{Name: "grass", Words: "the grass of the zone", Example: "tall fescue", Required: true}, reader: grass()},
	{Column: Column{Name: "area_sqft", Words: "the measured area of the zone", Example: "6200", Required: true}, reader: squareFeet()},
	{Column: Column{Name: "hazards", Words: "what to look out for in the zone", Example: "pond; open drain"}, reader: texts()},
	{Column: Column{Name: "price_usd", Words: "what one treatment of the zone earns", Example: "68.50"}, reader: dollars()},
	{Column: Column{Name: "growth", Words: "how the grass stands; empty: not said", Example: label.Growing}, reader: oneOf(label.Growths()...)},
	{Column: Column{Name: "growth_since", Words: "since when, of a new turf the date on which it was seeded or sodded", Example: "2026-05-01"}, reader: date()},
	{Column: Column{Name: "cultivar", Words: "the cultivar of the grass, where it is known", Example: "Sampleton"}, reader: text()},
	{Column: Column{Name: "sites", Words: "what lies in or beside the zone for which a spraying may be wrong, with how far off it is or when", Example: "water 20 ft; well; seeding 2026-09-10"}, reader: sites()},
	{Column: Column{Name: "mix", Words: "the mix that is meant for the zone where several may go on it; empty: none in particular", Example: "example cool weed mix"}, reader: name("mix")},
	{Column: Column{Name: "latitude", Words: "where it is, in degrees, north above 0, on one of its rows; for the miles of a day's plan", Example: "33.7701"}, reader: number("degrees", -core.MostLatitude, core.MostLatitude)},
	{Column: Column{Name: "longitude", Words: "where it is, in degrees, west below 0, on one of its rows", Example: "-84.3902"}, reader: number("degrees", -core.MostLongitude, core.MostLongitude)},
	{Column: Column{Name: "window_from", Words: "the time of day from which a visit may begin, on one of its rows; empty: any", Example: "09:00"}, reader: clock()},
	{Column: Column{Name: "window_to", Words: "the time of day up to which a visit may begin, on one of its rows; empty: any", Example: "11:30"}, reader: clock()},
	{Column: Column{Name: "visit_price_usd", Words: "what a visit is charged, whatever it treats, on one of its rows", Example: "95"}, reader: dollars()},
	{Column: Column{Name: "price_minimum_usd", Words: "what a visit is charged at least, on one of its rows", Example: "60"}, reader: dollars()},
	{Column: Column{Name: "price_included_sqft", Words: "the area that the minimum pays for, on one of its rows", Example: "5000"}, reader: squareFeet()},
	{Column: Column{Name: "price_per_1000_sqft_usd", Words: "what each 1,000 sq ft beyond it is charged, on one of its rows", Example: "6.50"}, reader: dollars()},
	{Column: Column{Name: "zip", Words: "ZIP code of the site for the application record, on one of its rows", Example: "00000"}, reader: text()},
	{Column: Column{Name: "town", Words: "town of the site, on one of its rows", Example: "Exampleton"}, reader: text()},
	{Column: Column{Name: "county", Words: "county of the site, on one of its rows", Example: "Sample County"}, reader: text()},
	{Column: Column{Name: "customer_address", Words: "where the customer lives, if not there, on one of its rows", Example: "9 Example Road, Sampleville"}, reader: text()},
	{Column: Column{Name: "round_days", Words: "days from the lawn's last round to its next, on one of its rows; empty: as the settings have it", Example: "42"}, reader: number("days", core.FewestRoundDays, core.MostRoundDays)},
	{Column: Column{Name: "soil_test", Words: "date of the zone's last soil test", Example: "2025-10-02"}, reader: date()},
}

// lawnTexts are the columns that are about the whole lawn.
var lawnTexts = []string{"customer", "address", "phone", "gate", "dog", "notes", "known_since", "window_from", "window_to", "zip", "town", "county", "customer_address"}

// readLawns makes a lawn of the rows that name it.
func readLawns(s *reading) {
	at := map[string]int{}
	zones := map[string]named{}
	for _, r := range s.rows {
		ok := r.sound("")
		lawn := value[string](r, "lawn")
		zone := core.Zone{
			Name: value[string](r, "zone"), Grass: value[string](r, "grass"), Area: value[measure.Area](r, "area_sqft"),
			Hazards: value[[]string](r, "hazards"), Price: maybe[measure.Money](r, "price_usd"),
			Growth: value[string](r, "growth"), GrowthSince: value[string](r, "growth_since"), Cultivar: value[string](r, "cultivar"),
			Sites: value[[]core.Site](r, "sites"), Mix: value[string](r, "mix"), SoilTest: value[string](r, "soil_test"),
		}
		s.keepZone(lawn, &zone)
		said := map[string]string{}
		for _, column := range lawnTexts {
			said[column] = value[string](r, column)
		}
		if !ok || lawn == "" {
			continue
		}
		i, there := at[lawn]
		if !there {
			i, at[lawn], zones[lawn] = len(s.facts), len(s.facts), named{}
			f := &core.Lawn{LawnName: lawn}
			s.keepLawn(f)
			s.facts = append(s.facts, made{fact: f, cut: func(n int) core.Fact {
				c := *f
				c.Zones = f.Zones[:n]
				return &c
			}})
		}
		f := s.facts[i].fact.(*core.Lawn)
		r.onePlace("latitude", &f.Latitude, lawn)
		r.onePlace("longitude", &f.Longitude, lawn)
		onePrice(r, "visit_price_usd", &f.Price, lawn)
		onePrice(r, "price_minimum_usd", &f.PriceMinimum, lawn)
		onePrice(r, "price_included_sqft", &f.PriceIncluded, lawn)
		onePrice(r, "price_per_1000_sqft_usd", &f.PricePer1000, lawn)
		r.onePlace("round_days", &f.RoundDays, lawn)
		for i, kept := range textsOf(f) {
			if !s.has(lawnTexts[i]) {
				continue
			}
			r.one(lawnTexts[i], said[lawnTexts[i]], kept, lawn)
		}
		if zones[lawn].once(r, "zone", "zone of "+lawn, zone.Name) {
			f.Zones = append(f.Zones, zone)
			s.facts[i].rows = append(s.facts[i].rows, r)
		}
	}
}

// textsOf are the texts of a lawn, as lawnTexts has them.
func textsOf(f *core.Lawn) []*string {
	return []*string{&f.Customer, &f.Address, &f.Phone, &f.Gate, &f.Dog, &f.Notes, &f.KnownSince, &f.WindowFrom, &f.WindowTo, &f.ZIP, &f.Town, &f.County, &f.CustomerAddress}
}

// keepLawn keeps of a lawn that the book has what the file has no columns for.
func (s *reading) keepLawn(f *core.Lawn) {
	old := s.book.Lawn(f.LawnName)
	if old == nil {
		return
	}
	if !s.has("latitude") && !s.has("longitude") {
		f.Latitude, f.Longitude = old.Latitude, old.Longitude
	}
	if !s.has("round_days") {
		f.RoundDays = old.RoundDays
	}
	if !s.has("visit_price_usd") {
		f.Price = old.Price
	}
	if !s.has("price_minimum_usd") {
		f.PriceMinimum = old.PriceMinimum
	}
	if !s.has("price_included_sqft") {
		f.PriceIncluded = old.PriceIncluded
	}
	if !s.has("price_per_1000_sqft_usd") {
		f.PricePer1000 = old.PricePer1000
	}
	was := textsOf(old)
	for i, kept := range textsOf(f) {
		if !s.has(lawnTexts[i]) {
			*kept = *was[i]
		}
	}
}

// keepZone keeps of a zone that the book has what the file has no columns for.
func (s *reading) keepZone(lawn string, z *core.Zone) {
	l := s.book.Lawn(lawn)
	if l == nil {
		return
	}
	old, there := l.Zone(z.Name)
	if !there {
		return
	}
	for _, f := range []struct {
		column string
		keep   func()
	}{
		{"hazards", func() { z.Hazards = old.Hazards }},
		{"price_usd", func() { z.Price = old.Price }},
		{"growth", func() { z.Growth, z.GrowthSince = old.Growth, old.GrowthSince }},
		{"cultivar", func() { z.Cultivar = old.Cultivar }},
		{"sites", func() { z.Sites = old.Sites }},
		{"mix", func() { z.Mix = old.Mix }},
		{"soil_test", func() { z.SoilTest = old.SoilTest }},
	} {
		if !s.has(f.column) {
			f.keep()
		}
	}
}

// onePlace keeps a figure that several rows may say of one lawn, and refuses two answers.
func (r *row) onePlace(column string, kept *core.Maybe[float64], of string) {
	said := maybe[float64](r, column)
	switch {
	case !said.Known:
	case kept.Known && kept.V != said.V:
		r.add(Trouble{
			Line: r.line, Column: column, What: fmt.Sprintf("%s differs from %g, which stands for %s already.", quote(r.cells[column]), kept.V, quote(of)),
			Allowed: "the same on each row of it, or nothing",
		})
	default:
		*kept = said
	}
}

// one keeps what several rows may say of one thing, and refuses two answers.
func (r *row) one(column, said string, kept *string, of string) {
	if *kept == "" {
		*kept = said
	}
	if said != "" && said != *kept {
		r.add(Trouble{
			Line: r.line, Column: column, What: fmt.Sprintf("%s differs from %s, which stands for %s already.", quote(said), quote(*kept), of),
			Allowed: "the same on each row of it, or nothing",
		})
	}
}

// onePrice keeps what several rows may say of one lawn's price, and refuses two answers.
func onePrice[T measure.Money | measure.Area](r *row, column string, kept *core.Maybe[T], of string) {
	said := maybe[T](r, column)
	switch {
	case !said.Known:
	case kept.Known && kept.V != said.V:
		r.add(Trouble{
			Line: r.line, Column: column, What: fmt.Sprintf("%s differs from what stands for %s already.", quote(r.cells[column]), quote(of)),
			Allowed: "the same on each row of it, or nothing",
		})
	default:
		*kept = said
	}
}
