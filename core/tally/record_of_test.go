package tally

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core/label"
)

// recorded enters lines into a book with the rig, mixes and lawns of these tests, and gives the records of its day.
func recorded(t *testing.T, lines ...string) (*keeper, []Record) {
	t.Helper()
	k := newKeeper(t)
	for _, s := range lines {
		if err := k.enter(s); err != nil {
			t.Fatalf("%s: %v", s, err)
		}
	}
	return k, RecordsOf(k.b)
}

func rowOf(t *testing.T, list []Record, lawn, zone, product string) *Record {
	t.Helper()
	for i := range list {
		if r := &list[i]; r.Lawn == lawn && r.Zone == zone && r.Product == product {
			return r
		}
	}
	t.Fatalf("no record of %s on %s, %s", product, zone, lawn)
	return nil
}

const (
	loadedA = `{"fact":"loaded","into":"a","volume_gal":200,"mix":"W","for":"gun","place":"depot"}`
	fromA   = `{"fact":"lined_up","supply":["a"],"return":"a"}`
	flushed = `{"fact":"pushed_back","to":"waste/pail","volume_gal":20}`
	openDay = `{"fact":"day_opened","date":"2026-06-01","operator":"R. Example"}`
)

// TestTwoPiecesAreOneRow: what is laid by two pieces in one visit is one row, with the rate over the sum and both ways of laying; a
// second visit has rows of its own. 4 TAC 7.33 and ECL 33-1205 ask for each application.
func TestTwoPiecesAreOneRow(t *testing.T) {
	_, list := recorded(
		t, loadedA, openDay, fromA, flushed, `{"fact":"filled","applicator":"ride-on","volume_gal":6}`,
		`{"fact":"visit_begun","lawn":"418 Alder"}`,
		`{"fact":"sprayed","lawn":"418 Alder","zones":["front"],"applicator":"gun","by":"area","area_sqft":1500}`,
		`{"fact":"sprayed","lawn":"418 Alder","zones":["front"],"applicator":"ride-on","by":"area","area_sqft":2500}`,
		`{"fact":"visit_done","lawn":"418 Alder"}`,
		`{"fact":"visit_begun","lawn":"418 Alder"}`,
		`{"fact":"sprayed","lawn":"418 Alder","zones":["front"],"applicator":"gun","by":"area","area_sqft":500}`,
		`{"fact":"visit_done","lawn":"418 Alder"}`,
	)
	var got []string
	for i := range list {
		if r := &list[i]; r.Product == "warm weed" {
			got = append(got, fmt.Sprintf("%v %.0f %s %q", r.Pieces, r.Area.SquareFeet(), r.Applicator, r.Spot))
		}
	}
	if want := `[1 2] 4000 gun, ride-on ""; [3] 500 gun "yes"`; strings.Join(got, "; ") != want {
		t.Errorf("the rows are %s, not %s", strings.Join(got, "; "), want)
	}
}

// TestLoadOfAPiece: a load that stood overnight, what was filled from it into a tank of its own, and the order of lawns (4 TAC 7.33;
// ATCP 29.21 asks where it was mixed).
func TestLoadOfAPiece(t *testing.T) {
	_, list := recorded(
		t, loadedA, `{"fact":"loaded","into":"b","volume_gal":100,"mix":"C","for":"gun","place":"street"}`, fromA, flushed,
		`{"fact":"day_opened","date":"2026-05-31","operator":"R. Example"}`,
		`{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"gallons","volume_gal":5}`,
		`{"fact":"filled","applicator":"ride-on","volume_gal":6}`, `{"fact":"day_closed"}`, openDay,
		`{"fact":"sprayed","lawn":"12 Elm","zones":["back"],"applicator":"ride-on","by":"gallons","volume_gal":1}`,
		`{"fact":"lined_up","supply":["b"],"return":"b"}`,
		`{"fact":"sprayed","lawn":"418 Alder","zones":["front"],"applicator":"gun","by":"gallons","volume_gal":0.5}`,
		`{"fact":"pushed_back","to":"waste/pail","volume_gal":20}`,
		`{"fact":"sprayed","lawn":"418 Alder","zones":["back"],"applicator":"gun","by":"gallons","volume_gal":4}`,
		`{"fact":"spread","lawn":"77 Fir","applicator":"spreader","product":"food","amount_lb":9}`,
	)
	for _, want := range []struct{ lawn, zone, product, place, lawns string }{
		{"12 Elm", "back", "warm weed", "depot", "1 before; 12 Elm"},
		{"418 Alder", "front", "warm weed", "depot", "1 before; 12 Elm; 418 Alder"}, // what stood in the hose
		{"418 Alder", "back", "cool weed", "street", "418 Alder"},
		{"77 Fir", "all", "food", "", ""},
	} {
		r := rowOf(t, list, want.lawn, want.zone, want.product)
		if r.MixedWhere != want.place || r.LoadLawns != want.lawns || r.Load.Known == (want.place == "") {
			t.Errorf("%s, %s: mixed at %q, lawns %q, load %v", want.lawn, want.zone, r.MixedWhere, r.LoadLawns, r.Load)
		}
	}
}

