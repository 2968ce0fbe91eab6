package tally

import (
	"example.com/tintline/core/measure"
)

// Document is the tally as JSON: keys end in their unit, figures are not rounded, no list is null.
type Document struct {
	From         string           `json:"from"`
	To           string           `json:"to"`
	Compartments []CompartmentRow `json:"compartments"`
	Mixes        []MixRow         `json:"mixes"`
	Products     []ProductRow     `json:"products"`
	Lawns        []LawnRow        `json:"lawns"`
	Applicators  []TankRow        `json:"applicators"`
	Hoppers      []HopperRow      `json:"hoppers"`
	With         []WithRow        `json:"by_applicator"`
	In           []HourRow        `json:"by_hour"`
	All          AllRow           `json:"all"`
}

// CompartmentRow is a compartment in the document.
type CompartmentRow struct {
	Letter      string   `json:"letter"`
	Start       float64  `json:"start_gal"`
	Loaded      float64  `json:"loaded_gal"`
	PushedIn    float64  `json:"pushed_in_gal"`
	Drawn       float64  `json:"drawn_gal"`
	Other       float64  `json:"other_gal"`
	Unexplained float64  `json:"unexplained_gal"`
	Left        float64  `json:"left_gal"`
	Gauge       *float64 `json:"gauge_gal"`
	ToLawns     float64  `json:"to_lawns_gal"`
}

// TankRow is an applicator's own tank in the document.
type TankRow struct {
	Name        string  `json:"name"`
	Start       float64 `json:"start_gal"`
	Loaded      float64 `json:"loaded_gal"`
	Filled      float64 `json:"filled_gal"`
	Drawn       float64 `json:"drawn_gal"`
	Other       float64 `json:"other_gal"`
	Unexplained float64 `json:"unexplained_gal"`
	Left        float64 `json:"left_gal"`
	ToLawns     float64 `json:"to_lawns_gal"`
}

// HopperRow is a spreader, or the hopper of another applicator, in the document; what it laid may have come from the
// bag in part.
type HopperRow struct {
	Name    string  `json:"name"`
	Start   float64 `json:"start_lb"`
	Loaded  float64 `json:"loaded_lb"`
	Spread  float64 `json:"spread_lb"`
	Other   float64 `json:"other_lb"`
	Left    float64 `json:"left_lb"`
	ToLawns float64 `json:"to_lawns_lb"`
}

// WithRow is what one applicator laid.
type WithRow struct {
	Applicator string  `json:"applicator"`
	Volume     float64 `json:"gal"`
	Mass       float64 `json:"lb"`
	Area       float64 `json:"area_sqft"`
}

// HourRow is what was laid in one hour of the clock, from its number on.
type HourRow struct {
	Hour   int     `json:"hour"`
	Volume float64 `json:"gal"`
	Mass   float64 `json:"lb"`
	Area   float64 `json:"area_sqft"`
}

// MixRow is a mix in the document.
type MixRow struct {
	Mix    string  `json:"mix"`
	Volume float64 `json:"gal"`
	Area   float64 `json:"area_sqft"`
}

// ProductRow is a product in the document; the unit is nl or ng.
type ProductRow struct {
	Product string   `json:"product"`
	Amount  int64    `json:"amount"`
	Unit    string   `json:"unit"`
	Per1000 *float64 `json:"per_1000_sqft"`
}

// LawnRow is a lawn in the document.
type LawnRow struct {
	Lawn   string    `json:"lawn"`
	Volume float64   `json:"gal"`
	Mass   float64   `json:"lb"`
	Area   float64   `json:"area_sqft"`
	Zones  []ZoneRow `json:"zones"`
}

// ZoneRow is a zone in the document.
type ZoneRow struct {
	Zone     string       `json:"zone"`
	Grass    string       `json:"grass"`
	Volume   float64      `json:"gal"`
	Mass     float64      `json:"lb"`
	Area     float64      `json:"area_sqft"`
	Products []ProductRow `json:"products"`
}

