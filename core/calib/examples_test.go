package calib

import (
	"bufio"
	"encoding/json"
	"math"
	"os"
	"testing"

	"example.com/tintline/core/measure"
)

// exact reads what published rows come to when they are worked out without rounding.
func exact(t *testing.T) map[string]map[string]float64 {
	t.Helper()
	f, err := os.Open("../../testdata/examples/reckon.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	out := map[string]map[string]float64{}
	for lines := bufio.NewScanner(f); lines.Scan(); {
		var row struct {
			ID    string
			Exact map[string]float64
		}
		if err := json.Unmarshal(lines.Bytes(), &row); err != nil {
			t.Fatal(err)
		}
		out[row.ID] = row.Exact
	}
	return out
}

// agree says whether two figures are the same to six significant digits.
func agree(got, want float64) bool { return math.Abs(got-want) <= 5e-7*math.Abs(want) }

func acres(r measure.Rate) float64 {
	f, _ := r.In("gal_per_acre")
	return f
}

func work(t *testing.T, c Catch) Result {
	t.Helper()
	l := Usual()
	l.Runs = nil // a worksheet prints one run
	r, err := c.Work(l)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Rows whose answer rests on an assumption of their source, which the command line does not make.
func TestPublishedRowsThatAssume(t *testing.T) {
	rows := exact(t)
	side := AreaOf(float64(measure.Feet(18.5)), float64(measure.Feet(18.5)))
	mesa := Catch{Kind: Gun, Runs: []float64{75}, Caught: []measure.Volume{measure.FluidOunces(150)}}
	wolf := Catch{Kind: Gun, Runs: []float64{20}, Caught: []measure.Volume{measure.FluidOunces(31)}}
	square := func(c Catch) Catch {
		c.Plot = measure.Area(side)
		return c
	}
	ounces := acres(work(t, mesa).Delivery)
	tip := FlowAt(float64(measure.GPM(0.4)), 40, 30)
	tree := measure.Flow(float64(measure.Quarts(2)) / 35)
	tests := []struct {
		row, key, source string
		got              float64
	}{
		{"gun-mesa-128th-acre", "gal_per_acre", "Mesa County Weed & Pest: the square counts as 1/128 acre", ounces},
		{"gun-mesa-128th-acre", "acres_per_tank", "Mesa County Weed & Pest", 25 / ounces},
		{"gun-mesa-128th-acre", "gal_per_acre_if_plot_is_really_18_5_square", "the square measured", acres(work(t, square(mesa)).Delivery)},
		{"gun-ksu-31oz", "gal_per_acre", "Kansas State University (Wolf)", acres(work(t, wolf).Delivery)},
		{"gun-ksu-31oz", "gal_per_acre_strict_342_25_sqft", "the square measured", acres(work(t, square(wolf)).Delivery)},
		{"gun-ksu-340x128", "area_sqft", "Kansas State University (Wolf)", 340 * ounceShare},
		{"gun-ksu-340x128", "volume_fl_oz", "Kansas State University (Wolf)", 31 * ounceShare},
		{"gun-hose-end-six-trees", "qt_total", "Pesticide Environmental Stewardship", tree.Over(6 * 35).Quarts()},
		{"gun-hose-end-six-trees", "gal_total", "Pesticide Environmental Stewardship", tree.Over(6 * 35).Gallons()},
		{
			"nozzle-04-30psi-gal-per-1000", "gal_per_1000_sqft", "golf column quoting a catalogue; spacing assumed",
			measure.Rate{V: LaidBy(tip, float64(measure.MPH(3)), float64(measure.Inches(20)))}.GalPer1000(),
		},
		{
			"backpack-ncsu-7p5oz", "gal_per_acre_for_actual_11_tree_330_sqft_course", "NC State, to the 11th tree",
			acres(work(t, Catch{Kind: Backpack, Plot: measure.SquareFeet(330), Caught: []measure.Volume{measure.FluidOunces(7.5)}}).Delivery),
		},
	}
	for _, tt := range tests {
		if want, ok := rows[tt.row][tt.key]; !ok || !agree(tt.got, want) {
			t.Errorf("%s: %s = %.8g, want %.8g (%s)", tt.row, tt.key, tt.got, want, tt.source)
		}
	}
}

// The published test of a gun, in full, as an operator takes it.
func TestGunOfNCState(t *testing.T) {
	c := Catch{Kind: Gun, Runs: []float64{77, 79, 78}, Course: measure.Feet(200), Swath: measure.Feet(5), Caught: []measure.Volume{measure.Gallons(5.25)}}
	r, err := c.Work(Usual())
	if err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		what      string
		got, want float64
		source    string
	}{
		{"gal per 1,000 sq ft", r.Delivery.GalPer1000(), 5.25, "NC State extension (Buhler), spray gun"},
		{"gal per acre", acres(r.Delivery), 228.69, "the same, 228.7 printed"},
		{"gpm", r.Flow.V.GPM(), 5.25 / 78 * 60, "5.25 gal in 78 s"},
		{"mph", r.Speed.V.MPH(), 200. / 78 / 5280 * 3600, "200 ft in 78 s"},
		{"spread", r.Spread, 1. / 78, "79 against 78"},
	}
	for _, tt := range tests {
		if !near(tt.got, tt.want) { // a speed is kept to the um a second
			t.Errorf("%s = %.8g, want %.8g (%s)", tt.what, tt.got, tt.want, tt.source)
		}
	}
	want := []string{
		"Runs of 77, 79 and 78 s: mean 78.0 s, the farthest 1.3 per cent off.",
		"200 ft at a swath of 5 ft = 1,000 sq ft.",
		"200 ft in 78.0 s = 1.748 mph.",
		"5.25 gal in 78.0 s = 4.038 gal a minute.",
		"5.25 gal on 1,000 sq ft = 5.25 gal per 1,000 sq ft, 228.7 gal on an acre.",
	}
	for i, w := range want {
		if i >= len(r.Working) || r.Working[i] != w {
			t.Fatalf("working:\n%q\nwant\n%q", r.Working, want)
		}
	}
}