// TestWeatherOfAPiece: the figures in force when it was laid, each with its own time where they differ; what was looked at after is not
// taken (COMAR 15.05.01.12, OAC 901:5-11-10).
func TestWeatherOfAPiece(t *testing.T) {
	_, list := recorded(
		t, loadedA, openDay, fromA, flushed,
		`{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"gallons","volume_gal":5}`,
		`{"fact":"weather","wind_mph":4,"wind_from":"SW","temp_f":66}`,
		`{"fact":"sprayed","lawn":"12 Elm","zones":["back"],"applicator":"gun","by":"gallons","volume_gal":3}`,
		`{"fact":"weather","temp_f":71}`,
		`{"fact":"sprayed","lawn":"418 Alder","zones":["front"],"applicator":"gun","by":"gallons","volume_gal":5}`,
		`{"fact":"weather","wind_mph":9,"wind_from":"N","temp_f":75}`,
	)
	before := rowOf(t, list, "77 Fir", "all", "warm weed")
	if before.Wind.Known || before.Temp.Known || before.WeatherAt != "" {
		t.Errorf("before the first look the record says %v, %v at %q", before.Wind, before.Temp, before.WeatherAt)
	}
	one := rowOf(t, list, "12 Elm", "back", "warm weed")
	if one.Wind.V != 4 || one.WindFrom != "SW" || one.Temp.V != 66 || len(one.WeatherAt) != len("09:05") {
		t.Errorf("wind %v from %s, %v F at %q", one.Wind, one.WindFrom, one.Temp, one.WeatherAt)
	}
	two := rowOf(t, list, "418 Alder", "front", "warm weed")
	if two.Wind.V != 4 || two.Temp.V != 71 || two.WeatherAt == one.WeatherAt || !strings.HasPrefix(two.WeatherAt, "wind "+one.WeatherAt+", temperature ") {
		t.Errorf("wind %v, %v F at %q", two.Wind, two.Temp, two.WeatherAt)
	}
}

// TestTraceIsSaid: what is left of the mix before on the next lawn is a row, marked as a trace; the year's nitrogen stands with what
// brought some.
func TestTraceIsSaid(t *testing.T) {
	_, list := recorded(
		t, `{"fact":"product","name":"warm weed","form":"liquid","kind":"herbicide","grasses":["bermudagrass_common","tall_fescue"],"rate_low_fl_oz_per_1000_sqft":1,"rate_high_fl_oz_per_1000_sqft":2}`,
		`{"fact":"product","name":"food","form":"dry","kind":"fertiliser","nitrogen_pct":20,"phosphate_pct":0,"potash_pct":5,"grasses":["all_turf"],"rate_low_lb_per_1000_sqft":3,"rate_high_lb_per_1000_sqft":5}`,
		loadedA, `{"fact":"loaded","into":"b","volume_gal":100,"mix":"C","for":"gun"}`, fromA, flushed, openDay,
		`{"fact":"lined_up","supply":["b"],"return":"b"}`, `{"fact":"pushed_back","to":"waste/pail","volume_gal":2.5}`,
		`{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"gallons","volume_gal":7.8}`,
		`{"fact":"spread","lawn":"77 Fir","applicator":"spreader","product":"food","amount_lb":20.812}`, // 4 lb per 1,000 on 5,203 sq ft
	)
	if r := rowOf(t, list, "77 Fir", "all", "warm weed"); r.Trace != label.Yes || r.Amount.N <= 0 {
		t.Errorf("what was left is %s, trace %q", r.Amount.Text(), r.Trace)
	}
	if r := rowOf(t, list, "77 Fir", "all", "cool weed"); r.Trace != "" {
		t.Error("the mix itself is called a trace")
	}
	// 4 lb of product with 20 per cent is 0.8 lb of nitrogen per 1,000 sq ft
	if r := rowOf(t, list, "77 Fir", "all", "food"); figure(r.Nitrogen.V) != "0.8" || figure(r.SeasonNitrogen.V) != "0.8" || r.Analysis != "20-0-5" {
		t.Errorf("nitrogen %v, this year %v, analysis %s", r.Nitrogen, r.SeasonNitrogen, r.Analysis)
	}
}