// AllRow is the bottom line of the document.
type AllRow struct {
	Volume float64 `json:"gal"`
	Mass   float64 `json:"lb"` // of what was spread
	Area   float64 `json:"area_sqft"`
	Lawns  int     `json:"lawns"`
	Hours  float64 `json:"hours"`
}

// Document arranges the tally for JSON.
func (t *Tally) Document() Document {
	d := Document{
		From: t.From, To: t.To, All: t.All(),
		Compartments: []CompartmentRow{}, Mixes: []MixRow{}, Products: productRows(t.Meant()), Lawns: []LawnRow{},
		Applicators: []TankRow{}, Hoppers: []HopperRow{},
		With: []WithRow{}, In: []HourRow{},
	}
	for _, w := range t.With {
		d.With = append(d.With, WithRow{w.Applicator, w.Volume.Gallons(), w.Mass.Pounds(), w.Area.SquareFeet()})
	}
	for _, w := range t.In {
		d.In = append(d.In, HourRow{w.Hour, w.Volume.Gallons(), w.Mass.Pounds(), w.Area.SquareFeet()})
	}
	for _, c := range t.Compartments {
		f := c.Flows
		row := CompartmentRow{
			Letter: c.Letter, Start: f.Start.Gallons(), Loaded: f.Loaded.Gallons(), PushedIn: f.PushedIn.Gallons(),
			Drawn: f.Drawn.Gallons(), Other: (-f.Other).Gallons(), Unexplained: f.Unexplained.Gallons(),
			Left: f.Left().Gallons(), ToLawns: c.ToLawns.Gallons(),
		}
		if c.Gauge.Known {
			gal := c.Gauge.V.Gallons()
			row.Gauge = &gal
		}
		d.Compartments = append(d.Compartments, row)
	}
	for _, m := range t.Mixes {
		d.Mixes = append(d.Mixes, MixRow{m.Mix, m.Volume.Gallons(), m.Area.SquareFeet()})
	}
	for _, l := range t.Lawns {
		row := LawnRow{l.Lawn, l.Volume.Gallons(), l.Mass.Pounds(), l.Area.SquareFeet(), []ZoneRow{}}
		for _, z := range l.Zones {
			row.Zones = append(row.Zones, ZoneRow{z.Zone, z.Grass, z.Volume.Gallons(), z.Mass.Pounds(), z.Area.SquareFeet(), productRows(z.Products)})
		}
		d.Lawns = append(d.Lawns, row)
	}
	for _, a := range t.Tanks {
		f := a.Flows
		d.Applicators = append(d.Applicators, TankRow{
			a.Name, f.Start.Gallons(), f.Loaded.Gallons(), f.PushedIn.Gallons(), f.Drawn.Gallons(), (-f.Other).Gallons(),
			f.Unexplained.Gallons(), f.Left().Gallons(), a.ToLawns.Gallons(),
		})
	}
	for _, h := range t.Hoppers {
		f := h.Flows
		d.Hoppers = append(d.Hoppers, HopperRow{h.Name, f.Start.Pounds(), f.Loaded.Pounds(), f.Spread.Pounds(), (-f.Other).Pounds(), f.Left().Pounds(), h.ToLawns.Pounds()})
	}
	return d
}

// All is the bottom line.
func (t *Tally) All() AllRow {
	return AllRow{t.Volume.Gallons(), t.Mass.Pounds(), t.Area.SquareFeet(), len(t.Lawns), float64(t.Seconds) / 3600}
}

func productRows(list []Product) []ProductRow {
	out := []ProductRow{}
	for _, p := range list {
		out = append(out, ProductRow{p.Product, p.Amount.N, UnitOf(p.Amount.Kind), p.Per1000().Pointer()})
	}
	return out
}

// UnitOf is the exact unit of a kind of product, as keys and lists name it.
func UnitOf(k measure.Kind) string {
	if k == measure.Dry {
		return "ng"
	}
	return "nl"
}
