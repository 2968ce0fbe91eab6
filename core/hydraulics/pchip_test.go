package hydraulics

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The values are those of a general-purpose library, for the data of Fritsch and Carlson (1980) and for charts; how they were
// made stands beside them (pchip.py).
func TestCurveAgainstALibrary(t *testing.T) {
	f, err := os.Open("../../testdata/hydraulics/pchip.tsv")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	r := csv.NewReader(f)
	r.Comma, r.Comment = '\t', '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	numbers := func(s string) (out []float64) {
		for _, p := range strings.Split(s, ",") {
			out = append(out, number(p))
		}
		return out
	}
	for _, row := range rows[1:] {
		ys := numbers(row[2])
		c, ok := NewCurve(numbers(row[1]), ys)
		if !ok {
			t.Fatalf("%s: no curve", row[0])
		}
		x, value, slope := number(row[3]), number(row[4]), number(row[5])
		if got := c.At(x); math.Abs(got-value) > 1e-12*max(math.Abs(ys[len(ys)-1]), 1) {
			t.Errorf("%s at %g: %.15g, not %.15g", row[0], x, got, value)
		}
		if got := c.Slope(x); math.Abs(got-slope) > 1e-10*max(math.Abs(slope), 1) {
			t.Errorf("%s at %g: the slope is %.15g, not %.15g", row[0], x, got, slope)
		}
		if back, ok := c.Inverse(c.At(x)); !ok || (math.Abs(back-x) > 1e-6 && c.Slope(x) > 0.01) {
			t.Errorf("%s: %g is found again at %g (%t)", row[0], x, back, ok)
		}
	}
	if len(rows) != 147 {
		t.Errorf("%d rows, not 146 and a heading", len(rows))
	}
}

// Own computation on a 48 x 32 x 60 in ellipse with marks every 4 in and every 2 in: how far the curve is off at worst, and
// the straight line.
func TestCurveIsNearerThanALine(t *testing.T) {
	s := Elliptical{Width: 48, Tall: 32, Length: 60}
	for _, row := range []struct {
		step        Inches
		curve, line float64
	}{{4, 1.5, 3.2}, {2, 0.5, 1.2}} {
		marks, err := Chart(s, row.step)
		if err != nil {
			t.Fatal(err)
		}
		var x, y []float64
		for _, m := range marks {
			x, y = append(x, float64(m.Depth)), append(y, float64(m.Volume))
		}
		c, _ := NewCurve(x, y)
		var worst, line float64
		for i := range 3200 {
			h := float64(i) / 100
			v, err := VolumeAt(s, Inches(h))
			if err != nil {
				t.Fatal(err)
			}
			k := int(h / float64(row.step))
			share := (h - x[k]) / (x[k+1] - x[k])
			worst = max(worst, math.Abs(c.At(h)-float64(v)))
			line = max(line, math.Abs(y[k]+share*(y[k+1]-y[k])-float64(v)))
		}
		if math.Abs(worst-row.curve) > 0.06 || math.Abs(line-row.line) > 0.06 {
			t.Errorf("marks every %g in: the curve is off by %.2f gal, the line by %.2f; not %g and %g", float64(row.step), worst, line, row.curve, row.line)
		}
	}
}

func TestCurveNeedsPointsThatRise(t *testing.T) {
	for _, x := range [][]float64{nil, {1}, {1, 1}, {2, 1}, {1, math.NaN()}} {
		if _, ok := NewCurve(x, make([]float64, len(x))); ok {
			t.Errorf("%v makes a curve", x)
		}
	}
	if _, ok := NewCurve([]float64{1, 2}, []float64{1}); ok {
		t.Error("a point without a figure makes a curve")
	}
}

func TestCurveRisesAndStaysBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 12).Draw(t, "points")
		x, y := []float64{0}, []float64{0}
		for range n - 1 {
			x = append(x, x[len(x)-1]+rapid.Float64Range(1e-3, 100).Draw(t, "dx"))
			y = append(y, y[len(y)-1]+rapid.Float64Range(0, 1e12).Draw(t, "dy"))
		}
		c, ok := NewCurve(x, y)
		if !ok {
			t.Fatal("no curve")
		}
		tiny := 1e-12 * y[n-1]
		for i := range n - 1 {
			before := y[i]
			for k := range 50 {
				at := x[i] + (x[i+1]-x[i])*float64(k)/50
				v := c.At(at)
				if v < before-tiny || v < y[i] || v > y[i+1] || c.Slope(at) < -tiny {
					t.Fatalf("at %g it is %g after %g, between %g and %g, slope %g", at, v, before, y[i], y[i+1], c.Slope(at))
				}
				before = v
				if back, ok := c.Inverse(v); !ok || math.Abs(c.At(back)-v) > max(tiny, 1e-3) {
					t.Fatalf("%g is found at %g (%t), where it is %g", v, back, ok, c.At(back))
				}
			}
		}
		if c.At(-1) != y[0] || c.At(x[n-1]+1) != y[n-1] {
			t.Fatal("beyond its ends it is not that of the end")
		}
	})
}
