package measure

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestApportionAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		weights := rapid.SliceOfN(hostile(), 1, 20).Draw(t, "weights")
		total := hostile().Draw(t, "total")
		shares := Apportion(weights, total)
		var sum int64 // may wrap on the way: the end is exact
		for i, s := range shares {
			sum += s
			if (s < 0) != (total < 0) && s != 0 {
				t.Fatalf("share %d is %d of %d", i, s, total)
			}
		}
		if sum != total {
			t.Fatalf("%v by %v is %v, in all %d", total, weights, shares, sum)
		}
		if !slices.Equal(shares, Apportion(weights, total)) {
			t.Fatal("not the same twice")
		}
	})
}

func TestApportionCases(t *testing.T) {
	tests := []struct {
		weights []int64
		total   int64
		want    []int64
	}{
		{[]int64{1, 1, 1}, 10, []int64{4, 3, 3}},
		{[]int64{1, 1, 1}, -10, []int64{-4, -3, -3}},
		{[]int64{0, 0}, 5, []int64{3, 2}},
		{[]int64{-7, 3}, 5, []int64{0, 5}},
		{[]int64{416, 338, 246}, 21, []int64{9, 7, 5}},
		{nil, 5, []int64{}},
		{[]int64{math.MaxInt64, math.MaxInt64}, math.MinInt64, []int64{-1 << 62, -1 << 62}},
		{[]int64{1}, math.MinInt64, []int64{math.MinInt64}},
	}
	for _, tt := range tests {
		if got := Apportion(tt.weights, tt.total); !slices.Equal(got, tt.want) {
			t.Errorf("%d by %v: %v, want %v", tt.total, tt.weights, got, tt.want)
		}
	}
}

func TestLargestRemainderAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]float64{0.01, 0.1, 1, 10, 0.25}).Draw(t, "step")
		parts := rapid.SliceOfN(rapid.Float64Range(-1e6, 1e6), 1, 20).Draw(t, "parts")
		total := rapid.Float64Range(-1e7, 1e7).Draw(t, "off")
		honest := rapid.Bool().Draw(t, "honest")
		if honest {
			total = 0
			for _, p := range parts {
				total += p
			}
		}
		got := LargestRemainder(parts, total, step)
		var sum float64
		for i, g := range got {
			sum += math.Round(g / step)
			if honest && math.Abs(g-parts[i]) > step*1.0000001+1e-6 {
				t.Fatalf("%v became %v", parts[i], g)
			}
		}
		if want := math.Round(total / step); math.Abs(sum-want) > 0.5 && math.Abs(math.Abs(total/step-math.Trunc(total/step))-0.5) > 1e-6 {
			t.Fatalf("%v add up to %v steps, want %v", got, sum, want)
		}
	})
}

func TestLargestRemainderCases(t *testing.T) {
	nan := math.NaN()
	tests := []struct {
		name        string
		parts       []float64
		total, step float64
		want        []float64
	}{
		{"thirds", []float64{10. / 3, 10. / 3, 10. / 3}, 10, 0.1, []float64{3.4, 3.3, 3.3}},
		{"exact stays", []float64{0.1, 0.2, 5.1}, 5.4, 0.1, []float64{0.1, 0.2, 5.1}},
		{"areas", []float64{7404, 3203, 1004}, 11611, 10, []float64{7410, 3200, 1000}},
		{"nothing", []float64{0, 0}, 0, 0.1, []float64{0, 0}},
		{"below nothing", []float64{-0.26, 1.26}, 1, 0.1, []float64{-0.3, 1.3}},
		{"no number", []float64{nan, 2}, 2, 1, []float64{0, 2}},
		{"none", nil, 5, 1, nil},
		{"no step", []float64{1.5}, 1.5, 0, []float64{1.5}},
		{"no total", []float64{1.5}, nan, 1, []float64{1.5}},
		{"too large", []float64{1e300}, 1e300, 1, []float64{1e300}},
		{"a part too large", []float64{1e300}, 1, 1, []float64{1e300}},
		{"does not add up", []float64{1, 1}, 5, 1, []float64{3, 2}},
	}
	for _, tt := range tests {
		if got := LargestRemainder(tt.parts, tt.total, tt.step); !slices.Equal(got, tt.want) {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
}
