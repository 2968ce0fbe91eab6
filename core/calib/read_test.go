package calib

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core/measure"
)

func TestReadCatch(t *testing.T) {
	known := Catch{Kind: Gun, Course: measure.Feet(200), Swath: measure.Feet(5)}
	gal := func(list ...float64) (out []measure.Volume) {
		for _, f := range list {
			out = append(out, measure.Gallons(f))
		}
		return out
	}
	tests := []struct {
		kind, typed string
		want        Catch
	}{
		{Gun, "77 79 78 s 5.25 gal", Catch{Kind: Gun, Course: measure.Feet(200), Swath: measure.Feet(5), Runs: []float64{77, 79, 78}, Caught: gal(5.25)}},
		{Gun, "1:17, 79s, 78 s; 5.25gal at 40 psi", Catch{Kind: Gun, Course: measure.Feet(200), Swath: measure.Feet(5), Runs: []float64{77, 79, 78}, Caught: gal(5.25), PSI: measure.Known(40.)}},
		{Gun, "20 21 20 s 1 gal for 30 s 100 ft x 6 ft", Catch{Kind: Gun, Course: measure.Feet(100), Swath: measure.Feet(6), Runs: []float64{20, 21, 20}, Caught: gal(1), CaughtFor: measure.Known(30.)}},
		{Gun, "77 79 78 s 1 gal 64 fl oz", Catch{Kind: Gun, Course: measure.Feet(200), Swath: measure.Feet(5), Runs: []float64{77, 79, 78}, Caught: gal(1.5)}},
		{Backpack, "16 18 s 7.5 fl oz 340 sq ft", Catch{Kind: Backpack, Plot: measure.SquareFeet(340), Runs: []float64{16, 18}, Caught: []measure.Volume{measure.FluidOunces(7.5)}}},
		{RideOn, "40 s 15 15.5 oz rated 0.04 gpm 200 ft x 80 in", Catch{
			Kind: RideOn, Course: measure.Feet(200), Swath: measure.Inches(80), Runs: []float64{40},
			Caught: []measure.Volume{measure.FluidOunces(15), measure.FluidOunces(15.5)}, Rated: measure.Known(measure.GPM(0.04)),
		}},
		{Spreader, "1.5 lb on 100 ft x 3 ft pans 2 5 5 2 apart 12 in", Catch{
			Kind: Spreader, Course: measure.Feet(100), Swath: measure.Feet(3), Weighed: []measure.Mass{measure.Pounds(1.5)}, Pans: []float64{2, 5, 5, 2}, Apart: measure.Feet(1),
		}},
		{Spreader, "pans 2 5 5 2", Catch{Kind: Spreader, Course: measure.Feet(200), Swath: measure.Feet(5), Pans: []float64{2, 5, 5, 2}}},
	}
	for _, tt := range tests {
		base := known
		base.Kind = tt.kind
		got, err := ReadCatch(tt.typed, base)
		if err != nil || fmt.Sprint(got) != fmt.Sprint(tt.want) {
			t.Errorf("%q\n got %+v %v\nwant %+v", tt.typed, got, err, tt.want)
		}
	}
	for typed, says := range map[string]string{
		"77 79 78":            "It is not said what 77 79 78 is.",
		"gal":                 `"gal" is not known here.`,
		"77 79 s 5 parsec":    `a unit that is not known`,
		"77 s for 20 30 s":    "It was caught for 20, 30 s: one time is needed.",
		"77 s 1.2.3 gal":      `1.2`,
		"200 300 ft x 5 ft":   "ft",
		"77 78 79 s 1 lb":     "weight",
		"77 78 79 s 40 50psi": "no pressure",
	} {
		_, err := ReadCatch(typed, known)
		var does interface{ Error() string }
		if !errors.As(err, &does) || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v, want %q", typed, err, says)
		}
	}
}
