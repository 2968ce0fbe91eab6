package core

import (
	"math"
	"testing"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// Worked examples of nitrogen, as published; the figures are those of the exact arithmetic where a source rounds.
func TestNitrogenWorkedExamples(t *testing.T) {
	const (
		nebraska = "University of Nebraska-Lincoln, Lawn Fertilizer Calculations: 3.57 lb of 28-3-6 for 1 lb of nitrogen"
		georgia  = "University of Georgia (C. Waltz), Fertilizer Calculations for Attractive, Healthy Lawns"
		louisia  = "LSU AgCenter, Drop Spreader Calibration: 1.5 lb of 20-0-0 on 300 sq ft for 1 lb of nitrogen"
		rutgers  = "Rutgers University (Snyder Farm), fertilizer spreader calibration: two crossing passes at 0.45 lb are 0.9 lb"
		purdue   = "Purdue Extension (J. Camberato), Basic calculations for nitrogen fertilizers, 2023: 2.97 lb of nitrogen in a gallon of 28 per cent at 10.6 lb/gal"
		vineyard = "Central Coast Vineyard Team, Liquid Fertilizer Calculations: 14.03 gal per acre of 10-10-10 at 10.69 lb/gal for 15 lb of nitrogen"
	)
	for _, row := range []struct {
		source  string
		percent float64
		density float64 // 0: dry
		passes  int
		rate    float64 // of the product, in one pass
		unit    string
		want    float64 // of nitrogen
		in      string
	}{
		{nebraska, 28, 0, 1, 3.571429, "lb_per_1000_sqft", 1, "lb_per_1000_sqft"},
		{georgia, 10, 0, 1, 10, "lb_per_1000_sqft", 1, "lb_per_1000_sqft"},
		{georgia, 12, 0, 1, 8.333333, "lb_per_1000_sqft", 1, "lb_per_1000_sqft"},
		{georgia, 5, 0, 1, 20, "lb_per_1000_sqft", 1, "lb_per_1000_sqft"},
		{georgia, 16, 0, 1, 6.25, "lb_per_1000_sqft", 1, "lb_per_1000_sqft"},
		{louisia, 20, 0, 1, 1.5 / 0.3, "lb_per_1000_sqft", 1, "lb_per_1000_sqft"},
		{rutgers, 18, 0, 2, 0.45 / 0.18, "lb_per_1000_sqft", 0.9, "lb_per_1000_sqft"},
		{purdue, 28, 10.6, 1, 1, "gal_per_acre", 2.968, "lb_per_acre"},
		{purdue + "; 30 gal per acre are 89.04 lb", 28, 10.6, 1, 30, "gal_per_acre", 89.04, "lb_per_acre"},
		{vineyard, 10, 10.69, 1, 14.03181, "gal_per_acre", 15, "lb_per_acre"},
	} {
		e := label.Entry{Form: measure.Dry, Nitrogen: Known(row.percent)}
		if row.density > 0 {
			e.Form, e.Density = measure.Liquid, Known(row.density)
		}
		b := yearBook{NewBook(1), t}
		b.log(twoTanks())
		b.log(&Product{ProductName: "F", Label: e})
		b.log(&Lawn{LawnName: "L", Zones: []Zone{{Name: "front", Grass: "tall_fescue", Area: 4 * measure.ThousandSquareFeet}}})
		b.log(&DayOpened{Date: "2026-05-01", Operator: "R. Example"})
		rate, err := measure.RateUnit(row.rate, row.unit)
		if err != nil {
			t.Fatal(err)
		}
		all := 4 * measure.ThousandSquareFeet
		for range row.passes - 1 {
			b.log(&Spread{Lawn: "L", Applicator: "spreader", Product: "F", By: ByWeight, Amount: rate.Over(all), Area: Known(all)})
		}
		got, _ := b.Season("L", "front", "2026-05-01", []Went{b.Would("2026-05-01", "L", "front", 0, rate, all)}).NitrogenNow()
		lb, err := got.V.In(row.in)
		if err != nil || !got.Known || math.Abs(lb-row.want) > row.want*1e-6 {
			t.Errorf("%s: %.6f %s, want %.6f (%v)", row.source, lb, row.in, row.want, err)
		}
	}
}

// 1,250 lb of 5-10-20 hold 62.5 lb of nitrogen: Turfgrass Mathematics Review/Practice Worksheet for Certified Turfgrass
// Professional testing.
func TestNitrogenOfAnAmount(t *testing.T) {
	e := label.Entry{Form: measure.Dry, Nitrogen: Known(5.0)}
	if got := 1250 * e.NitrogenPerProduct().V; math.Abs(got-62.5) > 1e-9 {
		t.Errorf("%g lb", got)
	}
	liquid := label.Entry{Form: measure.Liquid, Nitrogen: Known(28.0)}
	if liquid.NitrogenPerProduct().Known {
		t.Error("a liquid without a density: its nitrogen by volume is not known")
	}
}
