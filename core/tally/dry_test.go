package tally

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// drawDry draws what dry product goes through, and visits.
func drawDry(t *rapid.T) string {
	with := rapid.SampledFrom([]string{"ride-on", "spreader"}).Draw(t, "with")
	lawn := rapid.SampledFrom([]string{"418 Alder", "77 Fir", "12 Elm"}).Draw(t, "lawn")
	lb := rapid.Float64Range(0.01, 40).Draw(t, "lb")
	switch rapid.IntRange(0, 6).Draw(t, "dry") {
	case 0, 1:
		return fmt.Sprintf(`{"fact":"loaded","into":%q,"parts":[{"product":"food","amount_lb":%.3f}]}`, with, lb)
	case 2:
		return fmt.Sprintf(`{"fact":"dumped","from":"applicator/%s","to":"package/food","amount_lb":%.3f}`, with, lb)
	case 3:
		return fmt.Sprintf(`{"fact":"visit_begun","lawn":%q}`, lawn)
	case 4:
		return fmt.Sprintf(`{"fact":"visit_done","lawn":%q}`, lawn)
	}
	return fmt.Sprintf(`{"fact":"spread","lawn":%q,"applicator":%q,"product":"food","amount_lb":%.3f}`, lawn, with, lb)
}

// checkDry: pounds add up over lawns, zones and applicators, and each tank's and hopper's row.
func checkDry(t *rapid.T, y Tally) {
	var lawns, zones, to measure.Mass
	for _, l := range y.Lawns {
		lawns += l.Mass
		for _, z := range l.Zones {
			zones += z.Mass
		}
	}
	for _, h := range y.Hoppers {
		to += h.ToLawns
	}
	if lawns != y.Mass || zones != y.Mass || to != y.Mass {
		t.Fatalf("all %d lb: lawns %d, zones %d, to lawns %d", y.Mass, lawns, zones, to)
	}
	if y.Area < y.Sprayed {
		t.Fatalf("%d treated and %d sprayed", y.Area, y.Sprayed)
	}
	d := y.Document()
	for _, r := range d.Applicators {
		if !same(r.Start+r.Loaded+r.Filled-r.Drawn-r.Other+r.Unexplained, r.Left) {
			t.Fatalf("%+v", r)
		}
	}
	for _, r := range d.Hoppers {
		if !same(r.Start+r.Loaded-r.Spread-r.Other, r.Left) {
			t.Fatalf("%+v", r)
		}
	}
}

// checkOwn adds up the rows of tanks and hoppers as printed.
func checkOwn(t *rapid.T, table string, lines []string) {
	for _, l := range lines {
		var v []float64
		for _, c := range strings.Fields(l)[1:] {
			v = append(v, number(t, c))
		}
		sum := 0.0
		if table == "pounds" {
			sum = v[0] + v[1] - v[2] - v[3] - v[4]
		} else {
			sum = v[0] + v[1] + v[2] - v[3] - v[4] + v[5] - v[6]
		}
		if !same(sum, 0) {
			t.Fatalf("the row does not add up: %s", l)
		}
	}
}

// checkPounds adds up the column of pounds of the lawns' table, if it has one.
func checkPounds(t *rapid.T, lines []string) {
	if !strings.Contains(lines[0], "lb spread") {
		return
	}
	sum := 0.0
	for i, l := range lines[1:] {
		f := strings.Fields(l)
		lb := number(t, f[len(f)-2])
		switch {
		case strings.HasPrefix(l, "  "):
		case i == len(lines)-2:
			if !same(sum, lb) {
				t.Fatalf("pounds do not add up to %g:\n%s", lb, strings.Join(lines, "\n"))
			}
		default:
			sum += lb
		}
	}
}

