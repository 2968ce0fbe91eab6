package batch

import (
	"math"
	"testing"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// entryOf is a label entry of a product that is measured as a rate is.
func entryOf(k measure.Kind) label.Entry { return label.Entry{Form: k} }

func rateIn(t *testing.T, f float64, unit string) measure.Rate {
	t.Helper()
	r, err := measure.RateUnit(f, unit)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// partOf is a product at a rate.
func partOf(t *testing.T, name string, f float64, unit string) Part {
	r := rateIn(t, f, unit)
	return Part{Product: name, Label: entryOf(r.Kind), Rate: r}
}

// near tells whether a figure agrees with a published one to six digits.
func near(got, want float64) bool { return math.Abs(got-want) <= 5e-7*math.Abs(want) }

// What was published of loads, through the function that screen and command use; each row names its source.
func TestPublishedLoads(t *testing.T) {
	gal := func(f float64) measure.Volume { return measure.Gallons(f) }
	for _, row := range []struct {
		source  string
		rate    float64
		unit    string
		carrier float64
		per     string
		volume  measure.Volume
		in      string
		want    float64
	}{
		{"Albany County (Wyoming) Weed & Pest: 32 fl oz/acre at 20 GPA, 20 gal", 32, "fl_oz_per_acre", 20, "gal_per_acre", gal(20), "fl_oz", 32},
		{"University of Georgia: 4 pt/acre at 25 GPA, 2 gal; printed 5.1", 4, "pt_per_acre", 25, "gal_per_acre", gal(2), "fl_oz", 5.12},
		{"Wyoming Weed and Pest Council: 1 qt/acre at 40 GPA, 2 gal", 1, "qt_per_acre", 40, "gal_per_acre", gal(2), "fl_oz", 1.6},
		{"Peanut tour, University of Georgia: 1 qt/acre at 10 GPA, 100 gal", 1, "qt_per_acre", 10, "gal_per_acre", gal(100), "gal", 2.5},
	} {
		got, err := LoadAsk{Parts: []Part{partOf(t, "Example", row.rate, row.unit)}, Delivery: rateIn(t, row.carrier, row.per), Volume: row.volume}.Work()
		if err != nil {
			t.Errorf("%s: %v", row.source, err)
			continue
		}
		f, err := got.Doses[0].Amount.In(row.in)
		if err != nil || !near(f, row.want) {
			t.Errorf("%s: %v %s, want %v (%v)", row.source, f, row.in, row.want, err)
		}
		if got.Water+liquids(got.Doses) != row.volume || len(got.Steps) == 0 {
			t.Errorf("%s: %v of water", row.source, got.Water)
		}
	}
}

func TestLoadByArea(t *testing.T) {
	got, err := LoadAsk{
		Parts: []Part{partOf(t, "Example Warm", 2, "fl_oz_per_1000_sqft"), partOf(t, "Example Dry", 0.5, "oz_per_1000_sqft")}, Delivery: measure.GalPer1000(1.5),
		Area: measure.SquareFeet(10_400), Room: measure.Known(measure.Gallons(20)),
	}.Work()
	if err != nil {
		t.Fatal(err)
	}
	if !near(got.Volume.Gallons(), 15.6) || got.Doses[0].Amount.Text() != "20.8 fl oz" || got.Doses[1].Amount.Text() != "5.20 oz" || !near(got.Water.Gallons(), 15.6-20.8/128) {
		t.Errorf("%+v", got)
	}
	want := []string{
		"10,400 sq ft at 1.50 gal per 1,000 sq ft = 15.6 gal",
		"Example Warm: 2.00 fl oz per 1,000 sq ft on 10,400 sq ft = 20.8 fl oz, 1.33 fl oz a gal",
		"Example Dry: 0.500 oz per 1,000 sq ft on 10,400 sq ft = 5.20 oz, 0.333 oz a gal",
		"water: 15.6 gal less 20.8 fl oz of liquid product = 15.4 gal",
	}
	for i, s := range got.Steps {
		if i >= len(want) || s.Says != want[i] {
			t.Errorf("step %d: %s", i, s.Says)
		}
	}
}

// A suspension goes in before what is dissolved, and what is to be heeded comes with it.
func TestLoadIsInTheOrderOfAdding(t *testing.T) {
	sl, wp := partOf(t, "Example Warm", 2, "fl_oz_per_1000_sqft"), partOf(t, "Example Powder", 1, "oz_per_1000_sqft")
	sl.Label.MixingClass, wp.Label.MixingClass = "sl", "wp"
	got, err := LoadAsk{Parts: []Part{sl, wp}, Delivery: measure.GalPer1000(1.5), Volume: measure.Gallons(15)}.Work()
	if err != nil || got.Doses[0].Product != "Example Powder" || got.Doses[1].Product != "Example Warm" || len(got.Adding.Steps) != 2 {
		t.Errorf("%+v %v", got.Doses, err)
	}
	own, err := label.ReadMixingOrder("sl wp")
	if err != nil {
		t.Fatal(err)
	}
	got, err = LoadAsk{Parts: []Part{sl, wp}, Delivery: measure.GalPer1000(1.5), Volume: measure.Gallons(15), Order: own}.Work()
	if err != nil || got.Doses[0].Product != "Example Warm" {
		t.Errorf("the operator's own order: %+v %v", got.Doses, err)
	}
}