// TestAreaIsCountedOnceAVisit: liquid and dry product on one zone are one area treated; what dry product alone covered
// counts too, and so does a second visit.
func TestAreaIsCountedOnceAVisit(t *testing.T) {
	spray := `{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"area"}`
	spread := `{"fact":"spread","lawn":"77 Fir","applicator":"spreader","product":"food"}`
	begun, done := `{"fact":"visit_begun","lawn":"77 Fir"}`, `{"fact":"visit_done","lawn":"77 Fir"}`
	for _, row := range []struct {
		name  string
		lines []string
		want  float64
	}{
		{"liquid", []string{spray}, 5203},
		{"dry", []string{spread}, 5203},
		{"both", []string{begun, spray, spread, done}, 5203},
		{"both, dry first", []string{begun, spread, spray, done}, 5203},
		{"both without a visit", []string{spread, spray}, 5203},
		{"two visits", []string{begun, spray, done, begun, spread, done}, 2 * 5203},
		{"two sprayings", []string{begun, spray, spray, spread, done}, 2 * 5203},
		{"two spreadings", []string{begun, spray, spread, spread, done}, 2 * 5203},
		{"dry on more than liquid", []string{begun, `{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","volume_gal":3,"area_sqft":2000}`, spread, done}, 5203},
		{"on two lawns", []string{spray, `{"fact":"spread","lawn":"12 Elm","applicator":"spreader","product":"food"}`}, 5203 + 3550},
	} {
		k := newKeeper(t)
		for _, s := range append([]string{
			`{"fact":"loaded","into":"b","volume_gal":100,"mix":"C","for":"gun"}`, `{"fact":"lined_up","supply":["b"],"return":"b"}`,
			`{"fact":"day_opened","date":"2026-06-01","operator":"R. Example"}`,
		}, row.lines...) {
			if err := k.enter(s); err != nil {
				t.Fatal(err)
			}
		}
		y := Close(k.b, core.Maybe[core.Moment]{})
		if got := y.Area.SquareFeet(); got < row.want-0.01 || got > row.want+0.01 {
			t.Errorf("%s: %.2f sq ft treated, not %g", row.name, got, row.want)
		}
	}
}

func TestPageWithDryProduct(t *testing.T) {
	k := newKeeper(t)
	for _, s := range []string{
		`{"fact":"loaded","into":"ride-on","volume_gal":10,"mix":"C","for":"ride-on"}`,
		`{"fact":"loaded","into":"ride-on","parts":[{"product":"food","amount_lb":60}]}`,
		`{"fact":"loaded","into":"spreader","parts":[{"product":"food","amount_lb":20}]}`,
		`{"fact":"day_opened","date":"2026-06-01","operator":"R. Example"}`,
		`{"fact":"visit_begun","lawn":"77 Fir"}`,
		`{"fact":"sprayed","lawn":"77 Fir","applicator":"ride-on"}`,
		`{"fact":"spread","lawn":"77 Fir","applicator":"ride-on"}`,
		`{"fact":"visit_done","lawn":"77 Fir"}`,
		`{"fact":"spread","lawn":"418 Alder","applicator":"spreader"}`,
		`{"fact":"dumped","from":"applicator/ride-on","to":"package/food"}`,
	} {
		if err := k.enter(s); err != nil {
			t.Fatalf("%s: %v", s, err)
		}
	}
	y := Close(k.b, core.Maybe[core.Moment]{})
	t.Log("\n" + y.Text())
	for _, want := range []string{
		"2026-06-01   2 lawns   12,600 sq ft   1.56 gal   37.8 lb   0.2 h\n",
		"ride-on   10.00    0.00    0.00   1.56   0.00         0.00  8.44      1.56\n",
		"ride-on    60.0     0.0    15.6   44.4   0.0      15.6\n",
		"spreader   20.0     0.0    20.0    0.0   0.0      22.2\n",
		"food           37.8 lb      3.00 lb per 1,000 sq ft\n",
		"77 Fir                        1.56       15.6   5,200\n",
	} {
		if !strings.Contains(y.Text(), want) {
			t.Errorf("the page lacks %q", want)
		}
	}
}
